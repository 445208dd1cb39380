//! What an answer says beside the ranking: set aside, unexplained, the summary.

use super::answer::{ConfirmationStatus, NextReading, RankedCause, SetAsideFinding, Unexplained};
use super::calculations::failed_readings;
use super::circumstances::LaidOut;
use super::numbers::{Digits, measure};
use crate::case::Case;
use crate::knowledge::{Input, Knowledge, ProductView, Reading};

/// A cause that is less probable does not explain a symptom.
const EXPLAINS: f64 = 0.1;

/// A leader that is more probable is called likely without reserve.
const CLEAR: f64 = 0.5;

/// A confirmed leader that is as probable needs no further proof.
const SETTLED: f64 = 0.9;

/// Beside a settled leader only a reading that tells as much, bits, is worth naming.
const WORTH_CHECKING: f64 = 0.05;

/// Readings that could not be used, or that no rule of the product uses.
pub(super) fn set_aside<'k>(
    case: &Case,
    knowledge: &'k Knowledge,
    view: &ProductView,
    laid_out: &LaidOut,
) -> Vec<SetAsideFinding<'k>> {
    let declared = &knowledge.declared;
    let implausible = case.set_aside.iter().map(|aside| {
        let reading = &declared.readings[aside.measured.reading];
        let text = format!("{}; measure again", out_of_range(reading, aside.measured.value));
        SetAsideFinding { finding: &reading.id, text }
    });
    let computed = laid_out.implausible.iter().map(|one| {
        let reading = &declared.readings[one.reading];
        let text = format!("computed: {}; look through what it is computed from", out_of_range(reading, one.value));
        SetAsideFinding { finding: &reading.id, text }
    });
    let unused_readings = case.readings.iter().filter_map(|measured| {
        let reading = &declared.readings[measured.reading];
        let used = view.listed_readings.contains(&measured.reading);
        (!used).then(|| SetAsideFinding { finding: &reading.id, text: "no rule for this product uses it".to_owned() })
    });
    let unused_facts = case.facts.iter().filter_map(|(key, _)| {
        let used = view.listed_facts.contains(key);
        (!used).then(|| SetAsideFinding {
            finding: &declared.facts[*key].id,
            text: "no rule for this product uses it".to_owned(),
        })
    });
    let formula = laid_out.formula_fault.iter().map(|text| SetAsideFinding { finding: "formula", text: text.clone() });
    let failed = failed_readings(knowledge, view, &laid_out.circumstances);
    let crowded_out = laid_out
        .raising
        .crowded_out
        .iter()
        .map(|one| SetAsideFinding { finding: &declared.readings[one.reading].id, text: one.text.clone() });
    implausible
        .chain(computed)
        .chain(failed)
        .chain(crowded_out)
        .chain(unused_readings)
        .chain(unused_facts)
        .chain(formula)
        .collect()
}

fn out_of_range(reading: &Reading, value: f64) -> String {
    let (low, high, unit) = (reading.plausible.low, reading.plausible.high, &reading.unit);
    let value = Digits::of(value, Some(unit), &[low, high]).value(value, Some(unit));
    format!("{value} is outside the plausible range {} to {}", measure(low, unit), measure(high, unit))
}

/// Symptoms that are seen and that no probable cause shows.
pub(super) fn unexplained<'k>(
    knowledge: &'k Knowledge,
    view: &ProductView,
    laid_out: &LaidOut,
    probability: impl Fn(usize) -> f64,
) -> Vec<Unexplained<'k>> {
    let mut found = Vec::new();
    for seen in laid_out.symptoms.iter().filter(|seen| seen.certainty > 0.5) {
        let symptom = &knowledge.declared.symptoms[seen.symptom];
        let position = view.symptom_position(seen.symptom);
        let explained = position.is_some_and(|position| {
            view.links.iter().any(|link| link.symptom == position && probability(link.cause) >= EXPLAINS)
        });
        if !explained {
            let text = if position.is_some() {
                "no cause with a probability of 10 % or more shows it"
            } else {
                "no cause in the rules shows it in this product"
            };
            found.push(Unexplained { symptom: &symptom.id, title: &symptom.title, text });
        }
    }
    found
}

/// The answer in a sentence or two.
pub(super) fn summary(causes: &[RankedCause<'_>], next: Option<&NextReading<'_>>, anything_known: bool) -> String {
    let Some(leader) = causes.first() else {
        return "The rules know no cause for this product.".to_owned();
    };
    if !anything_known {
        return "Nothing is known of the case yet; the ranking shows how common the causes are.".to_owned();
    }
    let named = |cause: &RankedCause<'_>| format!("{} ({} %)", cause.title, percent(cause.probability));
    let settled = settled_by(leader);
    let mut text = match &settled {
        Some(by) => format!("Most likely: {}, confirmed: {by}.", named(leader)),
        None if leader.probability >= CLEAR => format!("Most likely: {}.", named(leader)),
        None => {
            let others: Vec<String> = causes.iter().take(3).map(named).collect();
            format!("No cause is clear yet: {}.", others.join(", "))
        }
    };
    match next {
        Some(next) if settled.is_none() => text.push_str(&format!(" Measure next: {}.", next.title)),
        Some(next) if next.information_bits >= WORTH_CHECKING => {
            text.push_str(&format!(" Still worth checking: {}.", next.title));
        }
        _ => {}
    }
    text
}

/// What confirms a leader of which hardly a doubt is left; `None` where something is still to be settled.
fn settled_by<'a>(leader: &'a RankedCause<'_>) -> Option<&'a str> {
    let first = |status| leader.confirm.iter().find(|own| own.status == status);
    let is_settled = leader.probability >= SETTLED && first(ConfirmationStatus::Excluded).is_none();
    first(ConfirmationStatus::Confirmed).filter(|_| is_settled).map(|own| &*own.expect)
}

/// A probability in whole per cent, never 0 or 100: nothing here is certain.
pub(crate) fn percent(probability: f64) -> String {
    match probability * 100.0 {
        share if share < 1.0 => "under 1".to_owned(),
        share if share > 99.0 => "over 99".to_owned(),
        share => format!("{share:.0}"),
    }
}

/// Whether a case tells anything.
pub(super) fn tells_something(case: &Case, laid_out: &LaidOut, view: &ProductView) -> bool {
    let known = |input: &Input| laid_out.circumstances.knows(*input);
    !case.symptoms.is_empty()
        || !laid_out.raising.raised.is_empty()
        || view.inputs.iter().any(|relevant| known(&relevant.input))
}
