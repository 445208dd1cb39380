//! The commands of the real program: outputs and exit codes.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test fails by panicking"
)]

mod check;
mod diagnose;
mod openapi;
mod program;
mod rules_export;
mod serve;
mod usage;
