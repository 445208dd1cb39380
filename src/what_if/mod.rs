//! The same case with hypothetical readings, facts, symptoms, amounts or actions: what the diagnosis would be.
//!
//! ```text
//! WhatIfRequest --changed case: readings, facts, symptoms, amounts, actions--> two diagnoses --compared--> WhatIf
//! ```
//!
//! A hypothetical reading tells what the diagnosis would be if that were read. What an action does to a reading is what is
//! aimed at, never promised.

mod actions;
mod amount;
mod answer;
mod compared;
mod terminal;
mod trial;

pub(crate) use amount::{Size, change as change_amount};
pub use answer::{Applied, CauseChange, FigureChange, LeaderChange, NotApplied, WhatIf, WhatIfLeader};
pub use terminal::render;
pub use trial::{WhatIfFault, what_if};
