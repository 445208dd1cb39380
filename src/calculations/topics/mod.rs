//! The calculations, one file a topic.

// The formula and what goes into it.
mod dough_temperature;
mod flour;
mod leavening;
mod yeast;

// From the proofer to the shelf.
mod freezing;
mod humidity;
mod mould_free_life;
mod proof_bake;
mod water_activity;

// Syrups, fillings and fats.
mod boiling;
mod fat;
mod fat_blend;
mod filling;
mod sugar_solubility;

// What the law asks first.
mod food_code;

// Whether a change helped.
mod trial_design;

use super::calculation::Calculation;

/// All topics, in the order of the science.
pub(super) const TOPICS: [&[Calculation]; 16] = [
    dough_temperature::CALCULATIONS,
    flour::CALCULATIONS,
    leavening::CALCULATIONS,
    yeast::CALCULATIONS,
    freezing::CALCULATIONS,
    humidity::CALCULATIONS,
    mould_free_life::CALCULATIONS,
    proof_bake::CALCULATIONS,
    water_activity::CALCULATIONS,
    boiling::CALCULATIONS,
    fat::CALCULATIONS,
    fat_blend::CALCULATIONS,
    filling::CALCULATIONS,
    sugar_solubility::CALCULATIONS,
    food_code::CALCULATIONS,
    trial_design::CALCULATIONS,
];
