//! Numbers with units in a text.

use std::ops::Range;

use super::numbers::number;
use super::unit_words::{UnitWord, goes_on, unit_word};
use super::unmeasured::{InClause, TOLERANCE_MARKS, is_reference_word};
use super::words::{Class, Token, Words};
use crate::units::convert;

/// Most words of a unit: "grados centígrados", `g per 100 g`.
const MOST_UNIT_WORDS: usize = 4;

/// Words that may stand between a name such as "pH" and its value.
const BETWEEN: &[&str] = &["of", "is", "was", "at", "about", "around", "value"];

/// Names that stand before their value, with the unit that they tell.
const LEADING: &[(&[&str], &str)] =
    &[(&["ph"], "ph"), (&["aw"], "aw"), (&["water", "activity"], "aw"), (&["brix"], "brix")];

/// Marks by which a label is parted from its value: "dough temperature: 31 °C".
const LABEL_MARKS: &[&str] = &[":", "–", "—", "(", "=", ": ("];

const RANGE: &str = "it is the end of a range: give one value, or the plant's limits";
const THOUSANDS: &str = "the comma may part thousands or decimals";

/// A value of a text.
#[derive(Debug, Clone)]
pub(super) struct Value {
    pub(super) value: f64,
    /// Its unit; "degrees" may be of either scale, which their reading tells.
    pub(super) unit: UnitWord,
    /// Places of its number, unit and leading name.
    pub(super) places: Range<usize>,
    /// Its clause, with the label before it.
    pub(super) clause: Range<usize>,
    /// Why it cannot be used as it stands.
    pub(super) doubt: Option<&'static str>,
}

/// The values of a text, in order. Numbers without a unit are left to the reader.
pub(super) fn values(text: &str, words: &Words) -> Vec<Value> {
    let finder = Finder { text, words };
    let mut values: Vec<Value> = Vec::new();
    let mut next = 0;
    for clause in &words.clauses {
        for place in clause.clone() {
            if place < next || !finder.is_number(place) {
                continue;
            }
            if let Some(value) = finder.value_at(&finder.labelled(clause, place), place) {
                next = value.places.end;
                values.push(value);
            }
        }
    }
    finder.mark_ranges(&mut values);
    values
}

/// Looks for values in a text.
#[derive(Debug, Clone, Copy)]
struct Finder<'a> {
    text: &'a str,
    words: &'a Words,
}

impl<'a> Finder<'a> {
    fn is_number(self, place: usize) -> bool {
        self.words.tokens.get(place).is_some_and(|token| token.class == Class::Number)
    }

    /// The text between two words.
    fn between(self, first: usize, second: usize) -> &'a str {
        let end = self.words.tokens.get(first).map_or(0, |token| token.span.end);
        let start = self.words.tokens.get(second).map_or(0, |token| token.span.start);
        self.text.get(end..start).unwrap_or_default().trim()
    }

    /// A clause, with the one before it where that only labels the number.
    fn labelled(self, clause: &Range<usize>, place: usize) -> Range<usize> {
        let class = |at: usize| self.words.tokens.get(at).map(|token| token.class);
        let label = self.words.clauses.iter().find(|label| label.end == clause.start);
        let Some(label) = label.filter(|_| clause.start > 0) else { return clause.clone() };
        let tells = |token: &Token| {
            matches!(token.class, Class::Content | Class::Product | Class::Number) && !is_reference_word(token)
        };
        let has_own = self.words.tokens.get(clause.start..place).unwrap_or_default().iter().any(tells);
        let is_label = LABEL_MARKS.contains(&self.between(label.end.saturating_sub(1), clause.start))
            && !label.clone().any(|at| class(at) == Some(Class::Number));
        if has_own || !is_label { clause.clone() } else { label.start..clause.end }
    }

    fn value_at(self, clause: &Range<usize>, place: usize) -> Option<Value> {
        let token = self.words.tokens.get(place)?;
        let (number, odd_comma) = number(&token.word)?;
        let (unit, mut places) = self
            .unit_behind(clause, place)
            .or_else(|| self.unit_behind_tolerance(clause, place))
            .map(|(unit, end)| (unit, place..end))
            .or_else(|| self.unit_before(clause, place).map(|(unit, start)| (unit, start..place + 1)))?;
        let before = self.text.get(..token.span.start).unwrap_or_default();
        let dash = before.ends_with(['-', '−', '–']) && !self.follows_number(place);
        let number = if dash || before.trim_end().ends_with("minus") { -number } else { number };
        let (value, unit) = match self.finer_part(clause, &unit, places.end) {
            Some((part, finer, end)) => {
                places.end = end;
                (convert(number, &unit.unit, &finer.unit).ok()? + part, finer)
            }
            None => (number, unit),
        };
        places.end = self.tolerance_end(clause, places.end);
        let is_time = unit.implies.contains(&"time");
        let in_clause = InClause { text: self.text, words: self.words, clause, places: &places, is_time };
        let doubt = in_clause.doubt().or(odd_comma.then_some(THOUSANDS));
        Some(Value { value, unit, places, clause: clause.clone(), doubt })
    }

    /// The rest of a value in two units: the "30 min" of "1 h 30 min".
    fn finer_part(self, clause: &Range<usize>, unit: &UnitWord, place: usize) -> Option<(f64, UnitWord, usize)> {
        let joined = self.words.tokens.get(place).is_some_and(|token| token.word == "and" && place < clause.end);
        let at = place + usize::from(joined);
        let token = self.words.tokens.get(at).filter(|_| self.is_number(at) && at < clause.end)?;
        let blank = self.between(at.checked_sub(1)?, at).is_empty();
        let (part, odd) = number(&token.word).filter(|_| blank && !unit.doubtful)?;
        let (finer, end) = self.unit_behind(clause, at)?;
        // "Proof 1 h and 20 min bake" are two.
        let other =
            joined && self.words.tokens.get(end).is_some_and(|token| token.class == Class::Content && end < clause.end);
        let whole = convert(1.0, &unit.unit, &finer.unit)
            .ok()
            .filter(|_| !other && !odd && !unit.implies.contains(&"temperature"))?;
        (whole > 1.0 && part < whole).then_some((part, finer, end))
    }

    /// The unit of "31 ± 1 °C".
    fn unit_behind_tolerance(self, clause: &Range<usize>, place: usize) -> Option<(UnitWord, usize)> {
        let next = place + 1;
        let is_tolerance = self.is_number(next) && TOLERANCE_MARKS.contains(&self.between(place, next));
        is_tolerance.then(|| self.unit_behind(clause, next)).flatten()
    }

    /// The end of a value that ends at a place, with the tolerance behind it: "31 °C ± 1 K".
    fn tolerance_end(self, clause: &Range<usize>, end: usize) -> usize {
        let is_tolerance = end < clause.end
            && self.is_number(end)
            && end.checked_sub(1).is_some_and(|last| TOLERANCE_MARKS.contains(&self.between(last, end)));
        if !is_tolerance {
            return end;
        }
        self.unit_behind(clause, end).map_or(end + 1, |(_, end)| end)
    }

    /// Whether only a dash parts a number from one before it.
    fn follows_number(self, place: usize) -> bool {
        let before = place.checked_sub(1).and_then(|place| self.words.tokens.get(place));
        let sign = |word: &str| word.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '°' | '%'));
        before.is_some_and(|token| sign(&token.word))
    }

    /// Doubts values that are the ends of a range: "30-32 °C", "30 °C to 32 °C", "between 30 and 32 °C", "1/2 h".
    fn mark_ranges(self, values: &mut [Value]) {
        let spans: Vec<Range<usize>> = values.iter().map(|value| value.places.clone()).collect();
        for (at, places) in spans.iter().enumerate() {
            let before = at.checked_sub(1).and_then(|before| spans.get(before)).cloned();
            let joint = [places.start.checked_sub(1), places.start.checked_sub(2)].into_iter().flatten();
            let end =
                |place: &usize| before.as_ref().is_some_and(|before| before.end == place + 1) || self.is_number(*place);
            let Some(other) = joint.into_iter().find(end) else { continue };
            let of_value = before.as_ref().filter(|before| before.end == other + 1);
            let start = of_value.map_or(other, |before| before.start);
            if !self.joins_range(start, other, places.start, of_value.is_some()) {
                continue;
            }
            let alike = |other: &Value, own: &Value| other.unit.unit.converts_to(&own.unit.unit);
            let (head, tail) = values.split_at_mut(at);
            let Some(own) = tail.first_mut() else { continue };
            match head.last_mut().filter(|_| of_value.is_some()) {
                Some(first) if !alike(first, own) => continue,
                Some(first) => first.doubt = first.doubt.or(Some(RANGE)),
                None => own.places.start = other,
            }
            own.doubt = own.doubt.or(Some(RANGE));
        }
    }

    /// Whether what stands between two numbers makes a range of them.
    fn joins_range(self, start: usize, end: usize, next: usize, of_value: bool) -> bool {
        let before = start.checked_sub(1).and_then(|place| self.words.tokens.get(place));
        match self.between(end, next) {
            "-" | "−" | "–" | "—" | "to" | "bis" | "until" | "or" | ".." | "..." | "…" => true,
            "/" => !of_value,
            "and" | "und" => before.is_some_and(|token| matches!(token.word.as_str(), "between" | "zwischen")),
            _ => false,
        }
    }

    /// The longest unit behind a number, and the place behind it; none where the unit goes on: `mg` in `mg/dl`.
    fn unit_behind(self, clause: &Range<usize>, place: usize) -> Option<(UnitWord, usize)> {
        let start = self.words.tokens.get(place)?.span.end;
        let ends = (place + 1..=place + MOST_UNIT_WORDS).rev().filter(|last| *last < clause.end);
        let longest = ends.filter_map(|last| {
            let end = self.words.tokens.get(last)?.span.end;
            // A comma inside would be another clause; a slash or a blank belongs to the unit.
            Some((unit_word(self.text.get(start..end)?)?, last + 1, end))
        });
        let (unit, next, end) = longest.into_iter().next()?;
        (!goes_on(self.text.get(end..).unwrap_or_default())).then_some((unit, next))
    }

    fn unit_before(self, clause: &Range<usize>, place: usize) -> Option<(UnitWord, usize)> {
        let before = self.words.tokens.get(clause.start..place)?;
        let last = before.iter().rposition(|token| !BETWEEN.contains(&token.word.as_str()))?;
        let name = before.get(..=last)?;
        LEADING.iter().find_map(|(words, unit)| {
            let start = name.len().checked_sub(words.len())?;
            let own = name.get(start..)?.iter().map(|token| token.word.as_str());
            own.eq(words.iter().copied()).then(|| Some((unit_word(unit)?, clause.start + start))).flatten()
        })
    }
}

#[cfg(test)]
mod tests {
    use super::values;
    use crate::intake::words::Words;

    fn told(text: &str) -> Vec<(f64, String)> {
        let found = values(text, &Words::of(text));
        found.into_iter().map(|value| (value.value, value.unit.unit.code().to_owned())).collect()
    }

    #[test]
    fn values_of_several_languages_are_read() {
        let cases = [
            ("Teig 31,5 °C", 31.5, "Cel"),
            ("31 Grad", 31.0, "Cel"),
            ("31 grados centígrados", 31.0, "Cel"),
            ("dough 88 degF", 88.0, "[degF]"),
            ("20 Min. gebacken", 20.0, "min"),
            ("horneado 25 minutos", 25.0, "min"),
            ("freezer at -18 °C", -18.0, "Cel"),
            ("pH of 5,4", 5.4, "[pH]"),
            ("aw 0.72", 0.72, "1"),
            ("58% water", 58.0, "%"),
            ("4.2 mL/g", 4.2, "mL/g"),
        ];
        for (text, value, unit) in cases {
            assert_eq!(told(text), [(value, unit.to_owned())], "{text}");
        }
        assert_eq!(told("12 of 20 buns"), []);
    }

    #[test]
    fn what_cannot_be_used_as_it_stands_says_why() {
        let doubt = |text: &str| values(text, &Words::of(text)).first().and_then(|value| value.doubt);
        assert!(doubt("30-32 °C").is_some_and(|doubt| doubt.contains("range")));
        assert!(doubt("1,200 g").is_some_and(|doubt| doubt.contains("thousands")));
        assert_eq!(doubt("0,725 kg"), None);
    }
}
