//! Judges a pack as a whole: what is incomplete, out of range or circular.

use super::build::{Build, Name};
use super::code::Code;
use super::diagnostic::Severity;
use super::term::{Kind, Term};
use crate::knowledge::{Input, Key, Limit, Place, Quantity, Reading};
use crate::units::{Unit, convert};

/// Runs all checks; findings go to the diagnostics.
pub(super) fn run(build: &mut Build) {
    let names: Vec<(String, Name)> = build.names.iter().map(|(id, name)| (id.clone(), name.clone())).collect();
    for (id, name) in &names {
        match &name.place {
            // A file that does not compile has told its own fault.
            Some(place) if place.line == 0 => {}
            Some(place) => check(build, id, &name.term, place),
            None => never_declared(build, id, name),
        }
    }
    check_warnings(build);
    if build.declared.pack.id.is_empty() {
        let at = Place { file: "pack.rhai".into(), line: 0, column: 0 };
        let help = Some("write `pack(\"name\").title(\"…\").version(\"0.1.0\");` in `pack.rhai`".to_owned());
        build.fault(Code::Incomplete, &at, 1, "the pack has no name and version".to_owned(), help);
    }
}

/// A warning without a condition would never stand in an answer.
fn check_warnings(build: &mut Build) {
    let lacking: Vec<Place> =
        build.declared.warnings.iter().filter(|one| one.when.is_none()).map(|one| one.place.clone()).collect();
    // A condition that is stated wrongly has told its own fault.
    if build.diagnostics.iter().any(|told| told.severity == Severity::Fault) {
        return;
    }
    for at in lacking {
        let help = Some("add `.when(…)`; a caution that always holds says `.always()` itself".to_owned());
        build.fault(Code::Incomplete, &at, Kind::Warning.word_width(), "the warning has no condition".to_owned(), help);
    }
}

fn never_declared(build: &mut Build, id: &str, name: &Name) {
    let width = name.term.kind().word_width();
    build.fault(Code::Incomplete, &name.seen, width, format!("`{id}` stands in a declaration that never runs"), None);
}

fn check(build: &mut Build, id: &str, term: &Term, at: &Place) {
    for lacking in lacks(build, term) {
        let message = format!("`{id}` has no {lacking}");
        build.fault(Code::Incomplete, at, term.kind().word_width(), message, Some(format!("add `.{lacking}(…)`")));
    }
    match term {
        Term::Reading(key) => check_reading(build, id, *key, at),
        Term::Limit(key) => check_limit(build, id, *key, at),
        Term::Cause(_) => warn_about_cause(build, id, term, at),
        _ => {}
    }
}

/// Properties that a declaration must have and has not.
fn lacks(build: &Build, term: &Term) -> Vec<&'static str> {
    let declared = &build.declared;
    let wanted: Vec<(&'static str, bool)> = match term {
        Term::Source(key) => vec![("citation", declared.sources[*key].citation.is_empty())],
        Term::Caution(key) => vec![("text", declared.cautions[*key].text.is_empty())],
        Term::Diet(key) => vec![("title", declared.diets[*key].title.is_empty())],
        Term::Allergen(key) => vec![("title", declared.allergens[*key].title.is_empty())],
        Term::Market(key) => vec![("title", declared.markets[*key].title.is_empty())],
        Term::Family(key) => vec![("title", declared.families[*key].title.is_empty())],
        Term::Product(key) => {
            let product = &declared.products[*key];
            vec![("title", product.title.is_empty()), ("family", product.family.is_none())]
        }
        Term::Ingredient(key) => vec![("title", declared.ingredients[*key].title.is_empty())],
        Term::Symptom(key) => {
            let symptom = &declared.symptoms[*key];
            vec![("title", symptom.title.is_empty()), ("description", symptom.description.is_empty())]
        }
        Term::Fact(key) => {
            let fact = &declared.facts[*key];
            vec![("title", fact.title.is_empty()), ("question", fact.question.is_empty())]
        }
        Term::Reading(key) => {
            let reading = &declared.readings[*key];
            vec![
                ("title", reading.title.is_empty()),
                ("unit", reading.unit.code() == "1" && !reading.plausible.low.is_finite()),
                ("plausible", !reading.plausible.low.is_finite()),
                ("method", reading.method.is_empty()),
            ]
        }
        Term::Limit(key) => {
            let limit = &declared.limits[*key];
            vec![
                ("text", limit.text.is_empty()),
                ("market", limit.markets.is_empty()),
                ("of", limit.quantity.is_none()),
                ("at_most", limit.most.is_nan()),
            ]
        }
        Term::Action(key) => {
            let action = &declared.actions[*key];
            vec![("title", action.title.is_empty()), ("text", action.text.is_empty())]
        }
        Term::Cause(key) => {
            let cause = &declared.causes[*key];
            vec![
                ("title", cause.title.is_empty()),
                ("mechanism", cause.mechanism.is_empty()),
                ("products", cause.products.is_empty()),
                ("prior", cause.prior.is_nan()),
            ]
        }
        _ => Vec::new(),
    };
    let lacks = |word, lacking| lacking && !is_stated_wrongly(build, term, word);
    wanted.into_iter().filter(|(word, lacking)| lacks(*word, *lacking)).map(|(word, _)| word).collect()
}

/// Whether a property that is lacking was stated all the same: then it has told its own fault.
fn is_stated_wrongly(build: &Build, term: &Term, word: &'static str) -> bool {
    let stated = term.thing().is_some_and(|(kind, index)| build.stated.contains(&(kind, index, word)));
    stated && build.diagnostics.iter().any(|told| told.severity == Severity::Fault)
}

fn check_reading(build: &mut Build, id: &str, key: Key<Reading>, at: &Place) {
    let reading = build.declared.readings[key].clone();
    for (_, window) in &reading.windows {
        if window.low < reading.plausible.low || window.high > reading.plausible.high {
            let message = format!("a window of `{id}`, {} to {}, leaves its plausible range", window.low, window.high);
            build.fault(Code::OutOfRange, at, Kind::Reading.word_width(), message, None);
        }
    }
    if let Some(Quantity::Calculated(calculated)) = &reading.computed
        && build.in_units.contains(&key)
        && !is_same_unit(&calculated.unit, &reading.unit)
    {
        let (own, wanted) = (calculated.unit.code(), reading.unit.code());
        let message = format!("{} is computed in `{own}`, but `{id}` is in `{wanted}`", calculated.title);
        build.fault(Code::Unit, at, Kind::Reading.word_width(), message, Some(format!("write `.unit(\"{own}\")`")));
    }
    if depends_on_itself(build, key, key, &mut Vec::new()) {
        build.fault(Code::OutOfRange, at, Kind::Reading.word_width(), format!("`{id}` is computed from itself"), None);
    }
}

/// The most that is allowed is compared with the quantity as it stands: in its unit.
fn check_limit(build: &mut Build, id: &str, key: Key<Limit>, at: &Place) {
    let limit = &build.declared.limits[key];
    let quantity = limit.quantity.as_ref().filter(|quantity| build.knows_units_of(quantity));
    let own = quantity.and_then(|quantity| quantity.unit(&build.declared.readings));
    let Some(own) = own.filter(|own| !is_same_unit(own, &limit.unit)) else { return };
    let message = format!("`{id}` is counted in `{}`, but its quantity in `{}`", limit.unit.code(), own.code());
    let help = Some(format!("write `.unit(\"{}\")` and the most in it", own.code()));
    build.fault(Code::Unit, at, Kind::Limit.word_width(), message, help);
}

/// Whether a number means the same in both units.
fn is_same_unit(one: &Unit, other: &Unit) -> bool {
    convert(0.0, one, other) == Ok(0.0) && convert(1.0, one, other) == Ok(1.0)
}

/// Whether the computation of `from` needs `wanted`.
fn depends_on_itself(build: &Build, from: Key<Reading>, wanted: Key<Reading>, visited: &mut Vec<Key<Reading>>) -> bool {
    if visited.contains(&from) {
        return false;
    }
    visited.push(from);
    let mut needs = Vec::new();
    if let Some(quantity) = &build.declared.readings[from].computed {
        quantity.inputs(&mut |input| {
            if let Input::Reading(key) = input {
                needs.push(key);
            }
        });
    }
    needs.into_iter().any(|key| key == wanted || depends_on_itself(build, key, wanted, visited))
}

fn warn_about_cause(build: &mut Build, id: &str, term: &Term, at: &Place) {
    let Term::Cause(key) = term else { return };
    let cause = &build.declared.causes[*key];
    let wanted = [
        ("symptom", "shows", cause.links.is_empty()),
        ("action", "action", cause.prescriptions.is_empty()),
        ("confirming reading", "confirm", cause.confirmations.is_empty()),
        ("source", "source", cause.sources.is_empty()),
    ];
    for (what, word, _) in wanted.into_iter().filter(|(.., lacking)| *lacking) {
        if is_stated_wrongly(build, term, word) {
            continue;
        }
        let help = Some(format!("add `.{word}(…)`"));
        build.report(
            Severity::Warning,
            Code::Incomplete,
            at,
            Kind::Cause.word_width(),
            format!("`{id}` has no {what}"),
            help,
        );
    }
}
