//! What the people who act on an answer must heed: warnings, the law of the market, cautions.

use super::answer::{CautionOrigin, CautionText, ExcludedAction};
use super::circumstances::LaidOut;
use super::law::Law;
use super::said::Said;
use super::sentence::in_sentence;
use super::words::{Wording, input_title};
use crate::case::Requirements;
use crate::knowledge::{Caution, Circumstances, Condition, Ingredient, Input, Key, Knowledge, ProductView, Warning};

/// What cautions are drawn from.
pub(super) struct Heeding<'a, 'k> {
    pub(super) knowledge: &'k Knowledge,
    pub(super) view: &'k ProductView,
    pub(super) laid_out: &'a LaidOut,
    pub(super) law: Law<'k>,
    pub(super) requirements: &'a Requirements,
    /// Positions of the leading causes for which actions are prescribed.
    pub(super) acted_on: &'a [usize],
    /// Actions that the requirements exclude.
    pub(super) excluded: &'a [ExcludedAction<'k>],
}

impl<'k> Heeding<'_, 'k> {
    /// First what the case itself raises: requirements that its own formula does not meet, limits exceeded, ingredients not permitted, warnings; then the cautions of the
    /// symptoms that are seen, of the causes that are acted on and their actions, and of the pack; each once.
    pub(super) fn cautions(&self) -> Vec<CautionText<'k>> {
        let circumstances = &self.laid_out.circumstances;
        let mut texts = self.unmet_requirements();
        texts.extend(self.law.exceeded(self.view, circumstances));
        texts.extend(self.law.not_permitted(circumstances, &self.prescribed()));
        for (caution, why) in self.warnings() {
            if self.is_new(caution, &texts) {
                texts.push(self.text(caution, CautionOrigin::Case, Some(why)));
            }
        }
        for (caution, origin, why) in self.unconditional() {
            if self.is_new(caution, &texts) {
                texts.push(self.text(caution, origin, why));
            }
        }
        texts
    }

    /// Ingredients of the formula that the case's own requirements exclude.
    fn unmet_requirements(&self) -> Vec<CautionText<'k>> {
        let named = |key: &Key<Ingredient>| self.laid_out.circumstances.names(*key) == Some(true);
        let ingredients = self.knowledge.declared.ingredients.iter().filter(|(key, _)| named(key));
        let conflicts = ingredients.flat_map(|(key, ingredient)| {
            let reasons = self.requirements.conflicts(&self.knowledge.declared, key);
            reasons.into_iter().map(move |reason| CautionText {
                caution: &ingredient.id,
                raised_by: CautionOrigin::Case,
                text: Said::Now(format!("The formula has {}, {reason}.", in_sentence(&ingredient.title))),
                why: Some("the requirements of the case exclude it".to_owned()),
                jurisdiction: Vec::new(),
            })
        });
        conflicts.collect()
    }

    fn is_new(&self, caution: Key<Caution>, texts: &[CautionText<'k>]) -> bool {
        let caution = &self.knowledge.declared.cautions[caution];
        self.law.holds_in(&caution.jurisdiction) && texts.iter().all(|text| text.caution != caution.id)
    }

    fn text(&self, caution: Key<Caution>, raised_by: CautionOrigin, why: Option<String>) -> CautionText<'k> {
        let caution = &self.knowledge.declared.cautions[caution];
        CautionText {
            caution: &caution.id,
            raised_by,
            text: Said::Always(&caution.text),
            why,
            jurisdiction: self.law.ids(&caution.jurisdiction),
        }
    }

    /// Warnings whose condition holds, or cannot be excluded, with the reason.
    fn warnings(&self) -> impl Iterator<Item = (Key<Caution>, String)> {
        let declared = &self.knowledge.declared;
        let warnings = self.view.warnings.iter().filter_map(|position| declared.warnings.get(*position));
        warnings.filter_map(|warning| Some((warning.caution, self.why(warning)?)))
    }

    fn why(&self, warning: &Warning) -> Option<String> {
        let case: &Circumstances = &self.laid_out.circumstances;
        let condition = warning.when.as_ref()?;
        let wording = Wording { declared: &self.knowledge.declared, case };
        match condition.judge(case, &mut |_, _| {}).grade() {
            Some(grade) if grade > 0.0 => Some(wording.state(condition)),
            Some(_) => None,
            None => warning.also_when_unknown.then(|| self.cannot_be_excluded(condition, wording)),
        }
    }

    fn cannot_be_excluded(&self, condition: &Condition, wording: Wording<'_>) -> String {
        let mut unknown: Vec<&str> = Vec::new();
        condition.inputs(&mut |input| {
            let title = input_title(&self.knowledge.declared, input);
            let open = !self.laid_out.circumstances.knows(input) || input == Input::Formula;
            if open && !unknown.contains(&title) {
                unknown.push(title);
            }
        });
        format!("cannot be excluded: {}; not known: {}", wording.demand(condition), unknown.join(", "))
    }

    /// Actions that are prescribed.
    fn prescribed(&self) -> Vec<Key<crate::knowledge::Action>> {
        let declared = &self.knowledge.declared;
        let causes = self.acted_on.iter().filter_map(|position| self.view.causes.get(*position));
        causes.flat_map(|key| &declared.causes[*key].prescriptions).map(|prescription| prescription.action).collect()
    }

    /// Cautions that hang on no condition, each with what brings it up; those of the pack stand for themselves.
    fn unconditional(&self) -> Vec<(Key<Caution>, CautionOrigin, Option<String>)> {
        let declared = &self.knowledge.declared;
        let mut found = Vec::new();
        let mut add = |cautions: &[Key<Caution>], origin, why: &dyn Fn() -> String| {
            found.extend(cautions.iter().map(|caution| (*caution, origin, Some(why()))));
        };
        for seen in self.laid_out.symptoms.iter().filter(|seen| seen.certainty > 0.5) {
            let symptom = &declared.symptoms[seen.symptom];
            add(&symptom.cautions, CautionOrigin::Symptom, &|| format!("seen: {}", in_sentence(&symptom.title)));
        }
        for cause in self.acted_on.iter().filter_map(|position| self.view.causes.get(*position)) {
            let cause = &declared.causes[*cause];
            add(&cause.cautions, CautionOrigin::Cause, &|| format!("if it is “{}”", cause.title));
            for action in cause.prescriptions.iter().map(|one| &declared.actions[one.action]) {
                if self.excluded.iter().all(|excluded| excluded.action != action.id) {
                    add(&action.cautions, CautionOrigin::Action, &|| format!("before “{}”", action.title));
                }
            }
        }
        let always = declared.cautions.iter().filter(|(_, caution)| caution.always);
        found.extend(always.map(|(key, _)| (key, CautionOrigin::Always, None)));
        found
    }
}
