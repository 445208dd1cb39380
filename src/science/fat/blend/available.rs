//! A fat that the blender has.

use crate::science::fat::SolidsCurve;
use crate::science::{Nonsense, input_checks};

/// What a fat is, as far as requirements and known interactions depend on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FatKind {
    /// Palm oil.
    PalmOil,
    /// Palm stearin, the hard fraction.
    PalmStearin,
    /// Palm kernel oil.
    PalmKernelOil,
    /// Palm kernel stearin, the hard fraction.
    PalmKernelStearin,
    /// Any other plant fat, fully hydrogenated ones included.
    OtherPlant,
    /// Milk fat: an animal fat, though vegetarian.
    MilkFat,
    /// Any other animal fat: lard, tallow, poultry or fish fat.
    OtherAnimal,
}

impl FatKind {
    /// Whether the fat comes from an animal, milk included.
    #[must_use]
    pub fn is_animal(self) -> bool {
        matches!(self, Self::MilkFat | Self::OtherAnimal)
    }
}

/// An available fat.
#[derive(Debug, Clone, PartialEq)]
pub struct AvailableFat {
    /// Name in the answer.
    pub name: String,
    /// What it is.
    pub kind: FatKind,
    /// Whether it is, or contains, partially hydrogenated oil.
    pub partially_hydrogenated: bool,
    /// Trans fatty acids, % of the fat; `None` when nobody has measured them.
    pub trans_percent: Option<f64>,
    /// Saturated fatty acids, % of the fat; `None` when nobody has measured them.
    pub saturated_percent: Option<f64>,
    /// Its solids curve, best measured on the lot in hand.
    pub solids: SolidsCurve,
}

impl AvailableFat {
    /// Adds the faults of this fat.
    pub(super) fn check(&self, nonsense: &mut Nonsense) {
        nonsense.unless(!self.name.trim().is_empty(), "name", "a fat has no name");
        if let Some(percent) = self.trans_percent {
            input_checks::percent(nonsense, &format!("{} trans", self.name), percent);
        }
        if let Some(percent) = self.saturated_percent {
            input_checks::percent(nonsense, &format!("{} saturated", self.name), percent);
        }
    }
}
