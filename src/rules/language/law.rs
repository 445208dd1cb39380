//! Words about what may hurt people and what the law allows: warnings, jurisdictions, limits.

use super::super::code::Code;
use super::super::stage::Stage;
use super::super::term::{Kind, Term};
use super::arguments;
use super::{Call, Word, describes, makes, settles};
use crate::knowledge::{Action, Caution, Ingredient, Key, Limit, Warning};
use crate::units::Unit;

const LIMIT: &[Kind] = &[Kind::Limit];

const WARNING: &[Kind] = &[Kind::Warning];

pub(super) const WORDS: &[Word] = &[
    describes("jurisdiction", &[Kind::Caution], ".jurisdiction(US, CA)", |call| {
        let markets = call.many(1, "a market", arguments::market);
        call.set::<Caution>(|caution| caution.jurisdiction.extend(markets));
    }),
    describes("not_permitted", &[Kind::Ingredient], ".not_permitted(EU, GB)", |call| {
        let markets = call.many(1, "a market", arguments::market);
        call.set::<Ingredient>(|ingredient| ingredient.not_permitted.extend(markets));
    }),
    describes("market", LIMIT, ".market(EU)", |call| {
        let markets = call.many(1, "a market", arguments::market);
        call.set::<Limit>(|limit| limit.markets.extend(markets));
    }),
    settles("of", LIMIT, ".of(baker_percent(salt))", |call| {
        if call.takes(2, 2)
            && let Some(quantity) = call.quantity(1)
        {
            let unit = quantity.unit(&call.build.declared.readings).cloned();
            call.set::<Limit>(|limit| {
                limit.quantity = Some(quantity);
                if let Some(unit) = unit.filter(|_| limit.unit == Unit::default()) {
                    limit.unit = unit;
                }
            });
        }
    }),
    settles("at_most", LIMIT, ".at_most(0.3)", |call| {
        if call.takes(2, 2)
            && let Some(most) = call.number_within(1, 0.0, f64::MAX)
        {
            call.set::<Limit>(|limit| limit.most = most);
        }
    }),
    settles("unit", LIMIT, ".unit(\"%\")", |call| {
        if call.takes(2, 2)
            && let Some(unit) = call.unit(1)
        {
            call.set::<Limit>(|limit| limit.unit = unit);
        }
    }),
    describes("instead", &[Kind::Action], ".instead(colder_mixing_water)", |call| {
        let actions = call.many(1, "an action", arguments::action);
        call.set::<Action>(|action| action.instead.extend(actions));
    }),
    describes("undoes", &[Kind::Action], ".undoes(colder_mixing_water)", |call| {
        let actions = call.many(1, "an action", arguments::action);
        call.set::<Action>(|action| action.undoes.extend(actions));
    }),
    settles("at_once", &[Kind::Action], ".at_once()", |call| {
        if call.takes(1, 1) {
            call.set::<Action>(|action| action.at_once = true);
        }
    }),
    makes("capped_by", &[], "capped_by(some_limit)", |call| {
        let limits = call.many(0, "a limit", arguments::limit);
        (!limits.is_empty()).then_some(Term::CappedBy(limits))
    }),
    makes("warn", &[], "warn(hot_oven)", warn),
    settles("when", WARNING, ".when(dough_temperature > 29)", |call| {
        if call.takes(2, 2)
            && let Some(condition) = call.condition(1)
        {
            call.set::<Warning>(|warning| warning.when = Some(condition));
        }
    }),
    settles("also_when_unknown", WARNING, ".also_when_unknown()", |call| {
        if call.takes(1, 1) {
            call.set::<Warning>(|warning| warning.also_when_unknown = true);
        }
    }),
];

fn warn(call: &mut Call<'_>) -> Option<Term> {
    if !call.takes(1, 1) {
        return None;
    }
    if call.build.stage != Stage::Causes {
        let help =
            Some("it stands beside causes, in a file of any name that the table of files does not keep".to_owned());
        call.fault(Code::WrongFile, "`warn` may not stand in this file".to_owned(), help);
        return None;
    }
    let caution = call.many(0, "a caution", arguments::caution).first().copied()?;
    let warnings = &mut call.build.declared.warnings;
    let key = Key::new(warnings.len());
    let place = call.at.clone();
    warnings.push(Warning { caution, when: None, also_when_unknown: false, products: Vec::new(), place });
    Some(Term::Warning(key))
}
