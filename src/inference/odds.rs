//! Odds of a cause, kept as the two sides so that neither end of the scale loses digits.

use std::f64::consts::LN_10;

use super::information::entropy;

/// The two sides of the odds of a cause: `present` to `absent`.
///
/// Both sides are kept, never one as 1 − the other: a cause with probability 1 − 1e-20 has
/// log-odds too.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Odds {
    /// Probability, up to a common factor, that the cause is present.
    pub present: f64,
    /// Probability, up to the same factor, that the cause is absent.
    pub absent: f64,
}

impl Odds {
    /// The odds of a probability strictly between 0 and 1.
    #[must_use]
    pub fn from_probability(probability: f64) -> Self {
        Self { present: probability, absent: 1.0 - probability }
    }

    /// P(cause), 0 to 1.
    #[must_use]
    pub fn probability(self) -> f64 {
        self.present / self.total()
    }

    /// P(no cause), 0 to 1, accurate however near to 0 it is.
    #[must_use]
    pub fn complement(self) -> f64 {
        self.absent / self.total()
    }

    /// Natural logarithm of the odds.
    #[must_use]
    pub fn log_odds(self) -> f64 {
        (self.present / self.absent).ln()
    }

    /// Ten times the decimal logarithm of the odds (Good 1950).
    #[must_use]
    pub fn decibans(self) -> f64 {
        self.log_odds() * (10.0 / LN_10)
    }

    /// Entropy of the cause, in bits: 1 at even odds (Shannon 1948).
    #[must_use]
    pub fn entropy(self) -> f64 {
        entropy([self.probability(), self.complement()])
    }

    pub(super) fn total(self) -> f64 {
        self.present + self.absent
    }

    /// The same odds with sides that add up to 1.
    pub(super) fn normalised(self) -> Self {
        let scale = 1.0 / self.total();
        Self { present: self.present * scale, absent: self.absent * scale }
    }

    /// Odds after a likelihood ratio.
    pub(super) fn weighted(self, likelihood_ratio: f64) -> Self {
        Self { present: self.present * likelihood_ratio, absent: self.absent }
    }
}
