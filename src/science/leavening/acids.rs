//! Leavening acids and their neutralising values.

use super::molar;
use crate::science::{Estimate, Method, Nonsense, input_checks};

/// Highest neutralising value that is believed: phosphoric acid with all three protons reaches 257.
pub const HIGHEST_NEUTRALISING_VALUE: f64 = 300.0;

const NEUTRALISING: Method = Method {
    name: "neutralising value: 100 × sodium bicarbonate neutralised / acid",
    source: "Miller D.D., Food Chemistry (laboratory manual), section 2.2.2",
    domain: "practical values are measured to a set end point and differ from stoichiometry by up to 10 %",
};
const STOICHIOMETRY: Method = Method {
    name: "stoichiometric neutralising value: 100 × acid equivalents × 84.007 / molar mass",
    source: "IUPAC standard atomic weights",
    domain: "every counted proton is given up; at the pH of a crumb fewer are",
};

/// A leavening acid of the trade.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LeaveningAcid {
    /// Name in snake case.
    pub name: &'static str,
    /// Name in words.
    pub title: &'static str,
    /// kg of sodium bicarbonate that 100 kg neutralise, in practice.
    pub neutralising_value: f64,
    /// Publication, `common practice`, or `from memory: <work>`.
    pub source: &'static str,
}

const MILLER: &str = "Miller D.D., Food Chemistry (laboratory manual), Table 2.1";
const PHOSPHATES: &str = "Phosphates for baked goods (data sheet), DRR and NV table";
const MOLAR: &str = "stoichiometry, IUPAC standard atomic weights; fewer protons react near pH 7";

const fn acid(name: &'static str, title: &'static str, neutralising_value: f64, source: &'static str) -> LeaveningAcid {
    LeaveningAcid { name, title, neutralising_value, source }
}

/// Neutralising values that are used in practice. For cream of tartar Miller prints 50, which stoichiometry (44.6)
/// does not bear out: 45 is taken.
pub const LEAVENING_ACIDS: &[LeaveningAcid] = &[
    acid("mcp", "monocalcium phosphate monohydrate", 80.0, MILLER),
    acid("amcp", "monocalcium phosphate, anhydrous, coated", 83.0, PHOSPHATES),
    acid("sapp", "sodium acid pyrophosphate", 72.0, MILLER),
    acid("salp", "sodium aluminium phosphate", 100.0, MILLER),
    acid("dcpd", "dicalcium phosphate dihydrate", 33.0, MILLER),
    acid("sas", "sodium aluminium sulfate", 104.0, MILLER),
    acid(
        "dmp",
        "dimagnesium phosphate",
        40.0,
        "from memory: Conn J.F., Chemical leavening systems, Cereal Foods World 26 (1981) 119",
    ),
    acid("fumaric_acid", "fumaric acid", 145.0, MILLER),
    acid(
        "cream_of_tartar",
        "potassium hydrogen tartrate",
        45.0,
        "Smith J., Hong-Shum L., Food Additives Data Book (2003), p. 547",
    ),
    acid("gdl", "glucono-delta-lactone", 45.0, MILLER),
    acid("citric_acid", "citric acid, anhydrous", 131.0, MOLAR),
    acid("tartaric_acid", "tartaric acid", 112.0, MOLAR),
    acid("lactic_acid", "lactic acid, pure", 93.0, MOLAR),
    acid("adipic_acid", "adipic acid", 115.0, MOLAR),
];

/// An acid by name, `None` when it is not in the table.
#[must_use]
pub fn leavening_acid(name: &str) -> Option<&'static LeaveningAcid> {
    LEAVENING_ACIDS.iter().find(|acid| acid.name == name)
}

/// Acid that neutralises a mass of soda, in the unit of the soda: unit `kg` for kg.
///
/// # Errors
/// A mass that is negative or not a number, a neutralising value that is not above 0 or above 300.
pub fn acid_for_soda(soda_kg: f64, neutralising_value: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::not_negative(&mut faults, "soda_kg", soda_kg);
    check_neutralising_value(&mut faults, "neutralising_value", neutralising_value);
    faults.or_ok()?;
    Ok(Estimate::new(100.0 * soda_kg / neutralising_value, "kg", NEUTRALISING))
}

/// Soda that a mass of acid neutralises, kg.
///
/// # Errors
/// As for [`acid_for_soda`].
pub fn soda_for_acid(acid_kg: f64, neutralising_value: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::not_negative(&mut faults, "acid_kg", acid_kg);
    check_neutralising_value(&mut faults, "neutralising_value", neutralising_value);
    faults.or_ok()?;
    Ok(Estimate::new(acid_kg * neutralising_value / 100.0, "kg", NEUTRALISING))
}

/// Neutralising value from acid equivalents per mole and molar mass (g/mol), kg of soda per 100 kg of acid.
///
/// # Errors
/// Equivalents or a molar mass that is not above zero.
pub fn stoichiometric_neutralising_value(
    equivalents_per_mole: f64,
    molar_mass_g_per_mol: f64,
) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::positive(&mut faults, "equivalents_per_mole", equivalents_per_mole);
    input_checks::positive(&mut faults, "molar_mass_g_per_mol", molar_mass_g_per_mol);
    faults.or_ok()?;
    let value = 100.0 * equivalents_per_mole * molar::SODIUM_BICARBONATE / molar_mass_g_per_mol;
    Ok(Estimate::new(value, "%", STOICHIOMETRY))
}

/// Collects a fault unless the value can be that of an acid.
pub(super) fn check_neutralising_value(faults: &mut Nonsense, input: &str, value: f64) {
    let fits = value.is_finite() && value > 0.0 && value <= HIGHEST_NEUTRALISING_VALUE;
    let message = || format!("must lie above 0 and up to {HIGHEST_NEUTRALISING_VALUE}, is {value}");
    faults.unless(fits, input, message());
}
