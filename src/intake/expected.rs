//! Words by which a speaker tells what was expected, and words of approval: neither names a fault.

use std::ops::Range;

use super::function_words::{APPROVALS, AUXILIARIES, COPULAS, DETERMINERS, OPEN_CONNECTOR, PRONOUNS, TROUBLES};
use super::said::is_plural;
use super::words::{Class, Words};

/// Marks the words behind which the expected stands: "should be soft", "used to keep", "supposed to snap", "instead of flaky".
/// They deny what follows, since it is not so; "should not be hard" tells that it is.
pub(super) fn mark(words: &mut Words) {
    for clause in words.clauses.clone() {
        for statement in words.statements(&clause) {
            for place in statement.clone() {
                let Some(class) = class_of(words, &statement, place) else { continue };
                set(words, place, class);
                if class == Class::Stop {
                    let denial = (place + 1..statement.end)
                        .find(|at| words.tokens.get(*at).is_some_and(|token| token.class == Class::Denial))
                        .filter(|at| *at == place + 1);
                    denial.into_iter().for_each(|at| set(words, at, Class::Stop));
                }
            }
        }
    }
}

fn set(words: &mut Words, place: usize, class: Class) {
    if let Some(token) = words.tokens.get_mut(place) {
        token.class = class;
    }
}

/// What a word is that tells of the expected, if it does.
fn class_of(words: &Words, statement: &Range<usize>, place: usize) -> Option<Class> {
    let word = |at: usize| {
        let token = words.tokens.get(at).filter(|_| statement.contains(&at));
        token.map_or("", |token| token.word.as_str())
    };
    let (own, next) = (word(place), word(place + 1));
    let denied = |at: usize| words.tokens.get(at).is_some_and(|token| token.class == Class::Denial);
    match own {
        "shouldnt" | "oughtnt" => Some(Class::Stop),
        "should" | "ought" if PRONOUNS.contains(&next) || DETERMINERS.contains(&next) => None,
        "should" | "ought" => Some(if denied(place + 1) { Class::Stop } else { Class::Expectation }),
        "supposed" | "meant" | "used" if next == "to" => {
            let denied = denied(place + 2) || place.checked_sub(1).is_some_and(denied);
            Some(if denied { Class::Stop } else { Class::Expectation })
        }
        "instead" if next == "of" => Some(Class::Expectation),
        "rather" if next == "than" => Some(Class::Expectation),
        "before" if PRONOUNS.contains(&next) && AUXILIARIES.contains(&word(place + 2)) => Some(Class::Expectation),
        // "It was smooth before."
        "before" if place + 1 == statement.end => {
            let told = statement.start..place;
            told.into_iter().any(|at| AUXILIARIES.contains(&word(at))).then_some(Class::Expectation)
        }
        _ => None,
    }
}

/// Which words stand in a statement that approves: "colour is fine", "no colour problems", "firm enough".
pub(super) fn approved(words: &Words) -> Vec<bool> {
    let mut approved = vec![false; words.tokens.len()];
    for clause in &words.clauses {
        let mut before: Option<Range<usize>> = None;
        for statement in words.statements(clause) {
            let joined = before.filter(|before| is_joined(words, before, &statement));
            let from = joined.map_or(statement.start, |before| before.start);
            if approves(words, &(from..statement.end)) {
                approved.iter_mut().take(statement.end).skip(from).for_each(|slot| *slot = true);
            }
            before = Some(statement);
        }
    }
    approved
}

/// Whether an "and" joins a word of approval and one more quality to one statement: "nice and brown", "brown and nice", and not
/// "top is good and sides cave in".
fn is_joined(words: &Words, before: &Range<usize>, behind: &Range<usize>) -> bool {
    let word = |place: usize| words.tokens.get(place).map_or("", |token| token.word.as_str());
    let tokens = words.tokens.get(behind.clone()).unwrap_or_default();
    let and = before.end + 1 == behind.start && word(before.end) == OPEN_CONNECTOR;
    let quality = match tokens {
        [first, rest @ ..] => {
            let ends = rest.first().is_none_or(|next| next.class == Class::Stop);
            let told = rest.iter().any(|token| COPULAS.contains(&token.word.as_str()));
            first.class == Class::Content && !is_plural(&first.word) && ends && !told
        }
        [] => false,
    };
    let nice_and = before.end.checked_sub(1).is_some_and(|last| APPROVALS.contains(&word(last)));
    let and_nice = !tokens.is_empty() && tokens.iter().all(|token| APPROVALS.contains(&token.word.as_str()));
    and && ((nice_and && quality) || and_nice)
}

fn approves(words: &Words, statement: &Range<usize>) -> bool {
    let tokens = words.tokens.get(statement.clone()).unwrap_or_default();
    let denied = tokens.iter().any(|token| matches!(token.class, Class::Denial | Class::Hardly | Class::Expectation));
    let told = |list: &[&str]| tokens.iter().any(|token| list.contains(&token.word.as_str()));
    // "Fine cracks" are thin ones.
    let fine = tokens.iter().zip(tokens.iter().skip(1).map(Some).chain([None])).any(|(token, next)| {
        token.word == "fine" && !next.is_some_and(|next| matches!(next.class, Class::Content | Class::Product))
    });
    if denied { told(TROUBLES) } else { fine || told(APPROVALS) }
}

#[cfg(test)]
mod tests {
    use super::{approved, mark};
    use crate::intake::words::{Class, Words};

    fn expects(text: &str) -> bool {
        let mut words = Words::of(text);
        mark(&mut words);
        words.tokens.iter().any(|token| token.class == Class::Expectation)
    }

    #[test]
    fn the_expected_is_told_from_questions_and_denials() {
        for text in ["they should snap", "used to be crisp", "soft instead of crisp", "it was crisp before"] {
            assert!(expects(text), "{text}");
        }
        for text in
            ["should we bake longer", "it should not be hard", "mouldy before the date", "the flour used was new"]
        {
            assert!(!expects(text), "{text}");
        }
        let mut words = Words::of("it should not be hard");
        mark(&mut words);
        assert!(words.tokens.iter().all(|token| token.class != Class::Denial));
    }

    #[test]
    fn approval_reaches_over_its_statement() {
        let told = |text: &str| approved(&Words::of(text)).iter().any(|approved| *approved);
        for text in [
            "no colour problems",
            "crust perfect",
            "the jelly is firm enough",
            "tops are fine",
            "nothing wrong with it",
        ] {
            assert!(told(text), "{text}");
        }
        for text in ["not good", "not brown enough", "fine cracks", "a colour problem", "it is not fine"] {
            assert!(!told(text), "{text}");
        }
        assert_eq!(approved(&Words::of("nice top but hollow")), [true, true, false, false]);
        assert_eq!(approved(&Words::of("top nice and brown but flat")), [true, true, true, true, false, false]);
        assert_eq!(approved(&Words::of("brown and lovely")), [true; 3]);
        assert_eq!(approved(&Words::of("top good and sides cave")), [true, true, false, false, false]);
    }
}
