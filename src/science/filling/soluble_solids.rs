//! Soluble solids of a batch, and how much water must boil off to reach a wanted figure.

use crate::science::{Estimate, Method, Nonsense, input_checks};

const BALANCE: Method = Method {
    name: "mass balance of soluble solids",
    source: "mass balance",
    domain: "no loss but water: no spill, no sampling, volatile acids neglected; degrees Brix read the same only for sugar",
};

/// One ingredient of a filling.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FillingPart {
    /// Mass, kg.
    pub kilograms: f64,
    /// Soluble solids of the ingredient, % by mass.
    pub soluble_solids_percent: f64,
}

/// What cooking down takes.
#[derive(Debug, Clone, PartialEq)]
pub struct CookDown {
    /// Mass of the batch at the end point, kg.
    pub final_mass: Estimate,
    /// Water to boil off, kg; negative when water must be added, and then flagged.
    pub water_to_evaporate: Estimate,
}

/// Soluble solids of a batch before cooking, % by mass.
///
/// # Errors
/// No parts, a negative mass, solids that are no percentage, a batch without mass.
pub fn soluble_solids(parts: &[FillingPart]) -> Result<Estimate, Nonsense> {
    let (mass, solids) = totals(parts, Nonsense::default())?;
    Ok(Estimate::new(100.0 * solids / mass, "%", BALANCE))
}

/// Mass at the end point and water to boil off, for a wanted share of soluble solids, %.
///
/// # Errors
/// As [`soluble_solids`]; also a target that is not above 0 and up to 100 %.
pub fn cook_down(parts: &[FillingPart], target_percent: f64) -> Result<CookDown, Nonsense> {
    let mut nonsense = Nonsense::default();
    nonsense.unless(
        target_percent > 0.0 && target_percent <= 100.0,
        "target",
        format!("{target_percent} is not a share above 0 and up to 100 %"),
    );
    let (mass, solids) = totals(parts, nonsense)?;
    let final_mass = 100.0 * solids / target_percent;
    Ok(CookDown {
        final_mass: Estimate::new(final_mass, "kg", BALANCE),
        water_to_evaporate: Estimate::new(mass - final_mass, "kg", BALANCE)
            .valid_if(final_mass <= mass, || "the batch is above the target already: add water".to_owned()),
    })
}

/// Total mass and soluble solids, kg; adds its faults to those already found.
fn totals(parts: &[FillingPart], mut nonsense: Nonsense) -> Result<(f64, f64), Nonsense> {
    input_checks::not_empty(&mut nonsense, "parts", parts);
    for (place, part) in parts.iter().enumerate() {
        input_checks::not_negative(&mut nonsense, &format!("parts[{place}].mass"), part.kilograms);
        let input = format!("parts[{place}].soluble_solids");
        input_checks::percent(&mut nonsense, &input, part.soluble_solids_percent);
    }
    let mass: f64 = parts.iter().map(|part| part.kilograms).sum();
    nonsense.unless(parts.is_empty() || mass.is_nan() || mass > 0.0, "parts", "the batch has no mass");
    nonsense.or_ok()?;
    let solids = parts.iter().map(|part| part.kilograms * part.soluble_solids_percent / 100.0).sum();
    Ok((mass, solids))
}
