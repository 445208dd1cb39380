//! Diagnoses of the embedded rules: what a technologist would expect of them, and laws that hold for any rules.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test fails by panicking")]

mod action_order;
#[allow(dead_code, reason = "written for the tests of the inference, which use all of it")]
#[path = "../inference/enumeration.rs"]
mod enumeration;
mod faults;
mod formula_pack;
mod formulas;
#[path = "../inference/generate.rs"]
mod generate;
mod intake;
mod law;
mod laws;
mod plans;
mod scenarios;
mod support;
mod technologists;
mod usual_information;
mod what_if;
mod words;
