//! The standard normal distribution, and the two-sided test by it.

use std::f64::consts::SQRT_2;

use statrs::function::erf::{erfc, erfc_inv};

/// Probability of a value up to `z`.
pub(super) fn cumulative(z: f64) -> f64 {
    0.5 * erfc(-z / SQRT_2)
}

/// The value that is exceeded with a probability, 0 to 1.
pub(super) fn exceeded_with(probability: f64) -> f64 {
    SQRT_2 * erfc_inv(2.0 * probability)
}

/// Power of a two-sided test at `alpha` where the mean of the statistic is `shift` and its deviation 1.
pub(super) fn power(shift: f64, alpha: f64) -> f64 {
    let critical = exceeded_with(0.5 * alpha);
    cumulative(shift - critical) + cumulative(-shift - critical)
}
