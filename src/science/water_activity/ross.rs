//! Ross's product: each solute acts as if it had all the water to itself.

use super::norrish::unchecked as norrish;
use super::salt::{self, pitzer};
use super::{AqueousPhase, BinarySolution, Solute};
use crate::science::{Estimate, Method, Nonsense};

const METHOD: Method = Method {
    name: "Ross product",
    source: "from memory: Ross, Food Technol. 29(3) (1975) 26; the factors by Norrish, salt by Pitzer",
    domain: "about +-0.01 to +-0.02 above aw 0.8; 0.02-0.03 too high in concentrated mixtures of sugars (honey, molasses)",
};

/// Water activity of a mixture as the product over its solutes.
///
/// # Errors
/// [`Nonsense`] listing masses that cannot be.
pub fn ross(phase: &AqueousPhase) -> Result<Estimate, Nonsense> {
    phase.check()?;
    let activity: f64 = phase.binaries().map(|solution| alone(&solution)).product();
    let salt = BinarySolution { solute: Solute::Salt, solute_g: phase.grams_of(Solute::Salt), water_g: phase.water_g };
    Ok(Estimate::new(activity, "1", METHOD)
        .valid_if(activity >= 0.8, || {
            format!("water activity {activity:.3} is below 0.8: the product comes out too high")
        })
        .valid_if(salt.molality() <= salt::HIGHEST_MOLALITY, || "more salt than water can dissolve".to_owned()))
}

fn alone(solution: &BinarySolution) -> f64 {
    match solution.solute {
        Solute::Salt => pitzer(solution.molality()),
        _ => norrish(solution),
    }
}
