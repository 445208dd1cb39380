//! Lays out a case for conditions: measured and computed readings, limits, facts, formula, and raised symptoms.

use super::raised::{Raising, raise};
use crate::case::{Case, Measured, Seen};
use crate::formulas::{Figure, Weighed};
use crate::knowledge::{Circumstances, Declarations, Key, Knowledge, Limits, ProductView, Reading};

/// What was computed for a reading that nobody took, outside its plausible range: it is not used.
pub(super) struct Implausible {
    pub(super) reading: Key<Reading>,
    pub(super) value: f64,
}

/// A case laid out.
pub(super) struct LaidOut {
    pub(super) circumstances: Circumstances,
    /// Readings that were computed because nobody measured them.
    pub(super) computed: Vec<Key<Reading>>,
    pub(super) implausible: Vec<Implausible>,
    /// Symptoms: those that people looked at, then those that readings raised.
    pub(super) symptoms: Vec<Seen>,
    /// What readings say of symptoms.
    pub(super) raising: Raising,
    /// What the formula comes to, known or not.
    pub(super) figures: Vec<Figure>,
    /// Why the formula cannot be meant.
    pub(super) formula_fault: Option<String>,
}

pub(super) fn lay_out(case: &Case, knowledge: &Knowledge, view: &ProductView) -> LaidOut {
    let declared = &knowledge.declared;
    let mut circumstances = Circumstances::new(&view.limits, declared.facts.len());
    for measured in &case.readings {
        circumstances.set_reading(measured.reading, Some(measured.value));
        let limits = plant_limits(measured, circumstances.limits(measured.reading));
        circumstances.set_limits(measured.reading, limits);
    }
    for (fact, stated) in &case.facts {
        circumstances.set_fact(*fact, Some(*stated));
    }
    let (mut figures, mut formula_fault) = (Vec::new(), None);
    match case.formula.as_ref().map(|formula| Weighed::new(formula, declared, view.main_stage)) {
        Some(Ok(weighed)) => {
            let (facts, computed) = weighed.circumstances(&view.formula_quantities);
            circumstances.set_formula(Some(facts));
            figures = computed;
        }
        Some(Err(nonsense)) => formula_fault = Some(nonsense.to_string()),
        None => {}
    }
    answer_from_formula(view, declared, &mut circumstances);
    let (computed, implausible) = compute(knowledge, view, &mut circumstances);
    let mut symptoms = case.symptoms.clone();
    let raising = raise(case, knowledge, view, &circumstances, &mut symptoms);
    LaidOut { circumstances, computed, implausible, symptoms, raising, figures, formula_fault }
}

/// The plant's own limits come before the usual window; the margin stays.
fn plant_limits(measured: &Measured, usual: Limits) -> Limits {
    let own = measured.limits;
    if own.low.is_none() && own.high.is_none() && own.target.is_none() {
        return usual;
    }
    let (low, high) = (own.low.or(usual.low), own.high.or(usual.high));
    let middle = low.zip(high).map(|(low, high)| f64::midpoint(low, high));
    Limits { low, high, target: own.target.or(middle).or(usual.target), margin: usual.margin }
}

/// States the facts that nobody stated and that the formula answers.
fn answer_from_formula(view: &ProductView, declared: &Declarations, circumstances: &mut Circumstances) {
    for &key in &view.listed_facts {
        let Some(condition) = declared.facts[key].answered_by.as_ref().filter(|_| circumstances.fact(key).is_none())
        else {
            continue;
        };
        if let Some(grade) = condition.judge(circumstances, &mut |_, _| {}).grade() {
            circumstances.set_fact(key, Some(grade > 0.0));
        }
    }
}

/// Computes what can be computed, in an order in which each needs only what is known: the readings that then are, and those
/// whose value nobody can believe.
fn compute(
    knowledge: &Knowledge,
    view: &ProductView,
    circumstances: &mut Circumstances,
) -> (Vec<Key<Reading>>, Vec<Implausible>) {
    let (mut computed, mut implausible) = (Vec::new(), Vec::new());
    for &key in &view.computable {
        let reading = &knowledge.declared.readings[key];
        if circumstances.reading(key).is_some() {
            continue;
        }
        let value = reading.computed.as_ref().and_then(|quantity| quantity.value(circumstances));
        let Some(value) = value else { continue };
        if (reading.plausible.low..=reading.plausible.high).contains(&value) {
            circumstances.set_reading(key, Some(value));
            computed.push(key);
        } else {
            implausible.push(Implausible { reading: key, value });
        }
    }
    (computed, implausible)
}
