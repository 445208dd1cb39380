//! Ingredients and what they are made of.

use super::{Allergen, Diet, Key, Market, Named, Source};
use crate::science::formula::Role;

/// Composition in g/100 g; `None` is unknown, not zero.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Composition {
    /// Water.
    pub water: Option<f64>,
    /// Fat.
    pub fat: Option<f64>,
    /// Protein.
    pub protein: Option<f64>,
    /// Sucrose.
    pub sucrose: Option<f64>,
    /// Glucose.
    pub glucose: Option<f64>,
    /// Fructose.
    pub fructose: Option<f64>,
    /// Lactose.
    pub lactose: Option<f64>,
    /// Maltose.
    pub maltose: Option<f64>,
    /// Starch.
    pub starch: Option<f64>,
    /// Sodium chloride.
    pub salt: Option<f64>,
    /// Ethanol; counts as none when it is not stated.
    pub alcohol: Option<f64>,
    /// Ash.
    pub ash: Option<f64>,
    /// Dextrins: the higher saccharides of syrups, maltodextrin; counts as none when it is not stated.
    pub dextrins: Option<f64>,
    /// Glycerol; counts as none when it is not stated.
    pub glycerol: Option<f64>,
    /// Sorbitol; counts as none when it is not stated.
    pub sorbitol: Option<f64>,
    /// Citric and other fruit acids, lactic and acetic acid; counts as none when it is not stated.
    pub acids: Option<f64>,
    /// Fibre, dry; counts as none when it is not stated.
    pub fibre: Option<f64>,
}

/// The names that a composition may use, with access to each.
type Component = (&'static str, fn(&Composition) -> Option<f64>, fn(&mut Composition, f64));

impl Composition {
    /// Most that the components of 100 g may add up to: tables round each.
    pub const MOST: f64 = 100.5;

    /// Every component by name.
    pub const COMPONENTS: [Component; 17] = [
        ("water", |c| c.water, |c, v| c.water = Some(v)),
        ("fat", |c| c.fat, |c, v| c.fat = Some(v)),
        ("protein", |c| c.protein, |c, v| c.protein = Some(v)),
        ("sucrose", |c| c.sucrose, |c, v| c.sucrose = Some(v)),
        ("glucose", |c| c.glucose, |c, v| c.glucose = Some(v)),
        ("fructose", |c| c.fructose, |c, v| c.fructose = Some(v)),
        ("lactose", |c| c.lactose, |c, v| c.lactose = Some(v)),
        ("maltose", |c| c.maltose, |c, v| c.maltose = Some(v)),
        ("starch", |c| c.starch, |c, v| c.starch = Some(v)),
        ("salt", |c| c.salt, |c, v| c.salt = Some(v)),
        ("alcohol", |c| c.alcohol, |c, v| c.alcohol = Some(v)),
        ("ash", |c| c.ash, |c, v| c.ash = Some(v)),
        ("dextrins", |c| c.dextrins, |c, v| c.dextrins = Some(v)),
        ("glycerol", |c| c.glycerol, |c, v| c.glycerol = Some(v)),
        ("sorbitol", |c| c.sorbitol, |c, v| c.sorbitol = Some(v)),
        ("acids", |c| c.acids, |c, v| c.acids = Some(v)),
        ("fibre", |c| c.fibre, |c, v| c.fibre = Some(v)),
    ];

    /// Sum of the known components, g/100 g; ash is left out, since it contains the salt.
    #[must_use]
    pub fn known_total(&self) -> f64 {
        Self::COMPONENTS.iter().filter(|(name, ..)| *name != "ash").filter_map(|(_, get, _)| get(self)).sum()
    }
}

/// What an ingredient does to the balance of soda and acids, per 100 kg of it as it is.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Leavening {
    /// Sodium bicarbonate, kg; 100 for baking soda itself.
    pub soda: f64,
    /// Potassium bicarbonate, kg.
    pub potassium_bicarbonate: f64,
    /// Ammonium bicarbonate, kg.
    pub ammonium_bicarbonate: f64,
    /// Sodium bicarbonate that its acids neutralise, kg.
    pub neutralising_value: f64,
}

/// An ingredient.
#[derive(Debug, Clone, PartialEq)]
pub struct Ingredient {
    /// Id.
    pub id: String,
    /// Title for people.
    pub title: String,
    /// Whether it counts as flour, the base of baker's percentages.
    pub is_flour: bool,
    /// What it is made of.
    pub composition: Composition,
    /// What it does in the formula.
    pub roles: Vec<Role>,
    /// Soda and acids in it; `None` when nothing is stated.
    pub leavening: Option<Leavening>,
    /// Allergens that it brings.
    pub allergens: Vec<Key<Allergen>>,
    /// Diets that it does not fit.
    pub not_for: Vec<Key<Diet>>,
    /// Markets whose law does not permit it.
    pub not_permitted: Vec<Key<Market>>,
    /// Sources of the composition.
    pub sources: Vec<Key<Source>>,
}

impl Named for Ingredient {
    fn id(&self) -> &str {
        &self.id
    }

    fn other_names(&self) -> Vec<&str> {
        vec![&self.title]
    }
}
