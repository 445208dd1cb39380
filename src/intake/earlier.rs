//! What something was before it became what is complained about: "soft on Monday, hard by Friday".

use std::ops::Range;

use super::words::{Class, Words};

const DAYS: &[&str] = &["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];

/// Words for the time at which something was not there yet: "no cracks when packed", "not soft fresh from the oven".
const TIMES: &[&str] =
    &["at", "before", "first", "fresh", "freshly", "initially", "originally", "until", "when", "while"];

/// Marks the day of an earlier state as a word of the expected, where the same clause or the next tells of a later one: what
/// was so then is so no more. What was not there yet at one time, and is there in another clause, is no denial.
pub(super) fn mark(words: &mut Words) {
    mark_days(words);
    for place in not_yet(words) {
        if let Some(token) = words.tokens.get_mut(place) {
            token.class = Class::Stop;
        }
    }
}

/// The denials of what other statements tell of, where a time is told with them, and the words that they deny.
fn not_yet(words: &Words) -> Vec<usize> {
    let class = |place: usize| words.tokens.get(place).map(|token| token.class);
    let mut places = Vec::new();
    for clause in &words.clauses {
        for statement in words.statements(clause) {
            let denial = statement.clone().find(|at| class(*at) == Some(Class::Denial));
            let Some(denial) = denial.filter(|at| clause.clone().any(|time| time > *at && is_time(words, time))) else {
                continue;
            };
            let told = (denial + 1..statement.end).filter(|at| class(*at) == Some(Class::Content));
            let again: Vec<usize> = told.filter(|at| is_told_elsewhere(words, *at, &statement)).collect();
            if !again.is_empty() {
                places.push(denial);
                places.extend(again);
            }
        }
    }
    places
}

fn is_time(words: &Words, place: usize) -> bool {
    TIMES.contains(&word(words, Some(place)))
}

/// Whether another statement has the word and denies nothing.
fn is_told_elsewhere(words: &Words, place: usize, own: &Range<usize>) -> bool {
    let Some(stem) = words.tokens.get(place).map(|token| &token.stem) else { return false };
    let others = words.clauses.iter().flat_map(|clause| words.statements(clause)).filter(|other| other != own);
    others.into_iter().any(|other| {
        let tokens = words.tokens.get(other).unwrap_or_default();
        tokens.iter().any(|token| token.stem == *stem) && !tokens.iter().any(|token| token.class == Class::Denial)
    })
}

fn mark_days(words: &mut Words) {
    let mut days = Vec::new();
    for (at, clause) in words.clauses.iter().enumerate() {
        let end = words.clauses.get(at + 1).map_or(clause.end, |next| next.end);
        let earlier = clause.clone().filter(|place| is_earlier(words, *place));
        days.extend(earlier.filter(|place| is_later_told(words, place + 1..end)));
    }
    for day in days {
        if let Some(token) = words.tokens.get_mut(day) {
            token.class = Class::Expectation;
        }
    }
}

fn word(words: &Words, at: Option<usize>) -> &str {
    at.and_then(|at| words.tokens.get(at)).map_or("", |token| token.word.as_str())
}

/// "On Monday", "at first".
fn is_earlier(words: &Words, place: usize) -> bool {
    let (before, own) = (word(words, place.checked_sub(1)), word(words, Some(place)));
    (before == "on" && DAYS.contains(&own)) || (before == "at" && own == "first")
}

/// "By Friday", "by then".
fn is_later_told(words: &Words, mut places: Range<usize>) -> bool {
    places.any(|at| {
        let next = word(words, Some(at + 1));
        word(words, Some(at)) == "by" && (DAYS.contains(&next) || matches!(next, "now" | "then"))
    })
}

#[cfg(test)]
mod tests {
    use super::mark;
    use crate::intake::words::{Class, Words};

    fn is_marked(text: &str, class: Class) -> bool {
        let mut words = Words::of(text);
        mark(&mut words);
        words.tokens.iter().any(|token| token.class == class)
    }

    #[test]
    fn an_earlier_day_is_told_from_the_day_of_the_fault() {
        for (text, earlier) in [
            ("soft on Monday, hard by Friday", true),
            ("at first crisp, soft by then", true),
            ("hollow on Monday", false),
            ("hollow on Monday, pale on Tuesday", false),
        ] {
            assert_eq!(is_marked(text, Class::Expectation), earlier, "{text}");
        }
    }

    #[test]
    fn what_was_not_there_yet_is_no_denial() {
        for (text, denied) in [
            ("cracked after packing, no cracks when packed", false),
            ("soft after a week, not soft at first", false),
            ("no cracks when packed", true),
            ("some cracked, no cracks on others", true),
        ] {
            assert_eq!(is_marked(text, Class::Denial), denied, "{text}");
        }
    }
}
