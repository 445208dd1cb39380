//! Numbers and their units, as people write them.

use std::cmp::Ordering;

use crate::numeral::written;
use crate::units::Unit;

/// Digits of limits and of quantities to set.
const USUAL_DIGITS: i32 = 4;

/// Digits of what was measured or computed: more claims an accuracy that no plant has.
const FEWEST_DIGITS: i32 = 3;

/// Most digits that tell a value from a limit; what needs more stands at the limit.
const MOST_DIGITS: i32 = 9;

/// A number with at most four significant digits and no trailing zeros.
pub(super) fn number(value: f64) -> String {
    with_digits(value, USUAL_DIGITS)
}

fn with_digits(value: f64, digits: i32) -> String {
    let rounded = rounded_to(value, digits);
    if rounded == 0.0 { "0".to_owned() } else { written(rounded).replace('-', "−") }
}

/// A value rounded to four significant digits: more would claim an accuracy that no plant has.
pub(super) fn rounded(value: f64) -> f64 {
    rounded_to(value, USUAL_DIGITS)
}

fn rounded_to(value: f64, digits: i32) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return value;
    }
    // A power of ten is no whole number there any more, and dividing by it leaves a tail.
    if value.abs() >= 1e15 {
        let digits = usize::try_from(digits - 1).unwrap_or_default();
        return format!("{value:.digits$e}").parse().unwrap_or(value);
    }
    #[allow(clippy::cast_possible_truncation)] // the exponent of a finite number fits
    let digits = digits - 1 - value.abs().log10().floor() as i32;
    // Dividing by a power of ten keeps 7.2 from becoming 7.199999.
    if digits >= 0 {
        let factor = 10_f64.powi(digits.min(300));
        (value * factor).round() / factor
    } else {
        let factor = 10_f64.powi(-digits);
        (value / factor).round() * factor
    }
}

/// How many digits a value takes beside the limits that it is compared with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Digits(i32);

impl Digits {
    /// Three digits, four from 1000 on and of temperatures from 100 on, and more where rounding would put the value onto
    /// or across one of the limits.
    pub(super) fn of(value: f64, unit: Option<&Unit>, limits: &[f64]) -> Self {
        let is_temperature = unit.is_some_and(|unit| unit.code() == "Cel");
        let is_long = value.abs() >= if is_temperature { 100.0 } else { 1000.0 };
        let fewest = if is_long { USUAL_DIGITS } else { FEWEST_DIGITS };
        let tells = |digits: &i32| limits.iter().all(|limit| Self(*digits).tells_apart(value, *limit));
        Self((fewest..MOST_DIGITS).find(tells).unwrap_or(MOST_DIGITS))
    }

    fn tells_apart(self, value: f64, limit: f64) -> bool {
        let (shown, limit_shown) = (rounded_to(value, self.0), rounded_to(limit, self.of_limits()));
        standing(shown, limit_shown) == standing(value, limit)
    }

    fn of_limits(self) -> i32 {
        self.0.max(USUAL_DIGITS)
    }

    /// The value with its unit.
    pub(super) fn value(self, value: f64, unit: Option<&Unit>) -> String {
        with_symbol_of(with_digits(value, self.0), unit)
    }

    /// A limit with its unit.
    pub(super) fn limit(self, limit: f64, unit: Option<&Unit>) -> String {
        with_symbol_of(with_digits(limit, self.of_limits()), unit)
    }
}

impl Default for Digits {
    fn default() -> Self {
        Self(FEWEST_DIGITS)
    }
}

/// Where a value stands to a limit; differences that only computing makes are none.
pub(super) fn standing(value: f64, limit: f64) -> Ordering {
    let same = (value - limit).abs() <= 1e-9 * value.abs().max(limit.abs());
    if same { Ordering::Equal } else { value.total_cmp(&limit) }
}

/// A number and its unit, for example "31.5 °C".
pub(crate) fn measure(value: f64, unit: &Unit) -> String {
    with_symbol_of(number(value), Some(unit))
}

fn with_symbol_of(number: String, unit: Option<&Unit>) -> String {
    match unit.map_or("", Unit::symbol) {
        // A pH has no unit that people would say: the name of the reading tells it.
        "" | "pH" => number,
        symbol => format!("{number} {symbol}"),
    }
}

#[cfg(test)]
mod tests {
    use super::{Digits, number, rounded};
    use crate::units::Unit;

    #[test]
    fn numbers_keep_four_digits() {
        assert_eq!(number(31.5), "31.5");
        assert_eq!(number(7.233_333), "7.233");
        assert_eq!(number(12_345.6), "12350");
        assert_eq!(number(-0.000_123_456), "−0.0001235");
        assert_eq!(number(0.0), "0");
        assert_eq!((number(-1.23e20), number(1e300)), ("−1.23e20".to_owned(), "1e300".to_owned()));
        assert!((rounded(0.3 - 0.1) - 0.2).abs() < 1e-15);
    }

    /// A value and a limit as they are written side by side.
    fn beside(value: f64, limit: f64, code: &str) -> (String, String) {
        let unit = Unit::parse(code).unwrap();
        let digits = Digits::of(value, Some(&unit), &[limit]);
        (digits.value(value, Some(&unit)), digits.limit(limit, Some(&unit)))
    }

    #[test]
    fn values_take_three_digits_and_hot_ones_four() {
        assert_eq!(beside(31.527, 28.0, "Cel").0, "31.5 °C");
        assert_eq!(beside(203.46, 220.0, "Cel").0, "203.5 °C");
        assert_eq!(beside(520.4, 350.0, "g").0, "520 g");
        assert_eq!(beside(1234.0, 1500.0, "g").0, "1234 g");
        assert_eq!(beside(-16.52, 0.0, "Cel").0, "−16.5 °C");
    }

    #[test]
    fn no_value_is_rounded_onto_or_across_its_limit() {
        assert_eq!(beside(28.04, 28.0, "Cel").0, "28.04 °C");
        assert_eq!(beside(27.96, 28.0, "Cel").0, "27.96 °C");
        assert_eq!(beside(0.9304, 0.9301, "1"), ("0.9304".to_owned(), "0.9301".to_owned()));
        assert_eq!(beside(28.0331, 28.0334, "Cel"), ("28 °C".to_owned(), "28.03 °C".to_owned()));
        // At its limit it says so, however many digits the limit has.
        assert_eq!(beside(0.3 - 0.1, 0.2, "1").0, "0.2");
        assert_eq!(beside(9.999, 10.0, "%").0, "9.999 %");
    }
}
