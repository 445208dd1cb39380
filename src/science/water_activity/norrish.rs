//! Norrish's equation for one solute: `ln aw = ln Xw - K Xs^2`.

use super::BinarySolution;
use crate::science::{Estimate, Method, Nonsense};

const METHOD: Method = Method {
    name: "Norrish, one solute",
    source: "Norrish, J. Food Technol. 1 (1966) 25, in natural logarithms with the constants named in the solute's facts",
    domain: "25 Cel, fitted to aw 0.85-0.90 and above; sucrose within 0.0013 of Robinson-Stokes to 67.9 %; sugars and \
        polyols follow it lower with a small change of K (Baez et al., Food Bioprocess Technol. 3 (2010) 87)",
};

/// Water activity of a solution of one non-electrolyte.
///
/// # Errors
/// [`Nonsense`] listing masses that cannot be, and a solute without a constant K (salt, ethanol).
pub fn norrish(solution: &BinarySolution) -> Result<Estimate, Nonsense> {
    let mut nonsense = solution.check().err().unwrap_or_default();
    let facts = solution.solute.facts();
    nonsense.unless(facts.norrish_k.is_some(), facts.name, "has no constant Norrish K");
    nonsense.or_ok()?;
    let activity = unchecked(solution);
    Ok(Estimate::new(activity, "1", METHOD)
        .valid_if(activity >= 0.85, || format!("water activity {activity:.3} is below 0.85, where K was not fitted")))
}

/// The same without the checks; a solute without K counts as ideal.
pub(in crate::science) fn unchecked(solution: &BinarySolution) -> f64 {
    let solute = solution.solute_fraction();
    let k = solution.solute.facts().norrish_k.unwrap_or(0.0);
    (1.0 - solute) * (-k * solute * solute).exp()
}
