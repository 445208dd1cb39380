//! A fatty acid by its shorthand (`18:1` has 18 carbon atoms and one double bond) and its molar mass.

use crate::science::Nonsense;
use std::fmt;
use std::str::FromStr;

// Standard atomic weights, g/mol. Source: IUPAC, Atomic weights of the elements 2021, abridged values.
const CARBON: f64 = 12.011;
const HYDROGEN: f64 = 1.008;
const OXYGEN: f64 = 15.999;
const WATER: f64 = 2.0 * HYDROGEN + OXYGEN;
/// Glycerol, C3H8O3.
const GLYCEROL: f64 = 3.0 * CARBON + 8.0 * HYDROGEN + 3.0 * OXYGEN;

/// A straight-chain fatty acid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FattyAcid {
    carbon_atoms: u8,
    double_bonds: u8,
    trans: bool,
}

impl FattyAcid {
    /// A fatty acid of 2 to 36 carbon atoms; `trans` when at least one double bond is trans.
    ///
    /// # Errors
    /// When no such acid can exist: chain length out of range, more double bonds than the chain can carry, or a
    /// trans acid without a double bond.
    pub fn new(carbon_atoms: u8, double_bonds: u8, trans: bool) -> Result<Self, Nonsense> {
        let mut nonsense = Nonsense::default();
        nonsense.unless(
            (2..=36).contains(&carbon_atoms),
            "carbon_atoms",
            format!("{carbon_atoms} carbon atoms is not a chain of 2 to 36"),
        );
        nonsense.unless(
            double_bonds <= carbon_atoms.saturating_sub(1) / 2,
            "double_bonds",
            format!("{double_bonds} double bonds do not fit on {carbon_atoms} carbon atoms"),
        );
        nonsense.unless(!trans || double_bonds > 0, "trans", "a saturated acid is never trans");
        nonsense.or_ok()?;
        Ok(Self { carbon_atoms, double_bonds, trans })
    }

    /// Number of double bonds.
    #[must_use]
    pub fn double_bonds(self) -> u8 {
        self.double_bonds
    }

    /// Whether at least one double bond is trans.
    #[must_use]
    pub fn is_trans(self) -> bool {
        self.trans
    }

    /// Molar mass of the free acid, C(n)H(2n−2d)O2, in g/mol.
    #[must_use]
    pub fn molar_mass(self) -> f64 {
        let carbon_atoms = f64::from(self.carbon_atoms);
        let hydrogen_atoms = 2.0 * (carbon_atoms - f64::from(self.double_bonds));
        carbon_atoms * CARBON + hydrogen_atoms * HYDROGEN + 2.0 * OXYGEN
    }

    /// Molar mass of the triglyceride with three of this acid, in g/mol.
    #[must_use]
    pub fn triglyceride_molar_mass(self) -> f64 {
        triglyceride_molar_mass(self.molar_mass())
    }
}

/// Molar mass (g/mol) of a triglyceride whose acids have this mean molar mass: three acids and glycerol less
/// three water.
pub(super) fn triglyceride_molar_mass(mean_acid: f64) -> f64 {
    3.0 * mean_acid + GLYCEROL - 3.0 * WATER
}

impl fmt::Display for FattyAcid {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let trans = if self.trans { "t" } else { "" };
        write!(f, "{}:{}{trans}", self.carbon_atoms, self.double_bonds)
    }
}

impl FromStr for FattyAcid {
    type Err = Nonsense;

    /// Reads the shorthand `18:1`, with a final `t` for a trans acid: `18:1t`.
    fn from_str(text: &str) -> Result<Self, Nonsense> {
        let (digits, trans) = match text.strip_suffix('t') {
            Some(digits) => (digits, true),
            None => (text, false),
        };
        let parsed =
            digits.split_once(':').and_then(|(carbon, bonds)| Some((carbon.parse().ok()?, bonds.parse().ok()?)));
        let Some((carbon_atoms, double_bonds)) = parsed else {
            let mut nonsense = Nonsense::default();
            nonsense.unless(false, "fatty_acid", format!("`{text}` is not a shorthand such as `18:1`"));
            return Err(nonsense);
        };
        Self::new(carbon_atoms, double_bonds, trans)
    }
}
