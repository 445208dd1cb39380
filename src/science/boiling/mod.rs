//! Boiling temperatures of water and of sugar solutions: the thermometer reading at which a jam or syrup is cooked.

mod cook_end_point;
mod from_water_activity;
mod place;
mod syrup;
mod water;

pub use cook_end_point::{CAUTION, CookEndPoint, cook_end_point, soluble_solids_at};
pub use from_water_activity::boiling_point_from_water_activity;
pub use place::Place;
pub use syrup::{boiling_point_rise, solids_at_rise};
pub use water::water_boiling_point;
