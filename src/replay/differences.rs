//! Where two answers differ.

use std::collections::{BTreeMap, BTreeSet};

use super::answer::{ActionChange, ActionDifference, CautionDifferences, QuantityChange, RankingDifferences};
use super::recorded::{Recorded, RecordedAction, RecordedQuantity};
use crate::comparison::{ProbabilityChange, probability_changes};
use crate::json::{Json, step};
use crate::rule_tests::LeadingCause;

/// How many causes come first.
const FIRST: usize = 3;

/// Most changes of probability that are listed.
const MOST_CHANGES: usize = 20;

/// Most places that are listed.
const MOST_PLACES: usize = 20;

/// What became of the ranking; `None` where nothing differs.
pub(super) fn ranking(before: &[LeadingCause], after: &[LeadingCause]) -> Option<RankingDifferences> {
    let missing = |from: &[LeadingCause], other: &[LeadingCause]| -> Vec<LeadingCause> {
        let known: BTreeSet<&str> = other.iter().map(|own| own.cause.as_str()).collect();
        from.iter().filter(|own| !known.contains(own.cause.as_str())).cloned().collect()
    };
    let (appeared, vanished) = (missing(after, before), missing(before, after));
    let mut changes = probability_changes(before, after);
    let leader_changed = before.first().map(|own| &own.cause) != after.first().map(|own| &own.cause);
    if changes.is_empty() && appeared.is_empty() && vanished.is_empty() && !leader_changed {
        return None;
    }
    changes.truncate(MOST_CHANGES);
    let first = |ranking: &[LeadingCause]| ranking.iter().take(FIRST).cloned().collect();
    let largest_change: Option<ProbabilityChange> = changes.first().cloned();
    let (before, after) = (first(before), first(after));
    Some(RankingDifferences { leader_changed, before, after, appeared, vanished, largest_change, changes })
}

/// Actions that came, went, or have other quantities: in the order of the answer of now, then those that went.
pub(super) fn actions(before: &Recorded, after: &Recorded) -> Vec<ActionDifference> {
    let find = |among: &'_ [RecordedAction], own: &RecordedAction| {
        among.iter().position(|other| other.cause == own.cause && other.action == own.action)
    };
    let mut differences = Vec::new();
    for own in &after.actions {
        let then = find(&before.actions, own).and_then(|place| before.actions.get(place));
        let change = if then.is_some() { ActionChange::Quantities } else { ActionChange::Appeared };
        let quantities = quantities(then.map_or(&[], |own| own.quantities.as_slice()), &own.quantities);
        if then.is_none() || !quantities.is_empty() {
            differences.push(difference(own, change, quantities));
        }
    }
    for own in before.actions.iter().filter(|own| find(&after.actions, own).is_none()) {
        differences.push(difference(own, ActionChange::Vanished, quantities(&own.quantities, &[])));
    }
    differences
}

fn difference(own: &RecordedAction, change: ActionChange, quantities: Vec<QuantityChange>) -> ActionDifference {
    ActionDifference { cause: own.cause.clone(), action: own.action.clone(), change, quantities }
}

fn quantities(before: &[RecordedQuantity], after: &[RecordedQuantity]) -> Vec<QuantityChange> {
    let mut pairs: BTreeMap<&str, (Option<&RecordedQuantity>, Option<&RecordedQuantity>)> = BTreeMap::new();
    before.iter().for_each(|own| pairs.entry(&own.name).or_default().0 = Some(own));
    after.iter().for_each(|own| pairs.entry(&own.name).or_default().1 = Some(own));
    let differing = pairs.into_iter().filter(|(_, (before, after))| before != after);
    let change =
        |(name, (before, after)): (&str, (Option<&RecordedQuantity>, Option<&RecordedQuantity>))| QuantityChange {
            name: name.to_owned(),
            before: before.map(|own| own.value),
            after: after.map(|own| own.value),
            unit_before: before.map(|own| own.unit.clone()),
            unit_after: after.map(|own| own.unit.clone()),
        };
    differing.map(change).collect()
}

/// Cautions that came, went, or say something else.
pub(super) fn cautions(before: &Recorded, after: &Recorded) -> CautionDifferences {
    let words = |answer: &Recorded| -> BTreeMap<String, Vec<(String, String)>> {
        let mut words: BTreeMap<String, Vec<(String, String)>> = BTreeMap::new();
        for own in &answer.cautions {
            words.entry(own.caution.clone()).or_default().push(own.words.clone());
        }
        words
    };
    let (before, after) = (words(before), words(after));
    let only = |one: &BTreeMap<String, _>, other: &BTreeMap<String, Vec<(String, String)>>| -> Vec<String> {
        one.keys().filter(|id| !other.contains_key(*id)).cloned().collect()
    };
    let reworded = after.iter().filter(|(id, own)| before.get(*id).is_some_and(|other| other != *own));
    CautionDifferences {
        appeared: only(&after, &before),
        vanished: only(&before, &after),
        reworded: reworded.map(|(id, _)| id.clone()).collect(),
    }
}

/// The first places at which two JSON values differ, and how many more there are; the order of members does not matter.
pub(super) fn places(before: &Json, after: &Json) -> (Vec<String>, usize) {
    let mut places = Vec::new();
    let mut count = 0;
    compare(before, after, "", &mut |place| {
        count += 1;
        if places.len() < MOST_PLACES {
            places.push(place);
        }
    });
    let left_out = count - places.len();
    (places, left_out)
}

fn compare(before: &Json, after: &Json, place: &str, differs: &mut impl FnMut(String)) {
    match (before, after) {
        (Json::Object(before), Json::Object(after)) => {
            let member = |name: &str| format!("{place}/{}", step(name));
            let find = |among: &'_ [(String, Json)], name: &str| among.iter().position(|(own, _)| own == name);
            for (name, own) in before {
                match find(after, name).and_then(|found| after.get(found)) {
                    Some((_, other)) => compare(own, other, &member(name), &mut *differs),
                    None => differs(member(name)),
                }
            }
            after.iter().filter(|(name, _)| find(before, name).is_none()).for_each(|(name, _)| differs(member(name)));
        }
        (Json::Array(before), Json::Array(after)) => {
            for (index, (own, other)) in before.iter().zip(after).enumerate() {
                compare(own, other, &format!("{place}/{index}"), &mut *differs);
            }
            for index in before.len().min(after.len())..before.len().max(after.len()) {
                differs(format!("{place}/{index}"));
            }
        }
        _ if before == after => {}
        _ => differs(place.to_owned()),
    }
}
