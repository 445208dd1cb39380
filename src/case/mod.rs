//! What comes in: a case, parsed with every fault listed.
//!
//! [`Case::parse`] reads JSON text against a [`Knowledge`](crate::knowledge::Knowledge): names are looked up, units are
//! converted, implausible values are set aside. Either a whole [`Case`] comes out, or all [`Fault`]s at once.

mod document;
mod fault;
mod formula;
mod json;
mod node;
mod parse;
mod readings;
mod requirements;
mod symptoms;
mod types;

pub use document::{
    CaseDocument, CompositionDocument, FormulaDocument, IngredientDocument, ReadingDocument, RequirementsDocument,
    SymptomDocument,
};
pub use fault::{Fault, FaultCode};
pub(crate) use json::Json;
pub(crate) use node::{Faults, Node};
pub use parse::CaseFaults;
pub(crate) use parse::{find, find_named};
pub use types::{AvoidedIngredient, Case, Formula, FormulaLine, LineContent, Measured, Requirements, Seen, SetAside};
