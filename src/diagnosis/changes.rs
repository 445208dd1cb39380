//! What a quantity changes, in ids.

use super::answer::ChangeText;
use crate::knowledge::{Basis, Change, Declarations, Ingredient, Key, Portion};

/// What a quantity of an action changes, in ids.
#[must_use]
pub fn change_text<'k>(declared: &'k Declarations, change: &Change) -> ChangeText<'k> {
    let amount = match change {
        Change::Reading(key) => {
            return ChangeText { reading: Some(&declared.readings[*key].id), ..ChangeText::default() };
        }
        Change::Amount(amount) => amount,
    };
    let id = |key: &Key<Ingredient>| declared.ingredients[*key].id.as_str();
    let (ingredient, ingredients, role) = match &amount.of {
        Portion::Ingredients(keys) => match keys.as_slice() {
            [only] => (Some(id(only)), Vec::new(), None),
            several => (None, several.iter().map(id).collect(), None),
        },
        Portion::Role(role) => (None, Vec::new(), Some(role.name())),
    };
    let (reading, basis) = match amount.basis {
        Basis::Batch => (None, None),
        Basis::Flour => (None, Some("flour")),
        Basis::Part(part) => (None, Some(part.name())),
        Basis::Reading(key) => (Some(declared.readings[key].id.as_str()), None),
    };
    ChangeText { reading, ingredient, ingredients, role, how: Some(amount.how.word()), basis }
}
