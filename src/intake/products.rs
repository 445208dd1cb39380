//! The products that a text names.

use super::matching::{Found, Meanings, Statement};
use super::phrases::PhraseIndex;
use super::words::Words;

/// Least recall of a product that may be meant, and of one that is (chosen on the tables of `tests/reference`).
const RECALLS: (f64, f64) = (0.3, 0.85);

/// Recalls nearer than this do not tell two products apart.
const TIE: f64 = 0.05;

/// Products by place in the index, best first, and whether the first is beyond doubt.
pub(super) fn possible(words: &Words, index: &PhraseIndex) -> (Vec<Found>, bool) {
    let mut meanings = Meanings::default();
    let mut best: Vec<Found> = Vec::new();
    for clause in &words.clauses {
        for found in Statement::read(words, &clause.clone().into(), index, &mut meanings, &[]).find(index) {
            match best.iter_mut().find(|own| own.entry == found.entry) {
                Some(own) if found.recall > own.recall => *own = found,
                Some(_) => {}
                None => best.push(found),
            }
        }
    }
    best.retain(|found| found.recall >= RECALLS.0);
    best.sort_by(|a, b| b.recall.total_cmp(&a.recall).then(b.score.total_cmp(&a.score)).then(a.entry.cmp(&b.entry)));
    let sure = match best.as_slice() {
        [] => false,
        [one] => one.recall >= RECALLS.1 && !one.misspelt,
        [one, next, ..] => one.recall >= RECALLS.1 && !one.misspelt && one.recall - next.recall >= TIE,
    };
    (best, sure)
}
