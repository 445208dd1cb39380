//! What a quantity of an action changes in a case.

use super::{Declarations, Ingredient, Key, Reading};
use crate::science::formula::{Part, Role};

/// What is changed when an action's quantity is set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Change {
    /// A reading is set.
    Reading(Key<Reading>),
    /// An amount of the formula.
    Amount(Amount),
}

impl Change {
    /// Id of a reading, ingredient or role that both change; `None` where they change different things.
    #[must_use]
    pub fn shared_with<'k>(&self, other: &Self, declared: &'k Declarations) -> Option<&'k str> {
        match (self, other) {
            (Self::Reading(one), Self::Reading(other)) => (one == other).then(|| declared.readings[*one].id.as_str()),
            (Self::Amount(one), Self::Amount(other)) => one.of.shared_with(&other.of, declared),
            _ => None,
        }
    }
}

/// An amount of the formula that a quantity changes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Amount {
    /// What is weighed.
    pub of: Portion,
    /// How the quantity changes it.
    pub how: How,
    /// What the quantity is counted on.
    pub basis: Basis,
}

/// What is weighed otherwise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Portion {
    /// An ingredient, or several together, in proportion.
    Ingredients(Vec<Key<Ingredient>>),
    /// All lines with a role, in proportion.
    Role(Role),
}

impl Portion {
    /// Id of an ingredient or role of both: then they may be the same lines.
    #[must_use]
    pub fn shared_with<'k>(&self, other: &Self, declared: &'k Declarations) -> Option<&'k str> {
        let shared = match (self, other) {
            (Self::Role(one), Self::Role(other)) => return (one == other).then(|| one.name()),
            (Self::Ingredients(keys), other) | (other, Self::Ingredients(keys)) => {
                keys.iter().copied().find(|key| other.contains(*key, declared))
            }
        };
        shared.map(|key| declared.ingredients[key].id.as_str())
    }

    /// Whether an ingredient belongs to it.
    #[must_use]
    pub fn contains(&self, key: Key<Ingredient>, declared: &Declarations) -> bool {
        match self {
            Self::Ingredients(keys) => keys.contains(&key),
            Self::Role(role) => declared.ingredients[key].roles.contains(role),
        }
    }
}

/// How a quantity changes an amount.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum How {
    /// The amount becomes the quantity.
    Doses,
    /// The quantity is added to what stands there.
    Adds,
    /// The quantity is taken from what stands there.
    TakesOut,
}

/// What a quantity is counted on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Basis {
    /// A mass in the batch.
    Batch,
    /// A share of the flour, which counts 100 %.
    Flour,
    /// A share of the mass of a part. What is dosed has the share once it stands in the part; what is added or taken out
    /// is counted on the part as it was.
    Part(Part),
    /// The reading that the rules compute from the formula; the amount is the one with which it reads the quantity.
    Reading(Key<Reading>),
}

impl How {
    /// Every way.
    pub const ALL: [Self; 3] = [Self::Doses, Self::Adds, Self::TakesOut];

    /// The word of the rule language.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Doses => "doses",
            Self::Adds => "adds",
            Self::TakesOut => "takes_out",
        }
    }
}
