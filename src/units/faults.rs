//! Why a text is not a unit, and what to write instead.

use super::MAX_CODE_LENGTH;
use super::definition::Defect;
use super::suggestions::suggest;

/// Why a code was not read as a unit.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum UnitFault {
    /// The code is longer than [`MAX_CODE_LENGTH`].
    #[error("a unit code of {length} bytes is too long, at most {MAX_CODE_LENGTH} are read")]
    TooLong {
        /// The length of the code in bytes.
        length: usize,
    },
    /// The code is not UCUM.
    #[error("unknown unit `{code}`")]
    Unknown {
        /// The code, with control characters replaced.
        code: String,
        /// The UCUM code that was probably meant.
        suggestion: Option<String>,
    },
    /// The code is UCUM, but for a unit that no bakery uses and that looks like a common one.
    #[error("`{symbol}` is the {meaning} in UCUM")]
    Lookalike {
        /// The part of the code that misleads.
        symbol: &'static str,
        /// What UCUM takes it for.
        meaning: &'static str,
        /// The UCUM code that was probably meant.
        suggestion: Option<String>,
    },
    /// A dot after a solidus: UCUM reads from left to right, so `g/100.g` is `(g/100).g`.
    #[error("in `{code}` the dot multiplies the whole unit: UCUM reads from left to right")]
    DotAfterSolidus {
        /// The code.
        code: String,
        /// The code with the denominator in parentheses.
        suggestion: Option<String>,
    },
    /// A scale with its own zero or a logarithm (`Cel`, `[degF]`, `[pH]`) in a product or quotient.
    #[error("`{code}` multiplies or divides by a scale that has no sizes to multiply")]
    ScaleInProduct {
        /// The code.
        code: String,
        /// The code with `K` for `Cel` and `[degR]` for `[degF]`.
        suggestion: Option<String>,
    },
    /// The unit is too large or too small to compute with.
    #[error("the size of `{code}` is out of range")]
    OutOfRange {
        /// The code.
        code: String,
    },
}

impl UnitFault {
    pub(super) fn from_defect(code: &str, defect: Defect) -> Self {
        let shown = || code.replace(char::is_control, "\u{fffd}");
        match defect {
            Defect::TooLong => Self::TooLong { length: code.len() },
            Defect::Unknown => Self::Unknown { code: shown(), suggestion: suggest(code) },
            Defect::Lookalike(lookalike) => {
                Self::Lookalike { symbol: lookalike.code, meaning: lookalike.meaning, suggestion: suggest(code) }
            }
            Defect::DotAfterSolidus => Self::DotAfterSolidus { code: shown(), suggestion: suggest(code) },
            Defect::ScaleInProduct => Self::ScaleInProduct { code: shown(), suggestion: suggest(code) },
            Defect::OutOfRange => Self::OutOfRange { code: shown() },
        }
    }

    /// The UCUM code that was probably meant. It is never used unasked: a wrong guess would be a wrong reading.
    pub fn suggestion(&self) -> Option<&str> {
        match self {
            Self::Unknown { suggestion, .. }
            | Self::Lookalike { suggestion, .. }
            | Self::DotAfterSolidus { suggestion, .. }
            | Self::ScaleInProduct { suggestion, .. } => suggestion.as_deref(),
            Self::TooLong { .. } | Self::OutOfRange { .. } => None,
        }
    }
}
