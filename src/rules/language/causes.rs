//! Words that describe causes.

use super::super::term::{Kind, Term};
use super::{Call, Word, actions, arguments, describes, makes, settles};
use crate::knowledge::{Cause, Confirmation, Link};

const CAUSE: &[Kind] = &[Kind::Cause];

pub(super) const WORDS: &[Word] = &[
    settles("mechanism", CAUSE, ".mechanism(\"Warm dough gasses before it has strength.\")", |call| {
        if call.takes(2, 2)
            && let Some(text) = call.text(1)
        {
            call.set::<Cause>(|cause| cause.mechanism = text.into());
        }
    }),
    describes("prior", CAUSE, ".prior(COMMON)` or `.prior(hamburger_bun, 0.12)", prior),
    describes("shows", CAUSE, ".shows(hollow_under_crust, OFTEN)", shows),
    describes("action", CAUSE, ".action(colder_mixing_water)` or `.action(colder_mixing_water, USUALLY)", action),
    describes("confirm", CAUSE, ".confirm(dough_temperature > 29, excluded(dough_temperature < 27))", confirm),
    makes("excluded", &[], "excluded(dough_temperature < 27)", |call| {
        if call.takes(1, 1) { call.condition(0).map(Term::Excluded) } else { None }
    }),
];

fn prior(call: &mut Call<'_>) {
    if !call.takes(2, 3) {
        return;
    }
    if call.arguments.len() == 2 {
        call.has_once("prior of all products");
        if let Some(prior) = call.prior(1) {
            call.set::<Cause>(|cause| cause.prior = prior);
        }
        return;
    }
    let scope = call.argument(1, "a product or family").map(|term| (arguments::scope(&term), term.kind()));
    match (scope, call.prior(2)) {
        (Some((Some(scope), _)), Some(prior)) => {
            let mut twice = false;
            call.set::<Cause>(|cause| {
                twice = cause.priors.iter().any(|(own, _)| *own == scope);
                cause.priors.push((scope, prior));
            });
            if twice {
                call.twice_for(scope);
            }
        }
        (Some((None, kind)), _) => call.wrong_kind("a product or family", kind),
        _ => {}
    }
}

fn shows(call: &mut Call<'_>) {
    if !call.takes(3, 3) {
        return;
    }
    let symptom = match call.argument(1, "a symptom") {
        Some(Term::Symptom(symptom)) => Some(symptom),
        Some(other) => {
            call.wrong_kind("a symptom", other.kind());
            None
        }
        None => None,
    };
    let (Some(symptom), Some(strength)) = (symptom, call.strength(2)) else { return };
    let (mut twice, place) = (false, call.at.clone());
    call.set::<Cause>(|cause| {
        twice = cause.links.iter().any(|link| link.symptom == symptom);
        cause.links.push(Link { symptom, strength, place });
    });
    if twice {
        let id = call.build.declared.symptoms[symptom].id.clone();
        call.fault(super::super::code::Code::Duplicate, format!("`{id}` is shown twice by this cause"), None);
    }
}

fn action(call: &mut Call<'_>) {
    if !call.takes(2, 3) {
        return;
    }
    let term = call.argument(1, "an action");
    let works = if call.arguments.len() == 3 { call.strength(2) } else { Some(actions::USUALLY_WORKS) };
    match term.as_ref().map(|term| (actions::prescription(term), term.kind())) {
        Some((Some(mut prescription), _)) => {
            prescription.works = works.unwrap_or(actions::USUALLY_WORKS);
            prescription.place = call.at.clone();
            call.set::<Cause>(|cause| cause.prescriptions.push(prescription));
        }
        Some((None, kind)) => call.wrong_kind("an action", kind),
        None => {}
    }
}

fn confirm(call: &mut Call<'_>) {
    if !call.takes(2, 3) {
        return;
    }
    let expect = call.condition(1);
    let excluded = match call.arguments.get(2).cloned() {
        Some(Term::Excluded(condition)) => Some(condition),
        None | Some(Term::Unknown) => None,
        Some(other) => return call.wrong_kind("`excluded(…)`", other.kind()),
    };
    if let Some(expect) = expect {
        let place = call.at.clone();
        call.set::<Cause>(|cause| cause.confirmations.push(Confirmation { expect, excluded, place }));
    }
}
