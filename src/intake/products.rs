//! The products that a text names.

use super::matching::{Found, Meanings, Statement};
use super::phrases::PhraseIndex;
use super::words::Words;

/// Least recall of a product that may be meant (chosen on the tables of `tests/reference`).
const LEAST_RECALL: f64 = 0.3;

/// Least recall of a product that is meant beyond doubt (chosen likewise).
const SURE_RECALL: f64 = 0.85;

/// Recalls nearer than this do not tell two products apart.
const TIE: f64 = 0.05;

/// Products by place in the index, best first, and whether the first is beyond doubt.
pub(super) fn possible(words: &Words, index: &PhraseIndex) -> (Vec<Found>, bool) {
    let mut meanings = Meanings::default();
    let mut best: Vec<Found> = Vec::new();
    for clause in &words.clauses {
        for found in Statement::look_up(words, &clause.clone().into(), index, &mut meanings, &[]).find(index) {
            match best.iter_mut().find(|own| own.entry == found.entry) {
                Some(own) if found.recall > own.recall => *own = found,
                Some(_) => {}
                None => best.push(found),
            }
        }
    }
    best.retain(|found| found.recall >= LEAST_RECALL);
    best.sort_by(|a, b| {
        let longer = b.named_by.len().cmp(&a.named_by.len());
        let by_recall = b.recall.total_cmp(&a.recall).then(longer).then(b.score.total_cmp(&a.score));
        by_recall.then(a.entry.cmp(&b.entry))
    });
    let sure = match best.as_slice() {
        [] => false,
        [one] => one.recall >= SURE_RECALL && !one.misspelt,
        [one, others @ ..] => {
            let near = others.iter().filter(|other| one.recall - other.recall < TIE);
            one.recall >= SURE_RECALL && !one.misspelt && near.into_iter().all(|other| takes_in(one, other))
        }
    };
    (best, sure)
}

/// Whether a name takes in all the words of another: "pie crust" before "pie".
fn takes_in(one: &Found, other: &Found) -> bool {
    one.named_by.len() > other.named_by.len() && other.named_by.iter().all(|place| one.named_by.contains(place))
}
