//! Raoult's law: the ideal solution.

use super::AqueousPhase;
use crate::science::{Estimate, Method, Nonsense};

const METHOD: Method = Method {
    name: "Raoult's law",
    source: "Raoult 1887; aw = nw / (nw + sum of particles)",
    domain: "aw above 0.97 for sugars; salt within 0.003 to 10 % and 0.027 too high at 20 % (against the Pitzer model); \
        0.1 too high for honey",
};

/// Water activity of an ideal solution of any solutes.
///
/// # Errors
/// [`Nonsense`] listing masses that cannot be.
pub fn raoult(phase: &AqueousPhase) -> Result<Estimate, Nonsense> {
    phase.check()?;
    let particles: f64 =
        phase.solutes_g.iter().map(|&(solute, grams)| solute.facts().particles * solute.moles(grams)).sum();
    let water = phase.water_moles();
    let activity = water / (water + particles);
    Ok(Estimate::new(activity, "1", METHOD).valid_if(activity >= 0.97, || {
        format!("water activity {activity:.3} is below 0.97: real solutions of sugars lie lower")
    }))
}
