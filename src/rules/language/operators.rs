//! Operators between terms.

use super::super::code::Code;
use super::super::term::{Kind, Term};
use super::quantities::binary;
use super::{Call, Word, makes};
use crate::knowledge::{Comparison, Condition, Operation, Quantity};

/// What arithmetic and comparisons may start with; the other side may be a number too.
const MEASURABLE: &[Kind] = &[Kind::Reading, Kind::Quantity, Kind::Number];

/// What logic joins.
const STATEMENT: &[Kind] = &[Kind::Condition, Kind::Fact];

pub(super) const WORDS: &[Word] = &[
    makes("+", MEASURABLE, "loaf_mass + 10", |call| binary(call, Operation::Add)),
    makes("-", MEASURABLE, "loaf_mass - 10", minus),
    makes("*", MEASURABLE, "loaf_mass * 2", |call| binary(call, Operation::Multiply)),
    makes("/", MEASURABLE, "loaf_volume / loaf_mass", |call| binary(call, Operation::Divide)),
    makes(">", MEASURABLE, "dough_temperature > 29", |call| compare(call, Comparison::Above)),
    makes(">=", MEASURABLE, "dough_temperature >= 29", |call| compare(call, Comparison::AtLeast)),
    makes("<", MEASURABLE, "dough_temperature < 24", |call| compare(call, Comparison::Below)),
    makes("<=", MEASURABLE, "dough_temperature <= 24", |call| compare(call, Comparison::AtMost)),
    makes("==", MEASURABLE, "dough_temperature.between(25, 26)", no_equality),
    makes("!=", MEASURABLE, "dough_temperature.outside(25, 26)", no_equality),
    makes("&", STATEMENT, "a & b", |call| join(call, Condition::All)),
    makes("|", STATEMENT, "a | b", |call| join(call, Condition::Any)),
    makes("!", STATEMENT, "!a", |call| call.condition(0).map(|inner| Term::Condition(Condition::Not(Box::new(inner))))),
];

fn compare(call: &mut Call<'_>, comparison: Comparison) -> Option<Term> {
    let (left, right) = (call.quantity(0), call.quantity(1));
    Some(Term::Condition(Condition::Compare(left?, comparison, right?)))
}

/// Subtraction, or the sign of one expression.
fn minus(call: &mut Call<'_>) -> Option<Term> {
    if call.arguments.len() > 1 {
        return binary(call, Operation::Subtract);
    }
    let inner = call.quantity(0)?;
    Some(Term::Quantity(Quantity::Binary(Operation::Subtract, Box::new(Quantity::Number(0.0)), Box::new(inner))))
}

fn join(call: &mut Call<'_>, make: fn(Vec<Condition>) -> Condition) -> Option<Term> {
    let (left, right) = (call.condition(0), call.condition(1));
    Some(Term::Condition(make(vec![left?, right?])))
}

/// Measured values are never equal to a number.
fn no_equality(call: &mut Call<'_>) -> Option<Term> {
    let help = Some("write `.between(low, high)`, or `>` and `<`".to_owned());
    call.fault(Code::WrongArguments, format!("`{}` does not make a condition of a measured value", call.name), help);
    None
}
