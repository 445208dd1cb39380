//! Words that tell what a quantity of an action changes, and what follows from its name.

use super::super::code::Code;
use super::super::term::Term;
use super::{Call, Word, arguments, makes};
use crate::knowledge::{Amount, Basis, Change, How, Key, Portion, Reading};
use crate::units::Unit;

pub(super) const WORDS: &[Word] = &[
    makes(
        "doses",
        &[],
        "doses(water)` or `doses(\"fat\")` or `doses(pectin_hm, pectin_lm, \"filling\")` or `doses(\"yeast\", yeast_on_flour)",
        |call| amount(call, How::Doses),
    ),
    makes("adds", &[], "adds(dextrose)` or `adds(\"sugar\")` or `adds(water, \"filling\")", |call| {
        amount(call, How::Adds)
    }),
    makes("takes_out", &[], "takes_out(sugar)` or `takes_out(\"fat\")` or `takes_out(sugar, \"filling\")", |call| {
        amount(call, How::TakesOut)
    }),
    makes("reads", &[], "reads(filling_ph)", |call| {
        if call.takes(1, 1) { call.reading(0).map(|key| Term::Change(Change::Reading(key))) } else { None }
    }),
];

/// Most arguments of an amount: more ingredients together are a role.
const MOST_ARGUMENTS: usize = 8;

/// What is weighed otherwise, and what it is counted on where that is not the flour or the batch.
fn amount(call: &mut Call<'_>, how: How) -> Option<Term> {
    if !call.takes(1, MOST_ARGUMENTS) {
        return None;
    }
    let last = call.arguments.len() - 1;
    let counted = last > 0 && !matches!(call.arguments.last(), Some(Term::Ingredient(_) | Term::Unknown));
    let basis = if counted { basis(call, how, last) } else { Some(Basis::Flour) };
    let of = match call.argument(0, "an ingredient or a role")? {
        Term::Text(name) if last == usize::from(counted) => call.role_named(&name).map(Portion::Role),
        _ => {
            call.arguments.truncate(if counted { last } else { last + 1 });
            let keys = call.many(0, "an ingredient or a role", arguments::ingredient);
            (!keys.is_empty()).then_some(Portion::Ingredients(keys))
        }
    };
    Some(Term::Change(Change::Amount(Amount { of: of?, how, basis: basis? })))
}

fn basis(call: &mut Call<'_>, how: How, index: usize) -> Option<Basis> {
    let wanted = if how == How::Doses { "a part or a reading" } else { "a part" };
    match call.argument(index, wanted)? {
        Term::Text(_) => call.part(index).map(Basis::Part),
        Term::Reading(key) if how == How::Doses => is_computed(call, key).then_some(Basis::Reading(key)),
        other => {
            call.wrong_kind(wanted, other.kind());
            None
        }
    }
}

/// Whether the rules compute a reading, so that an amount can be found with which it reads a quantity.
fn is_computed(call: &mut Call<'_>, key: Key<Reading>) -> bool {
    let reading = &call.build.declared.readings[key];
    let computed = reading.computed.is_some();
    if !computed {
        let message = format!("nothing computes `{}`, so no amount follows from it", reading.id);
        let help = Some("name a reading with `.computed(…)` from the formula".to_owned());
        call.fault(Code::WrongArguments, message, help);
    }
    computed
}

/// What a quantity changes: what the rule says, else the reading of its name.
pub(super) fn of_setting(call: &mut Call<'_>, name: &str, unit: &Unit, said: Option<Change>) -> Option<Change> {
    let named = match call.build.names.get(name).map(|known| &known.term) {
        Some(Term::Reading(key)) => Some(*key),
        _ => None,
    };
    match said.or_else(|| named.map(Change::Reading))? {
        Change::Reading(key) => counts_in(call, key, unit).then_some(Change::Reading(key)),
        Change::Amount(amount) => counted(call, amount, named, unit).map(Change::Amount),
    }
}

/// The amount with what its quantity is counted on.
fn counted(call: &mut Call<'_>, amount: Amount, named: Option<Key<Reading>>, unit: &Unit) -> Option<Amount> {
    let computed = |key: &Key<Reading>| call.build.declared.readings[*key].computed.is_some();
    let own = named.filter(|key| amount.how == How::Doses && amount.basis == Basis::Flour && computed(key));
    let basis = own.map_or(amount.basis, Basis::Reading);
    if let Basis::Reading(key) = basis {
        return counts_in(call, key, unit).then_some(Amount { basis, ..amount });
    }
    if is_share(unit) {
        return Some(amount);
    }
    if is_mass(unit) && !matches!(basis, Basis::Part(_)) {
        return Some(Amount { basis: Basis::Batch, ..amount });
    }
    let wanted = if matches!(basis, Basis::Part(_)) { "a share of the part" } else { "a mass or a share of the flour" };
    let message = format!("`{}` wants {wanted}, the quantity is in `{unit}`", amount.how.word());
    let help = if matches!(basis, Basis::Part(_)) { "write `\"%\"`" } else { "write `\"kg\"` or `\"%\"`" };
    call.fault(Code::Unit, message, Some(help.to_owned()));
    None
}

/// Whether a quantity can be a value of a reading.
fn counts_in(call: &mut Call<'_>, key: Key<Reading>, unit: &Unit) -> bool {
    let Some(own) = call.unit_of_reading(key) else { return false };
    let converts = unit.converts_to(&own);
    if !converts {
        let id = call.build.declared.readings[key].id.clone();
        let message = format!("`{id}` is a reading in `{own}`, the quantity is in `{unit}`");
        let help = Some("give a unit that converts, or another name to what is not that reading".to_owned());
        call.fault(Code::Unit, message, help);
    }
    converts
}

fn is_share(unit: &Unit) -> bool {
    Unit::parse("%").is_ok_and(|percent| unit.converts_to(&percent))
}

fn is_mass(unit: &Unit) -> bool {
    Unit::parse("kg").is_ok_and(|kilogram| unit.converts_to(&kilogram))
}
