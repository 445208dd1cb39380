//! The composition of a product, as a nutrition table or a formula gives it.

use super::{AqueousPhase, Solute};
use crate::science::{Nonsense, input_checks};

/// Most that the parts of 100 g may add up to: food tables round each part.
const MOST: f64 = 100.5;

/// Grams of each part in 100 g of product; what is not named is taken as inert.
///
/// Invert sugar is half glucose, half fructose. Count galactose as glucose, fruit acids as citric acid, minerals of milk,
/// fruit and leavening as salt. Flour is its starch, protein, fibre, sugars and water.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct CompositionPer100g {
    /// Water.
    pub water: f64,
    /// Sucrose.
    pub sucrose: f64,
    /// Glucose, anhydrous.
    pub glucose: f64,
    /// Fructose.
    pub fructose: f64,
    /// Lactose.
    pub lactose: f64,
    /// Maltose.
    pub maltose: f64,
    /// Solids of glucose syrup of about 42 DE.
    pub glucose_syrup_solids: f64,
    /// Glycerol.
    pub glycerol: f64,
    /// Sorbitol.
    pub sorbitol: f64,
    /// Xylitol.
    pub xylitol: f64,
    /// Erythritol.
    pub erythritol: f64,
    /// Mannitol.
    pub mannitol: f64,
    /// Citric and other fruit acids.
    pub citric_acid: f64,
    /// Ethanol.
    pub ethanol: f64,
    /// Salt (sodium chloride).
    pub salt: f64,
    /// Starch, dry.
    pub starch: f64,
    /// Protein, dry.
    pub protein: f64,
    /// Fibre, dry.
    pub fibre: f64,
    /// Fat and other matter that takes no water.
    pub fat: f64,
}

impl CompositionPer100g {
    /// What dissolves, with its grams; zeros included.
    #[must_use]
    pub fn solutes(&self) -> [(Solute, f64); 14] {
        [
            (Solute::Sucrose, self.sucrose),
            (Solute::Glucose, self.glucose),
            (Solute::Fructose, self.fructose),
            (Solute::Lactose, self.lactose),
            (Solute::Maltose, self.maltose),
            (Solute::GlucoseSyrup42, self.glucose_syrup_solids),
            (Solute::Glycerol, self.glycerol),
            (Solute::Sorbitol, self.sorbitol),
            (Solute::Xylitol, self.xylitol),
            (Solute::Erythritol, self.erythritol),
            (Solute::Mannitol, self.mannitol),
            (Solute::CitricAcid, self.citric_acid),
            (Solute::Ethanol, self.ethanol),
            (Solute::Salt, self.salt),
        ]
    }

    /// What holds water by its isotherm, g.
    #[must_use]
    pub fn biopolymer(&self) -> f64 {
        self.starch + self.protein + self.fibre
    }

    /// Sum of the named parts, g.
    #[must_use]
    pub fn total(&self) -> f64 {
        self.parts().iter().map(|(_, grams)| grams).sum()
    }

    /// All of it dissolved in all the water.
    #[must_use]
    pub fn aqueous_phase(&self) -> AqueousPhase {
        AqueousPhase { water_g: self.water, solutes_g: self.solutes().to_vec() }
    }

    /// # Errors
    /// [`Nonsense`] listing every part that is not a mass, no water, and parts that exceed 100 g together.
    pub fn check(&self) -> Result<(), Nonsense> {
        let mut nonsense = Nonsense::default();
        for (name, grams) in self.parts() {
            if name == "water" {
                input_checks::positive(&mut nonsense, name, grams);
            } else {
                input_checks::not_negative(&mut nonsense, name, grams);
            }
        }
        let total = self.total();
        // A part that is no number was reported above.
        nonsense.unless(
            total.is_nan() || total <= MOST,
            "composition",
            format!("the parts of 100 g add up to `{total:.1}` g"),
        );
        nonsense.or_ok()
    }

    fn parts(&self) -> [(&'static str, f64); 19] {
        [
            ("water", self.water),
            ("sucrose", self.sucrose),
            ("glucose", self.glucose),
            ("fructose", self.fructose),
            ("lactose", self.lactose),
            ("maltose", self.maltose),
            ("glucose_syrup_solids", self.glucose_syrup_solids),
            ("glycerol", self.glycerol),
            ("sorbitol", self.sorbitol),
            ("xylitol", self.xylitol),
            ("erythritol", self.erythritol),
            ("mannitol", self.mannitol),
            ("citric_acid", self.citric_acid),
            ("ethanol", self.ethanol),
            ("salt", self.salt),
            ("starch", self.starch),
            ("protein", self.protein),
            ("fibre", self.fibre),
            ("fat", self.fat),
        ]
    }
}
