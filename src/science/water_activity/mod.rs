//! Water activity of doughs, fillings, icings and baked goods from their composition.
//!
//! Start at [`best_estimate`]: it takes a composition per 100 g and chooses among the equations of the other files.
//!
//! Norrish constants are in the form `ln aw = ln Xw - K Xs^2` with the natural logarithm, so **K above zero lowers
//! the water activity**. Some papers write `+ K Xs^2` and list the same constants as negative numbers; Norrish's own paper
//! and some textbooks use the decimal logarithm, whose constants are smaller by the factor 2.3026 (and were fitted to
//! other data: 2.60 for sucrose is 5.99 here, not 6.47).

mod best_estimate;
mod composition;
mod erh;
mod grover;
mod mixture;
mod money_born;
mod norrish;
mod raoult;
mod remarks;
mod ross;
mod salt;
mod sharing;
mod solute;
mod solution;
mod sorption;
mod sucrose;

pub use best_estimate::{WaterActivityEstimate, best_estimate};
pub use composition::CompositionPer100g;
pub use erh::equilibrium_relative_humidity;
pub use grover::{GroverInput, grover};
pub use mixture::mixture_constant;
pub use money_born::money_born;
pub use norrish::norrish;
pub use raoult::raoult;
pub use ross::ross;
pub use salt::{salt_hand_formula, salt_percent_for, salt_pitzer};
pub use solute::{Solute, SoluteFacts};
pub use solution::{AqueousPhase, BinarySolution};
pub use sorption::{SorptionBranch, moisture_held, water_activity_of_dry_goods};
pub use sucrose::sucrose_robinson_stokes;

pub(super) use best_estimate::{norrish_activity, water_at_activity};
pub(super) use norrish::unchecked as norrish_unchecked;

/// Molar mass of water, g/mol.
const WATER_MOLAR_MASS: f64 = 18.015_28;
