//! Water activity and freezing point of a part, by its composition.

use super::figure::{Outcome, is_tight};
use crate::science::formula::{Component, PartLines};
use crate::science::freezing::freezing_point_of;
use crate::science::water_activity::{CompositionPer100g, best_estimate};

/// Grams of the reference syrup's solids with as many molecules as a gram of its dextrins: 42 DE syrup of 80.3 % solids
/// (mean molar mass 180.16 × 100 / 42 = 429 g/mol) holds 0.187 mol per 100 g, of which 15.3 g of glucose and 11.2 g of
/// maltose (Corn Refiners Association, from memory) are 0.118, which leaves 0.069 mol for 53.8 g: 776 g/mol.
const SYRUP_SOLIDS_PER_DEXTRINS: f64 = 429.0 / 776.0;

/// Water activity of the composition, best estimate.
pub(super) fn water_activity(lines: &PartLines<'_>) -> Outcome {
    match composition(lines) {
        Ok(composition) => best_estimate(&composition)
            .map_or_else(|nonsense| Outcome::unknown(nonsense.to_string()), |best| Outcome::known(best.water_activity)),
        Err(unknown_in) => Outcome::unknown_because_of(unknown_in),
    }
}

/// Temperature at which ice begins to form.
pub(super) fn freezing_point(lines: &PartLines<'_>) -> Outcome {
    match composition(lines) {
        Ok(composition) => freezing_point_of(&composition)
            .map_or_else(|nonsense| Outcome::unknown(nonsense.to_string()), Outcome::known),
        Err(unknown_in) => Outcome::unknown_because_of(unknown_in),
    }
}

/// The composition per 100 g, where everything that holds water or dissolves is known; else who leaves it open.
fn composition(lines: &PartLines<'_>) -> Result<CompositionPer100g, Vec<String>> {
    let mut unknown_in: Vec<String> = Vec::new();
    let mut grams = |component: Component| {
        let total = lines.in_mass(&[component]);
        if !is_tight(&total) {
            unknown_in
                .extend(total.unknown_in.iter().filter(|name| !unknown_in.contains(name)).cloned().collect::<Vec<_>>());
        }
        f64::midpoint(total.at_least.value, total.at_most.value)
    };
    let composition = CompositionPer100g {
        water: grams(Component::Water),
        sucrose: grams(Component::Sucrose),
        glucose: grams(Component::Glucose),
        fructose: grams(Component::Fructose),
        lactose: grams(Component::Lactose),
        maltose: grams(Component::Maltose),
        glucose_syrup_solids: SYRUP_SOLIDS_PER_DEXTRINS * grams(Component::Dextrins),
        glycerol: grams(Component::Glycerol),
        sorbitol: grams(Component::Sorbitol),
        citric_acid: grams(Component::Acids),
        ethanol: grams(Component::Alcohol),
        salt: grams(Component::Salt),
        starch: grams(Component::Starch),
        protein: grams(Component::Protein),
        fibre: grams(Component::Fibre),
        // Takes no water: what is not known of it does no harm.
        fat: lines.in_mass(&[Component::Fat]).at_least.value,
        ..CompositionPer100g::default()
    };
    if unknown_in.is_empty() { Ok(composition) } else { Err(unknown_in) }
}
