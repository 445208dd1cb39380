//! Evidence that can never apply or never matter, and thresholds that no value reaches.

use super::super::code::Code;
use super::Doubts;
use super::range::{Range, of_condition, of_quantity};
use crate::knowledge::{
    Cause, Condition, Confirmation, Declarations, Evidence, EvidenceKind, Input, Key, Link, Place, Product, Quantity,
    Reading, Scope,
};

/// Smaller weights, decibans, change nothing that anybody notices: odds by an eighth (one deciban is the least that is
/// noticed; Good I. J., Probability and the Weighing of Evidence, 1950, from memory).
const LEAST_WEIGHT: f64 = 0.5;

pub(super) fn look(doubts: &mut Doubts<'_>) {
    for (key, cause) in doubts.causes() {
        let products: Vec<Key<Product>> = doubts
            .knowledge
            .views()
            .iter()
            .filter(|view| view.cause_position(key).is_some())
            .map(|view| view.product)
            .collect();
        for item in &cause.evidence {
            doubt_item(doubts, cause, item, &products);
        }
        for link in &cause.links {
            doubt_link(doubts, link, &products);
        }
        for confirmation in &cause.confirmations {
            doubt_confirmation(doubts, confirmation);
        }
    }
}

fn doubt_item(doubts: &mut Doubts<'_>, cause: &Cause, item: &Evidence, products: &[Key<Product>]) {
    let word = item.word();
    if let Some(weight) = too_light(item) {
        let message = format!("evidence of {weight} decibans changes nothing");
        let help =
            format!("one deciban is the least that is noticed; give {LEAST_WEIGHT} or more, or leave the evidence out");
        doubts.tell(Code::NeverMatters, &item.place, word, message, Some(help));
    }
    if let Some(stronger) = cause.evidence.iter().find(|other| always_wins(other, item)) {
        let message =
            format!("this evidence never counts: of its group, the one at {} is always stronger", stronger.place);
        let help = "leave one of them out, or take it out of the group".to_owned();
        doubts.tell(Code::NeverMatters, &item.place, word, message, Some(help));
    }
    if let Some(id) = out_of_scope(item, products, doubts.declared()) {
        let message = format!("`{id}` belongs to other products than the cause, so this evidence never applies");
        let help = format!("add the products to `{id}`, or use another reading or fact");
        doubts.tell(Code::NeverApplies, &item.place, word, message, Some(help));
    } else if let Some(id) = without_window(item, products, doubts.declared()) {
        let message =
            format!("`{id}` has no usual window for the products of this cause, so this evidence seldom applies");
        let help = "add `.window(…)` for them, or compare with a number".to_owned();
        doubts.tell(Code::NeverApplies, &item.place, word, message, Some(help));
    }
    let implausible = match &item.kind {
        EvidenceKind::Graded(condition, _) => doubt_thresholds(doubts, condition, &item.place, word),
        EvidenceKind::Regions(regions) => {
            let told = regions
                .edges
                .iter()
                .filter(|edge| doubt_threshold(doubts, &regions.quantity, **edge, &item.place, word));
            told.count() > 0
        }
    };
    if let EvidenceKind::Graded(condition, _) = &item.kind
        && !implausible
    {
        doubt_truth(doubts, condition, &item.place, word);
    }
}

/// A symptom that none of the cause's products can have.
fn doubt_link(doubts: &mut Doubts<'_>, link: &Link, products: &[Key<Product>]) {
    let symptom = &doubts.declared().symptoms[link.symptom];
    let scopes = symptom.products.iter().copied();
    if !symptom.products.is_empty() && !covers_any(scopes, products, doubts.declared()) {
        let message = format!("`{}` belongs to other products than the cause, so it is never shown", symptom.id);
        let help = format!("add the products to `{}`, or use another symptom", symptom.id);
        doubts.tell(Code::NeverApplies, &link.place, "shows", message, Some(help));
    }
}

fn doubt_confirmation(doubts: &mut Doubts<'_>, confirmation: &Confirmation) {
    for condition in [Some(&confirmation.expect), confirmation.excluded.as_ref()].into_iter().flatten() {
        if !doubt_thresholds(doubts, condition, &confirmation.place, "confirm") {
            doubt_truth(doubts, condition, &confirmation.place, "confirm");
        }
    }
}

/// The largest weight of an item, when it is too small to matter.
fn too_light(item: &Evidence) -> Option<f64> {
    let largest = weights(item).into_iter().map(f64::abs).fold(0.0, f64::max);
    (largest < LEAST_WEIGHT).then_some(largest)
}

fn weights(item: &Evidence) -> Vec<f64> {
    match &item.kind {
        EvidenceKind::Graded(_, weights) => vec![weights.supports, weights.opposes],
        EvidenceKind::Regions(regions) => regions.weights.clone(),
    }
}

/// Whether, whenever `item` is known, `other` of the same group is known too and weighs more.
fn always_wins(other: &Evidence, item: &Evidence) -> bool {
    let same_group = other.group.is_some() && other.group == item.group && other.place != item.place;
    let needs = inputs(item);
    let least = weights(other).into_iter().map(f64::abs).fold(f64::INFINITY, f64::min);
    let most = weights(item).into_iter().map(f64::abs).fold(0.0, f64::max);
    same_group && is_sharp(other) && least > most && inputs(other).iter().all(|input| needs.contains(input))
}

fn inputs(item: &Evidence) -> Vec<Input> {
    let mut inputs = Vec::new();
    item.inputs(&mut |input| inputs.push(input));
    inputs
}

/// Whether evidence never weighs in between: between for and against every ramp passes nothing.
fn is_sharp(item: &Evidence) -> bool {
    fn sharp(condition: &Condition) -> bool {
        match condition {
            Condition::Compare(..) | Condition::Between(..) | Condition::Fact(_) | Condition::OnTarget(_) => true,
            Condition::Not(inner) => sharp(inner),
            // One part may settle it while another is unknown.
            _ => false,
        }
    }
    match &item.kind {
        EvidenceKind::Graded(condition, _) => sharp(condition),
        EvidenceKind::Regions(_) => true,
    }
}

/// A reading or fact of the item that is said to belong to other products only.
fn out_of_scope(item: &Evidence, products: &[Key<Product>], declared: &Declarations) -> Option<String> {
    let mut foreign = None;
    item.inputs(&mut |input| {
        let (id, own, windows) = match input {
            Input::Reading(key) => {
                let reading = &declared.readings[key];
                (&reading.id, &reading.products, reading.windows.as_slice())
            }
            Input::Fact(key) => (&declared.facts[key].id, &declared.facts[key].products, [].as_slice()),
            Input::Share(_) | Input::Formula => return,
        };
        // A window is as good as a product that is named.
        let scopes = own.iter().copied().chain(windows.iter().map(|(scope, _)| *scope));
        if !own.is_empty() && !covers_any(scopes, products, declared) {
            foreign = Some(id.clone());
        }
    });
    foreign
}

/// Whether a scope covers one of the products; of no products, all are covered.
fn covers_any(mut scopes: impl Iterator<Item = Scope>, products: &[Key<Product>], declared: &Declarations) -> bool {
    let covers =
        |scope: Scope| products.iter().any(|product| scope.covers(*product, declared.products[*product].family));
    products.is_empty() || scopes.any(covers)
}

/// A reading whose limits the item needs, with windows for other products only. One without any window has limits of the
/// plant alone, on purpose.
fn without_window(item: &Evidence, products: &[Key<Product>], declared: &Declarations) -> Option<String> {
    let mut limited = Vec::new();
    match &item.kind {
        EvidenceKind::Graded(condition, _) => limits_of_condition(condition, &mut limited),
        EvidenceKind::Regions(regions) => limits_of_quantity(&regions.quantity, &mut limited),
    }
    let lacking = limited.into_iter().map(|key| &declared.readings[key]).find(|reading| {
        !reading.windows.is_empty() && !covers_any(reading.windows.iter().map(|(scope, _)| *scope), products, declared)
    });
    lacking.map(|reading| reading.id.clone())
}

fn limits_of_condition(condition: &Condition, limited: &mut Vec<Key<Reading>>) {
    match condition {
        Condition::PastLimit(key, _) | Condition::OnTarget(key) => limited.push(*key),
        Condition::Compare(left, _, right) => {
            limits_of_quantity(left, limited);
            limits_of_quantity(right, limited);
        }
        Condition::Ramp { quantity, .. } | Condition::Between(quantity, ..) => limits_of_quantity(quantity, limited),
        Condition::Not(inner) => limits_of_condition(inner, limited),
        Condition::All(parts) | Condition::Any(parts) => {
            parts.iter().for_each(|part| limits_of_condition(part, limited))
        }
        _ => {}
    }
}

fn limits_of_quantity(quantity: &Quantity, limited: &mut Vec<Key<Reading>>) {
    match quantity {
        Quantity::LowLimit(key) | Quantity::Target(key) | Quantity::HighLimit(key) => limited.push(*key),
        Quantity::Abs(inner) => limits_of_quantity(inner, limited),
        Quantity::Binary(_, left, right) => {
            limits_of_quantity(left, limited);
            limits_of_quantity(right, limited);
        }
        _ => {}
    }
}

/// Doubts every threshold of a reading in a condition; whether one was doubted.
fn doubt_thresholds(doubts: &mut Doubts<'_>, condition: &Condition, at: &Place, word: &str) -> bool {
    match condition {
        Condition::Compare(quantity, _, Quantity::Number(number))
        | Condition::Compare(Quantity::Number(number), _, quantity) => {
            doubt_threshold(doubts, quantity, *number, at, word)
        }
        Condition::Ramp { quantity, from: one, to: other } | Condition::Between(quantity, one, other) => {
            let first = doubt_threshold(doubts, quantity, *one, at, word);
            doubt_threshold(doubts, quantity, *other, at, word) || first
        }
        Condition::Not(inner) => doubt_thresholds(doubts, inner, at, word),
        Condition::All(parts) | Condition::Any(parts) => {
            parts.iter().filter(|part| doubt_thresholds(doubts, part, at, word)).count() > 0
        }
        _ => false,
    }
}

/// Doubts a number that a reading is compared with and cannot have.
fn doubt_threshold(doubts: &mut Doubts<'_>, quantity: &Quantity, number: f64, at: &Place, word: &str) -> bool {
    let Quantity::Reading(key) = quantity else { return false };
    let Range { low, high } = of_quantity(quantity, doubts.declared());
    if (low..=high).contains(&number) {
        return false;
    }
    let id = &doubts.declared().readings[*key].id;
    let message = format!("`{id}` is compared with {number}, but plausible are {low} to {high}");
    let help = "values outside the plausible range are set aside; correct the number or `.plausible(…)`".to_owned();
    doubts.tell(Code::ImplausibleThreshold, at, word, message, Some(help));
    true
}

/// Doubts a condition that all plausible values make true, or false.
fn doubt_truth(doubts: &mut Doubts<'_>, condition: &Condition, at: &Place, word: &str) {
    let grades = of_condition(condition, doubts.declared());
    let always = match (grades.low >= 1.0, grades.high <= 0.0) {
        (true, _) => "true",
        (_, true) => "false",
        _ => return,
    };
    let message = format!("this condition is {always} for every plausible value");
    let help = "compare with a number that the readings can be on either side of".to_owned();
    doubts.tell(Code::NeverApplies, at, word, message, Some(help));
}

impl Evidence {
    /// The word that states it.
    fn word(&self) -> &'static str {
        match self.kind {
            EvidenceKind::Graded(..) => "evidence",
            EvidenceKind::Regions(_) => "evidence_in_regions",
        }
    }
}
