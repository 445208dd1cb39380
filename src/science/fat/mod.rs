//! Fats: what they are made of, how much of them is solid, and which blend has a wanted curve.

pub mod blend;
mod comparison;
mod composition;
mod fatty_acid;
mod iodine_value;
mod plasticity;
mod saponification_value;
mod solids_curve;

pub use comparison::{Comparison, Difference, compare};
pub use composition::{AcidShare, Composition};
pub use fatty_acid::FattyAcid;
pub use iodine_value::{FatForm, IodinePart, blend_iodine_value, iodine_value};
pub use plasticity::{Consistency, Melt, PlasticRange, Span, consistency, melt_in_the_mouth, plastic_range};
pub use saponification_value::saponification_value;
pub use solids_curve::{SolidsCurve, SolidsReading, SolidsScale};
