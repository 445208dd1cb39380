//! How the water is shared between the solution and the starch, protein and fibre: one water activity for both.

use super::mixture;
use super::sorption::SorptionBranch;
use super::{AqueousPhase, CompositionPer100g, Solute};
use crate::science::bisection;

/// Baked goods lose water on their way, doughs never had less: the desorption branch.
const BRANCH: SorptionBranch = SorptionBranch::Desorption;

/// Grams that a gram of water dissolves at 25 °C. Sucrose 67.36 % w/w (from memory: Charles 1960); lactose 17.8 % (Hudson, in
/// Lowe, Experimental Cookery).
const SUCROSE_PER_WATER: f64 = 0.6736 / 0.3264;
const LACTOSE_PER_WATER: f64 = 0.178 / 0.822;

/// Whether sugar beyond its solubility stays in solution.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sugars {
    Dissolved,
    Crystallised,
}

/// Where the water is, g per 100 g of product.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Sharing {
    pub(super) activity: f64,
    pub(super) water_free: f64,
    pub(super) water_held: f64,
}

pub(super) fn share(composition: &CompositionPer100g, sugars: Sugars) -> Sharing {
    let (water, dry) = (composition.water, composition.biopolymer());
    let activity_with = |free: f64| mixture::unchecked(&solution(composition, free, sugars));
    let surplus = |free: f64| free + dry * BRANCH.moisture(activity_with(free)) - water;
    if dry > 0.0 && surplus(1e-9 * water) >= 0.0 {
        // The biopolymer takes everything before a solution can form.
        return Sharing { activity: BRANCH.activity(water / dry), water_free: 0.0, water_held: water };
    }
    let water_free = if dry > 0.0 { bisection::root_of_rising(0.0, water, surplus) } else { water };
    Sharing { activity: activity_with(water_free), water_free, water_held: water - water_free }
}

/// Total water at which the composition has this water activity, at most what it has.
pub(super) fn water_at(composition: &CompositionPer100g, activity: f64) -> f64 {
    let free = bisection::root_of_rising(0.0, composition.water, |free| {
        mixture::unchecked(&solution(composition, free, Sugars::Dissolved)) - activity
    });
    (free + composition.biopolymer() * BRANCH.moisture(activity)).min(composition.water)
}

pub(super) fn can_crystallise(composition: &CompositionPer100g, water_free: f64) -> bool {
    composition.sucrose > SUCROSE_PER_WATER * water_free || composition.lactose > LACTOSE_PER_WATER * water_free
}

fn solution(composition: &CompositionPer100g, water_free: f64, sugars: Sugars) -> AqueousPhase {
    let dissolved = |(solute, grams): (Solute, f64)| match (sugars, solute) {
        (Sugars::Crystallised, Solute::Sucrose) => (solute, grams.min(SUCROSE_PER_WATER * water_free)),
        (Sugars::Crystallised, Solute::Lactose) => (solute, grams.min(LACTOSE_PER_WATER * water_free)),
        _ => (solute, grams),
    };
    AqueousPhase { water_g: water_free, solutes_g: composition.solutes().map(dissolved).to_vec() }
}
