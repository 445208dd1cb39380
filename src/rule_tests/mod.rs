//! Tests of rules: cases that stand beside the rules, each with what the answer must say.
//!
//! ```text
//! rules/**/cases/*.json --read--> RuleTests --run with a Diagnostician--> what was not met
//! ```
//!
//! A file holds `title`, an optional `note`, a `case` as callers send it, and `expect`. Faulty files are told like faulty
//! rules: as [`Diagnostic`](crate::rules::Diagnostic)s with their place. Tests change no answer, so they are no part of
//! the digest of a pack.

mod coverage;
mod expectation;
mod failure;
mod judge;
mod places;
mod read;

pub use coverage::{CauseTallies, Coverage, FamilyCoverage, Observed, Tally, Unreached};
pub use expectation::{Expectation, Wanted, WantedQuantity};
pub use failure::{Failure, LeadingCause};
pub use judge::tested;
pub use read::{RuleTest, RuleTests};
