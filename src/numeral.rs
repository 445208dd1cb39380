//! Numbers in messages.

/// From here on, and below the least, a number is written with an exponent: nobody counts so many digits.
const MOST: f64 = 1e15;
const LEAST: f64 = 1e-9;

/// A number as it is written: `31.5`, `1e300`.
pub(crate) fn written(number: f64) -> String {
    let size = number.abs();
    if size == 0.0 || (LEAST..MOST).contains(&size) || !number.is_finite() {
        format!("{number}")
    } else {
        format!("{number:e}")
    }
}

#[cfg(test)]
mod tests {
    use super::written;

    #[test]
    fn what_nobody_counts_takes_an_exponent() {
        let numbers = [0.0, -31.5, 123_456_789_012_345.0, 1e15, -1.5e308, 1e-9, 2.5e-310, f64::INFINITY];
        let expected = ["0", "-31.5", "123456789012345", "1e15", "-1.5e308", "0.000000001", "2.5e-310", "inf"];
        assert_eq!(numbers.map(written), expected);
    }
}
