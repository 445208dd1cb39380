//! Which values an expression, and which grades a condition, can have at all.
//!
//! Interval arithmetic (Moore R. E., Interval Analysis, 1966, from memory): every reading runs through its plausible range
//! by itself, so the true range is never wider than what is found here.

use crate::knowledge::{Comparison, Condition, Declarations, Operation, Quantity};

/// From the smallest to the largest value, both included; infinite where nothing bounds it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Range {
    pub(super) low: f64,
    pub(super) high: f64,
}

impl Range {
    const ANY: Self = Self { low: f64::NEG_INFINITY, high: f64::INFINITY };
    const ANY_GRADE: Self = Self { low: 0.0, high: 1.0 };
    const TRUE: Self = Self { low: 1.0, high: 1.0 };
    const FALSE: Self = Self { low: 0.0, high: 0.0 };

    /// The range of some values; anything when one of them is no number.
    fn over(values: impl IntoIterator<Item = f64>) -> Self {
        values.into_iter().fold(Self { low: f64::INFINITY, high: f64::NEG_INFINITY }, |range, value| {
            if value.is_nan() { Self::ANY } else { Self { low: range.low.min(value), high: range.high.max(value) } }
        })
    }

    /// Both ends with both ends of another.
    fn combined(self, other: Self, operation: fn(f64, f64) -> f64) -> Self {
        let Self { low, high } = other;
        let ends = [self.low, self.high].into_iter().flat_map(|own| [operation(own, low), operation(own, high)]);
        let ends: Vec<f64> = ends.collect();
        // Zero times infinity may be anything.
        if ends.iter().any(|end| end.is_nan()) { Self::ANY } else { Self::over(ends) }
    }
}

/// The values that an expression can have.
pub(super) fn of_quantity(quantity: &Quantity, declared: &Declarations) -> Range {
    match quantity {
        Quantity::Number(number) => Range { low: *number, high: *number },
        Quantity::Reading(key) => {
            let plausible = declared.readings[*key].plausible;
            Range { low: plausible.low, high: plausible.high }
        }
        Quantity::Abs(inner) => {
            let Range { low, high } = of_quantity(inner, declared);
            let nearest = if low <= 0.0 && high >= 0.0 { 0.0 } else { low.abs().min(high.abs()) };
            Range { low: nearest, high: low.abs().max(high.abs()) }
        }
        Quantity::Binary(operation, left, right) => {
            binary(*operation, of_quantity(left, declared), of_quantity(right, declared))
        }
        // A plant may set any limits, and a formula may be anything.
        _ => Range::ANY,
    }
}

fn binary(operation: Operation, left: Range, right: Range) -> Range {
    match operation {
        Operation::Add => left.combined(right, |a, b| a + b),
        Operation::Subtract => left.combined(right, |a, b| a - b),
        Operation::Multiply => left.combined(right, |a, b| a * b),
        Operation::Divide if right.low <= 0.0 && right.high >= 0.0 => Range::ANY,
        Operation::Divide => left.combined(right, |a, b| a / b),
        Operation::Min => left.combined(right, f64::min),
        Operation::Max => left.combined(right, f64::max),
    }
}

/// The grades that a condition can have: 0 false, 1 true.
pub(super) fn of_condition(condition: &Condition, declared: &Declarations) -> Range {
    match condition {
        Condition::Compare(left, comparison, right) => {
            compare(of_quantity(left, declared), *comparison, of_quantity(right, declared))
        }
        Condition::Ramp { quantity, from, to } => {
            let Range { low, high } = of_quantity(quantity, declared);
            Range::over([low, high].map(|value| ((value - from) / (to - from)).clamp(0.0, 1.0)))
        }
        Condition::Between(quantity, low, high) => {
            let range = of_quantity(quantity, declared);
            let over_low = compare(range, Comparison::AtLeast, Range { low: *low, high: *low });
            let under_high = compare(range, Comparison::AtMost, Range { low: *high, high: *high });
            both(over_low, under_high)
        }
        Condition::Not(inner) => not(of_condition(inner, declared)),
        Condition::All(parts) => parts.iter().map(|part| of_condition(part, declared)).fold(Range::TRUE, both),
        Condition::Any(parts) => {
            let none = parts.iter().map(|part| not(of_condition(part, declared))).fold(Range::TRUE, both);
            not(none)
        }
        _ => Range::ANY_GRADE,
    }
}

fn both(one: Range, other: Range) -> Range {
    Range { low: one.low.min(other.low), high: one.high.min(other.high) }
}

fn not(range: Range) -> Range {
    Range { low: 1.0 - range.high, high: 1.0 - range.low }
}

fn compare(left: Range, comparison: Comparison, right: Range) -> Range {
    let (always, never) = match comparison {
        Comparison::Above => (left.low > right.high, left.high <= right.low),
        Comparison::AtLeast => (left.low >= right.high, left.high < right.low),
        Comparison::Below => (left.high < right.low, left.low >= right.high),
        Comparison::AtMost => (left.high <= right.low, left.low > right.high),
    };
    match (always, never) {
        (true, _) => Range::TRUE,
        (_, true) => Range::FALSE,
        _ => Range::ANY_GRADE,
    }
}

#[cfg(test)]
mod tests {
    use super::{Range, binary, both, compare, not};
    use crate::knowledge::{Comparison, Operation};

    const fn range(low: f64, high: f64) -> Range {
        Range { low, high }
    }

    #[test]
    fn arithmetic_bounds_every_pair_of_values() {
        let (left, right) = (range(-2.0, 3.0), range(1.0, 4.0));
        assert_eq!(binary(Operation::Add, left, right), range(-1.0, 7.0));
        assert_eq!(binary(Operation::Subtract, left, right), range(-6.0, 2.0));
        assert_eq!(binary(Operation::Multiply, left, right), range(-8.0, 12.0));
        assert_eq!(binary(Operation::Divide, left, right), range(-2.0, 3.0));
        assert_eq!(binary(Operation::Divide, right, left), Range::ANY);
        assert_eq!(binary(Operation::Max, left, right), range(1.0, 4.0));
        assert_eq!(binary(Operation::Multiply, Range::ANY, range(0.0, 1.0)), Range::ANY);
    }

    #[test]
    fn comparisons_are_settled_only_when_no_value_decides_otherwise() {
        assert_eq!(compare(range(0.0, 5.0), Comparison::Above, range(5.0, 5.0)), Range::FALSE);
        assert_eq!(compare(range(0.0, 5.0), Comparison::AtLeast, range(5.0, 5.0)), Range::ANY_GRADE);
        assert_eq!(compare(range(6.0, 9.0), Comparison::Above, range(5.0, 5.0)), Range::TRUE);
        assert_eq!(compare(range(6.0, 9.0), Comparison::AtMost, range(5.0, 5.0)), Range::FALSE);
        assert_eq!(not(Range::TRUE), Range::FALSE);
        assert_eq!(both(Range::FALSE, Range::ANY_GRADE), Range::FALSE);
    }
}
