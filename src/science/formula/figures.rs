//! Baker's percentages and totals of one part of a formula.

use super::composition::Component;
use super::line::{Formula, Part, Stage};
use super::part_lines::PartLines;
use super::totals::Total;
use crate::science::Estimate;

/// What 100 % is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Basis {
    /// Total flour of all stages of the part.
    Flour,
    /// Total mass of the part.
    TotalMass,
}

/// One line in percent.
#[derive(Debug, Clone, PartialEq)]
pub struct IngredientShare {
    /// Name of the ingredient.
    pub name: String,
    /// When it goes in.
    pub stage: Stage,
    /// Percent on the basis of the part.
    pub percent: Estimate,
    /// Percent of the total mass of the part.
    pub true_percent: Estimate,
}

/// Figures of one part. Shares are percent on [`FormulaFigures::basis`] unless said otherwise.
#[derive(Debug, Clone, PartialEq)]
pub struct FormulaFigures {
    /// Which part.
    pub part: Part,
    /// What 100 % is.
    pub basis: Basis,
    /// Mass of the part, kg.
    pub mass: Estimate,
    /// Flour of all its stages, kg.
    pub flour: Estimate,
    /// Share of that flour that goes into preferment and sponge, %; `None` without flour.
    pub prefermented_flour: Option<Estimate>,
    /// The lines in percent, in the order of the formula.
    pub ingredients: Vec<IngredientShare>,
    /// Sum of the percentages of all lines.
    pub total_percent: Estimate,
    /// Water of all ingredients but flour, kg.
    pub total_water: Total,
    /// The same in percent: hydration where the basis is flour.
    pub hydration: Total,
    /// Water of all ingredients, flour included, % of the mass.
    pub moisture: Total,
    /// Each component, flour's own included.
    pub components: Vec<(Component, Total)>,
    /// Sucrose, glucose, fructose, lactose and maltose together.
    pub total_sugar: Total,
    /// Sugars and salt together.
    pub dissolved_solids: Total,
    /// Sugars and salt in the water phase, flour left out, % of that phase; `None` when nothing could be in it.
    pub syrup_strength: Option<Total>,
}

impl FormulaFigures {
    /// Total of one component, percent on the basis, flour's own included.
    #[must_use]
    pub fn component(&self, component: Component) -> Option<&Total> {
        self.components.iter().find(|(name, _)| *name == component).map(|(_, total)| total)
    }

    /// Percent of an ingredient over all stages, `None` when no line has that name.
    #[must_use]
    pub fn percent_of(&self, name: &str) -> Option<f64> {
        let mut lines = self.ingredients.iter().filter(|line| line.name == name).peekable();
        lines.peek()?;
        Some(lines.map(|line| line.percent.value).sum())
    }
}

/// Figures of one part; `None` when the formula has no line in it.
///
/// The dough is reckoned on its flour. A dough without flour, a filling and an icing are reckoned on their total mass
/// (a filling's flour is a thickener, not its backbone).
#[must_use]
pub fn figures(formula: &Formula, part: Part) -> Option<FormulaFigures> {
    let lines = PartLines::of(formula, part)?;
    Some(FormulaFigures {
        part,
        basis: lines.basis(),
        mass: lines.mass(),
        flour: lines.flour(),
        prefermented_flour: lines.prefermented_flour(),
        ingredients: lines.ingredients(),
        total_percent: lines.total_percent(),
        total_water: lines.total_water(),
        hydration: lines.hydration(),
        moisture: lines.moisture(),
        components: Component::ALL.map(|one| (one, lines.share(&[one]))).to_vec(),
        total_sugar: lines.share(&Component::SUGARS),
        dissolved_solids: lines.share(&Component::DISSOLVED),
        syrup_strength: lines.syrup_strength(),
    })
}
