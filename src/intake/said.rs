//! Whether a text says that something is there or that it is not.

use std::ops::Range;

use super::answer::Saying;
use super::function_words::{OPEN_CONNECTOR, PRONOUNS, SEEN};
use super::matching::Found;
use super::words::{Class, Token, Words};

/// How far before its word a "little" or "less" may stand, words.
const LACK_REACH: usize = 3;

/// Longest word in "s" that is taken for no plural.
const SHORTEST_PLURAL: usize = 3;

/// What hangs over a word.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Over {
    Nothing,
    /// The denial at this place.
    Denial(usize),
    /// A denial that an "and" parts from the word: it may reach or not.
    Perhaps,
    /// The word of expectation at this place.
    Expected(usize),
}

/// What hangs over each word of a text.
#[derive(Debug)]
pub(super) struct Denials(Vec<Over>);

impl Denials {
    pub(super) fn of(words: &Words) -> Self {
        let mut over = vec![Over::Nothing; words.tokens.len()];
        for clause in &words.clauses {
            for statement in words.statements(clause) {
                let parted_by_and =
                    statement.start.checked_sub(1).filter(|before| clause.contains(before)).is_some_and(|before| {
                        words.tokens.get(before).is_some_and(|token| token.word == OPEN_CONNECTOR)
                    });
                let before = statement.start.checked_sub(2).filter(|before| clause.contains(before));
                let before = before.and_then(|place| over.get(place)).copied();
                // "Not chewy and they turn hard" begins anew.
                let anew =
                    words.tokens.get(statement.start).is_some_and(|token| PRONOUNS.contains(&token.word.as_str()));
                let inherited = match before {
                    Some(Over::Expected(marker)) if parted_by_and && !anew => Over::Expected(marker),
                    Some(Over::Denial(_) | Over::Perhaps) if parted_by_and && !anew => Over::Perhaps,
                    _ => Over::Nothing,
                };
                hang(words, statement, inherited, &mut over);
            }
        }
        Self(over)
    }

    /// Whether the text tells of a thing found only that it is expected: "should be clear".
    pub(super) fn only_expected(&self, found: &Found) -> bool {
        let expected =
            |place: &usize| matches!(self.0.get(*place), Some(Over::Expected(turn)) if found.turn != Some(*turn));
        found.named_by.iter().any(expected)
    }

    /// Whether the denial that the name needs is of something else: "no colour, but cracks" is not "no cracks".
    pub(super) fn denies_otherwise(found: &Found, words: &Words) -> bool {
        let Some(turn) = found.turn else { return false };
        let class = |place: usize| words.tokens.get(place).map(|token| token.class);
        if !matches!(class(turn), Some(Class::Denial | Class::Expectation)) {
            return false;
        }
        let parted = |place: &usize| {
            let between = words.tokens.get(turn.min(*place)..turn.max(*place)).unwrap_or_default();
            between.iter().any(|token| token.class == Class::Connector && token.word != OPEN_CONNECTOR)
                || !words.clauses.iter().any(|clause| clause.contains(place) && clause.contains(&turn))
        };
        found.named_by.iter().all(parted)
    }

    /// What the text says of a thing found.
    pub(super) fn saying(&self, found: &Found, words: &Words) -> Saying {
        if found.turn_missing {
            return Saying::Unclear;
        }
        let of = |place: &usize| match self.0.get(*place) {
            Some(Over::Denial(turn) | Over::Expected(turn)) if found.turn == Some(*turn) => Over::Nothing,
            Some(over) => *over,
            None => Over::Nothing,
        };
        // "The crust is not dark": the denial stands within the name.
        let denied = found.named_by.iter().any(|place| matches!(of(place), Over::Denial(_)));
        let perhaps = found.named_by.iter().any(|place| of(place) == Over::Perhaps);
        if perhaps || (found.turn.is_none() && lacks(found, words)) {
            Saying::Unclear
        } else if found.turn.is_none() && before_name(found, words, |token| token.class == Class::Hardly) {
            Saying::Hardly
        } else if denied {
            Saying::Absent
        } else {
            Saying::Present
        }
    }
}

/// Hangs the denials of a statement over its words.
fn hang(words: &Words, statement: Range<usize>, inherited: Over, over: &mut [Over]) {
    let mut current = inherited;
    let tail_is_empty = |from: usize| {
        let tail = words.tokens.get(from..statement.end).unwrap_or_default();
        tail.iter().all(|token| token.class == Class::Stop || SEEN.contains(&token.word.as_str()))
    };
    for place in statement.clone() {
        let Some(token) = words.tokens.get(place) else { continue };
        if matches!(token.class, Class::Denial | Class::Expectation) {
            let denies = token.class == Class::Denial;
            current = if denies { Over::Denial(place) } else { Over::Expected(place) };
            if place > statement.start && tail_is_empty(place + 1) {
                over.iter_mut().take(place).skip(statement.start).for_each(|slot| *slot = current);
            }
        }
        if let Some(slot) = over.get_mut(place) {
            *slot = current;
        }
    }
}

/// Whether a "little" or "less" stands before a naming word; "little crystals" are small ones.
fn lacks(found: &Found, words: &Words) -> bool {
    let many = |place: &usize| words.tokens.get(*place).is_some_and(|token| is_plural(&token.word));
    let of_many = found.named_by.iter().any(many);
    before_name(found, words, |token| token.class == Class::Lack(false) && !(of_many && token.word == "little"))
}

fn before_name(found: &Found, words: &Words, is_meant: impl Fn(&Token) -> bool) -> bool {
    // "Low volume; sour smell" tells of no lack of smell.
    let start = |place: usize| words.statement_of(place).map_or(place, |statement| statement.start);
    let before = |place: &usize| {
        words.tokens.get(start(*place).max(place.saturating_sub(LACK_REACH))..*place).unwrap_or_default()
    };
    found.named_by.iter().any(|place| before(place).iter().any(&is_meant))
}

/// Whether a word looks like the plural of a noun: `crystals`, and neither `crispness` nor `gas`.
pub(super) fn is_plural(word: &str) -> bool {
    word.len() > SHORTEST_PLURAL && word.ends_with('s') && !word.ends_with("ss")
}
