//! Proof and bake: volume, spread, bake loss, starch gelatinisation, evaporation.
//!
//! The air of the proofer is in [`humidity`](super::humidity).

mod bake_loss;
mod evaporation;
mod gelatinisation;
mod spread;
mod volume;

pub use bake_loss::{bake_loss, dough_for_baked_mass};
pub use evaporation::{evaporation_heat, evaporative_cooling};
pub use gelatinisation::{GelatinisationOnset, wheat_starch_onset};
pub use spread::{CookieStack, spread_factor};
pub use volume::{specific_volume, volume_yield};
