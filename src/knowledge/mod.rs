//! What rules declare, as plain data, and the linked, immutable [`Knowledge`] that cases are judged with.
//!
//! Nothing here knows how rules are written or how cases arrive. Declared things live in [`Table`]s and refer to each
//! other by [`Key`]; [`Condition`]s and [`Quantity`]s are trees that are judged on [`Circumstances`].

mod action;
mod calculated;
mod cause;
mod change;
mod circumstances;
mod condition;
mod declarations;
mod demand;
mod evidence;
mod expense;
mod fact;
mod formula_figures;
mod formula_quantity;
mod ingredient;
mod input;
mod limit;
mod link;
mod note;
mod pack;
mod place;
mod product;
mod quantity;
mod reading;
mod requirement;
mod symptom;
mod table;
mod text;
mod truth;
mod warning;

pub use action::{Action, Prescription, Setting};
pub use calculated::{Calculate, Calculated, CalculatedFigure, CalculationArgument, CalculationFault};
pub use cause::{Cause, Confirmation, Link};
pub use change::{Amount, Basis, Change, How, Portion};
pub use circumstances::{Circumstances, Limits};
pub use condition::{Comparison, Condition, Judge, JudgeFault, Judged, Side};
pub use declarations::Declarations;
pub use evidence::{Evidence, EvidenceKind, Regions, Weights};
pub use expense::{Cost, MINUTES_PER_BATCH};
pub use fact::Fact;
pub use formula_figures::{FormulaFigures, IngredientShare, RoleShare};
pub use formula_quantity::FormulaQuantity;
pub(crate) use formula_quantity::PERCENT;
pub use ingredient::{Composition, Ingredient, Leavening};
pub use input::Input;
pub use limit::Limit;
pub use link::{Knowledge, ProductView, RelevantInput, ViewLink};
pub use note::{Caution, Provenance, Source};
pub use pack::Pack;
pub use place::Place;
pub use product::{Family, Product, Scope};
pub use quantity::{Operation, Quantity};
pub use reading::{Reading, Window};
pub use requirement::{Allergen, Diet, Market};
pub use symptom::Symptom;
pub use table::{Key, Named, Table};
pub use text::Text;
pub use truth::Truth;
pub use warning::Warning;
