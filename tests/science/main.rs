//! The calculations of `science` against published values, worked examples and properties that must hold.
//!
//! Facts stand in `tests/reference/*.csv` with their source. A row that `agrees` must come out between its bounds; a row
//! that `disagrees` must not, and its note says why the published figure is not followed.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test fails by panicking"
)]

mod boiling;
mod dough_temperature;
mod fat;
mod fat_blend;
mod fat_solids;
mod flour;
mod food_code;
mod formula;
mod freeze_thaw;
mod freezing;
mod fruit_protease;
mod gels;
mod humidity;
mod leavening;
mod proof_bake;
mod published;
mod shelf_life;
mod soluble_solids;
mod sugar_solubility;
mod trial_design;
mod water_activity;
mod water_activity_properties;
mod yeast;
