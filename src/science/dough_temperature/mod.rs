//! Water temperature and ice for a wanted dough temperature.
//!
//! [`water_by_additive_rule`] is the bakery's rule with a friction factor measured on one batch;
//! [`water_by_heat_balance`] weighs every ingredient with its specific heat. Both may ask for water below 0 °C, which
//! is a figure for the books: [`ice_replacing_water`] and [`ice_on_top`] turn it into ice.

mod additive;
mod heat_balance;
mod ice;

pub use additive::{AdditiveRule, dough_by_additive_rule, friction_factor, water_by_additive_rule};
pub use heat_balance::{HeatBalance, HeatItem, SPECIFIC_HEATS, SpecificHeat, water_by_heat_balance};
pub use ice::{IceOrder, IcePlan, ice_on_top, ice_replacing_water};

use super::Estimate;

/// Mixing water above this begins to harm yeast, °C.
/// New Zealand Baking Industry Research Trust, science of bread making: baking (46 °C, end of useful activity).
const WARMEST_WATER_CELSIUS: f64 = 46.0;

/// Says so when the water is not something that comes from a tap.
fn judge_water(water: Estimate) -> Estimate {
    let value = water.value;
    water
        .valid_if(value >= 0.0, || {
            format!("{value:.1} °C is a figure for the books: the water cannot be that cold, use ice")
        })
        .valid_if(value <= WARMEST_WATER_CELSIUS, || {
            format!("{value:.1} °C is above {WARMEST_WATER_CELSIUS} °C and harms yeast")
        })
}
