//! What is dissolved, and the constants of it that the equations need.

/// A dissolved substance.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Solute {
    /// Sucrose.
    Sucrose,
    /// Glucose (dextrose), as anhydrous; galactose may be counted here.
    Glucose,
    /// Fructose.
    Fructose,
    /// Lactose.
    Lactose,
    /// Maltose.
    Maltose,
    /// Solids of a glucose syrup of about 42 dextrose equivalents.
    GlucoseSyrup42,
    /// Glycerol.
    Glycerol,
    /// Sorbitol.
    Sorbitol,
    /// Xylitol.
    Xylitol,
    /// Erythritol.
    Erythritol,
    /// Mannitol.
    Mannitol,
    /// Citric acid; other fruit acids may be counted here.
    CitricAcid,
    /// Ethanol.
    Ethanol,
    /// Common salt, sodium chloride.
    Salt,
}

/// Constants of a solute.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SoluteFacts {
    /// Name in words.
    pub name: &'static str,
    /// Molar mass, g/mol (number average for a syrup).
    pub molar_mass: f64,
    /// Particles one formula unit gives in water.
    pub particles: f64,
    /// Norrish K, natural logarithm, above zero lowers the water activity; none for salt (not constant) and ethanol.
    pub norrish_k: Option<f64>,
    /// Where K comes from.
    pub norrish_source: &'static str,
    /// Grams of sucrose that one gram stands for in Grover's equation, where he gives a factor.
    pub grover_factor: Option<f64>,
}

/// From memory: the school's table of constants, reproduced in its reviews.
const CHIRIFE: &str = "from memory: Chirife, Ferro Fontan and Benmergui, J. Food Technol. 15 (1980) 59";
/// Read in a table of correlating constants.
const MAKINEN: &str = "Makinen, Int. J. Dent. (2010) 981072, Table 3";
const NORRISH: &str = "from memory, low confidence: Norrish, J. Food Technol. 1 (1966) 25; 2.31 in the decimal form";
const NONE: &str = "none: not described by one constant";

impl Solute {
    /// Every solute.
    pub const ALL: [Self; 14] = [
        Self::Sucrose,
        Self::Glucose,
        Self::Fructose,
        Self::Lactose,
        Self::Maltose,
        Self::GlucoseSyrup42,
        Self::Glycerol,
        Self::Sorbitol,
        Self::Xylitol,
        Self::Erythritol,
        Self::Mannitol,
        Self::CitricAcid,
        Self::Ethanol,
        Self::Salt,
    ];

    /// Its constants. Molar masses from the formula; Grover factors from memory: Grover, J. Soc. Chem. Ind. 66 (1947) 201.
    #[must_use]
    pub const fn facts(self) -> SoluteFacts {
        match self {
            Self::Sucrose => facts("sucrose", 342.30, Some(6.47), CHIRIFE, Some(1.0)),
            Self::Glucose => facts("glucose", 180.16, Some(2.25), CHIRIFE, Some(1.3)),
            Self::Fructose => facts("fructose", 180.16, Some(2.25), CHIRIFE, Some(1.3)),
            Self::Lactose => facts("lactose", 342.30, Some(10.2), CHIRIFE, Some(1.0)),
            Self::Maltose => facts("maltose", 342.30, Some(4.54), CHIRIFE, Some(1.0)),
            // Mean molar mass from the definition of the dextrose equivalent: 180.16 x 100 / 42.
            Self::GlucoseSyrup42 => facts("glucose syrup solids, 42 DE", 428.95, Some(5.32), NORRISH, Some(0.8)),
            Self::Glycerol => facts("glycerol", 92.09, Some(1.16), MAKINEN, Some(4.0)),
            Self::Sorbitol => facts("sorbitol", 182.17, Some(1.65), MAKINEN, Some(2.0)),
            Self::Xylitol => facts("xylitol", 152.15, Some(1.66), MAKINEN, None),
            Self::Erythritol => facts("erythritol", 122.12, Some(1.34), MAKINEN, None),
            Self::Mannitol => facts("mannitol", 182.17, Some(0.906), MAKINEN, None),
            Self::CitricAcid => facts("citric acid", 192.12, Some(6.17), CHIRIFE, Some(2.5)),
            Self::Ethanol => facts("ethanol", 46.07, None, NONE, None),
            Self::Salt => SoluteFacts { particles: 2.0, ..facts("sodium chloride", 58.443, None, NONE, Some(9.0)) },
        }
    }

    /// Grams to moles.
    pub(super) fn moles(self, grams: f64) -> f64 {
        grams / self.facts().molar_mass
    }

    /// Whether it is a sugar in the sense of Money and Born.
    pub(super) const fn is_sugar(self) -> bool {
        matches!(
            self,
            Self::Sucrose | Self::Glucose | Self::Fructose | Self::Lactose | Self::Maltose | Self::GlucoseSyrup42
        )
    }
}

const fn facts(
    name: &'static str,
    molar_mass: f64,
    norrish_k: Option<f64>,
    norrish_source: &'static str,
    grover_factor: Option<f64>,
) -> SoluteFacts {
    SoluteFacts { name, molar_mass, particles: 1.0, norrish_k, norrish_source, grover_factor }
}
