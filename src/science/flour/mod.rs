//! Flour: moisture basis, blends, Falling Number, water absorption, solvent retention.

mod absorption;
mod blend;
mod falling_number;
mod moisture;
mod solvent_retention;

pub use absorption::{FarinographReading, absorption_at_moisture, farinograph_absorption, farinograph_sample};
pub use blend::{BlendLot, BlendShare, FlourBlend, blend_for_protein, blend_value, share_of_high};
pub use falling_number::{
    FallingNumberLot, blend_falling_number, falling_number, liquefaction_number, share_of_sprouted_lot,
};
pub use moisture::{DRY_BASIS_PERCENT, STANDARD_MOISTURE_PERCENT, to_moisture_basis, to_standard_moisture};
pub use solvent_retention::{gluten_performance_index, solvent_retention};
