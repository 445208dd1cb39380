//! What something was before it became what is complained about: "soft on Monday, hard by Friday".

use std::ops::Range;

use super::words::{Class, Words};

const DAYS: &[&str] = &["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];

/// Marks the day of an earlier state as a word of the expected, where the same clause or the next tells of a later one: what
/// was so then is so no more.
pub(super) fn mark(words: &mut Words) {
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

    #[test]
    fn an_earlier_day_is_told_from_the_day_of_the_fault() {
        for (text, earlier) in [
            ("soft on Monday, hard by Friday", true),
            ("at first crisp, soft by then", true),
            ("hollow on Monday", false),
            ("hollow on Monday, pale on Tuesday", false),
        ] {
            let mut words = Words::of(text);
            mark(&mut words);
            let told = words.tokens.iter().any(|token| token.class == Class::Expectation);
            assert_eq!(told, earlier, "{text}");
        }
    }
}
