//! Three-valued, graded truth.

/// A grade from 0 (false) to 1 (true), or unknown.
///
/// `and` is the smaller grade and `or` the larger; both stay certain when one side settles them (Kleene's strong logic,
/// with Zadeh's minimum and maximum for grades). Unknown is never false.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Truth(Option<f64>);

impl Truth {
    /// Fully true.
    pub const TRUE: Self = Self(Some(1.0));
    /// Fully false.
    pub const FALSE: Self = Self(Some(0.0));
    /// Not known.
    pub const UNKNOWN: Self = Self(None);

    /// A grade, clamped to 0..=1; NaN is unknown.
    #[must_use]
    pub fn graded(grade: f64) -> Self {
        if grade.is_nan() { Self::UNKNOWN } else { Self(Some(grade.clamp(0.0, 1.0))) }
    }

    /// The grade, or `None` when unknown.
    #[must_use]
    pub fn grade(self) -> Option<f64> {
        self.0
    }

    /// Both hold.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        match (self.0, other.0) {
            (Some(a), Some(b)) => Self(Some(a.min(b))),
            (Some(a), None) | (None, Some(a)) if a == 0.0 => Self::FALSE,
            _ => Self::UNKNOWN,
        }
    }

    /// At least one holds.
    #[must_use]
    pub fn or(self, other: Self) -> Self {
        self.not().and(other.not()).not()
    }

    /// The contrary.
    #[must_use]
    #[allow(clippy::should_implement_trait)] // the word of logic; `!` on a grade would mislead
    pub fn not(self) -> Self {
        Self(self.0.map(|grade| 1.0 - grade))
    }
}

impl From<bool> for Truth {
    fn from(value: bool) -> Self {
        if value { Self::TRUE } else { Self::FALSE }
    }
}

impl From<Option<bool>> for Truth {
    fn from(value: Option<bool>) -> Self {
        value.map_or(Self::UNKNOWN, Self::from)
    }
}

#[cfg(test)]
mod tests {
    use super::Truth;

    #[test]
    fn unknown_is_decided_only_by_a_settling_side() {
        assert_eq!(Truth::FALSE.and(Truth::UNKNOWN), Truth::FALSE);
        assert_eq!(Truth::TRUE.and(Truth::UNKNOWN), Truth::UNKNOWN);
        assert_eq!(Truth::graded(0.4).and(Truth::UNKNOWN), Truth::UNKNOWN);
        assert_eq!(Truth::TRUE.or(Truth::UNKNOWN), Truth::TRUE);
        assert_eq!(Truth::FALSE.or(Truth::UNKNOWN), Truth::UNKNOWN);
        assert_eq!(Truth::UNKNOWN.not(), Truth::UNKNOWN);
    }

    #[test]
    fn grades_take_minimum_and_maximum() {
        assert_eq!(Truth::graded(0.25).and(Truth::graded(0.75)).grade(), Some(0.25));
        assert_eq!(Truth::graded(0.25).or(Truth::graded(0.75)).grade(), Some(0.75));
        assert_eq!(Truth::graded(f64::NAN), Truth::UNKNOWN);
        assert_eq!(Truth::graded(7.0), Truth::TRUE);
    }
}
