//! A trial of changed rules: in memory, beside those in force, which it does not touch.
//!
//! [`Trial::read`] takes the changed files and some cases from JSON text; [`Trial::run`] loads the rules in force with
//! these changes, runs the rule tests, and tells of every case what the change does to it.

mod answer;
mod read;
mod run;

pub use answer::{TrialAnswer, TrialCase, TrialRanking, TrialRules, TrialTests};
pub use read::{MOST_CASES, MOST_FILES, Trial, TrialDocument};
pub use run::TrialTooLong;
