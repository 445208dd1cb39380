//! The ingredients of the rules: what a formula may name.

use std::collections::BTreeMap;

use serde::Serialize;
use utoipa::ToSchema;

use super::parts::{SourceItem, ids, sources};
use crate::knowledge::{Composition, Declarations, Ingredient, Leavening};
use crate::science::formula::Role;

/// Ingredients that the rules declare.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct IngredientList<'k> {
    /// The ingredients, in the order of the rules.
    ingredients: Vec<IngredientItem<'k>>,
}

/// An ingredient that a formula may name.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = DeclaredIngredient)]
struct IngredientItem<'k> {
    /// Id, as in a formula.
    #[schema(example = "bread_flour")]
    id: &'k str,
    /// Title for people.
    #[schema(example = "Bread flour")]
    title: &'k str,
    /// The title again: every listing has a description.
    description: &'k str,
    /// Whether it counts as flour, the base of baker's percentages.
    flour: bool,
    /// Composition in g/100 g, by component; what is left out is unknown, or none where only few ingredients have any.
    #[schema(example = json!({"water": 14.0, "protein": 12.0}))]
    composition: BTreeMap<&'static str, f64>,
    /// What it does in a formula.
    #[schema(example = json!(["fat"]))]
    roles: Vec<&'static str>,
    /// Soda and acids in it, where they are stated.
    #[serde(skip_serializing_if = "Option::is_none")]
    leavening: Option<LeaveningItem>,
    /// Ids of the allergens that it brings.
    #[schema(example = json!(["wheat"]))]
    allergens: Vec<&'k str>,
    /// Ids of the diets that it does not fit.
    #[schema(example = json!(["gluten_free"]))]
    not_for: Vec<&'k str>,
    /// Ids of the markets whose law does not permit it.
    not_permitted: Vec<&'k str>,
    /// Sources of the composition.
    sources: Vec<SourceItem<'k>>,
}

/// What an ingredient does to the balance of soda and acids, g per 100 g.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = Leavening)]
struct LeaveningItem {
    /// Sodium bicarbonate.
    #[schema(example = 27.0)]
    soda: f64,
    /// Potassium bicarbonate.
    potassium_bicarbonate: f64,
    /// Ammonium bicarbonate.
    ammonium_bicarbonate: f64,
    /// Sodium bicarbonate that its acids neutralise.
    #[schema(example = 27.0)]
    neutralising_value: f64,
}

impl From<Leavening> for LeaveningItem {
    fn from(leavening: Leavening) -> Self {
        let Leavening { soda, potassium_bicarbonate, ammonium_bicarbonate, neutralising_value } = leavening;
        Self { soda, potassium_bicarbonate, ammonium_bicarbonate, neutralising_value }
    }
}

/// The listing.
pub(crate) fn ingredients(declared: &Declarations) -> IngredientList<'_> {
    let ingredients = declared.ingredients.iter().map(|(_, ingredient)| item(declared, ingredient));
    IngredientList { ingredients: ingredients.collect() }
}

fn item<'k>(declared: &'k Declarations, ingredient: &'k Ingredient) -> IngredientItem<'k> {
    IngredientItem {
        id: &ingredient.id,
        title: &ingredient.title,
        description: &ingredient.title,
        flour: ingredient.is_flour,
        composition: composition(&ingredient.composition),
        roles: ingredient.roles.iter().copied().map(Role::name).collect(),
        leavening: ingredient.leavening.map(LeaveningItem::from),
        allergens: ids(&declared.allergens, &ingredient.allergens),
        not_for: ids(&declared.diets, &ingredient.not_for),
        not_permitted: ids(&declared.markets, &ingredient.not_permitted),
        sources: sources(declared, &ingredient.sources),
    }
}

fn composition(composition: &Composition) -> BTreeMap<&'static str, f64> {
    Composition::COMPONENTS.iter().filter_map(|(name, get, _)| Some((*name, get(composition)?))).collect()
}
