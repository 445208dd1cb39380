//! Values and differences of values from one unit to another.

use std::fmt;

use super::Unit;
use super::scale::Scale;

/// Why a value cannot be converted.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ConversionFault {
    /// The units measure different things.
    #[error("{}", OtherKind { from, to })]
    OtherKind {
        /// The unit of the value.
        from: Unit,
        /// The unit that is wanted.
        to: Unit,
    },
    /// The annotations of the units name different bases (`%{flour}`, `%{dough}`).
    #[error("`{from}` and `{to}` are counted on different things")]
    OtherBasis {
        /// The unit of the value.
        from: Unit,
        /// The unit that is wanted.
        to: Unit,
    },
    /// The value is not a finite number, or would not be one in the unit that is wanted.
    #[error("{value:e} `{from}` is not a finite number in `{to}`")]
    OutOfRange {
        /// The value, in `from`.
        value: f64,
        /// The unit of the value.
        from: Unit,
        /// The unit that is wanted.
        to: Unit,
    },
}

/// The value in `to` of a `value` in `from`. Temperatures are points on their scales: 0 `Cel` is 273.15 `K`.
///
/// # Errors
/// A [`ConversionFault`] when the units are of different kinds, or the result is not a finite number.
pub fn convert(value: f64, from: &Unit, to: &Unit) -> Result<f64, ConversionFault> {
    convert_with(Scale::convert, value, from, to)
}

/// As [`convert`] for the difference of two values: a range or a drift of 9 `[degF]` is one of 5 `Cel` or 5 `K`.
///
/// # Errors
/// As [`convert`].
pub fn convert_difference(value: f64, from: &Unit, to: &Unit) -> Result<f64, ConversionFault> {
    convert_with(Scale::convert_difference, value, from, to)
}

fn convert_with(
    rule: impl Fn(&Scale, f64, &Scale) -> f64,
    value: f64,
    from: &Unit,
    to: &Unit,
) -> Result<f64, ConversionFault> {
    let units = || (from.clone(), to.clone());
    if from.kind() != to.kind() {
        let (from, to) = units();
        return Err(ConversionFault::OtherKind { from, to });
    }
    if from.0.basis_differs(&to.0) {
        let (from, to) = units();
        return Err(ConversionFault::OtherBasis { from, to });
    }
    let converted = rule(&from.0.scale, value, &to.0.scale);
    if converted.is_finite() {
        Ok(converted)
    } else {
        let (from, to) = units();
        Err(ConversionFault::OutOfRange { value, from, to })
    }
}

struct OtherKind<'a> {
    from: &'a Unit,
    to: &'a Unit,
}

impl fmt::Display for OtherKind<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (from, to) = (self.from, self.to);
        match (from.kind().name(), to.kind().name()) {
            (Some(measured), Some(wanted)) => {
                write!(f, "`{from}` measures {measured}, but {wanted} (`{to}`) is wanted")
            }
            _ => write!(f, "`{from}` does not measure the same as `{to}`"),
        }
    }
}
