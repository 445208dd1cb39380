//! What a condition or a quantity depends on.

use super::{Fact, Ingredient, Key, Reading};

/// One thing that a case may tell or leave open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Input {
    /// A reading.
    Reading(Key<Reading>),
    /// A fact.
    Fact(Key<Fact>),
    /// The share of an ingredient in the formula.
    Share(Key<Ingredient>),
    /// The formula as a whole.
    Formula,
}
