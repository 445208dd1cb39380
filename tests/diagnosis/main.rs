//! Diagnoses of the embedded rules: what a technologist would expect of them, and laws that hold for any rules.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test fails by panicking")]

mod action_order;
mod faults;
mod formula_pack;
mod formulas;
mod law;
mod laws;
mod scenarios;
mod support;
mod what_if;
