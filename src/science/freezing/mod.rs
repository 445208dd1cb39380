//! Where a dough, filling or syrup begins to freeze, and how much of its water is ice at a temperature.

mod ice;
mod ice_fraction;
mod point;

pub use ice::ice_water_activity;
pub use ice_fraction::{IceEstimate, ice_fraction};
pub use point::{freezing_point, freezing_point_of};
