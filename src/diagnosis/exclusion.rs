//! What requirements exclude: ingredients, and actions with what takes their place.

use super::advice::Advising;
use super::answer::Replacement;
use super::sentence::in_sentence;
use crate::case::{AvoidedIngredient, Requirements};
use crate::knowledge::{Action, Declarations, Ingredient, Key};

impl Requirements {
    /// Why an ingredient does not meet them, as in "which is not halal"; empty when it does.
    pub(super) fn conflicts(&self, declared: &Declarations, key: Key<Ingredient>) -> Vec<String> {
        let ingredient = &declared.ingredients[key];
        let diets = self.diets.iter().filter(|diet| ingredient.not_for.contains(diet));
        let mut reasons: Vec<String> =
            diets.map(|diet| format!("which is not {}", in_sentence(&declared.diets[*diet].title))).collect();
        reasons.extend(self.avoid.iter().filter_map(|avoided| match avoided {
            AvoidedIngredient::Ingredient(avoided) => (*avoided == key).then(|| "which is to be avoided".to_owned()),
            AvoidedIngredient::Allergen(allergen) => ingredient.allergens.contains(allergen).then(|| {
                format!(
                    "with the allergen {}, which is to be avoided",
                    in_sentence(&declared.allergens[*allergen].title)
                )
            }),
        }));
        reasons
    }
}

impl<'k> Advising<'_, 'k> {
    /// The replacements that the rules name for an action and that the requirements allow.
    pub(super) fn instead(self, action: &'k Action) -> Vec<Replacement<'k>> {
        let others = action.instead.iter().map(|key| &self.declared().actions[*key]);
        others
            .filter(|other| self.reason_against(other).is_none())
            .map(|other| Replacement { action: &other.id, title: &other.title, text: &other.text })
            .collect()
    }

    /// Why the requirements exclude an action.
    pub(super) fn reason_against(self, action: &Action) -> Option<String> {
        let declared = self.declared();
        for diet in &self.requirements.diets {
            let title = &declared.diets[*diet].title;
            if action.not_for.contains(diet) {
                return Some(format!("not {}", in_sentence(title)));
            }
            if let Some(key) = action.uses.iter().find(|key| declared.ingredients[**key].not_for.contains(diet)) {
                return Some(format!(
                    "brings in {}, which is not {}",
                    declared.ingredients[*key].title,
                    in_sentence(title)
                ));
            }
        }
        if let Some(ingredient) = self.law.forbidden(action) {
            let market = self.law.market.map_or("", |key| &declared.markets[key].title);
            return Some(format!("brings in {}, which is not permitted in {market}", ingredient.title));
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
}
