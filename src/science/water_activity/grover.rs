//! Grover's sucrose equivalents, for confectionery.

use super::AqueousPhase;
use crate::science::{Estimate, Method, Nonsense, input_checks};

const METHOD: Method = Method {
    name: "Grover",
    source: "from memory: Grover, J. Soc. Chem. Ind. 66 (1947) 201; aw = 1.04 - 0.10 Es + 0.0045 Es^2, Es g sucrose \
        equivalents per g water",
    domain: "Es 0.8-6 (sucrose above 45 %); against Robinson-Stokes +0.010 at 50 %, +0.005 at 60 %, +0.004 at 67 %",
};

/// Grams of sucrose that a gram of starch, fibre or pectin stands for (from memory: Grover 1947).
const POLYSACCHARIDE: f64 = 0.8;
/// Grams of sucrose that a gram of protein stands for (from memory: Grover 1947).
const PROTEIN: f64 = 1.3;

/// What Grover's equation counts; any scale.
#[derive(Debug, Clone, PartialEq)]
pub struct GroverInput {
    /// Water and dissolved matter, g.
    pub phase: AqueousPhase,
    /// Starch, pectin and other polysaccharides, g.
    pub polysaccharide_g: f64,
    /// Gelatine, casein, egg white and other protein, g.
    pub protein_g: f64,
}

/// Water activity from sucrose equivalents; solutes without a factor are not counted, with a remark.
///
/// The parabola turns upwards at Es 11.1; from there on its lowest value, 0.484, is given.
///
/// # Errors
/// [`Nonsense`] listing masses that cannot be.
pub fn grover(input: &GroverInput) -> Result<Estimate, Nonsense> {
    let mut nonsense = input.phase.check().err().unwrap_or_default();
    input_checks::not_negative(&mut nonsense, "polysaccharide", input.polysaccharide_g);
    input_checks::not_negative(&mut nonsense, "protein", input.protein_g);
    nonsense.or_ok()?;
    let solutes = &input.phase.solutes_g;
    let dissolved: f64 =
        solutes.iter().map(|(solute, grams)| grams * solute.facts().grover_factor.unwrap_or(0.0)).sum();
    let held = POLYSACCHARIDE * input.polysaccharide_g + PROTEIN * input.protein_g;
    let es = (dissolved + held) / input.phase.water_g;
    let lowest_at = 0.10 / (2.0 * 0.0045);
    let counted = es.min(lowest_at);
    // The polynomial starts at 1.04 without solids; no food exceeds 1.
    let activity = (1.04 - 0.10 * counted + 0.0045 * counted * counted).min(1.0);
    let all_known = solutes.iter().all(|(solute, grams)| solute.facts().grover_factor.is_some() || *grams == 0.0);
    Ok(Estimate::new(activity, "1", METHOD)
        .valid_if((0.8..=6.0).contains(&es), || format!("{es:.2} g sucrose equivalents per g water is outside 0.8-6"))
        .valid_if(all_known, || "a solute without a factor is not counted".to_owned()))
}
