//! The inference against check data, an independent slow enumeration, and its own laws.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test fails by panicking")]

mod agreement;
mod bounds;
mod check_data;
mod enumeration;
mod generate;
mod laws;
mod repairs;
mod strategies;
