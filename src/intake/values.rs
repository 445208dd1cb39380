//! Numbers with units in a text.

use std::ops::Range;

use super::expected::is_reference_word;
use super::unit_words::{UnitWord, unit_word};
use super::words::{Class, Words};

/// Most words of a unit: "grados centígrados", `g/100 g`.
const MOST_UNIT_WORDS: usize = 3;

/// Words that may stand between a name such as "pH" and its value.
const BETWEEN: &[&str] = &["of", "is", "was", "at", "about", "around", "value"];

/// Names that stand before their value and tell its unit.
const LEADING: &[&str] = &["ph", "aw", "brix"];

/// A value of a text.
#[derive(Debug, Clone)]
pub(super) struct Value {
    pub(super) value: f64,
    /// Its unit; "degrees" may be of either scale, which their reading tells.
    pub(super) unit: UnitWord,
    /// Places of its number, unit and leading name.
    pub(super) places: Range<usize>,
    /// Why it cannot be used as it stands.
    pub(super) doubt: Option<&'static str>,
}

/// The values of a text, in order. Numbers without a unit are left to the reader.
pub(super) fn values(text: &str, words: &Words) -> Vec<Value> {
    let mut values: Vec<Value> = Vec::new();
    let mut next = 0;
    for clause in &words.clauses {
        for place in clause.clone() {
            let is_number = words.tokens.get(place).is_some_and(|token| token.class == Class::Number);
            if place < next || !is_number {
                continue;
            }
            if let Some(value) = value_at(text, words, clause, place) {
                next = value.places.end;
                values.push(value);
            }
        }
    }
    values
}

fn value_at(text: &str, words: &Words, clause: &Range<usize>, place: usize) -> Option<Value> {
    let token = words.tokens.get(place)?;
    let (number, odd_comma) = number(&token.word)?;
    let (unit, places) = unit_behind(text, words, clause, place)
        .map(|(unit, end)| (unit, place..end))
        .or_else(|| unit_before(words, clause, place).map(|(unit, start)| (unit, start..place + 1)))?;
    let before = text.get(..token.span.start).unwrap_or_default();
    let minus = before.ends_with(['-', '−', '–']) && !ends_range(before) || before.trim_end().ends_with("minus");
    let doubt = if is_reference(words, clause, &places) {
        Some("it is told as a usual, wanted or allowed value, not as the one that was measured")
    } else if ends_range(before) {
        Some("it is the end of a range: give one value, or the plant's limits")
    } else {
        odd_comma.then_some("the comma may part thousands or decimals")
    };
    Some(Value { value: if minus { -number } else { number }, unit, places, doubt })
}

/// Most words between a word such as "usually" and the value that it is about: "instead of only 60 min".
const REFERENCE_REACH: usize = 6;

/// Whether the words before a value, since the one before it, tell that it is not what was measured: "usually 62 mm", "the
/// limit is 350 µg/kg". "62 mm before" tells so behind it.
fn is_reference(words: &Words, clause: &Range<usize>, places: &Range<usize>) -> bool {
    let start = clause.start.max(places.start.saturating_sub(REFERENCE_REACH));
    let before = words.tokens.get(start..places.start).unwrap_or_default();
    let number = before.iter().rposition(|token| matches!(token.class, Class::Number | Class::Connector));
    let before = before.get(number.map_or(0, |place| place + 1)..).unwrap_or_default();
    let last_behind = places.end + 1 == clause.end;
    let behind = words.tokens.get(places.end).filter(|_| last_behind);
    before.iter().any(is_reference_word) || behind.is_some_and(|token| token.word == "before")
}

/// Whether a dash or "to" ties the number to one before it.
fn ends_range(before: &str) -> bool {
    let head = before.trim_end();
    let head =
        head.strip_suffix(['-', '−', '–']).or_else(|| head.strip_suffix(" to")).or_else(|| head.strip_suffix(" bis"));
    head.is_some_and(|head| head.trim_end().ends_with(|c: char| c.is_ascii_digit() || c == '°'))
}

/// A number with a decimal point or comma, and whether its comma could also part thousands.
fn number(word: &str) -> Option<(f64, bool)> {
    let marks = word.matches([',', '.']).count();
    if marks > 1 {
        return None;
    }
    let thousands = |(whole, part): (&str, &str)| part.len() == 3 && whole != "0";
    let odd = word.split_once([',', '.']).is_some_and(thousands);
    word.replace(',', ".").parse().ok().map(|value| (value, odd))
}

/// The longest unit behind a number, and the place behind it.
fn unit_behind(text: &str, words: &Words, clause: &Range<usize>, place: usize) -> Option<(UnitWord, usize)> {
    let start = words.tokens.get(place)?.span.end;
    let ends = (place + 1..=place + MOST_UNIT_WORDS).rev().filter(|last| *last < clause.end);
    ends.filter_map(|last| {
        let end = words.tokens.get(last)?.span.end;
        // A comma inside would be another clause; a slash or a blank belongs to the unit.
        Some((unit_word(text.get(start..end)?)?, last + 1))
    })
    .next()
}

fn unit_before(words: &Words, clause: &Range<usize>, place: usize) -> Option<(UnitWord, usize)> {
    let before = words.tokens.get(clause.start..place)?;
    let name = before.iter().rposition(|token| !BETWEEN.contains(&token.word.as_str()))?;
    let word = before.get(name)?;
    let unit = LEADING.contains(&word.word.as_str()).then(|| unit_word(&word.word)).flatten()?;
    Some((unit, clause.start + name))
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
