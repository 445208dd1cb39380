//! The checks that calculations make of their inputs, so that the same fault reads the same everywhere.
//!
//! Each adds one readable fault and goes on to the next input.

use std::ops::RangeInclusive;

use super::Nonsense;

/// What an input of a bakery can have, °C: from below deep-frozen stock and dry ice to above a stone-oven dome.
const TEMPERATURES: RangeInclusive<f64> = -90.0..=600.0;

/// More than zero, and finite.
pub(super) fn positive(nonsense: &mut Nonsense, input: &str, value: f64) {
    nonsense.unless(value.is_finite() && value > 0.0, input, format!("`{value}` is not above zero"));
}

/// Zero or more, and finite.
pub(super) fn not_negative(nonsense: &mut Nonsense, input: &str, value: f64) {
    nonsense.unless(value.is_finite() && value >= 0.0, input, format!("`{value}` is not zero or more"));
}

/// In what is physically or practically possible; `unit` is a UCUM code, `1` for a plain number.
pub(super) fn within(nonsense: &mut Nonsense, input: &str, value: f64, possible: RangeInclusive<f64>, unit: &str) {
    let (low, high) = (possible.start(), possible.end());
    let message = match unit {
        "1" => format!("`{value}` is not between {low} and {high}"),
        _ => format!("`{value}` {unit} is not between {low} and {high} {unit}"),
    };
    nonsense.unless(possible.contains(&value), input, message);
}

/// A share of something: 0 to 100 %.
pub(super) fn percent(nonsense: &mut Nonsense, input: &str, value: f64) {
    within(nonsense, input, value, 0.0..=100.0, "%");
}

/// A share that leaves something over: 0 to below 100 %.
pub(super) fn percent_below_hundred(nonsense: &mut Nonsense, input: &str, value: f64) {
    nonsense.unless((0.0..100.0).contains(&value), input, format!("`{value}` % is not between 0 and below 100 %"));
}

/// A temperature that something in a bakery can have, °C.
pub(super) fn temperature(nonsense: &mut Nonsense, input: &str, celsius: f64) {
    within(nonsense, input, celsius, TEMPERATURES, "Cel");
}

/// A measured pH: 0 to 14.
pub(super) fn ph(nonsense: &mut Nonsense, input: &str, value: f64) {
    within(nonsense, input, value, 0.0..=14.0, "1");
}

/// At least one item.
pub(super) fn not_empty<T>(nonsense: &mut Nonsense, input: &str, items: &[T]) {
    nonsense.unless(!items.is_empty(), input, "is empty");
}
