//! Water with what is dissolved in it.

use super::{Solute, WATER_MOLAR_MASS};
use crate::science::{Nonsense, input_checks};

/// One solute in water; any scale.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BinarySolution {
    /// What is dissolved.
    pub solute: Solute,
    /// Its mass, g.
    pub solute_g: f64,
    /// Water, g.
    pub water_g: f64,
}

impl BinarySolution {
    /// The solution of `percent` grams of solute in 100 g of solution.
    #[must_use]
    pub fn from_mass_percent(solute: Solute, percent: f64) -> Self {
        Self { solute, solute_g: percent, water_g: 100.0 - percent }
    }

    /// Moles of solute per kilogram of water.
    #[must_use]
    pub fn molality(&self) -> f64 {
        1000.0 * self.solute.moles(self.solute_g) / self.water_g
    }

    /// Mole fraction of the solute, undissociated.
    pub(super) fn solute_fraction(&self) -> f64 {
        let solute = self.solute.moles(self.solute_g);
        solute / (solute + self.water_g / WATER_MOLAR_MASS)
    }

    /// # Errors
    /// [`Nonsense`] listing masses that cannot be.
    pub(super) fn check(&self) -> Result<(), Nonsense> {
        let mut nonsense = Nonsense::default();
        input_checks::not_negative(&mut nonsense, self.solute.facts().name, self.solute_g);
        input_checks::positive(&mut nonsense, "water", self.water_g);
        nonsense.or_ok()
    }
}

/// Several solutes in the same water; any scale. A solute named twice counts with the sum.
#[derive(Debug, Clone, PartialEq)]
pub struct AqueousPhase {
    /// Water, g.
    pub water_g: f64,
    /// Solutes with their masses, g.
    pub solutes_g: Vec<(Solute, f64)>,
}

impl AqueousPhase {
    /// Moles of water.
    pub(super) fn water_moles(&self) -> f64 {
        self.water_g / WATER_MOLAR_MASS
    }

    /// Each solute alone in all the water.
    pub(super) fn binaries(&self) -> impl Iterator<Item = BinarySolution> + '_ {
        self.solutes_g.iter().map(|&(solute, solute_g)| BinarySolution { solute, solute_g, water_g: self.water_g })
    }

    /// Grams of one solute.
    pub(super) fn grams_of(&self, wanted: Solute) -> f64 {
        let of_it = self.solutes_g.iter().filter(|(solute, _)| *solute == wanted);
        of_it.map(|(_, grams)| grams).sum()
    }

    /// Dissolved share of the phase, % w/w.
    pub(super) fn solute_percent(&self, wanted: Solute) -> f64 {
        let total = self.water_g + self.solutes_g.iter().map(|(_, grams)| grams).sum::<f64>();
        100.0 * self.grams_of(wanted) / total
    }

    /// # Errors
    /// [`Nonsense`] listing masses that cannot be.
    pub(super) fn check(&self) -> Result<(), Nonsense> {
        let mut nonsense = Nonsense::default();
        input_checks::positive(&mut nonsense, "water", self.water_g);
        for (solute, grams) in &self.solutes_g {
            input_checks::not_negative(&mut nonsense, solute.facts().name, *grams);
        }
        nonsense.or_ok()
    }
}
