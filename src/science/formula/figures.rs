//! Baker's percentages and totals of one part of a formula.

use super::composition::Component;
use super::line::{Formula, Line, Part, Stage};
use super::totals::{Bounds, Total, bounds_kg, unknown_in};
use crate::science::{Estimate, Method};

/// Saturated sucrose at 20 °C, % of the water phase (from memory: ICUMSA solubility table, about 66.7 %).
const SATURATED_SUCROSE_PERCENT: f64 = 67.0;

const ON_FLOUR: Method = Method {
    name: "baker's percentage: 100 × mass / total flour of all stages",
    source: "common practice",
    domain: "any dough or batter with flour",
};
const ON_TOTAL: Method = Method {
    name: "true percentage: 100 × mass / total mass",
    source: "common practice",
    domain: "fillings, icings and formulas without flour",
};
const WEIGHED: Method = Method {
    name: "sum of the masses weighed",
    source: "common practice",
    domain: "before any loss in mixing, fermentation and baking",
};
const TOTAL_WATER: Method = Method {
    name: "total water: mass × water share, summed over all ingredients but flour",
    source: "common practice; water shares of the ingredients from their own source",
    domain: "water of the flour itself, about 14 %, is not counted",
};
const MOISTURE: Method = Method {
    name: "moisture: mass × water share, summed over all ingredients, flour included",
    source: "common practice; water shares of the ingredients from their own source",
    domain: "before baking",
};
const SYRUP_STRENGTH: Method = Method {
    name: "syrup strength: 100 × (sugars + salt) / (sugars + salt + water), flour left out",
    source: "from memory: Slade L., Levine H., sugar and water as one total solvent (cookie technology)",
    domain: "as if all of it dissolved; above about 67 % sucrose stays crystalline at 20 °C",
};

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
    let lines: Vec<&Line> = formula.part(part).collect();
    if lines.is_empty() {
        return None;
    }
    let mass: f64 = lines.iter().map(|line| line.mass_kg).sum();
    let flour = flour_kg(&lines, |_| true);
    let basis = if part == Part::Dough && flour > 0.0 { Basis::Flour } else { Basis::TotalMass };
    let (divisor, method) = match basis {
        Basis::Flour => (flour / 100.0, ON_FLOUR),
        Basis::TotalMass => (mass / 100.0, ON_TOTAL),
    };
    let share = |components: &[Component]| total(&lines, components, divisor, "%", method);
    let liquids: Vec<&Line> = lines.iter().copied().filter(|line| !line.is_flour).collect();
    Some(FormulaFigures {
        part,
        basis,
        mass: Estimate::new(mass, "kg", WEIGHED),
        flour: Estimate::new(flour, "kg", WEIGHED),
        prefermented_flour: prefermented(&lines, flour),
        ingredients: lines.iter().map(|line| ingredient(line, divisor, method, mass)).collect(),
        total_percent: Estimate::new(mass / divisor, "%", method),
        total_water: total(&liquids, &[Component::Water], 1.0, "kg", TOTAL_WATER),
        hydration: total(&liquids, &[Component::Water], divisor, "%", TOTAL_WATER),
        moisture: total(&lines, &[Component::Water], mass / 100.0, "%", MOISTURE),
        components: Component::ALL.map(|one| (one, share(&[one]))).to_vec(),
        total_sugar: share(&Component::SUGARS),
        dissolved_solids: share(&Component::DISSOLVED),
        syrup_strength: syrup_strength(&liquids),
    })
}

fn flour_kg(lines: &[&Line], counts: impl Fn(Stage) -> bool) -> f64 {
    lines.iter().filter(|line| line.is_flour && counts(line.stage)).map(|line| line.mass_kg).sum()
}

fn prefermented(lines: &[&Line], flour: f64) -> Option<Estimate> {
    let early = flour_kg(lines, |stage| matches!(stage, Stage::Preferment | Stage::Sponge));
    (flour > 0.0).then(|| Estimate::new(100.0 * early / flour, "%", ON_FLOUR))
}

fn ingredient(line: &Line, divisor: f64, method: Method, mass: f64) -> IngredientShare {
    IngredientShare {
        name: line.name.clone(),
        stage: line.stage,
        percent: Estimate::new(line.mass_kg / divisor, "%", method),
        true_percent: Estimate::new(100.0 * line.mass_kg / mass, "%", ON_TOTAL),
    }
}

fn total(lines: &[&Line], components: &[Component], divisor: f64, unit: &'static str, method: Method) -> Total {
    Total::of(
        bounds_kg(lines.iter().copied(), components),
        divisor,
        unit,
        method,
        unknown_in(lines.iter().copied(), components),
    )
}

/// A ratio of two bounded masses is least with the least solids in the most water, and most the other way round.
fn syrup_strength(liquids: &[&Line]) -> Option<Total> {
    let solids = bounds_kg(liquids.iter().copied(), &Component::DISSOLVED);
    let water = bounds_kg(liquids.iter().copied(), &[Component::Water]);
    let ratio = |solids: f64, water: f64| {
        let phase = solids + water;
        if phase > 0.0 { 100.0 * solids / phase } else { 0.0 }
    };
    if solids.most + water.most <= 0.0 {
        return None;
    }
    let bounds = Bounds { least: ratio(solids.least, water.most), most: ratio(solids.most, water.least) };
    let both: Vec<Component> = Component::DISSOLVED.into_iter().chain([Component::Water]).collect();
    let unknown = unknown_in(liquids.iter().copied(), &both);
    let mut strength = Total::of(bounds, 1.0, "%", SYRUP_STRENGTH, unknown);
    strength.at_least = judge_saturation(strength.at_least);
    strength.at_most = judge_saturation(strength.at_most);
    Some(strength)
}

fn judge_saturation(strength: Estimate) -> Estimate {
    let value = strength.value;
    strength.valid_if(value <= SATURATED_SUCROSE_PERCENT, || {
        format!(
            "{value:.0} % is more than dissolves at 20 °C if it is sucrose (about {SATURATED_SUCROSE_PERCENT:.0} %)"
        )
    })
}
