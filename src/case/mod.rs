//! What comes in: a case, parsed with every fault listed.
//!
//! [`Case::parse`] reads JSON text against a [`Knowledge`](crate::knowledge::Knowledge): names are looked up, units are
//! converted, implausible values are set aside. Either a whole [`Case`] comes out, or all [`Fault`]s at once.

mod changes;
mod changes_document;
mod document;
mod formula;
mod formula_document;
mod formula_request;
mod inquiry_request;
mod parse;
mod readings;
mod requirements;
mod symptoms;
mod types;

pub use crate::json::{Fault, FaultCode};
pub use changes::{CaseChanges, IngredientChange, TriedAmount, WhatIfRequest};
pub use changes_document::{ChangesDocument, IngredientChangeDocument, WhatIfDocument};
pub use document::{
    CaseDocument, CompositionDocument, FormulaDocument, IngredientDocument, ReadingDocument, RequirementsDocument,
    SymptomDocument,
};
pub use formula_document::{BatchDocument, FormulaRequestDocument, MeasureDocument, RatioDocument};
pub use formula_request::{BatchRequest, BatchSize, FormulaRequest, RatioRequest, faults_of};
pub(crate) use formula_request::{read_part, read_size};
pub use inquiry_request::{DEEPEST, InquiryOptions, InquiryRequest, InquiryRequestDocument};
pub(crate) use parse::{find, find_named};
pub use types::{AvoidedIngredient, Case, Formula, FormulaLine, LineContent, Measured, Requirements, Seen, SetAside};
