//! Norrish's equation with one constant for the mixture; salt by Ross's product on top.

use super::salt::pitzer;
use super::{AqueousPhase, BinarySolution, Solute};
use crate::science::{Estimate, Method, Nonsense};

pub(super) const METHOD: Method = Method {
    name: "Norrish with a mixture constant, salt by Ross",
    source: "from memory: Ferro Fontan, Chirife and Boquet, J. Food Technol. 16 (1981) 553; salt by Pitzer",
    domain: "25 Cel, constants fitted above aw 0.85; such models deviate by less than 2 % on average (Sereno et al., J. Food \
        Eng. 49 (2001) 103); 0.01-0.04 above the published range of honey, 0.04 below that of raisins",
};

/// Water activity of a mixture: `ln aw = ln Xw - Km Xs^2`, Xs all non-electrolytes together, Km the mole-weighted mean of
/// their constants (ethanol, which has none, counts as ideal), times the water activity of the salt alone.
///
/// # Errors
/// [`Nonsense`] listing masses that cannot be.
pub fn mixture_constant(phase: &AqueousPhase) -> Result<Estimate, Nonsense> {
    phase.check()?;
    let activity = unchecked(phase);
    Ok(Estimate::new(activity, "1", METHOD).valid_if(activity >= 0.85, || {
        format!("water activity {activity:.3} is below 0.85, where the constants were not fitted")
    }))
}

/// The same without the checks.
pub(super) fn unchecked(phase: &AqueousPhase) -> f64 {
    let (mut moles, mut weighted) = (0.0, 0.0);
    for &(solute, grams) in &phase.solutes_g {
        if solute != Solute::Salt {
            moles += solute.moles(grams);
            weighted += solute.moles(grams) * solute.facts().norrish_k.unwrap_or(0.0);
        }
    }
    let total = moles + phase.water_moles();
    // Km Xs^2 = (weighted / moles) (moles / total)^2, written so that it holds without any solute.
    let excess = weighted * moles / (total * total);
    let brine = BinarySolution { solute: Solute::Salt, solute_g: phase.grams_of(Solute::Salt), water_g: phase.water_g };
    phase.water_moles() / total * (-excess).exp() * pitzer(brine.molality())
}
