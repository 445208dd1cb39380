//! Diagnoses of the embedded rules: what a technologist would expect of them, and laws that hold for any rules.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test fails by panicking")]

#[path = "../inference/enumeration.rs"]
mod enumeration;
mod faults;
mod formula_pack;
mod formulas;
#[path = "../inference/generate.rs"]
mod generate;
mod law;
mod laws;
mod scenarios;
mod support;
mod technologists;
