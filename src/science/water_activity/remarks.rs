//! Why an estimate of a composition is to be taken with care.

use super::sharing::{self, Sharing};
use super::sorption;
use super::{BinarySolution, CompositionPer100g, Solute, salt};
use crate::science::Estimate;

/// Unnamed part of 100 g, g, from which a remark is made (our choice; food tables lose about 2 g in rounding and ash).
const MUCH_UNNAMED: f64 = 5.0;
/// Ethanol, % of the solution, up to which Raoult is within 0.002 of UNIFAC (thermo 0.6.1, 25 °C).
const MUCH_ETHANOL: f64 = 5.0;
/// Lowest water activity of the Norrish constants' fit (from memory: Chirife et al. 1980).
const NORRISH_FITTED: f64 = 0.85;

pub(super) fn add(estimate: Estimate, composition: &CompositionPer100g, shared: Sharing) -> Estimate {
    let activity = estimate.value;
    let unnamed = 100.0 - composition.total();
    let starchy = composition.biopolymer() > 0.0;
    let dissolves = composition.solutes().iter().any(|(_, grams)| *grams > 0.0);
    let ethanol = composition.aqueous_phase().solute_percent(Solute::Ethanol);
    estimate
        .valid_if(!dissolves || activity >= NORRISH_FITTED, || {
            format!("water activity {activity:.3} is below 0.85, where the constants of the solutes were not fitted")
        })
        .valid_if(!starchy || sorption::FITTED.contains(&activity), || {
            format!("water activity {activity:.3} is outside the isotherm's fitted 0.11-0.90")
        })
        .valid_if(!sharing::can_crystallise(composition, shared.water_free), || {
            "more sucrose or lactose than the free water can keep dissolved: it may crystallise".to_owned()
        })
        .valid_if(salt_dissolves(composition, shared), || "more salt than the free water can dissolve".to_owned())
        .valid_if(ethanol <= MUCH_ETHANOL, || {
            format!("{ethanol:.1} % ethanol in the water phase is counted as ideal: the real water activity is higher")
        })
        .valid_if(composition.glucose_syrup_solids == 0.0, || {
            "the constant of glucose syrup is of low confidence".to_owned()
        })
        .valid_if(unnamed <= MUCH_UNNAMED, || format!("{unnamed:.1} g of 100 g are not named and counted as inert"))
}

fn salt_dissolves(composition: &CompositionPer100g, shared: Sharing) -> bool {
    let brine = BinarySolution { solute: Solute::Salt, solute_g: composition.salt, water_g: shared.water_free };
    composition.salt == 0.0 || brine.molality() <= salt::HIGHEST_MOLALITY
}
