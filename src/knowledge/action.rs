//! What can be done about a cause.

use super::{
    Amount, Caution, Change, Cost, Diet, How, Ingredient, Key, Limit, Named, Place, Quantity, Reading, Source, Symptom,
    Text,
};
use crate::units::Unit;

/// A corrective action.
#[derive(Debug, Clone, PartialEq)]
pub struct Action {
    /// Id.
    pub id: String,
    /// Title for people.
    pub title: Text,
    /// What to do, in a sentence or two.
    pub text: Text,
    /// Minutes until the next batch can show it.
    pub effort_minutes: f64,
    /// Class of its cost; `None` where nobody states it.
    pub cost: Option<Cost>,
    /// Batches that are typically lost until it works; `None` where nobody states it.
    pub waste_batches: Option<f64>,
    /// What else it changes.
    pub side_effects: Vec<Text>,
    /// Symptoms that it can bring when overdone.
    pub may_show: Vec<Key<Symptom>>,
    /// Ingredients that it brings in.
    pub uses: Vec<Key<Ingredient>>,
    /// Diets that it does not fit, beyond those of its ingredients.
    pub not_for: Vec<Key<Diet>>,
    /// Actions that take its place where the requirements exclude it.
    pub instead: Vec<Key<Action>>,
    /// Actions that it undoes, and that undo it.
    pub undoes: Vec<Key<Action>>,
    /// Whether it keeps harm from people, so that it comes before all that only mends the bake.
    pub at_once: bool,
    /// Cautions.
    pub cautions: Vec<Key<Caution>>,
    /// Sources.
    pub sources: Vec<Key<Source>>,
}

impl Named for Action {
    fn id(&self) -> &str {
        &self.id
    }
}

/// A quantity that an action sets.
#[derive(Debug, Clone)]
pub struct Setting {
    /// Name of the quantity, `snake_case`.
    pub name: String,
    /// How it follows from the case.
    pub quantity: Quantity,
    /// Its unit.
    pub unit: Unit,
    /// Legal limits that it never exceeds; their units convert to its own.
    pub capped_by: Vec<Key<Limit>>,
    /// What it changes in the case; `None` where the rule does not say and no reading has its name.
    pub changes: Option<Change>,
}

impl Setting {
    /// The reading that it sets.
    #[must_use]
    pub fn reading(&self) -> Option<Key<Reading>> {
        if let Some(Change::Reading(key)) = &self.changes { Some(*key) } else { None }
    }

    /// The amount of the formula that it changes.
    #[must_use]
    pub fn amount(&self) -> Option<&Amount> {
        if let Some(Change::Amount(amount)) = &self.changes { Some(amount) } else { None }
    }

    /// Whether it is a choice instead of the quantity before it: then its name begins with `or_`.
    #[must_use]
    pub fn is_alternative(&self) -> bool {
        self.name.starts_with("or_")
    }

    /// Whether it adds to an amount or takes from it: then a quantity of zero changes nothing.
    #[must_use]
    pub fn moves_an_amount(&self) -> bool {
        self.amount().is_some_and(|amount| amount.how != How::Doses)
    }
}

/// An action as prescribed for one cause.
#[derive(Debug, Clone)]
pub struct Prescription {
    /// The action.
    pub action: Key<Action>,
    /// Quantities that it sets.
    pub settings: Vec<Setting>,
    /// Probability that it mends the cause, 0 to 1.
    pub works: f64,
    /// Where the cause prescribes it.
    pub place: Place,
}
