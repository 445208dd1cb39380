//! What to do about a cause, what would settle it, and what the requirements exclude.

use super::answer::{
    ActionAdvice, ConfirmationStatus, ConfirmingReading, ExcludedAction, RuleFault, SetQuantity, SourceText,
};
use super::calculations;
use super::changes::change_text;
use super::law::Law;
use super::numbers::rounded;
use super::prepared::{Prepared, PreparedConfirmation};
use super::said::Said;
use super::sentence::in_sentence;
use super::words::{Wording, input_id, joined};
use crate::case::Requirements;
use crate::knowledge::{
    Action, Amount, Basis, Cause, Change, Circumstances, Condition, Confirmation, Declarations, How, Input, Key,
    Knowledge, Portion, Prescription, ProductView, Quantity, Setting, Source, Symptom, Text,
};
use crate::units::Unit;

/// Advice on one case.
#[derive(Clone, Copy)]
pub(super) struct Advising<'a, 'k> {
    pub(super) knowledge: &'k Knowledge,
    pub(super) view: &'k ProductView,
    pub(super) law: Law<'k>,
    pub(super) prepared: &'k Prepared,
    pub(super) case: &'a Circumstances,
    pub(super) requirements: &'a Requirements,
}

impl<'k> Advising<'_, 'k> {
    pub(super) fn declared(self) -> &'k Declarations {
        &self.knowledge.declared
    }

    /// The actions of a cause that the requirements allow; the others go to `excluded`, once each.
    /// Calculations that fail go to `faults`.
    pub(super) fn actions(
        self,
        cause: &'k Cause,
        excluded: &mut Vec<ExcludedAction<'k>>,
        faults: &mut Vec<RuleFault>,
    ) -> Vec<ActionAdvice<'k>> {
        let mut advice = Vec::new();
        for prescription in &cause.prescriptions {
            let action = &self.declared().actions[prescription.action];
            match self.reason_against(action) {
                None => advice.push(self.action(prescription, action, faults)),
                Some(text) => {
                    if excluded.iter().all(|other| other.action != action.id) {
                        let instead = self.instead(action);
                        excluded.push(ExcludedAction { action: &action.id, title: &action.title, text, instead });
                    }
                }
            }
        }
        advice
    }

    fn action(
        self,
        prescription: &'k Prescription,
        action: &'k Action,
        faults: &mut Vec<RuleFault>,
    ) -> ActionAdvice<'k> {
        let (mut quantities, mut needs) = (Vec::new(), Vec::new());
        for setting in &prescription.settings {
            let (method, remarks) = calculations::explain(&setting.quantity, self.case, faults);
            match setting.quantity.value(self.case) {
                Some(value) if value == 0.0 && setting.moves_an_amount() => {}
                Some(value) => {
                    let quantity = self.quantity(setting, value);
                    quantities.push(SetQuantity { method, remarks, ..quantity });
                }
                None if setting.quantity.is_undefined(self.case) => {}
                None => self.needed(&setting.quantity, &mut needs),
            }
        }
        ActionAdvice {
            action: &action.id,
            title: &action.title,
            text: &action.text,
            quantities,
            needs,
            effort_minutes: action.effort_minutes,
            works: prescription.works,
            side_effects: self.side_effects(action),
            cautions: self.cautions(action),
            sources: self.sources(&action.sources),
        }
    }

    /// What an action does besides, and what of the product's symptoms it brings when it is overdone.
    fn side_effects(self, action: &'k Action) -> Vec<Said<'k>> {
        let title = |key| in_sentence(&self.declared().symptoms[key].title);
        let brought = joined(self.may_bring(action).map(title), ", ");
        let overdone = (!brought.is_empty()).then(|| Said::Now(format!("overdone it can bring {brought}")));
        action.side_effects.iter().map(Said::Always).chain(overdone).collect()
    }

    /// Symptoms of the product that an action can bring.
    pub(super) fn may_bring(self, action: &'k Action) -> impl Iterator<Item = Key<Symptom>> {
        action.may_show.iter().copied().filter(move |key| self.view.listed_symptoms.contains(key))
    }

    /// Cautions of an action that hold in the case's market.
    fn cautions(self, action: &'k Action) -> Vec<&'k str> {
        let cautions = action.cautions.iter().map(|key| &self.declared().cautions[*key]);
        cautions.filter(|caution| self.law.holds_in(&caution.jurisdiction)).map(|caution| caution.id.as_str()).collect()
    }

    /// A quantity, at most what the law allows; rounding never lifts it above that.
    fn quantity(self, setting: &'k Setting, value: f64) -> SetQuantity<'k> {
        let capped = self.law.cap(setting, self.view, value);
        let value = capped.as_ref().map_or_else(|| rounded(value), |capped| rounded(capped.value).min(capped.value));
        SetQuantity {
            setting,
            name: &setting.name,
            value,
            unit: Unit::code(&setting.unit),
            as_now: self.now(setting).is_some_and(|now| rounded(now) == value),
            changes: setting.changes.as_ref().map(|change| change_text(self.declared(), change)),
            capped: capped.map(|capped| capped.text),
            method: None,
            remarks: Vec::new(),
        }
    }

    /// What a reading or a share that is set stands at in the case.
    fn now(self, setting: &Setting) -> Option<f64> {
        match setting.changes.as_ref()? {
            Change::Reading(key) => self.case.reading(*key),
            Change::Amount(Amount { of: Portion::Ingredients(keys), how: How::Doses, basis: Basis::Flour }) => {
                let [only] = keys.as_slice() else { return None };
                self.case.share(*only)
            }
            Change::Amount(_) => None,
        }
    }

    /// Adds what an unknown quantity still needs; a formula that is given but leaves a figure open is needed in full.
    fn needed(self, quantity: &'k Quantity, needs: &mut Vec<&'k str>) {
        let before = needs.len();
        let mut formula = None;
        quantity.inputs_in(self.case, &mut |input| {
            let id = input_id(self.declared(), input);
            if matches!(input, Input::Share(_) | Input::Formula) {
                formula = Some(id);
            }
            if !self.case.knows(input) && !needs.contains(&id) {
                needs.push(id);
            }
        });
        if let (true, Some(id)) = (needs.len() == before, formula)
            && !needs.contains(&id)
        {
            needs.push(id);
        }
    }

    /// Sources in words.
    pub(super) fn sources(self, keys: &[Key<Source>]) -> Vec<SourceText<'k>> {
        let texts = keys.iter().map(|key| {
            let source = &self.declared().sources[*key];
            SourceText { citation: &source.citation, provenance: source.provenance.word() }
        });
        texts.collect()
    }

    /// What would confirm or exclude a cause.
    pub(super) fn confirmations(self, key: Key<Cause>) -> Vec<ConfirmingReading<'k>> {
        let confirmations = &self.declared().causes[key].confirmations;
        let prepared = self.prepared.confirmations(key);
        confirmations.iter().zip(prepared).map(|(own, prepared)| self.confirmation(own, prepared)).collect()
    }

    /// Whether what was read excludes a cause, and nothing confirms it.
    pub(super) fn is_excluded(self, key: Key<Cause>) -> bool {
        let confirmations = self.declared().causes[key].confirmations.iter();
        is_excluded(confirmations.map(|own| self.status(own)))
    }

    fn confirmation(self, confirmation: &'k Confirmation, prepared: &'k PreparedConfirmation) -> ConfirmingReading<'k> {
        let wording = Wording { declared: self.declared(), case: self.case };
        let said = |text: &'k Option<Text>, condition: &Condition| {
            text.as_ref().map_or_else(|| Said::Now(wording.demand(condition)), Said::Always)
        };
        let input = first_input(&confirmation.expect);
        ConfirmingReading {
            confirmation,
            reading: input.map_or("", |input| input_id(self.declared(), input)),
            expect: said(&prepared.expect, &confirmation.expect),
            excludes: confirmation.excluded.as_ref().map(|condition| said(&prepared.excludes, condition)),
            excluded_if_not: prepared.excluded_if_not,
            method: input.map_or("", |input| self.method(input)),
            status: self.status(confirmation),
        }
    }

    fn method(self, input: Input) -> &'k str {
        match input {
            Input::Reading(key) => &self.declared().readings[key].method,
            Input::Fact(key) => &self.declared().facts[key].question,
            Input::Share(_) | Input::Formula => "from the formula; check the scale slip",
        }
    }

    fn status(self, confirmation: &Confirmation) -> ConfirmationStatus {
        let grade = |condition: &Condition| condition.judge(self.case, &mut |_, _| {}).grade();
        let excluded = confirmation.excluded.as_ref().and_then(grade);
        match (grade(&confirmation.expect), excluded) {
            (Some(grade), _) if grade >= 1.0 => ConfirmationStatus::Confirmed,
            (_, Some(grade)) if grade >= 1.0 => ConfirmationStatus::Excluded,
            (Some(grade), None) if grade <= 0.0 && confirmation.excluded.is_none() => ConfirmationStatus::Excluded,
            (None, _) => ConfirmationStatus::Open,
            _ => ConfirmationStatus::Undecided,
        }
    }
}

/// Whether the readings of a cause exclude it, and none confirms it.
pub(super) fn is_excluded(statuses: impl Iterator<Item = ConfirmationStatus>) -> bool {
    let mut excluded = false;
    for status in statuses {
        match status {
            ConfirmationStatus::Confirmed => return false,
            ConfirmationStatus::Excluded => excluded = true,
            ConfirmationStatus::Open | ConfirmationStatus::Undecided => {}
        }
    }
    excluded
}

fn first_input(condition: &Condition) -> Option<Input> {
    let mut first = None;
    condition.inputs(&mut |input| {
        first.get_or_insert(input);
    });
    first
}
