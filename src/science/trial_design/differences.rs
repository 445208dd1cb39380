//! Pieces that show a difference of two means, and the difference that so many pieces show.
//!
//! The exact size solves the power of the two-sided two-sample t test for the number of pieces (Cohen, Statistical Power
//! Analysis for the Behavioral Sciences, 1988, chapter 2). The normal approximation `2 (z_α/2 + z_β)² / d²` is what is
//! reckoned by hand; it gives one or two pieces fewer.

use super::risks::Risks;
use super::{LEAST_EFFECT, MOST_PIECES, noncentral_t, normal};
use crate::science::{Estimate, Method, Nonsense, bisection, input_checks};

const EXACT: Method = Method {
    name: "two-sided two-sample t test, power from the non-central t distribution",
    source: "Cohen, Statistical Power Analysis for the Behavioral Sciences, 1988, chapter 2",
    domain: "independent results, about normal, of one standard deviation, as many of each setting",
};

const APPROXIMATE: Method = Method {
    name: "normal approximation 2 (z(alpha/2) + z(beta))² / d²",
    source: "Cohen, Statistical Power Analysis for the Behavioral Sciences, 1988, chapter 12",
    domain: "many pieces; for few it gives one or two too few",
};

const LEAST_SIGNIFICANT: Method = Method {
    name: "least significant difference t(alpha/2) s sqrt(2/n)",
    source: "Fisher's least significant difference; from memory of Box, Hunter and Hunter, Statistics for Experimenters, 2005",
    domain: "the deviation turns out as it was said to be; one comparison",
};

const STANDARDISED: Method = Method {
    name: "difference over standard deviation",
    source: "Cohen, Statistical Power Analysis for the Behavioral Sciences, 1988, section 2.2",
    domain: "one standard deviation for both settings",
};

/// Fewest pieces of a setting from which a deviation can be told.
const FEWEST: f64 = 2.0;

/// Largest difference in standard deviations that is believed: beyond it no statistics is needed.
const LARGEST_EFFECT: f64 = 20.0;

/// How many pieces show a difference.
#[derive(Debug, Clone, PartialEq)]
pub struct DifferenceSize {
    /// Whole pieces of each setting, 2 or more.
    pub pieces: Estimate,
    /// The same before rounding up.
    pub exact: Estimate,
    /// By the normal approximation, before rounding up.
    pub approximate: Estimate,
    /// The difference in standard deviations.
    pub effect: Estimate,
    /// Least difference of the two means that is significant with so many pieces, in the unit of the deviation.
    pub significant: Estimate,
}

/// Pieces of each of two settings that show `difference`, in the unit of `standard_deviation` (both above zero).
///
/// # Errors
/// [`Nonsense`] for inputs that cannot be meant, and for a difference below 0.004 or above 20 standard deviations.
pub fn sample_size_for_difference(
    difference: f64,
    standard_deviation: f64,
    risks: Risks,
) -> Result<DifferenceSize, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::positive(&mut nonsense, "difference", difference);
    input_checks::positive(&mut nonsense, "standard_deviation", standard_deviation);
    risks.check(&mut nonsense);
    nonsense.or_ok()?;
    let effect = difference / standard_deviation;
    let message = format!("is {effect:.3} standard deviations; {LEAST_EFFECT} to {LARGEST_EFFECT} are reckoned with");
    let mut nonsense = Nonsense::default();
    nonsense.unless((LEAST_EFFECT..=LARGEST_EFFECT).contains(&effect), "difference", message);
    nonsense.or_ok()?;
    let exact = bisection::root_of_rising(FEWEST, MOST_PIECES, |pieces| power(effect, pieces, risks) - risks.power);
    let z = normal::exceeded_with(0.5 * risks.alpha) + normal::exceeded_with(1.0 - risks.power);
    Ok(DifferenceSize {
        pieces: Estimate::new(exact.ceil(), "1", EXACT),
        exact: Estimate::new(exact, "1", EXACT),
        approximate: Estimate::new(2.0 * z * z / (effect * effect), "1", APPROXIMATE),
        effect: Estimate::new(effect, "1", STANDARDISED),
        significant: Estimate::new(significant(exact.ceil(), standard_deviation, risks), "1", LEAST_SIGNIFICANT),
    })
}

/// Least difference, in the unit of `standard_deviation`, that `pieces` of each setting (2 to a million) show.
///
/// # Errors
/// [`Nonsense`] for inputs that cannot be meant.
pub fn detectable_difference(pieces: f64, standard_deviation: f64, risks: Risks) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "pieces", pieces, FEWEST..=MOST_PIECES, "1");
    input_checks::positive(&mut nonsense, "standard_deviation", standard_deviation);
    risks.check(&mut nonsense);
    nonsense.or_ok()?;
    // Two pieces at the smallest alpha and the largest power need some fifty deviations.
    let effect = bisection::root_of_rising(0.0, 200.0, |effect| power(effect, pieces, risks) - risks.power);
    Ok(Estimate::new(effect * standard_deviation, "1", EXACT))
}

fn significant(pieces: f64, standard_deviation: f64, risks: Risks) -> f64 {
    noncentral_t::critical(2.0 * pieces - 2.0, risks.alpha) * standard_deviation * (2.0 / pieces).sqrt()
}

fn power(effect: f64, pieces: f64, risks: Risks) -> f64 {
    noncentral_t::power(effect * (0.5 * pieces).sqrt(), 2.0 * pieces - 2.0, risks.alpha)
}
