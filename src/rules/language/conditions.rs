//! Words that make conditions.

use std::sync::Arc;

use super::super::closure::ScriptedJudge;
use super::super::code::Code;
use super::super::term::{Kind, Term};
use super::{Call, Word, arguments, makes};
use crate::knowledge::{Condition, Input, Judge, Judged, Side};

const MEASURABLE: &[Kind] = &[Kind::Reading, Kind::Quantity];

const READING: &[Kind] = &[Kind::Reading];

pub(super) const WORDS: &[Word] = &[
    makes("rises", MEASURABLE, ".rises(28, 30)", |call| ramp(call, |from, to| from < to)),
    makes("falls", MEASURABLE, ".falls(26, 24)", |call| ramp(call, |from, to| from > to)),
    makes("between", MEASURABLE, ".between(20, 25)", |call| between(call).map(Term::Condition)),
    makes("outside", MEASURABLE, ".outside(20, 25)", |call| {
        between(call).map(|inside| Term::Condition(Condition::Not(Box::new(inside))))
    }),
    makes("too_high", READING, ".too_high()", |call| past_limit(call, Side::High)),
    makes("too_low", READING, ".too_low()", |call| past_limit(call, Side::Low)),
    makes("on_target", READING, ".on_target()", |call| {
        if call.takes(1, 1) { call.reading(0).map(|key| Term::Condition(Condition::OnTarget(key))) } else { None }
    }),
    makes("formula_has", &[], "formula_has(lard)` or `formula_has(lard, butter)", |call| {
        let keys = call.many(0, "an ingredient", arguments::ingredient);
        (!keys.is_empty()).then(|| Term::Condition(Condition::FormulaHas(keys)))
    }),
    makes("formula_has_role", &[], "formula_has_role(\"emulsifier\")", |call| {
        if !call.takes(1, 1) {
            return None;
        }
        let name = call.text(0)?;
        call.role_named(&name).map(|role| Term::Condition(Condition::FormulaHasRole(role)))
    }),
    makes("all", &[], "all([a, b, c])", |call| several(call, Condition::All)),
    makes("any", &[], "any([a, b, c])", |call| several(call, Condition::Any)),
    makes(
        "judged",
        &[],
        "judged([dough_temperature, room_temperature], \"in words\", |dough, room| dough - room > 5)",
        judged,
    ),
];

fn ramp(call: &mut Call<'_>, in_order: fn(f64, f64) -> bool) -> Option<Term> {
    if !call.takes(3, 3) {
        return None;
    }
    let (quantity, from, to) = (call.quantity(0)?, call.number(1), call.number(2));
    let (from, to) = (from?, to?);
    if in_order(from, to) {
        return Some(Term::Condition(Condition::Ramp { quantity, from, to }));
    }
    let (other, order) = if from > to { ("falls", "larger") } else { ("rises", "smaller") };
    let help = if from == to {
        "write `>` or `<` for a sharp limit".to_owned()
    } else {
        format!("write `.{other}({from}, {to})`")
    };
    let message = if from == to {
        format!("`{}` from {from} to {to} is no range", call.name)
    } else {
        format!("`{}` starts at {from}, the {order} end", call.name)
    };
    call.fault(Code::OutOfRange, message, Some(help));
    None
}

fn between(call: &mut Call<'_>) -> Option<Condition> {
    if !call.takes(3, 3) {
        return None;
    }
    let quantity = call.quantity(0)?;
    call.window(1, 2).map(|window| Condition::Between(quantity, window.low, window.high))
}

fn past_limit(call: &mut Call<'_>, side: Side) -> Option<Term> {
    if call.takes(1, 1) { call.reading(0).map(|key| Term::Condition(Condition::PastLimit(key, side))) } else { None }
}

fn several(call: &mut Call<'_>, join: fn(Vec<Condition>) -> Condition) -> Option<Term> {
    let parts = call.many(0, "a condition", arguments::condition);
    (!parts.is_empty()).then(|| Term::Condition(join(parts)))
}

fn judged(call: &mut Call<'_>) -> Option<Term> {
    if !call.takes(3, 3) {
        return None;
    }
    let inputs = match call.argument(0, "a list of readings and facts")? {
        Term::List(items) => items.iter().map(arguments::input).collect::<Option<Vec<Input>>>(),
        other => arguments::input(&other).map(|input| vec![input]),
    };
    let Some(inputs) = inputs.filter(|inputs| !inputs.is_empty()) else {
        call.wrong("the inputs of `judged` are readings, facts or `baker_percent(…)` of one ingredient".to_owned());
        return None;
    };
    let text = call.text(1)?;
    let Term::Closure(closure) = call.argument(2, "a closure")? else {
        call.wrong("the third argument of `judged` is a closure, as in `|dough, room| dough - room > 5`".to_owned());
        return None;
    };
    let judge = ScriptedJudge::new(closure, &call.build.judging, &call.build.functions, &inputs);
    let trial: Vec<f64> = inputs.iter().map(|input| typical(call, *input)).collect();
    if let Err(fault) = judge.judge(&trial) {
        call.fault(Code::Script, format!("the closure fails on typical values: {}", fault.message), None);
        return None;
    }
    let judge: Arc<dyn Judge> = Arc::new(judge);
    Some(Term::Condition(Condition::Judged(Judged { inputs, text, judge, place: call.at.clone() })))
}

/// A value to try a closure with.
fn typical(call: &Call<'_>, input: Input) -> f64 {
    match input {
        Input::Reading(key) => {
            let plausible = call.build.declared.readings[key].plausible;
            let middle = f64::midpoint(plausible.low, plausible.high);
            if middle.is_finite() { middle } else { 1.0 }
        }
        Input::Fact(_) | Input::Share(_) | Input::Formula => 1.0,
    }
}
