//! A case about which more is to be found out, and how far that may go.

use serde::Serialize;
use utoipa::ToSchema;

use super::document::CaseDocument;
use super::parse::read_case;
use super::types::Case;
use crate::json::{Document, DocumentFaults, FaultCode, Faults, Node, Object};
use crate::knowledge::Knowledge;

/// How far finding out may go.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct InquiryOptions {
    /// Probability from which a cause is certain enough to act on.
    #[schema(example = 0.9)]
    pub certain_enough: f64,
    /// Most minutes that a plan may take; left out, there is no limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = 60.0)]
    pub most_minutes: Option<f64>,
    /// Least information, bits a minute, that is worth the effort.
    #[schema(example = 0.002)]
    pub least_bits_per_minute: f64,
    /// Most inquiries one after the other in a plan.
    #[schema(example = 3)]
    pub depth: u8,
}

/// Longest way through a plan: beyond it, ask again with what was found.
pub const DEEPEST: u8 = 3;

impl Default for InquiryOptions {
    /// Nine in ten is the certainty on which a plant changes a process; 0.002 bit a minute is a tenth of a bit in
    /// the fifty minutes between two batches (both common practice).
    fn default() -> Self {
        Self { certain_enough: 0.9, most_minutes: None, least_bits_per_minute: 0.002, depth: DEEPEST }
    }
}

/// A case and how far finding out may go.
#[derive(Debug, Clone)]
pub struct InquiryRequest {
    /// The case, with the reference of the request where that has one.
    pub case: Case,
    /// How far.
    pub options: InquiryOptions,
}

/// A case about which more is to be found out.
#[derive(Debug, Clone, Default, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = InquiryRequest)]
pub struct InquiryRequestDocument {
    /// The case, as for a diagnosis.
    pub case: CaseDocument,
    /// Probability from which a cause is certain enough to act on; 0.9 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0.5, maximum = 0.999, example = 0.9)]
    pub certain_enough: Option<f64>,
    /// Most minutes that the plan may take; no limit when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0.0, example = 60.0)]
    pub most_minutes: Option<f64>,
    /// Least information, bits a minute, that is worth the effort; 0.002 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0.0, example = 0.002)]
    pub least_bits_per_minute: Option<f64>,
    /// Most inquiries one after the other in the plan; 3 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 1, maximum = 3, example = 3)]
    pub depth: Option<u8>,
    /// Anything of the caller's; it is handed back as it came. Left out, that of the case is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reference: Option<serde_json::Value>,
}

const MEMBERS: [&str; 6] = ["case", "certain_enough", "most_minutes", "least_bits_per_minute", "depth", "reference"];

impl InquiryRequest {
    /// Reads a request from JSON text.
    ///
    /// # Errors
    /// Every fault of the text at once.
    pub fn parse(text: &[u8], knowledge: &Knowledge) -> Result<Self, DocumentFaults> {
        let document = Document::parse(text).map_err(DocumentFaults::Malformed)?;
        let mut faults = Faults::default();
        let root = Node::root(&document.case);
        let request = root.object(&mut faults, &MEMBERS).and_then(|object| read(&object, knowledge, &mut faults));
        let request = faults.finish(request)?;
        Ok(Self { case: Case { reference: document.reference, ..request.case }, ..request })
    }
}

fn read(object: &Object<'_>, knowledge: &Knowledge, faults: &mut Faults) -> Option<InquiryRequest> {
    let help = Some("give the case as for a diagnosis".to_owned());
    let node = object.required(faults, "case", help);
    let case = node.and_then(|node| read_case(&node, knowledge, faults));
    let usual = InquiryOptions::default();
    let within =
        |faults: &mut Faults, name, low, high| object.optional(name).map(|node| node.number_within(faults, low, high));
    let certain_enough = within(faults, "certain_enough", 0.5, 0.999);
    let most_minutes = within(faults, "most_minutes", 0.0, f64::INFINITY);
    let least_bits_per_minute = within(faults, "least_bits_per_minute", 0.0, f64::INFINITY);
    let depth = object.optional("depth").map(|node| read_depth(&node, faults));
    let options = InquiryOptions {
        certain_enough: certain_enough.unwrap_or(Some(usual.certain_enough))?,
        most_minutes: most_minutes.map_or(Some(usual.most_minutes), |minutes| minutes.map(Some))?,
        least_bits_per_minute: least_bits_per_minute.unwrap_or(Some(usual.least_bits_per_minute))?,
        depth: depth.unwrap_or(Some(usual.depth))?,
    };
    Some(InquiryRequest { case: case?, options })
}

fn read_depth(node: &Node<'_>, faults: &mut Faults) -> Option<u8> {
    let depth = node.number_within(faults, 1.0, f64::from(DEEPEST))?;
    let found = (1..=DEEPEST).find(|whole| f64::from(*whole) == depth);
    if found.is_none() {
        node.fault(faults, FaultCode::OutOfRange, format!("{depth} is no whole number"), None);
    }
    found
}
