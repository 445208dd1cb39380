//! What to find out next: what each reading, fact and symptom would tell, what each of its outcomes would change, and a plan.
//!
//! ```text
//! Open case --promises (bounds)--> information in bits --+--> next readings and questions of a diagnosis
//!                                                        +--> outcomes: ranking after each --+--> inquiries
//!                                                        +--> plan: outcome by outcome ------+
//! ```

mod answer;
mod inquire;
mod next;
mod open;
mod outcome_model;
mod plan;
mod prospect;
mod standing;
mod terminal;
mod told;

pub use answer::*;
pub(super) use next::next;
pub(super) use open::Open;
pub use outcome_model::{ModelledOutcome, OutcomeModel};
pub(super) use standing::{at_issue, lifted};
pub use terminal::render_inquiries;
