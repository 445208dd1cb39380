//! Words that describe actions and set their quantities.

use super::super::code::Code;
use super::super::term::{Kind, Term};
use super::{Call, Word, describes, makes, settles};
use super::{arguments, calculations, changes};
use crate::knowledge::{Action, Change, Key, Limit, Place, Prescription, Setting};
use crate::units::Unit;

const ACTION: &[Kind] = &[Kind::Action];

/// Probability that an action mends its cause when the rule does not say (common practice: most textbook remedies work).
pub(super) const USUALLY_WORKS: f64 = 0.7;

pub(super) const WORDS: &[Word] = &[
    describes("side_effect", ACTION, ".side_effect(\"slower proof\")", |call| {
        let effects = call.many(1, "a text", arguments::text);
        call.set::<Action>(|action| action.side_effects.extend(effects.into_iter().map(Into::into)));
    }),
    describes("may_show", ACTION, ".may_show(low_volume)", |call| {
        let symptoms = call.many(1, "a symptom", arguments::symptom);
        call.set::<Action>(|action| action.may_show.extend(symptoms));
    }),
    settles("cost", ACTION, ".cost(PURCHASE)", cost),
    settles("waste", ACTION, ".waste(ONE_BATCH)` or `.waste(0.5)", |call| {
        if call.takes(2, 2)
            && let Some(batches) = call.batches(1)
        {
            call.set::<Action>(|action| action.waste_batches = Some(batches));
        }
    }),
    describes("uses", ACTION, ".uses(butter)", |call| {
        let ingredients = call.many(1, "an ingredient", arguments::ingredient);
        call.set::<Action>(|action| action.uses.extend(ingredients));
    }),
    makes(
        "set",
        &[Kind::Action, Kind::Prescription],
        ".set(\"water_temperature\", 7, \"Cel\")` or `.set(\"dose\", 0.3, \"%\", capped_by(some_limit), doses(salt))",
        set,
    ),
];

/// The prescription that a term is, not placed yet: an action by itself sets nothing.
pub(super) fn prescription(term: &Term) -> Option<Prescription> {
    match term {
        Term::Action(action) => {
            Some(Prescription { action: *action, settings: Vec::new(), works: USUALLY_WORKS, place: Place::default() })
        }
        Term::Prescription(prescription) => Some(prescription.clone()),
        _ => None,
    }
}

fn cost(call: &mut Call<'_>) {
    if !call.takes(2, 2) {
        return;
    }
    match call.argument(1, "a cost") {
        Some(Term::Cost(cost)) => call.set::<Action>(|action| action.cost = Some(cost)),
        Some(other) => call.wrong_kind("a cost", other.kind()),
        None => {}
    }
}

fn set(call: &mut Call<'_>) -> Option<Term> {
    let mut prescription = call.arguments.first().and_then(prescription)?;
    if !call.takes(4, 6) {
        return Some(Term::Prescription(prescription));
    }
    let (name, quantity, unit) = (call.text(1), call.quantity(2), call.unit(3));
    let options = options(call, unit.as_ref());
    if let (Some(name), Some(quantity), Some(unit)) = (name, quantity, unit)
        && let Some(quantity) = calculations::in_asked_unit(call, quantity, &unit)
    {
        let changes = changes::of_setting(call, &name, &unit, options.changes);
        prescription.settings.push(Setting { name, quantity, unit, capped_by: options.capped_by, changes });
    }
    Some(Term::Prescription(prescription))
}

/// What may stand behind the unit, in any order.
#[derive(Default)]
struct Options {
    capped_by: Vec<Key<Limit>>,
    changes: Option<Change>,
}

fn options(call: &mut Call<'_>, unit: Option<&Unit>) -> Options {
    const WANTED: &str = "`capped_by(…)`, `doses(…)`, `adds(…)`, `takes_out(…)` or `reads(…)`";
    let mut options = Options::default();
    for index in 4..call.arguments.len() {
        match call.argument(index, WANTED) {
            Some(Term::CappedBy(limits)) => {
                caps(call, &limits, unit);
                options.capped_by.extend(limits);
            }
            Some(Term::Change(_)) if options.changes.is_some() => {
                let help = Some("give each its own quantity".to_owned());
                call.fault(Code::Duplicate, "the quantity changes two things".to_owned(), help);
            }
            Some(Term::Change(change)) => options.changes = Some(change),
            Some(other) => call.wrong_kind(WANTED, other.kind()),
            None => {}
        }
    }
    options
}

/// Tells limits that are counted in units that do not convert to that of the quantity.
fn caps(call: &mut Call<'_>, limits: &[Key<Limit>], unit: Option<&Unit>) {
    for limit in limits {
        let limit = &call.build.declared.limits[*limit];
        // The declaration of a limit without a quantity failed, and told so itself.
        if limit.quantity.is_none() {
            continue;
        }
        let (id, own) = (limit.id.clone(), limit.unit.clone());
        if unit.is_some_and(|unit| !own.converts_to(unit)) {
            let message = format!("`{id}` is counted in `{own}`, the quantity in `{}`", unit.map_or("", Unit::code));
            let help = Some("give both in units that convert to each other".to_owned());
            call.fault(Code::Unit, message, help);
        }
    }
}
