//! What to do about a cause, what would settle it, and what the requirements exclude.

use std::borrow::Cow;

use super::answer::{ActionAdvice, ConfirmationStatus, ConfirmingReading, ExcludedAction, SetQuantity, SourceText};
use super::words::{Wording, input_id, rounded};
use crate::case::{AvoidedIngredient, Requirements};
use crate::knowledge::{
    Action, Cause, Circumstances, Condition, Confirmation, Declarations, Input, Key, Knowledge, Prescription, Source,
};
use crate::units::Unit;

/// Advice on one case.
#[derive(Clone, Copy)]
pub(super) struct Advising<'a, 'k> {
    pub(super) knowledge: &'k Knowledge,
    pub(super) case: &'a Circumstances,
    pub(super) requirements: &'a Requirements,
}

impl<'k> Advising<'_, 'k> {
    fn declared(self) -> &'k Declarations {
        &self.knowledge.declared
    }

    /// The actions of a cause that the requirements allow; the others go to `excluded`, once each.
    pub(super) fn actions(self, cause: &'k Cause, excluded: &mut Vec<ExcludedAction<'k>>) -> Vec<ActionAdvice<'k>> {
        let mut advice = Vec::new();
        for prescription in &cause.prescriptions {
            let action = &self.declared().actions[prescription.action];
            match self.reason_against(action) {
                None => advice.push(self.action(prescription, action)),
                Some(text) => {
                    if excluded.iter().all(|other| other.action != action.id) {
                        excluded.push(ExcludedAction { action: &action.id, title: &action.title, text });
                    }
                }
            }
        }
        advice
    }

    fn action(self, prescription: &'k Prescription, action: &'k Action) -> ActionAdvice<'k> {
        let (mut quantities, mut needs) = (Vec::new(), Vec::new());
        for setting in &prescription.settings {
            match setting.quantity.value(self.case) {
                Some(value) => quantities.push(SetQuantity {
                    name: &setting.name,
                    value: rounded(value),
                    unit: Unit::code(&setting.unit),
                }),
                None => setting.quantity.inputs(&mut |input| {
                    let id = input_id(self.declared(), input);
                    if !self.case.knows(input) && !needs.contains(&id) {
                        needs.push(id);
                    }
                }),
            }
        }
        let may_show = action.may_show.iter().map(|key| {
            Cow::Owned(format!("overdone it can bring: {}", self.declared().symptoms[*key].title.to_lowercase()))
        });
        ActionAdvice {
            action: &action.id,
            title: &action.title,
            text: &action.text,
            quantities,
            needs,
            effort_minutes: action.effort_minutes,
            works: prescription.works,
            side_effects: action.side_effects.iter().map(|text| Cow::Borrowed(text.as_str())).chain(may_show).collect(),
            cautions: action.cautions.iter().map(|key| self.declared().cautions[*key].id.as_str()).collect(),
            sources: self.sources(&action.sources),
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

    /// Why the requirements exclude an action.
    fn reason_against(self, action: &Action) -> Option<String> {
        let declared = self.declared();
        for diet in &self.requirements.diets {
            let title = &declared.diets[*diet].title;
            if action.not_for.contains(diet) {
                return Some(format!("not {}", title.to_lowercase()));
            }
            if let Some(key) = action.uses.iter().find(|key| declared.ingredients[**key].not_for.contains(diet)) {
                return Some(format!(
                    "brings in {}, which is not {}",
                    declared.ingredients[*key].title,
                    title.to_lowercase()
                ));
            }
        }
        self.requirements.avoid.iter().find_map(|avoided| match avoided {
            AvoidedIngredient::Ingredient(key) => action
                .uses
                .contains(key)
                .then(|| format!("brings in {}, to be avoided", declared.ingredients[*key].title)),
            AvoidedIngredient::Allergen(allergen) => {
                action.uses.iter().find(|key| declared.ingredients[**key].allergens.contains(allergen)).map(|key| {
                    format!(
                        "brings in {} with the allergen {}, to be avoided",
                        declared.ingredients[*key].title, declared.allergens[*allergen].title
                    )
                })
            }
        })
    }

    /// What would confirm or exclude a cause.
    pub(super) fn confirmations(self, cause: &'k Cause) -> Vec<ConfirmingReading<'k>> {
        cause.confirmations.iter().map(|confirmation| self.confirmation(confirmation)).collect()
    }

    fn confirmation(self, confirmation: &'k Confirmation) -> ConfirmingReading<'k> {
        let wording = Wording { declared: self.declared(), case: self.case };
        let input = first_input(&confirmation.expect);
        ConfirmingReading {
            reading: input.map_or("", |input| input_id(self.declared(), input)),
            expect: wording.demand(&confirmation.expect),
            excludes: confirmation.excluded.as_ref().map(|condition| wording.demand(condition)),
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

fn first_input(condition: &Condition) -> Option<Input> {
    let mut first = None;
    condition.inputs(&mut |input| {
        first.get_or_insert(input);
    });
    first
}
