//! A case that has been checked against the knowledge.

use serde_json::value::RawValue;

use crate::knowledge::{
    Allergen, Composition, Diet, Fact, Ingredient, Key, Leavening, Limits, Market, Product, Reading, Symptom,
};
use crate::science::formula::{Role, Stage};
use crate::units::Unit;

/// One case: names resolved, units converted.
#[derive(Debug, Clone)]
pub struct Case {
    /// The product.
    pub product: Key<Product>,
    /// Symptoms that were looked at.
    pub symptoms: Vec<Seen>,
    /// Readings that can be believed.
    pub readings: Vec<Measured>,
    /// Readings that cannot.
    pub set_aside: Vec<SetAside>,
    /// Stated facts.
    pub facts: Vec<(Key<Fact>, bool)>,
    /// The formula.
    pub formula: Option<Formula>,
    /// Diets, market and ingredients to avoid.
    pub requirements: Requirements,
    /// The caller's own reference, handed back as it came.
    pub reference: Option<Box<RawValue>>,
}

/// A symptom that was looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seen {
    /// The symptom.
    pub symptom: Key<Symptom>,
    /// Certainty that it is present: 1 seen, 0 seen absent, 0.5 tells nothing.
    pub certainty: f64,
}

/// A reading with its value in the reading's own unit.
#[derive(Debug, Clone)]
pub struct Measured {
    /// The reading.
    pub reading: Key<Reading>,
    /// Value in the reading's unit.
    pub value: f64,
    /// Value as given.
    pub given: f64,
    /// Unit as given.
    pub unit: Unit,
    /// Plant's own limits in the reading's unit, where given; no margin.
    pub limits: Limits,
}

/// A reading outside its plausible range.
#[derive(Debug, Clone)]
pub struct SetAside {
    /// What was given.
    pub measured: Measured,
}

/// A formula as given: lines by stage.
#[derive(Debug, Clone, Default)]
pub struct Formula {
    /// The lines, in the order given.
    pub lines: Vec<FormulaLine>,
    /// Whether amounts are kg (otherwise baker's percent).
    pub in_mass: bool,
    /// Whether the lines are all there is; `None` when the caller does not say.
    pub complete: Option<bool>,
}

/// One line of a formula.
#[derive(Debug, Clone)]
pub struct FormulaLine {
    /// What it is.
    pub content: LineContent,
    /// kg, or percent on flour.
    pub amount: f64,
    /// Stage; `None` is the main stage of the product's family.
    pub stage: Option<Stage>,
}

/// A declared ingredient, or one described in place.
#[derive(Debug, Clone)]
pub enum LineContent {
    /// Declared in the rules.
    Declared(Key<Ingredient>),
    /// Described by the caller.
    Described {
        /// The caller's name for it.
        name: String,
        /// Whether it counts as flour.
        is_flour: bool,
        /// g/100 g.
        composition: Box<Composition>,
        /// What it does; `None`: not said.
        roles: Option<Vec<Role>>,
        /// Soda and acids in it; `None`: not said.
        leavening: Option<Leavening>,
    },
}

/// What answers must respect.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Requirements {
    /// Diets.
    pub diets: Vec<Key<Diet>>,
    /// The market whose law applies.
    pub market: Option<Key<Market>>,
    /// Ingredients and allergens to avoid.
    pub avoid: Vec<AvoidedIngredient>,
}

/// Something to avoid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AvoidedIngredient {
    /// One ingredient.
    Ingredient(Key<Ingredient>),
    /// Everything that brings an allergen.
    Allergen(Key<Allergen>),
}
