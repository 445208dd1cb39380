//! The two risks of a comparison.

use crate::science::{Nonsense, input_checks};

/// Risk of seeing a difference that is not there, and chance of seeing one that is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Risks {
    /// Risk of a false alarm, 0.001 to 0.5.
    pub alpha: f64,
    /// Chance to see the wanted difference, 0.5 to 0.999.
    pub power: f64,
}

impl Risks {
    /// 5 % and 80 % (Cohen, Statistical Power Analysis for the Behavioral Sciences, 1988, section 2.4: a convention).
    pub const USUAL: Self = Self { alpha: 0.05, power: 0.8 };

    pub(super) fn check(self, nonsense: &mut Nonsense) {
        input_checks::within(nonsense, "alpha", self.alpha, 0.001..=0.5, "1");
        input_checks::within(nonsense, "power", self.power, 0.5..=0.999, "1");
        let sure = self.power > self.alpha;
        nonsense.unless(sure, "power", format!("`{}` is no more than the false alarms of {}", self.power, self.alpha));
    }
}
