//! Words of a text as quotes, and those that nothing has taken in.

use std::collections::BTreeSet;
use std::ops::Range;

use super::answer::Quote;
use super::words::{Class, Words};

/// The text of some places that stand together.
pub(super) fn quote(text: &str, words: &Words, places: Range<usize>) -> Quote {
    let tokens = words.tokens.get(places).unwrap_or_default();
    let (start, end) =
        tokens.first().zip(tokens.last()).map_or((0, 0), |(first, last)| (first.span.start, last.span.end));
    let count = |end: usize| text.get(..end).map_or(0, |head| head.chars().count());
    Quote { text: text.get(start..end).unwrap_or_default().to_owned(), start: count(start), end: count(end) }
}

/// The texts of some places: what stands together, but for words without meaning, in one.
pub(super) fn quotes(text: &str, words: &Words, places: &[usize]) -> Vec<Quote> {
    let places: BTreeSet<usize> = places.iter().copied().collect();
    runs(words, &places).into_iter().map(|run| quote(text, words, run)).collect()
}

/// Runs of places that only words without meaning part, within one clause.
fn runs(words: &Words, places: &BTreeSet<usize>) -> Vec<Range<usize>> {
    let mut runs: Vec<Range<usize>> = Vec::new();
    let class = |place: usize| words.tokens.get(place).map(|token| token.class);
    for &place in places {
        let joins = |run: &&mut Range<usize>| {
            (run.end..place).all(|between| class(between) == Some(Class::Stop))
                && !words.clauses.iter().any(|clause| (run.end..=place).contains(&clause.start))
        };
        match runs.last_mut().filter(joins) {
            Some(run) => run.end = place + 1,
            None => runs.push(place..place + 1),
        }
    }
    runs
}

/// What nothing has taken in: words with a meaning, and whole clauses of which nothing was understood.
pub(super) fn leftovers(text: &str, words: &Words, understood: &BTreeSet<usize>) -> Vec<Quote> {
    let mut left = Vec::new();
    for clause in &words.clauses {
        if !clause.clone().any(|place| understood.contains(&place)) {
            left.push(quote(text, words, clause.clone()));
            continue;
        }
        let open = clause.clone().filter(|place| {
            let class = words.tokens.get(*place).map(|token| token.class);
            !understood.contains(place) && matches!(class, Some(Class::Content | Class::Number | Class::Sign))
        });
        left.extend(runs(words, &open.collect()).into_iter().map(|run| quote(text, words, run)));
    }
    left
}
