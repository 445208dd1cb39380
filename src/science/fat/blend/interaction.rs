//! Fats that do not mix ideally: a eutectic pair is softer together than the mean of the two.

use super::{AvailableFat, FatKind};
use crate::science::{Estimate, Method, Nonsense, input_checks};

/// Source of the named pairs.
const LIU: &str = "Liu et al., Graded blends of palm kernel oil, palm kernel stearin and palm stearin, Food Chem. 286 (2019) 636-643, abstract";

const IDEAL: Method = Method {
    name: "solids of a blend: ideal mixing less a pair term, sum(x S) - k x1 x2",
    source: "Blending of European shortening fats: SFC and hardness of binary and ternary systems, University of Liege (abstract): linear for compatible fats, second-order polynomial for incompatible ones",
    domain: "k must be fitted on measured blends of the same two fats; no published k is known here, so without one the figure is the ideal one",
};

/// A pair of fats in a blend that is known not to mix ideally.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct InteractionWarning {
    /// The two fats.
    pub fats: (String, String),
    /// What happens, in words.
    pub message: &'static str,
    /// Publication.
    pub source: &'static str,
}

/// The pairs among `fats` that the literature names as not ideal.
#[must_use]
pub fn known_interactions(fats: &[&AvailableFat]) -> Vec<InteractionWarning> {
    let mut warnings = Vec::new();
    for (place, first) in fats.iter().enumerate() {
        for second in fats.iter().skip(place + 1) {
            if let Some(message) = interaction(first.kind, second.kind).or_else(|| interaction(second.kind, first.kind))
            {
                warnings.push(InteractionWarning {
                    fats: (first.name.clone(), second.name.clone()),
                    message,
                    source: LIU,
                });
            }
        }
    }
    warnings
}

fn interaction(first: FatKind, second: FatKind) -> Option<&'static str> {
    use FatKind::{PalmKernelOil, PalmKernelStearin, PalmStearin};
    match (first, second) {
        (PalmKernelOil | PalmKernelStearin, PalmStearin) => {
            Some("eutectic: the blend is softer than predicted, most at 25 to 30 °C; measure it")
        }
        (PalmKernelOil, PalmKernelStearin) => Some("compatible, slightly monotectic above 30 °C; measure it there"),
        _ => None,
    }
}

/// A pair term of the blend equation, fitted on measured blends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interaction {
    /// Place of the first fat in the list.
    pub first: usize,
    /// Place of the second fat in the list.
    pub second: usize,
    /// Fitted constant k at this temperature, percentage points; positive softens.
    pub points: f64,
}

/// Solids of a blend at one temperature, %: Σ x S − Σ k x1 x2 (never below 0). `parts` holds the share (% of
/// the blend) and the solids (%) of each fat. A pair term acts only while both fats are part solid.
///
/// # Errors
/// No parts, values that are no percentages, shares that do not add up to 100 % (±0.5 %), a pair that names a
/// fat not in the list, a k that is no number.
pub fn blend_solids(parts: &[(f64, f64)], interactions: &[Interaction]) -> Result<Estimate, Nonsense> {
    check(parts, interactions)?;
    let ideal: f64 = parts.iter().map(|(share, solids)| share / 100.0 * solids).sum();
    let softer: f64 = interactions.iter().filter_map(|pair| pair_term(parts, *pair)).sum();
    Ok(Estimate::new((ideal - softer).max(0.0), "%", IDEAL))
}

fn pair_term(parts: &[(f64, f64)], pair: Interaction) -> Option<f64> {
    let (first_share, first_solids) = parts.get(pair.first)?;
    let (second_share, second_solids) = parts.get(pair.second)?;
    let part_solid = |solids: f64| solids > 0.0 && solids < 100.0;
    (part_solid(*first_solids) && part_solid(*second_solids))
        .then_some(pair.points * first_share / 100.0 * second_share / 100.0)
}

fn check(parts: &[(f64, f64)], interactions: &[Interaction]) -> Result<(), Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::not_empty(&mut nonsense, "parts", parts);
    for (place, (share, solids)) in parts.iter().enumerate() {
        input_checks::percent(&mut nonsense, &format!("parts[{place}].share"), *share);
        input_checks::percent(&mut nonsense, &format!("parts[{place}].solids"), *solids);
    }
    let total: f64 = parts.iter().map(|(share, _)| share).sum();
    nonsense.unless(
        parts.is_empty() || total.is_nan() || (total - 100.0).abs() <= 0.5,
        "parts",
        format!("the shares add up to {total:.1} %, not to 100 %"),
    );
    for (place, pair) in interactions.iter().enumerate() {
        let input = format!("interactions[{place}]");
        let named = pair.first < parts.len() && pair.second < parts.len() && pair.first != pair.second;
        nonsense.unless(named, &input, "does not name two fats of the blend");
        nonsense.unless(pair.points.is_finite(), &input, "k is not a number");
    }
    nonsense.or_ok()
}
