//! Words that make expressions.

use super::super::code::Code;
use super::super::term::{Kind, Term};
use super::{Call, Word, arguments, makes};
use crate::knowledge::{FormulaQuantity, Key, Operation, Quantity, Reading};
use crate::suggest::did_you_mean;

const MEASURABLE: &[Kind] = &[Kind::Reading, Kind::Quantity];

pub(super) const WORDS: &[Word] = &[
    makes("target", &[Kind::Reading], "target(dough_temperature)", |call| of_reading(call, Quantity::Target)),
    makes("low_limit", &[Kind::Reading], "low_limit(dough_temperature)", |call| of_reading(call, Quantity::LowLimit)),
    makes("high_limit", &[Kind::Reading], "high_limit(dough_temperature)", |call| {
        of_reading(call, Quantity::HighLimit)
    }),
    makes("baker_percent", &[], "baker_percent(salt)` or `baker_percent(lard, butter)", |call| {
        let keys = call.many(0, "an ingredient", arguments::ingredient);
        (!keys.is_empty()).then(|| Term::Quantity(Quantity::BakerPercent(keys)))
    }),
    makes("mass_percent", &[], "mass_percent(pectin)` or `mass_percent(sugar, honey, \"filling\")", mass_percent),
    makes("role_percent", &[], "role_percent(\"fat\")", |call| {
        if !call.takes(1, 1) {
            return None;
        }
        let name = call.text(0)?;
        call.role_named(&name).map(|role| Term::Quantity(Quantity::RolePercent(role)))
    }),
    makes("formula", &[], "formula(\"salt_on_flour\")` or `formula(\"soluble_solids\", \"filling\")", formula),
    makes("either", MEASURABLE, "either(dough_temperature, room_temperature + 2)", |call| {
        if !call.takes(2, 2) {
            return None;
        }
        let (first, second) = (call.quantity(0), call.quantity(1));
        Some(Term::Quantity(Quantity::Either(Box::new(first?), Box::new(second?))))
    }),
    makes("min", MEASURABLE, "min(dough_temperature, 30)", |call| binary(call, Operation::Min)),
    makes("max", MEASURABLE, "max(dough_temperature, 20)", |call| binary(call, Operation::Max)),
    makes("abs", MEASURABLE, "abs(dough_temperature - 26)", |call| {
        if call.takes(1, 1) {
            call.quantity(0).map(|inner| Term::Quantity(Quantity::Abs(Box::new(inner))))
        } else {
            None
        }
    }),
];

fn of_reading(call: &mut Call<'_>, make: fn(Key<Reading>) -> Quantity) -> Option<Term> {
    if call.takes(1, 1) { call.reading(0).map(|key| Term::Quantity(make(key))) } else { None }
}

/// Arithmetic on two expressions.
pub(super) fn binary(call: &mut Call<'_>, operation: Operation) -> Option<Term> {
    if !call.takes(2, 2) {
        return None;
    }
    let (left, right) = (call.quantity(0), call.quantity(1));
    Some(Term::Quantity(Quantity::Binary(operation, Box::new(left?), Box::new(right?))))
}

/// Ingredients, and the part as the last argument where it is not the main one.
fn mass_percent(call: &mut Call<'_>) -> Option<Term> {
    let mut part = None;
    if call.arguments.len() > 1 && matches!(call.arguments.last(), Some(Term::Text(_))) {
        part = Some(call.part(call.arguments.len() - 1)?);
        call.arguments.pop();
    }
    let keys = call.many(0, "an ingredient", arguments::ingredient);
    (!keys.is_empty()).then(|| Term::Quantity(Quantity::MassPercent(keys, part)))
}

fn formula(call: &mut Call<'_>) -> Option<Term> {
    if !call.takes(1, 2) {
        return None;
    }
    let part = if call.arguments.len() == 2 { Some(call.part(1)) } else { None };
    let name = call.text(0)?;
    let found = FormulaQuantity::named(&name);
    if found.is_none() {
        let help = did_you_mean(&name, FormulaQuantity::ALL.iter().map(|(_, own, ..)| *own));
        call.fault(Code::UnknownName, format!("unknown formula quantity `{name}`"), help);
    }
    // A part that is not known has told its own fault.
    let part = part.map_or(Some(None), |part| part.map(Some))?;
    found.map(|quantity| Term::Quantity(Quantity::Formula(quantity, part)))
}
