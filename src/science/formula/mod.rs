//! A formula: what was weighed, at which stage, and what it is made of.
//!
//! Way through the module: [`Line`]s are checked once into a [`Formula`]; [`figures`] gives baker's percentages and
//! totals of one [`Part`], [`PartLines`] the single figures; [`scale_to_mass`] and [`scale_to_pieces`] give a batch; [`compare_with_ratio`] sets the
//! formula against the classic ratio of its product.

mod composition;
mod figures;
mod line;
mod part_lines;
mod ratios;
mod scaling;
mod totals;

pub use composition::{Component, Composition};
pub use figures::{Basis, FormulaFigures, IngredientShare, figures};
pub use line::{Formula, Line, Part, Role, Stage};
pub use part_lines::PartLines;
pub use ratios::{
    Against, CLASSIC_RATIOS, ClassicRatio, RatioFinding, RatioItem, Standing, classic_ratio, compare_with_ratio,
    extra_water_for_cocoa,
};
pub use scaling::{Batch, BatchLine, PieceOrder, scale_to_mass, scale_to_pieces};
pub use totals::Total;
