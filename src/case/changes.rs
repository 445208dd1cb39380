//! A case and what is to be tried on it.

use serde_json::value::RawValue;

use super::parse::{find, read_case, read_facts};
use super::types::{Case, Measured, Seen, SetAside};
use super::{formula, readings, symptoms};
use crate::json::{Document, DocumentFaults, FaultCode, Faults, Node, Object, listing};
use crate::knowledge::{Action, Fact, How, Ingredient, Key, Knowledge, Product};
use crate::units::{Unit, convert};

/// A case with hypothetical changes.
#[derive(Debug, Clone)]
pub struct WhatIfRequest {
    /// The case as it is.
    pub case: Case,
    /// What is tried.
    pub changes: CaseChanges,
    /// The caller's own reference, of the request or else of the case, handed back as it came.
    pub reference: Option<Box<RawValue>>,
}

/// What is tried on a case.
#[derive(Debug, Clone, Default)]
pub struct CaseChanges {
    /// Readings in the place of those of the case, or beside them.
    pub readings: Vec<Measured>,
    /// Readings that cannot be believed, and so change nothing.
    pub set_aside: Vec<SetAside>,
    /// Facts.
    pub facts: Vec<(Key<Fact>, bool)>,
    /// Symptoms.
    pub symptoms: Vec<Seen>,
    /// Amounts of the formula.
    pub ingredients: Vec<IngredientChange>,
    /// Actions that are done, each with the quantities that it has in the case.
    pub actions: Vec<Key<Action>>,
}

/// An amount of the formula that is tried.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct IngredientChange {
    /// The ingredient.
    pub ingredient: Key<Ingredient>,
    /// How the amount changes it.
    pub how: How,
    /// The amount; `None`: all of it, which only can be taken out.
    pub amount: Option<TriedAmount>,
}

/// A mass in the batch, or a share of the flour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TriedAmount {
    /// Mass, kg.
    Mass(f64),
    /// % on flour.
    OnFlour(f64),
}

const CHANGES: [&str; 5] = ["readings", "facts", "symptoms", "ingredients", "actions"];

impl WhatIfRequest {
    /// Reads a request from JSON text.
    ///
    /// # Errors
    /// Every fault of the text at once.
    pub fn parse(text: &[u8], knowledge: &Knowledge) -> Result<Self, DocumentFaults> {
        let document = Document::parse(text).map_err(DocumentFaults::Malformed)?;
        let mut faults = Faults::default();
        let root = Node::root(&document.case);
        let object = root.object(&mut faults, &["case", "changes", "reference"]);
        let read = object.and_then(|object| read(&object, knowledge, &mut faults));
        let (case, changes) = faults.finish(read)?;
        Ok(Self { case, changes, reference: document.reference })
    }
}

fn read(object: &Object<'_>, knowledge: &Knowledge, faults: &mut Faults) -> Option<(Case, CaseChanges)> {
    let case = object.required(faults, "case", Some("the case as `/v1/diagnoses` takes it".to_owned()));
    let case = case.and_then(|node| read_case(&node, knowledge, faults));
    let changes = object.required(faults, "changes", Some(format!("its members are {}", listing(CHANGES))))?;
    let members = changes.object(faults, &CHANGES)?;
    let product = case.as_ref().map(|case| case.product);
    let tried = read_changes(&members, knowledge, product, faults);
    let nothing = CHANGES.iter().all(|name| members.optional(name).is_none());
    if nothing {
        let help = Some(format!("give one of {}", listing(CHANGES)));
        changes.fault(faults, FaultCode::Missing, "nothing is changed".to_owned(), help);
    }
    let case = case?;
    if let Some(node) = members.optional("symptoms") {
        check_symptoms(&node, &case, &tried, knowledge, faults);
    }
    Some((case, tried))
}

fn read_changes(
    members: &Object<'_>,
    knowledge: &Knowledge,
    product: Option<Key<Product>>,
    faults: &mut Faults,
) -> CaseChanges {
    let declared = &knowledge.declared;
    let (readings, set_aside) =
        members.optional("readings").map(|node| readings::read(&node, declared, faults)).unwrap_or_default();
    let facts = members.optional("facts").map(|node| read_facts(&node, knowledge, faults)).unwrap_or_default();
    let symptoms = members.optional("symptoms").map(|node| symptoms::read(&node, knowledge, product, faults));
    let (mut ingredients, mut actions): (Vec<IngredientChange>, Vec<_>) = (Vec::new(), Vec::new());
    if let Some(node) = members.optional("ingredients") {
        node.items(faults, |faults, item| {
            let Some(change) = read_ingredient(&item, knowledge, faults) else { return };
            check_settled(change, &ingredients, &item, knowledge, faults);
            ingredients.push(change);
        });
    }
    if let Some(node) = members.optional("actions") {
        node.items(faults, |faults, item| {
            let Some(action) = find(&item, &declared.actions, "action", faults) else { return };
            if actions.contains(&action) {
                item.fault(faults, FaultCode::Duplicate, "the action stands twice".to_owned(), None);
            } else {
                actions.push(action);
            }
        });
    }
    CaseChanges { readings, set_aside, facts, symptoms: symptoms.unwrap_or_default(), ingredients, actions }
}

fn read_ingredient(item: &Node<'_>, knowledge: &Knowledge, faults: &mut Faults) -> Option<IngredientChange> {
    let object = item.object(faults, &["ingredient", "amount", "unit", "how"])?;
    let ingredient = object.required(faults, "ingredient", None);
    let ingredient = ingredient.and_then(|node| find(&node, &knowledge.declared.ingredients, "ingredient", faults));
    let how = object.optional("how").map_or(Some(How::Doses), |node| read_how(&node, faults));
    let all = how == Some(How::TakesOut) && object.optional("amount").is_none();
    let amount = if all { None } else { Some(read_amount(&object, faults)) };
    Some(IngredientChange {
        ingredient: ingredient?,
        how: how?,
        amount: amount.map_or(Some(None), |read| read.map(Some))?,
    })
}

/// An amount that is said to become one thing must not be said to become another.
fn check_settled(
    change: IngredientChange,
    earlier: &[IngredientChange],
    item: &Node<'_>,
    knowledge: &Knowledge,
    faults: &mut Faults,
) {
    let settles = |own: &IngredientChange| own.how == How::Doses || own.amount.is_none();
    let is_settled = |own: &IngredientChange| own.ingredient == change.ingredient && settles(own);
    if settles(&change) && earlier.iter().any(is_settled) {
        let id = &knowledge.declared.ingredients[change.ingredient].id;
        item.fault(faults, FaultCode::Contradiction, format!("the amount of `{id}` is set twice"), None);
    }
}

fn read_how(node: &Node<'_>, faults: &mut Faults) -> Option<How> {
    let word = node.text(faults)?;
    let found = How::ALL.into_iter().find(|how| how.word() == word);
    if found.is_none() {
        let words = How::ALL.map(How::word);
        node.unknown_name(faults, "way", word, words, || Some(format!("the ways are {}", listing(words))));
    }
    found
}

fn read_amount(object: &Object<'_>, faults: &mut Faults) -> Option<TriedAmount> {
    let help = Some("a mass, for example `kg`, or `%` on flour".to_owned());
    let place = object.required(faults, "amount", None);
    let amount = place.and_then(|node| node.number_within(faults, 0.0, f64::INFINITY));
    let node = object.required(faults, "unit", help.clone())?;
    let unit = node.unit(faults, None)?;
    let factor = |code: &str| Unit::parse(code).ok().and_then(|wanted| convert(1.0, &unit, &wanted).ok());
    let (factor, is_mass) = match (factor("kg"), factor("%")) {
        (Some(factor), _) => (factor, true),
        (None, Some(factor)) => (factor, false),
        (None, None) => {
            let detail = format!("`{unit}` is neither a mass nor a share of the flour");
            node.fault(faults, FaultCode::WrongKindOfUnit, detail, help);
            return None;
        }
    };
    let told = if is_mass { "kg" } else { "% on flour" };
    let amount = formula::within_amounts(&place?, amount? * factor, told, faults)?;
    Some(if is_mass { TriedAmount::Mass(amount) } else { TriedAmount::OnFlour(amount) })
}

/// A symptom that is tried as present must not stand beside one of the case that contradicts it.
fn check_symptoms(node: &Node<'_>, case: &Case, changes: &CaseChanges, knowledge: &Knowledge, faults: &mut Faults) {
    let declared = &knowledge.declared.symptoms;
    let stays = |seen: &&Seen| changes.symptoms.iter().all(|tried| tried.symptom != seen.symptom);
    for tried in changes.symptoms.iter().filter(|tried| tried.certainty > 0.5) {
        for seen in case.symptoms.iter().filter(stays).filter(|seen| seen.certainty > 0.5) {
            let (one, other) = (&declared[tried.symptom], &declared[seen.symptom]);
            if one.contradicts.contains(&seen.symptom) || other.contradicts.contains(&tried.symptom) {
                let detail = format!("`{}` cannot be present together with `{}` of the case", one.id, other.id);
                let help = Some(format!("give `{}` as absent too", other.id));
                node.fault(faults, FaultCode::Contradiction, detail, help);
            }
        }
    }
}
