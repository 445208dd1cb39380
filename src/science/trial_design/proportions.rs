//! Pieces that show a difference of two shares of faulty pieces.
//!
//! By the arcsine transformation, `h = |2 asin √p₁ − 2 asin √p₂|` (Cohen, Statistical Power Analysis for the Behavioral
//! Sciences, 1988, chapter 6): the difference of the transformed shares of `n` pieces each has the variance `2 / n`.

use std::f64::consts::PI;

use super::risks::Risks;
use super::{LEAST_EFFECT, MOST_PIECES, normal};
use crate::science::{Estimate, Method, Nonsense, bisection, input_checks};

const ARCSINE: Method = Method {
    name: "two-sided normal test of arcsine-transformed shares",
    source: "Cohen, Statistical Power Analysis for the Behavioral Sciences, 1988, chapter 6",
    domain: "independent pieces, as many of each setting; five or more faulty and five or more good ones in each",
};

/// Fewest faulty and fewest good pieces in a sample for which the normal distribution serves (common practice).
const FEWEST_OF_A_KIND: f64 = 5.0;

/// How many pieces show a difference of shares.
#[derive(Debug, Clone, PartialEq)]
pub struct ProportionSize {
    /// Whole pieces of each setting.
    pub pieces: Estimate,
    /// The same before rounding up.
    pub exact: Estimate,
    /// Difference of the transformed shares, 0 to π.
    pub effect: Estimate,
    /// The share, %, from which on the change is significant with so many pieces where the other setting shows the share
    /// of now.
    pub significant: Estimate,
}

/// Pieces of each of two settings that show a change of the share of faulty pieces from `now_percent` to
/// `wanted_percent`, % (0 to 100, not the same).
///
/// # Errors
/// [`Nonsense`] for inputs that cannot be meant, and for shares that are too near to each other.
pub fn sample_size_for_proportions(
    now_percent: f64,
    wanted_percent: f64,
    risks: Risks,
) -> Result<ProportionSize, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::percent(&mut nonsense, "now_percent", now_percent);
    input_checks::percent(&mut nonsense, "wanted_percent", wanted_percent);
    risks.check(&mut nonsense);
    nonsense.or_ok()?;
    let effect = (transformed(now_percent) - transformed(wanted_percent)).abs();
    let mut nonsense = Nonsense::default();
    let message = format!("`{wanted_percent}` % is too near to the {now_percent} % of now");
    nonsense.unless(effect >= LEAST_EFFECT, "wanted_percent", message);
    nonsense.or_ok()?;
    let exact = bisection::root_of_rising(0.0, MOST_PIECES, |pieces| power(effect, pieces, risks) - risks.power);
    let pieces = exact.ceil();
    let estimate =
        |value| [now_percent, wanted_percent].into_iter().fold(Estimate::new(value, "1", ARCSINE), few(pieces));
    Ok(ProportionSize {
        pieces: estimate(pieces),
        exact: estimate(exact),
        effect: Estimate::new(effect, "1", ARCSINE),
        significant: Estimate::new(significant(now_percent, wanted_percent, pieces, risks), "%", ARCSINE),
    })
}

/// Highest share of faulty pieces, %, below `now_percent` that `pieces` of each setting (1 to a million) tell from it.
///
/// # Errors
/// [`Nonsense`] for inputs that cannot be meant, and where even no faulty piece at all would not show.
pub fn detectable_proportion(now_percent: f64, pieces: f64, risks: Risks) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::percent(&mut nonsense, "now_percent", now_percent);
    input_checks::within(&mut nonsense, "pieces", pieces, 1.0..=MOST_PIECES, "1");
    risks.check(&mut nonsense);
    nonsense.or_ok()?;
    let effect = bisection::root_of_rising(0.0, PI, |effect| power(effect, pieces, risks) - risks.power);
    let wanted = transformed(now_percent) - effect;
    let mut nonsense = Nonsense::default();
    let message = format!("{pieces} pieces do not tell {now_percent} % from none at all; take more");
    nonsense.unless(wanted >= 0.0, "pieces", message);
    nonsense.or_ok()?;
    let share = 100.0 * (0.5 * wanted).sin().powi(2);
    Ok([now_percent, share].into_iter().fold(Estimate::new(share, "%", ARCSINE), few(pieces)))
}

fn significant(now: f64, wanted: f64, pieces: f64, risks: Risks) -> f64 {
    let least = normal::exceeded_with(0.5 * risks.alpha) * (2.0 / pieces).sqrt();
    let step = if wanted < now { -least } else { least };
    let share = (transformed(now) + step).clamp(0.0, PI);
    100.0 * (0.5 * share).sin().powi(2)
}

fn transformed(percent: f64) -> f64 {
    2.0 * (0.01 * percent).sqrt().asin()
}

fn power(effect: f64, pieces: f64, risks: Risks) -> f64 {
    normal::power(effect * (0.5 * pieces).sqrt(), risks.alpha)
}

/// Remarks on a sample that holds too few faulty or too few good pieces.
fn few(pieces: f64) -> impl Fn(Estimate, f64) -> Estimate {
    move |estimate, percent| {
        let expected = pieces * 0.01 * percent.min(100.0 - percent);
        estimate.valid_if(expected >= FEWEST_OF_A_KIND, || {
            format!(
                "of {pieces:.0} pieces with a share of {} % only {expected:.1} are of the rarer kind: too few for the method, \
                 take more pieces",
                (1000.0 * percent).round() / 1000.0
            )
        })
    }
}
