//! The humidity of air in a proofer, cooler or store: from dry and wet bulb, and back.
//!
//! Equations of the ASHRAE Handbook, Fundamentals (2017), chapter 1 (perfect gas relations).

mod air;
mod dew_point;
mod pressure;
mod saturation;

pub use air::{AirCondition, BulbReading, air_condition, wet_bulb_for};
pub use dew_point::dew_point;
pub use pressure::standard_pressure;
pub use saturation::saturation_vapour_pressure;
