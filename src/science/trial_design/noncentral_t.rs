//! Power of the two-sided t test, from the non-central t distribution.
//!
//! `T = (Z + δ) / S` with a standard normal `Z` and `ν S²` chi-squared with `ν` degrees of freedom (Johnson, Kotz and
//! Balakrishnan, Continuous Univariate Distributions 2, 1995, chapter 31). Given `S` the probability is one of the normal
//! distribution; the mean over `S` is taken by the trapezoidal rule in `x = ln S`, which converges geometrically there
//! (Trefethen and Weideman, SIAM Review 56, 2014, p. 385). Tests hold it against scipy's own algorithm.

use std::f64::consts::LN_2;

use statrs::distribution::{ContinuousCDF, StudentsT};
use statrs::function::gamma::ln_gamma;

use super::normal::cumulative;
use crate::science::bisection;

/// Where the density of `ln S` is cut off: `e^-40` of its peak.
const CUT: f64 = 40.0;

/// Steps in the narrowest feature of the integrand.
const STEPS: f64 = 3.0;

/// Largest t that is looked for: one degree of freedom at an alpha of 0.001 has 637.
const LARGEST_T: f64 = 1e4;

/// The value that `|t|` exceeds with probability `alpha`; not a number for degrees of freedom that are not positive.
pub(super) fn critical(degrees: f64, alpha: f64) -> f64 {
    let Ok(central) = StudentsT::new(0.0, 1.0, degrees) else { return f64::NAN };
    bisection::root_of_rising(0.0, LARGEST_T, |t| 0.5 * alpha - central.sf(t))
}

/// Power of the two-sided test at `alpha` with `degrees` of freedom and the non-centrality `delta`.
pub(super) fn power(delta: f64, degrees: f64, alpha: f64) -> f64 {
    let critical = critical(degrees, alpha);
    mean_over_deviation(degrees, delta.abs().max(critical), |deviation| {
        cumulative(delta - critical * deviation) + cumulative(-delta - critical * deviation)
    })
}

/// Mean of a function of `S`; the function changes over no less than `1 / steepness` in `ln S`.
fn mean_over_deviation(degrees: f64, steepness: f64, function: impl Fn(f64) -> f64) -> f64 {
    let half = 0.5 * degrees;
    let constant = LN_2 + half * half.ln() - ln_gamma(half);
    let narrowest = (1.0 / (2.0 * degrees).sqrt()).min(1.0 / steepness.max(1.0));
    let step = narrowest / STEPS;
    // e^(2x) - 1 - 2x is at least 2x² to the right and at least u²/(2 + u), u = -2x, to the left.
    let wanted = 2.0 * CUT / degrees;
    let right = (0.5 * wanted).sqrt();
    let left = 0.25 * (wanted + (wanted * wanted + 8.0 * wanted).sqrt());
    let steps = ((left + right) / step).ceil();
    let mut sum = 0.0;
    let mut index = 0.0;
    while index <= steps {
        let x = index * step - left;
        let density = (constant + degrees * x - half * (2.0 * x).exp()).exp();
        sum += density * function(x.exp());
        index += 1.0;
    }
    sum * step
}
