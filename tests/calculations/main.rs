//! The registry of calculations: what it promises of every calculation, and how its inputs are read.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test fails by panicking")]

mod faults;
mod registry;
mod science;
mod worked;
