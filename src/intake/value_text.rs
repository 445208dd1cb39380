//! The words about the values of a text.

use std::ops::Range;

use super::assignment::Assigned;
use super::values::Value;
use super::words::{Class, Words, stem};

/// What is hot where nothing else is named.
pub(super) const OVEN: &str = "oven";

/// Stems of the words for other hot things.
const HOT_OTHERWISE: &[&str] =
    &["oil", "fat", "fri", "fryer", "caramel", "sugar", "syrup", "burner", "flame", "tin", "pan", "band", "steam"];

/// Words for where a product is sold, carried or served, whose temperature is none of the product.
const SURROUNDINGS: &[&str] = &[
    "car",
    "counter",
    "depot",
    "display",
    "kitchen",
    "lorry",
    "market",
    "outdoors",
    "outside",
    "shelf",
    "shop",
    "shops",
    "summer",
    "sun",
    "supermarket",
    "truck",
    "van",
    "warehouse",
    "window",
];

/// Stems in the names of readings that are of where a product is kept.
pub(super) const KEEPING: &[&str] = &["ambient", "room", "storag", "store", "transport"];

/// Units of what surroundings have: degrees, and per cent of humidity.
const OF_SURROUNDINGS: &[&str] = &["temperature", "humidity"];

/// Stems of the words for what is measured, which the next value does not share: "proof temperature 38 °C, 55 min".
const QUANTITIES: &[&str] = &["temperatur", "temp", "time", "humid", "weight", "rh", "ph"];

/// Words by which a measured value is told from a wanted one before it: "target 26 °C, we had 31 °C".
const ACTUAL: &[&str] = &[
    "actual", "actually", "are", "but", "came", "got", "had", "has", "have", "instead", "is", "it", "measured", "now",
    "only", "reached", "read", "real", "really", "was", "were",
];

/// A text and its values.
#[derive(Debug, Clone, Copy)]
pub(super) struct ValueText<'a> {
    pub(super) words: &'a Words,
    pub(super) values: &'a [Value],
}

impl<'a> ValueText<'a> {
    /// The words about a value, the nearest first: what stands before it in its statement, since the value before; what
    /// stands between the values beside it; the whole statement.
    pub(super) fn windows(self, place: usize) -> Vec<Range<usize>> {
        let Some(value) = self.values.get(place) else { return Vec::new() };
        let whole = self.statement(value);
        let before = place.checked_sub(1).and_then(|place| self.values.get(place)).map_or(0, |value| value.places.end);
        let after = self.values.get(place + 1).map_or(usize::MAX, |value| value.places.start);
        let narrow = whole.start.max(before)..whole.end.min(after);
        let leading = narrow.start..value.places.start.max(narrow.start);
        let tells = |at: usize| !value.places.contains(&at) && self.tells(at);
        let told: Vec<Range<usize>> =
            [leading, narrow].into_iter().filter(|window| window.clone().any(tells)).collect();
        if told.is_empty() { vec![whole] } else { told }
    }

    fn statement(self, value: &Value) -> Range<usize> {
        let statements = self.words.statements(&value.clause);
        let own = statements.into_iter().find(|statement| statement.contains(&value.places.start));
        own.unwrap_or_else(|| value.clause.clone())
    }

    /// Whether the words before a value name something that is as hot as an oven.
    pub(super) fn is_hot_otherwise(self, place: usize) -> bool {
        let window = self.windows(place).into_iter().next().unwrap_or_default();
        let tokens = self.words.tokens.get(window).unwrap_or_default();
        tokens.iter().any(|token| HOT_OTHERWISE.contains(&token.stem.as_str()))
    }

    /// The word right before a value, but for words without meaning.
    pub(super) fn last_word(self, value: &Value) -> Option<usize> {
        let class = |at: &usize| self.words.tokens.get(*at).map(|token| token.class);
        let last = (value.clause.start..value.places.start).rev().find(|at| class(at) != Some(Class::Stop))?;
        (class(&last) == Some(Class::Content)).then_some(last)
    }

    /// The stem of the place that stands before a value as the last word with a meaning: "in the shop at 30 degrees".
    pub(super) fn surroundings(self, value: &Value) -> Option<&'a str> {
        let of_it = value.unit.implies.iter().any(|word| OF_SURROUNDINGS.contains(word));
        let token = self.last_word(value).filter(|_| of_it).and_then(|at| self.words.tokens.get(at))?;
        SURROUNDINGS.contains(&token.word.as_str()).then_some(token.stem.as_str())
    }

    fn tells(self, place: usize) -> bool {
        self.words.tokens.get(place).is_some_and(|token| {
            matches!(token.class, Class::Content | Class::Product) && !ACTUAL.contains(&token.word.as_str())
        })
    }

    /// Whether words between two places tell that the value behind them is the actual one.
    fn tells_actual(self, mut between: Range<usize>) -> bool {
        between.any(|at| self.words.tokens.get(at).is_some_and(|token| ACTUAL.contains(&token.word.as_str())))
    }

    /// Stems of the words that name the reading beside a value that has no words of its own: "proofer 38 °C, 85 % rH, 55
    /// min".
    pub(super) fn topic(self, assigned: &[Assigned], place: usize) -> Vec<String> {
        let Some(value) = self.values.get(place) else { return Vec::new() };
        let after = self.values.get(place + 1).map_or(usize::MAX, |value| value.places.start);
        // Words behind it are of it: "38 °C, 20 min rest".
        if (value.places.end..self.statement(value).end.min(after)).any(|at| self.tells(at)) {
            return Vec::new();
        }
        let before = self.told_by(assigned, place, (0..place).rev());
        before.or_else(|| self.told_by(assigned, place, place + 1..self.values.len())).unwrap_or_default()
    }

    /// Stems of the words that name the first of some readings with words of its own, as long as no words part them.
    fn told_by(self, assigned: &[Assigned], place: usize, beside: impl Iterator<Item = usize>) -> Option<Vec<String>> {
        let mut last = self.values.get(place)?;
        for other in beside {
            let neighbour = self.values.get(other)?;
            let between = neighbour.places.end.min(last.places.end)..neighbour.places.start.max(last.places.start);
            if between.clone().any(|at| self.tells(at)) {
                return None;
            }
            let alike = || neighbour.unit.unit.converts_to(&last.unit.unit);
            let (named_by, note) = match assigned.get(other)? {
                Assigned::Reading { named_by, note, .. } => (named_by, note.as_ref()),
                // A value that was only wanted tells what the actual one is of.
                Assigned::Unnamed { of, .. } if neighbour.doubt.is_some() && alike() && self.tells_actual(between) => {
                    (of, None)
                }
                Assigned::Unnamed { .. } => return None,
            };
            let named = named_by.iter().filter_map(|at| self.words.tokens.get(*at)).map(|token| token.stem.clone());
            let named: Vec<String> = named.filter(|stem| !QUANTITIES.contains(&stem.as_str())).collect();
            if !named.is_empty() {
                return Some(named);
            }
            if note.is_some() {
                return Some(vec![stem(OVEN)]);
            }
            last = neighbour;
        }
        None
    }
}
