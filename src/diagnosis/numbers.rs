//! Numbers and their units, as people write them.

use crate::units::Unit;

/// A number with at most four significant digits and no trailing zeros.
pub(super) fn number(value: f64) -> String {
    let rounded = rounded(value);
    if rounded == 0.0 { "0".to_owned() } else { format!("{rounded}") }
}

/// A value rounded to four significant digits: more would claim an accuracy that no plant has.
pub(super) fn rounded(value: f64) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return value;
    }
    #[allow(clippy::cast_possible_truncation)] // the exponent of a finite number fits
    let digits = 3 - value.abs().log10().floor() as i32;
    // Dividing by a power of ten keeps 7.2 from becoming 7.199999.
    if digits >= 0 {
        let factor = 10_f64.powi(digits.min(300));
        (value * factor).round() / factor
    } else {
        let factor = 10_f64.powi(-digits);
        (value / factor).round() * factor
    }
}

/// A number and its unit, for example "31.5 °C".
pub(crate) fn measure(value: f64, unit: &Unit) -> String {
    let symbol = unit.symbol();
    // A pH has no unit that people would say: the name of the reading tells it.
    if symbol.is_empty() || symbol == "pH" { number(value) } else { format!("{} {symbol}", number(value)) }
}

#[cfg(test)]
mod tests {
    use super::{number, rounded};

    #[test]
    fn numbers_keep_four_digits() {
        assert_eq!(number(31.5), "31.5");
        assert_eq!(number(7.233_333), "7.233");
        assert_eq!(number(12_345.6), "12350");
        assert_eq!(number(-0.000_123_456), "-0.0001235");
        assert_eq!(number(0.0), "0");
        assert!((rounded(0.3 - 0.1) - 0.2).abs() < 1e-15);
    }
}
