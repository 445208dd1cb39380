//! Blends of flours for properties that add up by mass: protein, ash, absorption.

use super::moisture::STANDARD_MOISTURE_PERCENT;
use crate::science::{Estimate, Method, Nonsense, input_checks};

const ALLIGATION: Method = Method {
    name: "alligation: share of the high flour = (target − low) / (high − low)",
    source: "common practice",
    domain: "protein, ash, absorption on one moisture basis; not Falling Number",
};
const BY_MASS: Method = Method {
    name: "mean by mass",
    source: "common practice",
    domain: "protein, ash, absorption on one moisture basis; not Falling Number",
};
const TWO_GROUPS: Method = Method {
    name: "alligation of two groups: lots below the target and lots above it, each group in its given parts",
    source: "common practice; water of the lots by mass balance",
    domain: "protein; one of many blends when there are more than two lots",
};

/// Share of the high flour in a blend of two, %, on the moisture basis of the values.
///
/// # Errors
/// Values that are negative or not numbers, equal values, a target that lies outside them.
pub fn share_of_high(low: f64, high: f64, target: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::not_negative(&mut faults, "low", low);
    input_checks::not_negative(&mut faults, "high", high);
    faults.unless(low < high, "high", format!("must be above low ({low}), is {high}"));
    faults.unless((low..=high).contains(&target), "target", format!("no blend of {low} and {high} reaches {target}"));
    faults.or_ok()?;
    let share = 100.0 * (target - low) / (high - low);
    Ok(Estimate::new(share, "%", ALLIGATION))
}

/// Value of a blend from `(parts by mass, value)` of its lots, in `unit`.
///
/// # Errors
/// No lots, parts that are negative or add up to nothing, values that are negative or not numbers.
pub fn blend_value(lots: &[(f64, f64)], unit: &'static str) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    for (position, (parts, value)) in lots.iter().enumerate() {
        input_checks::not_negative(&mut faults, &format!("lots[{position}].parts"), *parts);
        input_checks::not_negative(&mut faults, &format!("lots[{position}].value"), *value);
    }
    let parts: f64 = lots.iter().map(|(parts, _)| parts).sum();
    faults.unless(!parts.is_finite() || parts > 0.0, "lots", "have no mass together");
    faults.or_ok()?;
    let sum: f64 = lots.iter().map(|(parts, value)| parts * value).sum();
    Ok(Estimate::new(sum / parts, unit, BY_MASS))
}

/// A lot of flour that may go into a blend. Gluten counts as a lot.
#[derive(Debug, Clone, PartialEq)]
pub struct BlendLot {
    /// Name of the lot.
    pub name: String,
    /// Protein as is, %.
    pub protein_percent: f64,
    /// Moisture, %.
    pub moisture_percent: f64,
    /// Parts by mass in which the lots of its group (below or above the target) are wanted, for example the stock in kg.
    pub parts: f64,
}

/// A lot's share of the blend.
#[derive(Debug, Clone, PartialEq)]
pub struct BlendShare {
    /// Name of the lot.
    pub name: String,
    /// Share by mass as is, %.
    pub share: Estimate,
}

/// A blend of two or more lots.
#[derive(Debug, Clone, PartialEq)]
pub struct FlourBlend {
    /// Shares, in the order of the lots.
    pub shares: Vec<BlendShare>,
    /// Protein at 14 % moisture, %.
    pub protein: Estimate,
    /// Moisture, %.
    pub moisture: Estimate,
}

/// Blend of two or more lots for a protein at 14 % moisture.
///
/// # Errors
/// Fewer than two lots, a share that cannot be meant, a target that no blend of the lots reaches.
pub fn blend_for_protein(lots: &[BlendLot], target_protein_percent: f64) -> Result<FlourBlend, Nonsense> {
    check_lots(lots, target_protein_percent)?;
    let target = target_protein_percent;
    let low = Group::of(lots, |lot| lot.standard_protein() <= target);
    let high = Group::of(lots, |lot| lot.standard_protein() > target);
    let share_high = reach(&low, &high, target)?;
    // On the 14 % basis first, where protein adds up; then back to the flour as it is weighed.
    let weights: Vec<f64> = lots
        .iter()
        .map(|lot| {
            let (group, share) =
                if lot.standard_protein() > target { (&high, share_high) } else { (&low, 1.0 - share_high) };
            share * lot.standard_parts() / group.parts * lot.as_is_per_standard()
        })
        .collect();
    Ok(blend(lots, &weights))
}

impl BlendLot {
    fn as_is_per_standard(&self) -> f64 {
        (100.0 - STANDARD_MOISTURE_PERCENT) / (100.0 - self.moisture_percent)
    }

    /// Protein at 14 % moisture, %.
    fn standard_protein(&self) -> f64 {
        self.protein_percent * self.as_is_per_standard()
    }

    /// Parts as if the lot had 14 % moisture.
    fn standard_parts(&self) -> f64 {
        self.parts / self.as_is_per_standard()
    }
}

/// Lots on one side of the target: their parts and protein at 14 % moisture.
struct Group {
    parts: f64,
    protein: f64,
}

impl Group {
    fn of(lots: &[BlendLot], belongs: impl Fn(&BlendLot) -> bool) -> Self {
        let group = || lots.iter().filter(|lot| belongs(lot));
        let parts: f64 = group().map(BlendLot::standard_parts).sum();
        let sum: f64 = group().map(|lot| lot.standard_parts() * lot.standard_protein()).sum();
        let protein = if parts > 0.0 { sum / parts } else { 0.0 };
        Self { parts, protein }
    }
}

/// Share of the high group, 0 to 1.
fn reach(low: &Group, high: &Group, target: f64) -> Result<f64, Nonsense> {
    let mut faults = Nonsense::default();
    let input = "target_protein_percent";
    if low.parts <= 0.0 {
        faults.unless(false, input, format!("every lot has more than {target} % at 14 % moisture"));
    }
    if high.parts <= 0.0 && low.protein < target {
        faults.unless(false, input, format!("no lot has more than {target} % at 14 % moisture"));
    }
    faults.or_ok()?;
    if high.parts <= 0.0 {
        return Ok(0.0);
    }
    Ok((target - low.protein) / (high.protein - low.protein))
}

fn blend(lots: &[BlendLot], weights: &[f64]) -> FlourBlend {
    let total: f64 = weights.iter().sum();
    let mean = |value: &dyn Fn(&BlendLot) -> f64| -> f64 {
        lots.iter().zip(weights).map(|(lot, weight)| weight * value(lot)).sum::<f64>() / total
    };
    let moisture = mean(&|lot| lot.moisture_percent);
    let protein = mean(&|lot| lot.protein_percent) * (100.0 - STANDARD_MOISTURE_PERCENT) / (100.0 - moisture);
    FlourBlend {
        shares: lots
            .iter()
            .zip(weights)
            .map(|(lot, weight)| BlendShare {
                name: lot.name.clone(),
                share: Estimate::new(100.0 * weight / total, "%", TWO_GROUPS),
            })
            .collect(),
        protein: Estimate::new(protein, "%", TWO_GROUPS),
        moisture: Estimate::new(moisture, "%", TWO_GROUPS),
    }
}

fn check_lots(lots: &[BlendLot], target: f64) -> Result<(), Nonsense> {
    let mut faults = Nonsense::default();
    faults.unless(lots.len() >= 2, "lots", "a blend needs two lots or more");
    for (position, lot) in lots.iter().enumerate() {
        let input = |field: &str| format!("lots[{position}].{field}");
        input_checks::percent(&mut faults, &input("protein_percent"), lot.protein_percent);
        let moisture = lot.moisture_percent;
        input_checks::within(&mut faults, &input("moisture_percent"), moisture, 0.0..=30.0, "%");
        input_checks::positive(&mut faults, &input("parts"), lot.parts);
    }
    input_checks::percent(&mut faults, "target_protein_percent", target);
    faults.or_ok()
}
