//! Money and Born's rule for boiled sugar goods, jams and fondants.

use super::AqueousPhase;
use crate::science::{Estimate, Method, Nonsense};

const METHOD: Method = Method {
    name: "Money-Born",
    source: "Money and Born, J. Sci. Food Agric. 2 (1951) 180; aw = 1 / (1 + 0.27 n), n mol sugar per 100 g water",
    domain: "boiled sugar goods, jams, fondants, aw about 0.6-0.9; against Robinson-Stokes -0.008 at 50 %, 0.000 at 60 %, \
        +0.010 at 67 % sucrose; too low for glucose and fructose above 0.8",
};

/// Water activity from the moles of sugar; other solutes are not counted, with a remark.
///
/// # Errors
/// [`Nonsense`] listing masses that cannot be.
pub fn money_born(phase: &AqueousPhase) -> Result<Estimate, Nonsense> {
    phase.check()?;
    let sugars = phase.solutes_g.iter().filter(|(solute, _)| solute.is_sugar());
    let moles: f64 = sugars.map(|&(solute, grams)| solute.moles(grams)).sum();
    let activity = 1.0 / (1.0 + 0.27 * 100.0 * moles / phase.water_g);
    let only_sugar = phase.solutes_g.iter().all(|(solute, grams)| solute.is_sugar() || *grams == 0.0);
    Ok(Estimate::new(activity, "1", METHOD)
        .valid_if((0.6..=0.9).contains(&activity), || format!("water activity {activity:.3} is outside 0.6-0.9"))
        .valid_if(only_sugar, || "solutes other than sugars are not counted".to_owned()))
}
