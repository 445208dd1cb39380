//! The requirements of a case.

use super::parse::find;
use super::types::{AvoidedIngredient, Requirements};
use crate::json::{Faults, Node};
use crate::knowledge::Declarations;

pub(super) fn read(node: &Node<'_>, declared: &Declarations, faults: &mut Faults) -> Requirements {
    let mut requirements = Requirements::default();
    let Some(object) = node.object(faults, &["diets", "market", "avoid"]) else { return requirements };
    if let Some(diets) = object.optional("diets") {
        diets.items(faults, |faults, item| requirements.diets.extend(find(&item, &declared.diets, "diet", faults)));
    }
    if let Some(market) = object.optional("market") {
        requirements.market = find(&market, &declared.markets, "market", faults);
    }
    if let Some(avoid) = object.optional("avoid") {
        avoid.items(faults, |faults, item| requirements.avoid.extend(avoided(&item, declared, faults)));
    }
    requirements
}

fn avoided(item: &Node<'_>, declared: &Declarations, faults: &mut Faults) -> Option<AvoidedIngredient> {
    let id = item.text(faults)?;
    let ingredient = declared.ingredients.find(id).map(AvoidedIngredient::Ingredient);
    let found = ingredient.or_else(|| declared.allergens.find(id).map(AvoidedIngredient::Allergen));
    if found.is_none() {
        let known = declared.ingredients.ids().chain(declared.allergens.ids());
        item.unknown_name(faults, "ingredient or allergen", id, known, || None);
    }
    found
}
