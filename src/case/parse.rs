//! From JSON text to a [`Case`].

use super::types::Case;
use super::{formula, readings, requirements, symptoms};
use crate::json::{Document, DocumentFaults, Faults, Node, Object, listing};
use crate::knowledge::{Key, Knowledge, Named, Product, Table};
use crate::suggest::{did_you_mean, so_called};

/// The members of a case.
pub(super) const MEMBERS: [&str; 7] =
    ["product", "symptoms", "readings", "facts", "formula", "requirements", "reference"];

impl Case {
    /// Reads a case from JSON text.
    ///
    /// # Errors
    /// Every fault of the text at once: malformed JSON, or all members that are unknown, missing, of a wrong type, out of
    /// range, contradictory or double.
    pub fn parse(text: &[u8], knowledge: &Knowledge) -> Result<Self, DocumentFaults> {
        let document = Document::parse(text).map_err(DocumentFaults::Malformed)?;
        let mut faults = Faults::default();
        let root = Node::root(&document.case);
        let case = read_case(&root, knowledge, &mut faults);
        Ok(Self { reference: document.reference, ..faults.finish(case)? })
    }
}

/// A case, or one that stands inside another document, without its reference.
pub(super) fn read_case(node: &Node<'_>, knowledge: &Knowledge, faults: &mut Faults) -> Option<Case> {
    let object = node.object(faults, &MEMBERS)?;
    let declared = &knowledge.declared;
    let product = read_product(&object, &declared.products, faults);
    let symptoms =
        object.optional("symptoms").map(|node| symptoms::read(&node, knowledge, product, faults)).unwrap_or_default();
    let (readings, set_aside) =
        object.optional("readings").map(|node| readings::read(&node, declared, faults)).unwrap_or_default();
    let facts = object.optional("facts").map(|node| read_facts(&node, knowledge, faults)).unwrap_or_default();
    let formula = object.optional("formula").and_then(|node| formula::read(&node, declared, faults));
    let requirements =
        object.optional("requirements").map(|node| requirements::read(&node, declared, faults)).unwrap_or_default();
    Some(Case { product: product?, symptoms, readings, set_aside, facts, formula, requirements, reference: None })
}

fn read_product(object: &Object<'_>, products: &Table<Product>, faults: &mut Faults) -> Option<Key<Product>> {
    let ids: Vec<&str> = products.ids().collect();
    let node = object.required(faults, "product", Some(format!("the products are {}", listing(ids))))?;
    find(&node, products, "product", faults)
}

pub(super) fn read_facts(
    node: &Node<'_>,
    knowledge: &Knowledge,
    faults: &mut Faults,
) -> Vec<(Key<crate::knowledge::Fact>, bool)> {
    let mut facts = Vec::new();
    node.members(faults, |faults, id, value| {
        let fact = find_named(&value, id, &knowledge.declared.facts, "fact", faults);
        if let (Some(fact), Some(stated)) = (fact, value.boolean(faults)) {
            facts.push((fact, stated));
        }
    });
    facts
}

/// The declared thing that a string names.
pub(crate) fn find<T: Named>(node: &Node<'_>, table: &Table<T>, what: &str, faults: &mut Faults) -> Option<Key<T>> {
    let id = node.text(faults)?;
    find_named(node, id, table, what, faults)
}

/// The declared thing that a string names; of an unknown one those in `listed` are suggested, and others where none of them
/// comes near.
pub(super) fn find_listed<T: Named>(
    node: &Node<'_>,
    table: &Table<T>,
    listed: &[Key<T>],
    what: &str,
    faults: &mut Faults,
) -> Option<Key<T>> {
    let id = node.text(faults)?;
    if table.find(id).is_none() {
        let own = || listed.iter().map(|key| &table[*key]);
        let things = own().map(|thing| (thing.id(), thing.other_names()));
        let ids = own().map(Named::id);
        if let Some(help) = did_you_mean(id, ids).or_else(|| so_called(id, things)) {
            node.unknown_name(faults, what, id, [], || Some(help));
            return None;
        }
    }
    find_named(node, id, table, what, faults)
}

/// The declared thing of an id; an unknown one is a fault at `node`.
pub(crate) fn find_named<T: Named>(
    node: &Node<'_>,
    id: &str,
    table: &Table<T>,
    what: &str,
    faults: &mut Faults,
) -> Option<Key<T>> {
    let found = table.find(id);
    if found.is_none() {
        let things = table.iter().map(|(_, thing)| (thing.id(), thing.other_names()));
        node.unknown_name(faults, what, id, table.ids(), || so_called(id, things));
    }
    found
}
