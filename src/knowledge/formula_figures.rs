//! What a formula comes to, laid out for conditions.

use super::{FormulaQuantity, Ingredient, Key};
use crate::science::formula::{Part, Role};

/// What a formula says of one ingredient; `None`: unknown.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct IngredientShare {
    /// % on the flour of the main part; 0 when a whole formula does not name it.
    pub on_flour: Option<f64>,
    /// % of the mass of each part, by [`Part`].
    pub in_mass: [Option<f64>; Part::ALL.len()],
    /// Whether it stands in any part.
    pub named: Option<bool>,
}

/// What a formula says of one role; `None`: unknown.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct RoleShare {
    /// % on the flour of the main part.
    pub on_flour: Option<f64>,
    /// Whether anything in any part has the role.
    pub named: Option<bool>,
}

/// What a formula comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct FormulaFigures {
    /// The part that quantities without a part belong to.
    pub main: Part,
    /// Shares of every ingredient, by ingredient key.
    pub shares: Vec<IngredientShare>,
    /// Shares of every role, by [`Role`].
    pub roles: Vec<RoleShare>,
    /// Computed quantities: part, quantity, value.
    pub quantities: Vec<(Part, FormulaQuantity, f64)>,
}

impl FormulaFigures {
    /// What it says of an ingredient.
    #[must_use]
    pub fn share(&self, key: Key<Ingredient>) -> IngredientShare {
        self.shares.get(key.index()).copied().unwrap_or_default()
    }

    /// What it says of a role.
    #[must_use]
    pub fn role(&self, role: Role) -> RoleShare {
        self.roles.get(role as usize).copied().unwrap_or_default()
    }

    /// A computed quantity of a part, or of the main part.
    #[must_use]
    pub fn quantity(&self, quantity: FormulaQuantity, part: Option<Part>) -> Option<f64> {
        let part = part.unwrap_or(self.main);
        self.quantities.iter().find(|(own, name, _)| *own == part && *name == quantity).map(|(.., value)| *value)
    }
}
