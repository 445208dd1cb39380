//! Causes that nothing in the rules tells apart.

use std::collections::BTreeMap;

use super::super::code::Code;
use super::Doubts;
use crate::knowledge::{Cause, Evidence, EvidenceKind};

/// Strengths that differ by no more rank two causes alike.
const SAME_STRENGTH: f64 = 0.1;

/// Weights that differ by no more, decibans, rank two causes alike (one deciban is the least that is noticed; Good I. J.,
/// Probability and the Weighing of Evidence, 1950, from memory).
const SAME_WEIGHT: f64 = 1.0;

pub(super) fn look(doubts: &mut Doubts<'_>) {
    let mut alike: BTreeMap<String, Vec<usize>> = BTreeMap::new();
    let causes = doubts.causes();
    for (position, (_, cause)) in causes.iter().enumerate() {
        alike.entry(outline(cause)).or_default().push(position);
    }
    for positions in alike.values().filter(|positions| positions.len() > 1) {
        for (nth, second) in positions.iter().enumerate() {
            let Some((second_key, second)) = causes.get(*second) else { continue };
            let twin = positions.iter().take(nth).filter_map(|first| causes.get(*first)).find(|(first_key, first)| {
                let shared = doubts.knowledge.views().iter().any(|view| {
                    view.cause_position(*first_key).is_some() && view.cause_position(*second_key).is_some()
                });
                shared && same_numbers(first, second)
            });
            if let Some((_, first)) = twin {
                let message = format!("nothing tells `{}` and `{}` apart", first.id, second.id);
                let help =
                    "add a symptom or `.evidence(…)` that only one of them has, or make them one cause".to_owned();
                doubts.tell(Code::Indistinguishable, &second.place, "cause", message, Some(help));
            }
        }
    }
}

/// Everything that could tell a cause from others, without the numbers: causes with different outlines differ.
fn outline(cause: &Cause) -> String {
    let mut symptoms: Vec<usize> = cause.links.iter().map(|link| link.symptom.index()).collect();
    symptoms.sort_unstable();
    let evidence: Vec<String> = sorted(cause).iter().map(|item| subject(item)).collect();
    format!("{symptoms:?} {evidence:?}")
}

/// What an item of evidence judges.
fn subject(item: &Evidence) -> String {
    match &item.kind {
        EvidenceKind::Graded(condition, _) => format!("{condition:?}"),
        EvidenceKind::Regions(regions) => format!("{:?} {:?}", regions.quantity, regions.edges),
    }
}

fn sorted(cause: &Cause) -> Vec<&Evidence> {
    let mut items: Vec<&Evidence> = cause.evidence.iter().collect();
    items.sort_by_cached_key(|item| subject(item));
    items
}

/// Whether two causes of the same outline have the same strengths and weights, as far as anybody notices.
fn same_numbers(one: &Cause, other: &Cause) -> bool {
    let strengths = one.links.iter().all(|link| {
        let same = other.links.iter().find(|twin| twin.symptom == link.symptom);
        same.is_some_and(|twin| (twin.strength - link.strength).abs() <= SAME_STRENGTH)
    });
    let near = |a: &[f64], b: &[f64]| a.len() == b.len() && a.iter().zip(b).all(|(a, b)| (a - b).abs() <= SAME_WEIGHT);
    strengths && sorted(one).iter().zip(sorted(other)).all(|(one, other)| near(&weights(one), &weights(other)))
}

fn weights(item: &Evidence) -> Vec<f64> {
    match &item.kind {
        EvidenceKind::Graded(_, weights) => vec![weights.supports, -weights.opposes],
        EvidenceKind::Regions(regions) => regions.weights.clone(),
    }
}
