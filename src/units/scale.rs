//! Where a unit stands on the scale of its base units, and the arithmetic of a conversion.

use octofhir_ucum::{EvalResult, Number, SpecialKind};

/// Integers up to 2^53 are exact in an `f64`.
const EXACT_INTEGER: u128 = 1 << 53;
/// Powers of ten up to 10^22 are exact in an `f64`.
const EXACT_POWER_OF_TEN: i32 = 22;
/// Factors beyond this are no unit of a bakery; the bound keeps products of two factors inside the range of an `f64`.
const LARGEST_FACTOR: f64 = 1e60;

/// `base = (value + zero) × numerator / denominator`. The factor is a fraction of integers where there is one (`[degF]`:
/// 5/9, `mm`: 1/1000), so that 35 `mm` are 3.5 `cm` and not 3.5000000000000004.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Scale {
    numerator: f64,
    denominator: f64,
    zero: f64,
}

impl Scale {
    /// The scale of plain numbers.
    pub(super) const IDENTITY: Self = Self { numerator: 1.0, denominator: 1.0, zero: 0.0 };

    /// The scale of an evaluated unit; `None` when its factor is out of range.
    pub(super) fn of(unit: &EvalResult) -> Option<Self> {
        let (factor, zero) = match &unit.special {
            None => (unit.factor, Number::ZERO),
            Some(special) => match zero_point(special.unit.special) {
                // A prefix or number scales the value: (α v + zero) × factor = (v + zero / α) × α factor.
                Some(zero) => (unit.factor.checked_mul(special.scale)?, zero.checked_div(special.scale)?),
                // Any other special scale (pH, bel) converts only to itself.
                None => (special.scale, Number::ZERO),
            },
        };
        let size = factor.to_f64();
        if !(1.0 / LARGEST_FACTOR..=LARGEST_FACTOR).contains(&size) {
            return None;
        }
        let (numerator, denominator) = fraction(factor);
        Some(Self { numerator, denominator, zero: zero.to_f64() })
    }

    /// A value on this scale as a value on another scale of the same kind.
    pub(super) fn convert(&self, value: f64, to: &Scale) -> f64 {
        if self.zero == 0.0 && to.zero == 0.0 {
            return self.convert_difference(value, to);
        }
        if self == to {
            return value;
        }
        let from_absolute_zero = self.rescale(value + self.zero, to);
        without_rounding_noise(from_absolute_zero - to.zero, from_absolute_zero)
    }

    /// As [`Scale::convert`] for a difference of two values: the zero points play no part.
    pub(super) fn convert_difference(&self, value: f64, to: &Scale) -> f64 {
        if self == to {
            return value;
        }
        let converted = self.rescale(value, to);
        without_rounding_noise(converted, converted)
    }

    fn rescale(&self, value: f64, to: &Scale) -> f64 {
        value * (self.numerator * to.denominator) / (self.denominator * to.numerator)
    }
}

/// The value of the scale's zero, counted from absolute zero in the scale's own degrees; only for temperatures.
/// Source: UCUM specification, table of special units: `cel(1 K)` is `f(x) = x - 273.15`, `degf(5 K/9)` is
/// `f(x) = x - 459.67`, `degre(5 K/4)` is `f(x) = x - 218.52`.
fn zero_point(kind: SpecialKind) -> Option<Number> {
    match kind {
        SpecialKind::Celsius => Number::parse("273.15"),
        SpecialKind::Fahrenheit => Number::parse("459.67"),
        SpecialKind::Reaumur => Number::parse("218.52"),
        _ => None,
    }
}

/// Whether a special unit is a temperature, the only special units that convert to others.
pub(super) fn is_temperature(kind: SpecialKind) -> bool {
    zero_point(kind).is_some()
}

/// The value with as many decimals as `size`, the largest number on the way to it, has among its first 14 digits. Binary
/// arithmetic leaves noise in the 16th digit, and 86 °F must be 30 °C, 0.07 must be 7 %, when that is the limit. No
/// measurement has 14 digits.
fn without_rounding_noise(value: f64, size: f64) -> f64 {
    const DIGITS: i32 = 14;
    // Zero, infinite and NaN end up out of the range of exact powers and stay as they are.
    let decimals = DIGITS - 1 - size.abs().log10().floor().clamp(-99.0, 99.0) as i32;
    match power_of_ten(decimals) {
        Some(power) if decimals >= 0 => (value * power).round() / power,
        Some(power) => (value / power).round() * power,
        None => value,
    }
}

fn fraction(factor: Number) -> (f64, f64) {
    let inverse = || short_decimal(Number::ONE.checked_div(factor)?);
    short_decimal(factor)
        .or_else(|| inverse().map(|(numerator, denominator)| (denominator, numerator)))
        .unwrap_or((factor.to_f64(), 1.0))
}

/// The number as a numerator and a denominator that are both exact, if there are such.
fn short_decimal(number: Number) -> Option<(f64, f64)> {
    let (digits, exponent) = number.to_integer_and_exponent();
    let power = power_of_ten(exponent)?;
    if digits.unsigned_abs() > EXACT_INTEGER {
        return None;
    }
    if exponent < 0 {
        return Some((digits as f64, power));
    }
    let value = digits as f64 * power;
    (value <= EXACT_INTEGER as f64 || digits == 1).then_some((value, 1.0))
}

/// 10 to the absolute value of `exponent`, where that is exact.
fn power_of_ten(exponent: i32) -> Option<f64> {
    let exponent = exponent.checked_abs()?;
    (exponent <= EXACT_POWER_OF_TEN).then(|| (0..exponent).fold(1.0, |power, _| power * 10.0))
}
