//! The rule loader and the pack: what a fault in a rule file says, hostile files, and what the embedded pack promises.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test fails by panicking"
)]

mod calculations;
mod coverage;
mod diagnostics;
mod doubts;
mod explanations;
mod folders;
mod fuzz;
mod hostile;
mod pack;
mod published;
mod reference;
mod rule_tests;
mod support;
