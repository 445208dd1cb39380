//! What is asked about a complaint.

use serde::Serialize;
use utoipa::ToSchema;

use crate::case::find;
use crate::json::{Document, DocumentFaults, FaultCode, Faults, Node};
use crate::knowledge::{Key, Knowledge, Product};

/// Longest text, characters: some two pages. The bound keeps hostile input cheap.
pub const MOST_CHARACTERS: usize = 4_000;

/// Symptoms that an answer lists when the request does not say.
const USUAL_SYMPTOMS: usize = 10;

/// The most symptoms that a request may ask for.
const MOST_SYMPTOMS: usize = 50;

/// A complaint to be read.
#[derive(Debug, Clone)]
pub struct Complaint {
    /// The text.
    pub text: String,
    /// The product, where it is known.
    pub product: Option<Key<Product>>,
    /// Most symptoms, and most facts, to name.
    pub most: usize,
}

/// A complaint as callers write it.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = Complaint)]
pub struct ComplaintDocument {
    /// What was said, in plain English words; units also as German, Spanish and French write them.
    #[schema(example = "hollow under the lid, dough was at 31 °C", max_length = 4000, min_length = 1)]
    pub text: String,
    /// Id of the product; left out, the text is searched for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "hamburger_bun")]
    pub product: Option<String>,
    /// Most symptoms to name, sure ones and others; 10 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 1, maximum = 50)]
    pub most: Option<u32>,
}

impl Complaint {
    /// Reads a request from JSON text.
    ///
    /// # Errors
    /// Every fault of the request at once.
    pub fn parse(json: &[u8], knowledge: &Knowledge) -> Result<Self, DocumentFaults> {
        let document = Document::parse(json).map_err(DocumentFaults::Malformed)?;
        let mut faults = Faults::default();
        let complaint = Self::read(&Node::root(&document.case), knowledge, &mut faults);
        faults.finish(complaint)
    }

    fn read(root: &Node<'_>, knowledge: &Knowledge, faults: &mut Faults) -> Option<Self> {
        let object = root.object(faults, &["text", "product", "most"])?;
        let help = Some("give the complaint in words".to_owned());
        let text = object.required(faults, "text", help).and_then(|node| read_text(&node, faults));
        let products = &knowledge.declared.products;
        let product = object.optional("product").map(|node| find(&node, products, "product", faults));
        let most = object.optional("most").map_or(Some(USUAL_SYMPTOMS), |node| read_most(&node, faults));
        Some(Self { text: text?, product: product.map_or(Some(None), |found| found.map(Some))?, most: most? })
    }
}

fn read_text(node: &Node<'_>, faults: &mut Faults) -> Option<String> {
    let text = node.text(faults)?;
    let length = text.chars().count();
    if length > MOST_CHARACTERS {
        let detail = format!("the text has {length} characters, at most {MOST_CHARACTERS} are read");
        node.fault(faults, FaultCode::OutOfRange, detail, Some("send the complaint only".to_owned()));
        return None;
    }
    if text.trim().is_empty() {
        node.fault(faults, FaultCode::Missing, "the text is empty".to_owned(), None);
        return None;
    }
    Some(text.to_owned())
}

fn read_most(node: &Node<'_>, faults: &mut Faults) -> Option<usize> {
    #[allow(clippy::cast_precision_loss)] // 50
    let number = node.number_within(faults, 1.0, MOST_SYMPTOMS as f64)?;
    if number.fract() != 0.0 {
        node.fault(faults, FaultCode::OutOfRange, format!("{number} is not a whole number"), None);
        return None;
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 1 to 50
    Some(number as usize)
}
