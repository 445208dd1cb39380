//! Cautions of a trial: those of the case and the changes, allergens that a change brings in, and what holds of any trial.

use super::answer::TrialCaution;
use super::changes::Candidate;
use crate::case::{Case, LineContent};
use crate::diagnosis::{CautionOrigin, Diagnosis};
use crate::knowledge::{Action, Allergen, Declarations, How, Ingredient, Key, Portion};

/// What holds of every trial bake (common practice).
const ALWAYS: [&str; 5] = [
    "Trial product is kept apart and marked, and is not sold, given away or reworked before the person responsible for food \
     safety and quality has released it.",
    "Nobody tastes raw dough, or product that has not been baked and cooled as the plant's food safety plan says.",
    "Machines are stopped, locked out and at a standstill before hands go in or guards come off, in a trial too.",
    "Boiling sugar, hot fat, steam and ovens burn: face and hand protection, nobody alone at a cooker.",
    "Check every new ingredient against specification, label, allergens and the law of the market; clean the line after it.",
];

/// All of them, each once; `first` are actions that are done without a trial.
pub(super) fn cautions(
    diagnosis: &Diagnosis<'_>,
    case: &Case,
    declared: &Declarations,
    changes: &[(char, Candidate<'_, '_>)],
    first: &[Candidate<'_, '_>],
) -> Vec<TrialCaution> {
    let mut all: Vec<TrialCaution> = Vec::new();
    let mut add = |text: String, why: Option<String>| {
        if all.iter().all(|own| own.text != text) {
            all.push(TrialCaution { text, why });
        }
    };
    for (letter, change) in changes {
        if let Some(text) = allergens(*letter, change, case, declared) {
            add(text, Some("the formula of the case has none of it, as far as it is known".to_owned()));
        }
    }
    // What the case itself raises, what the changes carry, and what always holds; not the cautions of what is not tried.
    let done = || changes.iter().map(|(_, change)| change).chain(first);
    let carried = |id: &str| done().any(|own| own.advice.cautions.contains(&id));
    for caution in &diagnosis.cautions {
        if carried(caution.caution) || caution.raised_by != CautionOrigin::Action {
            add(caution.text.to_string(), caution.why.clone());
        }
    }
    for text in ALWAYS {
        add(text.to_owned(), None);
    }
    all
}

/// Allergens that a change brings in and no line of the formula has.
fn allergens(letter: char, change: &Candidate<'_, '_>, case: &Case, declared: &Declarations) -> Option<String> {
    let action: &Action = &declared.actions[declared.actions.find(change.advice.action)?];
    let amounts = change.advice.quantities.iter().filter_map(|own| own.setting.amount());
    let dosed = amounts.filter(|amount| amount.how != How::TakesOut).flat_map(|amount| match &amount.of {
        Portion::Ingredients(keys) => keys.as_slice(),
        Portion::Role(_) => &[],
    });
    let brought: Vec<Key<Ingredient>> = action.uses.iter().copied().chain(dosed.copied()).collect();
    let lines = case.formula.iter().flat_map(|formula| &formula.lines);
    let present: Vec<Key<Allergen>> = lines
        .filter_map(|line| match line.content {
            LineContent::Declared(key) => Some(&declared.ingredients[key].allergens),
            LineContent::Described { .. } => None,
        })
        .flatten()
        .copied()
        .collect();
    let mut new: Vec<String> = Vec::new();
    for key in brought {
        for allergen in declared.ingredients[key].allergens.iter().filter(|own| !present.contains(own)) {
            let text = format!(
                "{} (allergen {})",
                declared.ingredients[key].title,
                declared.allergens[*allergen].title.to_lowercase()
            );
            if !new.contains(&text) {
                new.push(text);
            }
        }
    }
    (!new.is_empty())
        .then(|| format!("Change {letter} may bring in {}: label, and clean the line after it.", new.join(", ")))
}
