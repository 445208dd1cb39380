//! Initial freezing point.

use super::ice;
use crate::science::water_activity::{CompositionPer100g, best_estimate, norrish_activity};
use crate::science::{Estimate, Method, Nonsense, input_checks};

const METHOD: Method = Method {
    name: "freezing point from water activity",
    source: "ice equilibrium (from memory: Robinson and Stokes) solved for temperature, with the water activity at 25 \
        Cel: Miyawaki et al., Biosci. Biotech. Biochem. 61 (1997) 466, found it nearly unchanged down to freezing",
    domain: "sugars +-0.1 K to 30 %, 0.13 K too high at 40 % sucrose, +-0.3 K above; salt 0.4 K too low at 10 % and 1.5 K at 20 % in water, glycerol \
        0.8 K too high at 30 %; down to -40 Cel",
};

/// Initial freezing point, °C, of anything whose water activity (0.65-1) is known at room temperature.
///
/// # Errors
/// [`Nonsense`] for a water activity outside that range.
pub fn freezing_point(water_activity: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "water_activity", water_activity, 0.65..=1.0, "1");
    nonsense.or_ok()?;
    Ok(at(water_activity))
}

/// Initial freezing point, °C, of a composition, by its estimated water activity.
///
/// # Errors
/// [`Nonsense`] of the composition.
pub fn freezing_point_of(composition: &CompositionPer100g) -> Result<Estimate, Nonsense> {
    let activity = best_estimate(composition)?.water_activity;
    // The freezing curve must start where the lever rule of the ice fraction does, which has no Robinson-Stokes.
    let mut point = at(norrish_activity(composition));
    point.outside_domain.extend(activity.outside_domain);
    Ok(point)
}

fn at(water_activity: f64) -> Estimate {
    let celsius = ice::temperature(water_activity);
    Estimate::new(celsius, "Cel", METHOD).valid_if(water_activity >= ice::activity(ice::COLDEST), || {
        format!("water activity {water_activity:.3} does not freeze down to -40 Cel: -40 Cel is given")
    })
}
