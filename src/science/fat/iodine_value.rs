//! Iodine value: how much iodine the double bonds of a fat take up.

use super::{Composition, FattyAcid};
use crate::science::{Estimate, Method, Nonsense, input_checks};

/// Molar mass of iodine I2, g/mol. Source: IUPAC, Atomic weights of the elements 2021 (126.904 47 each).
const IODINE: f64 = 253.809;

const CALCULATED: Method = Method {
    name: "calculated iodine value",
    source: "AOCS Recommended Practice Cd 1c-85, Calculated Iodine Value (reapproved 2009); factors of acids it does not list: same derivation from molar masses",
    domain: "at most 0.5 % unsaponifiable matter; reads low for fats of low iodine value; hydrogenated and crude oils can differ from the Wijs titration; scope of the titration (AOCS Cd 1d-92) 18 to 165 g/100 g",
};

const BLENDED: Method = Method {
    name: "iodine value of a blend, by mass",
    source: "mass balance of double bonds; factors as in AOCS Recommended Practice Cd 1c-85",
    domain: "any blend; unchanged by interesterification",
};

/// Whether the acids are bound to glycerol.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FatForm {
    /// A fat or oil.
    Triglyceride,
    /// Free fatty acids.
    FreeFattyAcids,
}

/// Factors of AOCS Cd 1c-85, calculations 1 and 2: acid, as triglyceride, as free acid.
const LISTED: [(&str, f64, f64); 6] = [
    ("16:1", 0.950, 0.9976),
    ("18:1", 0.860, 0.8986),
    ("18:2", 1.732, 1.810),
    ("18:3", 2.616, 2.735),
    ("20:1", 0.785, 0.8175),
    ("22:1", 0.723, 0.7497),
];

impl FatForm {
    fn listed_factor(self, acid: FattyAcid) -> Option<f64> {
        let shorthand = acid.to_string();
        let row = LISTED.iter().find(|row| row.0 == shorthand.trim_end_matches('t'))?;
        Some(match self {
            Self::Triglyceride => row.1,
            Self::FreeFattyAcids => row.2,
        })
    }

    /// Iodine value of the pure acid (or its triglyceride) divided by 100, from molar masses: g I2 per g.
    #[must_use]
    pub fn derived_factor(self, acid: FattyAcid) -> f64 {
        let bonds = f64::from(acid.double_bonds());
        match self {
            Self::Triglyceride => 3.0 * bonds * IODINE / acid.triglyceride_molar_mass(),
            Self::FreeFattyAcids => bonds * IODINE / acid.molar_mass(),
        }
    }

    /// Factor by which 1 % of the acid raises the iodine value, g I2/100 g: the printed factor of AOCS Cd 1c-85,
    /// or [`Self::derived_factor`] where the method prints none.
    #[must_use]
    pub fn factor(self, acid: FattyAcid) -> f64 {
        self.listed_factor(acid).unwrap_or_else(|| self.derived_factor(acid))
    }
}

/// Calculated iodine value, g I2/100 g: the sum of each acid's mass % times its factor.
///
/// `unsaponifiable_percent` is the unsaponifiable matter of the fat, % by mass, when it is known.
///
/// # Errors
/// When `unsaponifiable_percent` is not a percentage.
pub fn iodine_value(
    composition: &Composition,
    form: FatForm,
    unsaponifiable_percent: Option<f64>,
) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    if let Some(percent) = unsaponifiable_percent {
        input_checks::percent(&mut nonsense, "unsaponifiable", percent);
    }
    nonsense.or_ok()?;
    let shares = composition.shares();
    let value = shares.iter().map(|share| share.percent * form.factor(share.acid)).sum();
    let derived: Vec<String> = shares
        .iter()
        .filter(|share| share.acid.double_bonds() > 0 && form.listed_factor(share.acid).is_none())
        .map(|share| share.acid.to_string())
        .collect();
    let unsaponifiable = unsaponifiable_percent.unwrap_or(0.0);
    Ok(Estimate::new(value, "g/(100.g)", CALCULATED)
        .valid_if(derived.is_empty(), || {
            format!("the method lists no factor for {}; it was derived", derived.join(", "))
        })
        .valid_if(unsaponifiable <= 0.5, || {
            format!("{unsaponifiable} % unsaponifiable matter is above 0.5 %: the result runs low")
        })
        .valid_if((18.0..=165.0).contains(&value), || {
            format!("{value:.1} is outside the 18 to 165 of the titration it stands for")
        }))
}

/// One fat of a blend.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct IodinePart {
    /// Share of the blend, % by mass.
    pub percent: f64,
    /// Iodine value of the fat, g I2/100 g.
    pub iodine_value: f64,
}

/// Iodine value of a blend, g I2/100 g: additive by mass.
///
/// # Errors
/// No parts, a share that is no percentage, a negative iodine value, or shares that do not add up to 100 %
/// (±0.5 % for rounding).
pub fn blend_iodine_value(parts: &[IodinePart]) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::not_empty(&mut nonsense, "parts", parts);
    for (place, part) in parts.iter().enumerate() {
        input_checks::percent(&mut nonsense, &format!("parts[{place}].percent"), part.percent);
        let input = format!("parts[{place}].iodine_value");
        input_checks::not_negative(&mut nonsense, &input, part.iodine_value);
    }
    let total: f64 = parts.iter().map(|part| part.percent).sum();
    nonsense.unless(
        parts.is_empty() || total.is_nan() || (total - 100.0).abs() <= 0.5,
        "parts",
        format!("the shares add up to {total:.1} %, not to 100 %"),
    );
    nonsense.or_ok()?;
    let weighted: f64 = parts.iter().map(|part| part.percent * part.iodine_value).sum();
    Ok(Estimate::new(weighted / total, "g/(100.g)", BLENDED))
}
