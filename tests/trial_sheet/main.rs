//! The trial sheet: masses worked by hand, designs, faults, and the embedded pack.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test fails by panicking")]

mod faults;
mod paper;
mod plan;
mod small_pack;
mod weights;
mod whole_pack;
