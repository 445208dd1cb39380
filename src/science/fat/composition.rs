//! The fatty acids of a fat, by mass.

use super::FattyAcid;
use crate::science::{Nonsense, input_checks};

/// Rounding of a printed table: ten acids, each rounded to 0.1 %, can add up to this much above 100 %.
const ROUNDING: f64 = 0.5;

/// One fatty acid and its share.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AcidShare {
    /// The acid.
    pub acid: FattyAcid,
    /// Its share of all fatty acids, % by mass.
    pub percent: f64,
}

/// A checked fatty-acid composition. It need not name every acid: traces are seldom printed.
#[derive(Debug, Clone, PartialEq)]
pub struct Composition {
    shares: Vec<AcidShare>,
}

impl Composition {
    /// Checks and keeps the shares.
    ///
    /// # Errors
    /// An empty list, a share that is not 0 to 100 %, an acid given twice, nothing but zeros, or a sum above
    /// 100 % by more than rounding (0.5 %).
    pub fn new(shares: Vec<AcidShare>) -> Result<Self, Nonsense> {
        let mut nonsense = Nonsense::default();
        input_checks::not_empty(&mut nonsense, "fatty_acids", &shares);
        for (place, share) in shares.iter().enumerate() {
            input_checks::percent(&mut nonsense, &share.acid.to_string(), share.percent);
            nonsense.unless(
                !shares.iter().take(place).any(|earlier| earlier.acid == share.acid),
                &share.acid.to_string(),
                "is given twice",
            );
        }
        let total: f64 = shares.iter().map(|share| share.percent).sum();
        nonsense.unless(shares.is_empty() || total.is_nan() || total > 0.0, "fatty_acids", "all shares are zero");
        nonsense.unless(
            total.is_nan() || total <= 100.0 + ROUNDING,
            "fatty_acids",
            format!("the shares add up to {total:.1} %, more than 100 %"),
        );
        nonsense.or_ok()?;
        Ok(Self { shares })
    }

    /// The shares, as given.
    #[must_use]
    pub fn shares(&self) -> &[AcidShare] {
        &self.shares
    }

    /// Sum of the named shares, %.
    #[must_use]
    pub fn named_percent(&self) -> f64 {
        self.sum_of(|_| true)
    }

    /// Share of acids without a double bond, % of all fatty acids.
    #[must_use]
    pub fn saturated_percent(&self) -> f64 {
        self.sum_of(|acid| acid.double_bonds() == 0)
    }

    /// Share of acids marked trans, % of all fatty acids.
    #[must_use]
    pub fn trans_percent(&self) -> f64 {
        self.sum_of(FattyAcid::is_trans)
    }

    fn sum_of(&self, wanted: impl Fn(FattyAcid) -> bool) -> f64 {
        let wanted = self.shares.iter().filter(|share| wanted(share.acid));
        wanted.map(|share| share.percent).sum()
    }
}
