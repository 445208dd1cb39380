//! All that a rule pack declares.

use super::{
    Action, Allergen, Cause, Caution, Diet, Fact, Family, Ingredient, Key, Limit, Market, Pack, Product, Reading,
    Scope, Source, Symptom, Table, Warning,
};
use crate::science::formula::Stage;

/// The tables of a pack, as its files declare them.
#[derive(Debug, Clone, Default)]
pub struct Declarations {
    /// Name, version and digest of the pack.
    pub pack: Pack,
    /// Sources.
    pub sources: Table<Source>,
    /// Cautions.
    pub cautions: Table<Caution>,
    /// Diets.
    pub diets: Table<Diet>,
    /// Allergens.
    pub allergens: Table<Allergen>,
    /// Markets.
    pub markets: Table<Market>,
    /// Families of products.
    pub families: Table<Family>,
    /// Products.
    pub products: Table<Product>,
    /// Ingredients.
    pub ingredients: Table<Ingredient>,
    /// Symptoms.
    pub symptoms: Table<Symptom>,
    /// Facts.
    pub facts: Table<Fact>,
    /// Readings.
    pub readings: Table<Reading>,
    /// Legal limits.
    pub limits: Table<Limit>,
    /// Actions.
    pub actions: Table<Action>,
    /// Causes.
    pub causes: Table<Cause>,
    /// Cautions that hang on a condition.
    pub warnings: Vec<Warning>,
}

impl Declarations {
    /// Whether two symptoms cannot be present together: either says so of the other.
    #[must_use]
    pub fn contradict(&self, one: Key<Symptom>, other: Key<Symptom>) -> bool {
        self.symptoms[one].contradicts.contains(&other) || self.symptoms[other].contradicts.contains(&one)
    }

    /// Whether one of two actions undoes the other: either says so.
    #[must_use]
    pub fn undo_each_other(&self, one: &str, other: &str) -> bool {
        let (Some(one), Some(other)) = (self.actions.find(one), self.actions.find(other)) else { return false };
        self.actions[one].undoes.contains(&other) || self.actions[other].undoes.contains(&one)
    }

    /// Stage of a product's formula lines that name none: that of its family, else the dough.
    #[must_use]
    pub fn main_stage(&self, product: Key<Product>) -> Stage {
        self.products[product].family.map_or(Stage::Dough, |family| self.families[family].main_stage)
    }

    /// Whether scopes mean a product; no scope means all products.
    pub(crate) fn concerns(&self, scopes: &[Scope], product: Key<Product>) -> bool {
        let family = self.products[product].family;
        scopes.is_empty() || scopes.iter().any(|scope| scope.covers(product, family))
    }
}
