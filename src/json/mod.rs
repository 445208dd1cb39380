//! JSON documents read by hand: every fault at once, each with its JSON Pointer and a suggestion.
//!
//! Cases and the inputs of calculations are read with it. `Node` is a value and where it stands; what is wrong goes to
//! `Faults`, and reading goes on.

mod fault;
mod measure;
mod node;
mod raw;
mod value;

pub use fault::{DocumentFaults, Fault, FaultCode};
pub(crate) use node::{Faults, Node, Object, listing, step};
pub(crate) use raw::{raw_members, write_members};
pub(crate) use value::{Document, Json, text_without_mark, without_mark};
