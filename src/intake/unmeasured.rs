//! Values that a text names and that nobody measured: wanted, allowed, denied, bounds, tolerances, differences.

use std::ops::Range;

use super::words::{Class, Token, Words};

const REFERENCE: &str = "it is told as a usual, wanted or allowed value, not as the one that was measured";
const DENIED: &str = "the words deny it";
const BOUND: &str = "it is told as a bound, not as the value that was measured";
const TOLERANCE: &str = "it is a tolerance";
const DIFFERENCE: &str = "it is told as a difference from another value";

/// Words that name a value that is usual, wanted or allowed (common practice).
const REFERENCES: &[&str] = &[
    "normally",
    "usually",
    "typically",
    "normal",
    "usual",
    "target",
    "targets",
    "targeted",
    "aim",
    "aimed",
    "aiming",
    "goal",
    "spec",
    "specs",
    "specification",
    "specified",
    "standard",
    "limit",
    "limits",
    "benchmark",
    "allowed",
    "maximum",
    "minimum",
    "max",
    "recommended",
    "recommendation",
    "required",
    "desired",
    "ideal",
    "ideally",
    "optimum",
    "optimal",
    "planned",
    "wanted",
    "expected",
    "tolerance",
    "setpoint",
    "must",
    "shall",
    "previously",
    "formerly",
    "versus",
    "vs",
    "against",
];

/// Words right before a value that bound it.
const BOUNDS_BEFORE: &[&str] =
    &["under", "below", "above", "over", "beyond", "exceed", "exceeds", "exceeded", "exceeding", "than"];

/// Pairs of words that bound a value before or behind them.
const BOUNDS_OF_TWO: &[[&str; 2]] =
    &[["at", "least"], ["at", "most"], ["up", "to"], ["a", "maximum"], ["a", "minimum"]];

/// Words behind "or" and "and" that bound the value before them: "31 °C or more".
const BOUNDS_BEHIND: &[&str] = &[
    "more", "less", "above", "below", "over", "under", "higher", "lower", "hotter", "warmer", "colder", "cooler",
    "longer", "shorter", "up", "upwards", "beyond",
];

/// Words of a difference right behind a value: "2 °C warmer", "10 min too short".
const DIFFERENCES: &[&str] = &[
    "too", "higher", "lower", "hotter", "warmer", "colder", "cooler", "longer", "shorter", "later", "earlier", "late",
    "early", "heavier", "lighter", "thicker", "thinner", "wider", "narrower", "bigger", "smaller", "more", "less",
];

/// Words right before a difference: "dropped 3 °C", "off by 2 mm".
const CHANGES: &[&str] = &[
    "by",
    "increased",
    "decreased",
    "dropped",
    "fell",
    "climbed",
    "raised",
    "reduced",
    "shortened",
    "extended",
    "lengthened",
];

/// The same, but for times, which dough rises for: "rose 2 °C", and not "rose 60 min".
const RISES: &[&str] = &["rose", "risen", "rises"];

/// Words that leave a value about what it is.
const ABOUT: &[&str] =
    &["about", "around", "roughly", "approx", "approximately", "ca", "the", "a", "of", "nearly", "some"];

/// Words for reaching a value, which a denial before them denies.
const REACHING: &[&str] = &[
    "reach",
    "reached",
    "reaches",
    "exceed",
    "exceeded",
    "hit",
    "hold",
    "held",
    "maintain",
    "maintained",
    "achieve",
    "achieved",
    "met",
    "meet",
    "measured",
    "warmer",
    "hotter",
    "colder",
    "cooler",
    "higher",
    "lower",
    "longer",
    "shorter",
    "least",
    "actually",
];

/// Denials that are none of a symptom.
const FAILED: &str = "failed";

/// How far before a value a word such as "usually" may stand: "instead of only 60 min".
const REFERENCE_REACH: usize = 6;

/// Marks of a bound right before a number.
const BOUND_MARKS: [char; 6] = ['<', '>', '≤', '≥', '⩽', '⩾'];

/// Marks of a tolerance before a number.
pub(super) const TOLERANCE_MARKS: [&str; 5] = ["±", "+/-", "+-", "+/−", "plus/minus"];

/// A value in its clause.
#[derive(Debug, Clone, Copy)]
pub(super) struct InClause<'a> {
    pub(super) text: &'a str,
    pub(super) words: &'a Words,
    pub(super) clause: &'a Range<usize>,
    /// Its number and unit.
    pub(super) places: &'a Range<usize>,
    /// Whether it is a time.
    pub(super) is_time: bool,
}

impl<'a> InClause<'a> {
    /// Why the value was not measured, or not just so; `None` of one that was.
    pub(super) fn doubt(self) -> Option<&'static str> {
        let head = self.text_before().trim_end();
        if TOLERANCE_MARKS.iter().any(|mark| head.ends_with(mark)) {
            Some(TOLERANCE)
        } else if self.is_reference() {
            Some(REFERENCE)
        } else if self.is_denied() {
            Some(DENIED)
        } else if head.ends_with(BOUND_MARKS) || self.is_bound() {
            Some(BOUND)
        } else if self.is_difference() {
            Some(DIFFERENCE)
        } else {
            None
        }
    }

    fn text_before(self) -> &'a str {
        let start = self.words.tokens.get(self.places.start).map_or(0, |token| token.span.start);
        self.text.get(..start).unwrap_or_default()
    }

    /// The words before the value in its statement, since the number before it.
    fn before(self) -> &'a [Token] {
        let start = self.clause.start.max(self.places.start.saturating_sub(REFERENCE_REACH));
        let before = self.words.tokens.get(start..self.places.start).unwrap_or_default();
        let parts = |token: &Token| matches!(token.class, Class::Number | Class::Connector);
        let last = before.iter().rposition(parts);
        before.get(last.map_or(0, |place| place + 1)..).unwrap_or_default()
    }

    fn behind(self) -> &'a [Token] {
        self.words.tokens.get(self.places.end..self.clause.end).unwrap_or_default()
    }

    /// The words right before the value, but for those that leave it about what it is.
    fn right_before(self) -> &'a [Token] {
        let before = self.before();
        let last = before.iter().rposition(|token| !ABOUT.contains(&token.word.as_str()));
        before.get(..last.map_or(0, |place| place + 1)).unwrap_or_default()
    }

    /// "Usually 62 mm", "the limit is 350 µg/kg", "26 °C is the target", "62 mm before".
    fn is_reference(self) -> bool {
        if self.before().iter().any(is_reference_word) {
            return true;
        }
        let behind = self.behind();
        if matches!(behind, [only] if only.word == "before") {
            return true;
        }
        let mut told = behind.iter().skip_while(|token| token.class == Class::Stop && !is_reference_word(token));
        let named = told.next().is_some_and(is_reference_word);
        // "31 °C against 26 °C": the word is of the next value.
        let of_the_next = told.clone().take_while(|token| token.class != Class::Connector);
        named
            && !of_the_next.into_iter().any(|token| token.class == Class::Number)
            && told.next().is_none_or(|token| !matches!(token.class, Class::Content | Class::Product))
    }

    /// "Was not 31 °C", "never reached 31 °C", "31 °C was not reached".
    fn is_denied(self) -> bool {
        let is_denial = |token: &Token| token.class == Class::Denial || token.word == FAILED;
        let reaches = |token: &Token| {
            let word = token.word.as_str();
            token.class == Class::Stop || [REACHING, BOUNDS_BEFORE, ABOUT].iter().any(|list| list.contains(&word))
        };
        let before = self.before();
        let denial = before.iter().rposition(is_denial);
        let reached = |place: usize| before.get(place + 1..).unwrap_or_default().iter().all(reaches);
        if denial.is_some_and(reached) {
            return true;
        }
        let mut behind = self.behind().iter().skip_while(|token| token.class == Class::Stop);
        behind.next().is_some_and(is_denial)
            && behind
                .find(|token| token.class != Class::Stop)
                .is_some_and(|token| REACHING.contains(&token.word.as_str()))
    }

    /// "Under 30 °C", "at least 30 °C", "30 °C or more", "30 °C at most".
    fn is_bound(self) -> bool {
        let pair = |tokens: &[Token]| match tokens {
            [one, other] => BOUNDS_OF_TWO.contains(&[one.word.as_str(), other.word.as_str()]),
            _ => false,
        };
        let before = self.right_before();
        let right_before = before.last().is_some_and(|token| BOUNDS_BEFORE.contains(&token.word.as_str()));
        let behind = self.behind();
        let or_more = match behind {
            [joint, bound, ..] => {
                matches!(joint.word.as_str(), "or" | "and") && BOUNDS_BEHIND.contains(&bound.word.as_str())
            }
            _ => false,
        };
        right_before
            || pair(before.get(before.len().saturating_sub(2)..).unwrap_or_default())
            || pair(behind.get(..2).unwrap_or_default())
            || or_more
    }

    /// "2 °C warmer", "10 min too short", "dropped 3 °C".
    fn is_difference(self) -> bool {
        let changes = |token: &Token| {
            let word = token.word.as_str();
            CHANGES.contains(&word) || (!self.is_time && RISES.contains(&word))
        };
        let behind = self.behind();
        let is_more = |token: &Token| DIFFERENCES.contains(&token.word.as_str());
        // "31 °C more or less" is about that.
        let about = behind.get(1).is_some_and(|token| token.word == "or");
        self.right_before().last().is_some_and(changes) || (behind.first().is_some_and(is_more) && !about)
    }
}

/// Whether a word names a usual, wanted or allowed value.
pub(super) fn is_reference_word(token: &Token) -> bool {
    token.class == Class::Expectation || REFERENCES.contains(&token.word.as_str())
}
