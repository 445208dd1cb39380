//! Water held by starch and protein: an isotherm, because large molecules hardly count as solutes.
//!
//! GAB (Guggenheim, Anderson, de Boer): `M = Xm C k aw / ((1 - k aw)(1 - k aw + C k aw))`, M grams of water per gram dry.
//! Constants for rice starch at 25 °C; none for wheat starch, flour or gluten was found, so they stand in for all of them.

use crate::science::{Estimate, Method, Nonsense, bisection, input_checks};

pub(super) const METHOD: Method = Method {
    name: "GAB isotherm of rice starch",
    source: "Science and Technology of Food Industry (China) 2014, no. 10, doi 10.13386/j.issn1002-0306.2014.10.036, \
        abstract",
    domain: "25 Cel, aw 0.11-0.90, rice starch; a stand-in for wheat starch, flour and gluten, for which accuracy is unknown",
};

/// Water activities of the fit.
pub(super) const FITTED: std::ops::RangeInclusive<f64> = 0.11..=0.90;

/// Whether the food came to its moisture from above or from below.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SorptionBranch {
    /// Taking up water: a cracker in humid air.
    Adsorption,
    /// Giving off water: a baked and cooled loaf.
    Desorption,
}

struct Gab {
    monolayer: f64,
    c: f64,
    k: f64,
}

impl SorptionBranch {
    const fn constants(self) -> Gab {
        match self {
            Self::Adsorption => Gab { monolayer: 0.0743, c: 26.87, k: 0.7842 },
            Self::Desorption => Gab { monolayer: 0.0800, c: 36.43, k: 0.7646 },
        }
    }

    /// Grams of water per gram of dry starch or protein.
    pub(super) fn moisture(self, water_activity: f64) -> f64 {
        let Gab { monolayer, c, k } = self.constants();
        let bound = k * water_activity;
        monolayer * c * bound / ((1.0 - bound) * (1.0 - bound + c * bound))
    }

    /// The water activity at which a gram dry holds `moisture` grams; 1 for anything wetter than the isotherm ends.
    pub(super) fn activity(self, moisture: f64) -> f64 {
        if moisture >= self.moisture(1.0) {
            return 1.0;
        }
        bisection::root_of_rising(0.0, 1.0, |activity| self.moisture(activity) - moisture)
    }
}

/// Water, g per 100 g dry matter (unit `%`), that starch holds at a water activity of 0-1.
///
/// # Errors
/// [`Nonsense`] for a water activity outside that range.
pub fn moisture_held(water_activity: f64, branch: SorptionBranch) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "water_activity", water_activity, 0.0..=1.0, "1");
    nonsense.or_ok()?;
    let percent = 100.0 * branch.moisture(water_activity);
    Ok(fitted(Estimate::new(percent, "%", METHOD), water_activity))
}

/// Water activity of starchy goods without sugar, salt or fat, from water per 100 g **dry** matter (0-100 %).
///
/// # Errors
/// [`Nonsense`] for a moisture outside that range.
pub fn water_activity_of_dry_goods(moisture_percent_dry: f64, branch: SorptionBranch) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "moisture", moisture_percent_dry, 0.0..=100.0, "%");
    nonsense.or_ok()?;
    let activity = branch.activity(moisture_percent_dry / 100.0);
    Ok(fitted(Estimate::new(activity, "1", METHOD), activity))
}

fn fitted(estimate: Estimate, water_activity: f64) -> Estimate {
    estimate.valid_if(FITTED.contains(&water_activity), || {
        format!("water activity {water_activity:.3} is outside the fitted 0.11-0.90")
    })
}
