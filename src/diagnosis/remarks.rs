//! What an answer says beside the ranking: set aside, missing, unexplained, computed, cautions, the summary.

use std::borrow::Cow;

use super::answer::{CautionText, Computed, Missing, RankedCause, SetAsideFinding, Unexplained};
use super::calculations;
use super::circumstances::LaidOut;
use super::words::{input_id, input_title, measure, rounded};
use crate::case::Case;
use crate::knowledge::{Caution, FormulaQuantity, Input, Key, Knowledge, ProductView};

/// A cause that is less probable does not explain a symptom.
const EXPLAINS: f64 = 0.1;

/// A leader that is more probable is called likely without reserve.
const CLEAR: f64 = 0.5;

/// Readings that could not be used, or that no rule of the product uses.
pub(super) fn set_aside<'k>(case: &Case, knowledge: &'k Knowledge, view: &ProductView) -> Vec<SetAsideFinding<'k>> {
    let declared = &knowledge.declared;
    let implausible = case.set_aside.iter().map(|aside| {
        let reading = &declared.readings[aside.measured.reading];
        let range = (measure(reading.plausible.low, &reading.unit), measure(reading.plausible.high, &reading.unit));
        let value = measure(aside.measured.value, &reading.unit);
        let text = format!("{value} is outside the plausible range {} to {}; measure again", range.0, range.1);
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
    implausible.chain(unused_readings).chain(unused_facts).collect()
}

/// What the evidence of the leading causes still needs.
pub(super) fn missing<'k>(
    knowledge: &'k Knowledge,
    view: &ProductView,
    laid_out: &LaidOut,
    leading: &[usize],
) -> Vec<Missing<'k>> {
    let declared = &knowledge.declared;
    let mut missing: Vec<Missing<'k>> = Vec::new();
    for relevant in view.inputs.iter().filter(|relevant| !laid_out.circumstances.knows(relevant.input)) {
        let needed_by: Vec<&'k str> = leading
            .iter()
            .filter(|position| relevant.causes.binary_search(position).is_ok())
            .filter_map(|position| view.causes.get(*position))
            .map(|key| declared.causes[*key].id.as_str())
            .collect();
        if needed_by.is_empty() {
            continue;
        }
        let finding = input_id(declared, relevant.input);
        match missing.iter_mut().find(|other| other.finding == finding) {
            Some(other) => other
                .needed_by
                .extend(needed_by.into_iter().filter(|id| !other.needed_by.contains(id)).collect::<Vec<_>>()),
            None => missing.push(Missing { finding, title: input_title(declared, relevant.input), needed_by }),
        }
    }
    missing
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

/// Readings that were computed, and what the formula comes to.
pub(super) fn computed<'k>(knowledge: &'k Knowledge, laid_out: &LaidOut) -> Vec<Computed<'k>> {
    let declared = &knowledge.declared;
    let readings = laid_out.computed.iter().filter_map(|key| {
        let reading = &declared.readings[*key];
        let mut from: Vec<&str> = Vec::new();
        let quantity = reading.computed.as_ref()?;
        // What fails gives no value and is not among the computed readings.
        let (method, remarks) = calculations::explain(quantity, &laid_out.circumstances, &mut Vec::new());
        quantity.inputs(&mut |input| {
            let id = input_id(declared, input);
            if !from.contains(&id) {
                from.push(id);
            }
        });
        Some(Computed {
            quantity: &reading.id,
            title: &reading.title,
            value: rounded(laid_out.circumstances.reading(*key)?),
            unit: reading.unit.code(),
            basis: basis(&reading.id),
            from: Cow::Owned(from.join(", ")),
            method,
            remarks,
        })
    });
    let quantities = FormulaQuantity::ALL.iter().filter_map(|(quantity, name, unit)| {
        let taken = declared.readings.find(name).is_some_and(|key| laid_out.computed.contains(&key));
        let value = laid_out.circumstances.formula_quantity(*quantity).filter(|_| !taken)?;
        Some(Computed {
            quantity: name,
            title: name,
            value: rounded(value),
            unit,
            basis: basis(name),
            from: Cow::Borrowed("formula"),
            method: None,
            remarks: Vec::new(),
        })
    });
    readings.chain(quantities).collect()
}

fn basis(name: &str) -> Option<&'static str> {
    name.ends_with("_on_flour").then_some("on flour")
}

/// Cautions of the pack, of the symptoms that are seen, of the leading causes and of their actions; each once.
pub(super) fn cautions<'k>(
    knowledge: &'k Knowledge,
    view: &ProductView,
    laid_out: &LaidOut,
    leading: &[usize],
) -> Vec<CautionText<'k>> {
    let declared = &knowledge.declared;
    let mut keys: Vec<Key<Caution>> = Vec::new();
    let mut add = |more: &[Key<Caution>]| {
        for key in more {
            if !keys.contains(key) {
                keys.push(*key);
            }
        }
    };
    for seen in laid_out.symptoms.iter().filter(|seen| seen.certainty > 0.5) {
        add(&declared.symptoms[seen.symptom].cautions);
    }
    for cause in leading.iter().filter_map(|position| view.causes.get(*position)).map(|key| &declared.causes[*key]) {
        add(&cause.cautions);
        for prescription in &cause.prescriptions {
            add(&declared.actions[prescription.action].cautions);
        }
    }
    let always: Vec<Key<Caution>> =
        declared.cautions.iter().filter(|(_, caution)| caution.always).map(|(key, _)| key).collect();
    add(&always);
    keys.iter()
        .map(|key| &declared.cautions[*key])
        .map(|caution| CautionText { caution: &caution.id, text: &caution.text })
        .collect()
}

/// The answer in a sentence or two.
pub(super) fn summary(causes: &[RankedCause<'_>], next_reading: Option<&str>, anything_known: bool) -> String {
    let Some(leader) = causes.first() else {
        return "The rules know no cause for this product.".to_owned();
    };
    if !anything_known {
        return "Nothing is known of the case yet; the ranking shows how common the causes are.".to_owned();
    }
    let named = |cause: &RankedCause<'_>| format!("{} ({} %)", cause.title, percent(cause.probability));
    let mut text = if leader.probability >= CLEAR {
        format!("Most likely: {}.", named(leader))
    } else {
        let others: Vec<String> = causes.iter().take(3).map(named).collect();
        format!("No cause is clear yet: {}.", others.join(", "))
    };
    if let Some(next) = next_reading {
        text.push_str(&format!(" Measure next: {next}."));
    }
    text
}

/// A probability in whole per cent, never 0 or 100: nothing here is certain.
pub(super) fn percent(probability: f64) -> String {
    match probability * 100.0 {
        share if share < 1.0 => "under 1".to_owned(),
        share if share > 99.0 => "over 99".to_owned(),
        share => format!("{share:.0}"),
    }
}

/// Whether a case tells anything.
pub(super) fn tells_something(case: &Case, laid_out: &LaidOut, view: &ProductView) -> bool {
    let known = |input: &Input| laid_out.circumstances.knows(*input);
    !case.symptoms.is_empty() || view.inputs.iter().any(|relevant| known(&relevant.input))
}
