//! What is asked about a formula: its figures, a batch of it, its classic ratio.

use super::formula::{self, AMOUNTS};
use super::parse::find;
use super::types::Formula;
use crate::json::{Document, DocumentFaults, Fault, FaultCode, Faults, Node, Object, listing};
use crate::knowledge::{Key, Knowledge, Product};
use crate::numeral::written;
use crate::science::formula::{CLASSIC_RATIOS, ClassicRatio, Part, classic_ratio};
use crate::science::{self, Nonsense};

/// A formula, of a product where that matters.
#[derive(Debug, Clone)]
pub struct FormulaRequest {
    /// The product; its family tells the main part.
    pub product: Option<Key<Product>>,
    /// The formula.
    pub formula: Formula,
}

/// How large a batch is wanted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BatchSize {
    /// A mass, kg.
    Mass(f64),
    /// Pieces of a baked mass, kg, with a bake loss in %.
    Pieces {
        /// Number of pieces.
        pieces: u32,
        /// Mass of one piece when baked and cooled, kg.
        baked_piece_kg: f64,
        /// Mass lost in baking and cooling, % of the dough.
        bake_loss_percent: f64,
    },
}

/// A formula and the batch that is wanted of it.
#[derive(Debug, Clone)]
pub struct BatchRequest {
    /// The formula.
    pub request: FormulaRequest,
    /// The part to scale; `None`: the main part.
    pub part: Option<Part>,
    /// How large.
    pub size: BatchSize,
}

/// A formula and the classic ratio that it is set against.
#[derive(Debug, Clone)]
pub struct RatioRequest {
    /// The formula.
    pub request: FormulaRequest,
    /// The ratio.
    pub ratio: &'static ClassicRatio,
}

impl FormulaRequest {
    /// Reads a request from JSON text.
    ///
    /// # Errors
    /// Every fault of the text at once.
    pub fn parse(text: &[u8], knowledge: &Knowledge) -> Result<Self, DocumentFaults> {
        parse(text, &["product", "formula"], |object, faults| Self::read(object, knowledge, faults))
    }

    fn read(object: &Object<'_>, knowledge: &Knowledge, faults: &mut Faults) -> Option<Self> {
        let declared = &knowledge.declared;
        let product = object.optional("product").map(|node| find(&node, &declared.products, "product", faults));
        let help = Some("give the formula as in a case".to_owned());
        let formula = object.required(faults, "formula", help).and_then(|node| formula::read(&node, declared, faults));
        Some(Self { product: product.map_or(Some(None), |found| found.map(Some))?, formula: formula? })
    }
}

impl BatchRequest {
    /// Reads a request from JSON text.
    ///
    /// # Errors
    /// Every fault of the text at once.
    pub fn parse(text: &[u8], knowledge: &Knowledge) -> Result<Self, DocumentFaults> {
        parse(text, &["product", "formula", "part", "mass", "pieces", "piece_mass", "bake_loss"], |object, faults| {
            let request = FormulaRequest::read(object, knowledge, faults);
            let part = object.optional("part").map(|node| read_part(&node, faults));
            let size = read_size(object, faults);
            Some(Self { request: request?, part: part.map_or(Some(None), |found| found.map(Some))?, size: size? })
        })
    }
}

impl RatioRequest {
    /// Reads a request from JSON text.
    ///
    /// # Errors
    /// Every fault of the text at once; a product without a classic ratio is one, unless `ratio` names one.
    pub fn parse(text: &[u8], knowledge: &Knowledge) -> Result<Self, DocumentFaults> {
        parse(text, &["product", "formula", "ratio"], |object, faults| {
            let request = FormulaRequest::read(object, knowledge, faults);
            let ratio = match object.optional("ratio") {
                Some(node) => read_ratio(&node, faults),
                None => request.as_ref().and_then(|request| ratio_of_product(object, request, knowledge, faults)),
            };
            Some(Self { request: request?, ratio: ratio? })
        })
    }
}

fn parse<T>(
    text: &[u8],
    members: &[&str],
    read: impl FnOnce(&Object<'_>, &mut Faults) -> Option<T>,
) -> Result<T, DocumentFaults> {
    let document = Document::parse(text).map_err(DocumentFaults::Malformed)?;
    let mut faults = Faults::default();
    let root = Node::root(&document.case);
    let found = root.object(&mut faults, members).and_then(|object| read(&object, &mut faults));
    faults.finish(found)
}

pub(crate) fn read_part(node: &Node<'_>, faults: &mut Faults) -> Option<Part> {
    let name = node.text(faults)?;
    let found = Part::named(name);
    if found.is_none() {
        let names = Part::ALL.map(Part::name);
        node.unknown_name(faults, "part", name, names, || Some(format!("the parts are {}", listing(&names))));
    }
    found
}

/// Either a mass, or pieces with their mass and the bake loss.
pub(crate) fn read_size(object: &Object<'_>, faults: &mut Faults) -> Option<BatchSize> {
    let mass = object.optional("mass");
    let pieces = object.optional("pieces");
    match (mass, pieces) {
        (Some(mass), None) => {
            for name in ["piece_mass", "bake_loss"] {
                if let Some(node) = object.optional(name) {
                    let help = Some("it belongs to `pieces`".to_owned());
                    node.fault(faults, FaultCode::Contradiction, format!("`{name}` stands beside `mass`"), help);
                }
            }
            read_mass(&mass, faults).map(BatchSize::Mass)
        }
        (None, Some(pieces)) => {
            let pieces = read_pieces(&pieces, faults);
            let piece_mass = object.required(faults, "piece_mass", Some("the mass of one baked piece".to_owned()));
            let piece_mass = piece_mass.and_then(|node| read_mass(&node, faults));
            let bake_loss = object.optional("bake_loss").map(|node| node.value_in(faults, "%"));
            Some(BatchSize::Pieces {
                pieces: pieces?,
                baked_piece_kg: piece_mass?,
                bake_loss_percent: bake_loss.unwrap_or(Some(0.0))?,
            })
        }
        (Some(_), Some(pieces)) => {
            pieces.fault(faults, FaultCode::Contradiction, "give either `mass` or `pieces`".to_owned(), None);
            None
        }
        (None, None) => {
            let help = Some("give `mass`, or `pieces` with `piece_mass` and `bake_loss`".to_owned());
            object.node.fault(faults, FaultCode::Missing, "the size of the batch is missing".to_owned(), help);
            None
        }
    }
}

/// A mass that can be meant, kg.
fn read_mass(node: &Node<'_>, faults: &mut Faults) -> Option<f64> {
    let mass = node.value_in(faults, "kg")?;
    if AMOUNTS.contains(&mass) {
        return Some(mass);
    }
    let detail = format!("{} kg is not between {:e} and {:e} kg", written(mass), AMOUNTS.start(), AMOUNTS.end());
    node.fault(faults, FaultCode::OutOfRange, detail, None);
    None
}

fn read_pieces(node: &Node<'_>, faults: &mut Faults) -> Option<u32> {
    let pieces = node.number_within(faults, 1.0, f64::from(u32::MAX))?;
    if pieces.fract() != 0.0 {
        node.fault(faults, FaultCode::OutOfRange, format!("{pieces} is not a whole number"), None);
        return None;
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // whole, and within the range of `u32`
    Some(pieces as u32)
}

fn read_ratio(node: &Node<'_>, faults: &mut Faults) -> Option<&'static ClassicRatio> {
    let name = node.text(faults)?;
    let found = classic_ratio(name);
    if found.is_none() {
        let names = CLASSIC_RATIOS.iter().map(|ratio| ratio.product);
        node.unknown_name(faults, "classic ratio", name, names, || Some(all_ratios()));
    }
    found
}

fn all_ratios() -> String {
    let names: Vec<&str> = CLASSIC_RATIOS.iter().map(|ratio| ratio.product).collect();
    format!("the ratios are {}", listing(&names))
}

/// The ratio that bears the id of the product or of its family.
fn ratio_of_product(
    object: &Object<'_>,
    request: &FormulaRequest,
    knowledge: &Knowledge,
    faults: &mut Faults,
) -> Option<&'static ClassicRatio> {
    let declared = &knowledge.declared;
    let product = request.product.map(|key| &declared.products[key]);
    let family = product.and_then(|product| product.family).map(|key| declared.families[key].id.as_str());
    let ids = product.map(|product| product.id.as_str()).into_iter().chain(family);
    // Families are named in the plural: `soft_rolls` bake by the ratio of the `soft_roll`.
    let found = ids.flat_map(|id| [Some(id), id.strip_suffix('s')]).flatten().find_map(classic_ratio);
    if found.is_none() {
        let detail = match product {
            Some(product) => format!("there is no classic ratio of `{}`", product.id),
            None => "neither `product` nor `ratio` is given".to_owned(),
        };
        object.node.fault(faults, FaultCode::Missing, detail, Some(format!("name one as `ratio`; {}", all_ratios())));
    }
    found
}

/// The faults that science finds in a formula, at their places in the request.
#[must_use]
pub fn faults_of(nonsense: &Nonsense) -> Vec<Fault> {
    let fault = |fault: &science::Fault| Fault {
        pointer: pointer(&fault.input),
        code: FaultCode::OutOfRange,
        detail: format!("{} {}", subject(&fault.input), fault.message),
        help: None,
    };
    nonsense.faults.iter().map(fault).collect()
}

/// `formula[3].mass_kg` is `/formula/ingredients/3/amount`.
fn pointer(input: &str) -> String {
    match input {
        "pieces" => "/pieces".to_owned(),
        "baked_piece_kg" => "/piece_mass".to_owned(),
        "bake_loss_percent" => "/bake_loss".to_owned(),
        "wanted_kg" => "/mass".to_owned(),
        _ => {
            let place = input.strip_prefix("formula[").and_then(|rest| rest.split_once(']'));
            let Some((index, rest)) = place else { return "/formula".to_owned() };
            let member = if rest == ".mass_kg" { "/amount".to_owned() } else { rest.replace('.', "/") };
            format!("/formula/ingredients/{index}{member}")
        }
    }
}

fn subject(input: &str) -> &str {
    match input {
        "formula" => "the formula",
        "baked_piece_kg" => "the mass of a piece",
        "bake_loss_percent" => "the bake loss",
        "wanted_kg" => "the mass of the batch",
        "pieces" => "the number of pieces",
        _ => "the ingredient",
    }
}
