//! Words that describe readings.

use super::super::term::{Kind, Term};
use super::arguments;
use super::{Call, Word, describes, settles};
use crate::knowledge::{Reading, Scope};

const READING: &[Kind] = &[Kind::Reading];

pub(super) const WORDS: &[Word] = &[
    settles("unit", READING, ".unit(\"Cel\")", |call| {
        if call.takes(2, 2)
            && let Some(unit) = call.unit(1)
        {
            call.set::<Reading>(|reading| reading.unit = unit);
            if let Some(&Term::Reading(key)) = call.arguments.first() {
                call.build.in_units.insert(key);
            }
        }
    }),
    settles("plausible", READING, ".plausible(-5, 60)", |call| {
        if call.takes(3, 3)
            && let Some(window) = call.window(1, 2)
        {
            call.set::<Reading>(|reading| reading.plausible = window);
        }
    }),
    describes("window", READING, ".window(soft_rolls, 25, 28)", window),
    describes("margin", READING, ".margin(2)` or `.margin(soft_rolls, 0.5)", margin),
    settles("method", READING, ".method(\"probe thermometer\")", |call| {
        if call.takes(2, 2)
            && let Some(method) = call.text(1)
        {
            call.set::<Reading>(|reading| reading.method = method.into());
        }
    }),
    settles("low_shows", READING, ".low_shows(low_volume)", |call| {
        if let Some(symptom) = only_symptom(call) {
            call.set::<Reading>(|reading| reading.low_shows = Some(symptom));
        }
    }),
    settles("high_shows", READING, ".high_shows(excess_volume)", |call| {
        if let Some(symptom) = only_symptom(call) {
            call.set::<Reading>(|reading| reading.high_shows = Some(symptom));
        }
    }),
    settles("computed", READING, ".computed(loaf_volume / loaf_mass)", |call| {
        if call.takes(2, 2)
            && let Some(quantity) = call.quantity(1)
        {
            call.set::<Reading>(|reading| reading.computed = Some(quantity));
        }
    }),
];

fn window(call: &mut Call<'_>) {
    if !call.takes(4, 4) {
        return;
    }
    let scope = call.argument(1, "a product or family").map(|term| (arguments::scope(&term), term.kind()));
    let window = call.window(2, 3);
    match (scope, window) {
        (Some((Some(scope), _)), Some(window)) => of_scope(call, scope, window, |reading| &mut reading.windows),
        (Some((None, kind)), _) => call.wrong_kind("a product or family", kind),
        _ => {}
    }
}

fn margin(call: &mut Call<'_>) {
    if !call.takes(2, 3) {
        return;
    }
    if call.arguments.len() == 2 {
        call.has_once("margin of all products");
        if let Some(margin) = call.number_within(1, 0.0, f64::MAX) {
            call.set::<Reading>(|reading| reading.margin = Some(margin));
        }
        return;
    }
    let scope = call.argument(1, "a product or family").map(|term| (arguments::scope(&term), term.kind()));
    match (scope, call.number_within(2, 0.0, f64::MAX)) {
        (Some((Some(scope), _)), Some(margin)) => of_scope(call, scope, margin, |reading| &mut reading.margins),
        (Some((None, kind)), _) => call.wrong_kind("a product or family", kind),
        _ => {}
    }
}

/// Adds what holds for one scope, which has one of it.
fn of_scope<T>(call: &mut Call<'_>, scope: Scope, value: T, of: impl FnOnce(&mut Reading) -> &mut Vec<(Scope, T)>) {
    let mut twice = false;
    call.set::<Reading>(|reading| {
        let all = of(reading);
        twice = all.iter().any(|(own, _)| *own == scope);
        all.push((scope, value));
    });
    if twice {
        call.twice_for(scope);
    }
}

fn only_symptom(call: &mut Call<'_>) -> Option<crate::knowledge::Key<crate::knowledge::Symptom>> {
    if call.takes(2, 2) { call.many(1, "a symptom", arguments::symptom).first().copied() } else { None }
}
