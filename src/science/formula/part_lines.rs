//! The lines of one part, from which every figure of it is worked out on demand.

use super::composition::Component;
use super::figures::{Basis, IngredientShare};
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
const BROUGHT_IN: Method = Method {
    name: "baker's percentage of what the other ingredients bring: 100 × Σ mass × share / total flour",
    source: "common practice; shares of the ingredients from their own source",
    domain: "the flour's own water, fat, sugars and salt are not counted",
};
const IN_MASS: Method = Method {
    name: "share of the whole mass: 100 × Σ mass × share / total mass",
    source: "common practice; shares of the ingredients from their own source",
    domain: "before any loss in fermentation, baking or cooking",
};
const AMONG: Method = Method {
    name: "ratio of component masses, in percent",
    source: "common practice; shares of the ingredients from their own source",
    domain: "flour left out",
};
const FLOUR_PROTEIN: Method = Method {
    name: "protein of the flours together: mass balance",
    source: "mass balance; shares of the flours from their own source",
    domain: "flour as it is, at its own moisture",
};
const SUGAR_IN_LIQUID: Method = Method {
    name: "sugar in the liquid: 100 × sugars / (sugars + water), flour left out",
    source: "common practice; shares of the ingredients from their own source",
    domain: "all sugar dissolved",
};
const SYRUP_STRENGTH: Method = Method {
    name: "syrup strength: 100 × (sugars + salt) / (sugars + salt + water), flour left out",
    source: "from memory: Slade L., Levine H., sugar and water as one total solvent (cookie technology)",
    domain: "as if all of it dissolved; above about 67 % sucrose stays crystalline at 20 °C",
};

/// The lines of one part of a formula.
#[derive(Debug, Clone)]
pub struct PartLines<'a> {
    part: Part,
    lines: Vec<&'a Line>,
    mass_kg: f64,
    flour_kg: f64,
}

impl<'a> PartLines<'a> {
    /// The lines of a part; `None` when the formula has no line in it.
    #[must_use]
    pub fn of(formula: &'a Formula, part: Part) -> Option<Self> {
        let lines: Vec<&Line> = formula.part(part).collect();
        if lines.is_empty() {
            return None;
        }
        let mass_kg = lines.iter().map(|line| line.mass_kg).sum();
        let flour_kg = lines.iter().filter(|line| line.is_flour).map(|line| line.mass_kg).sum();
        Some(Self { part, lines, mass_kg, flour_kg })
    }

    /// What 100 % is: the dough's flour; the total mass of a dough without flour, a filling or an icing.
    #[must_use]
    pub fn basis(&self) -> Basis {
        if self.part == Part::Dough && self.flour_kg > 0.0 { Basis::Flour } else { Basis::TotalMass }
    }

    /// Mass, kg.
    #[must_use]
    pub fn mass(&self) -> Estimate {
        Estimate::new(self.mass_kg, "kg", WEIGHED)
    }

    /// Flour of all stages, kg.
    #[must_use]
    pub fn flour(&self) -> Estimate {
        Estimate::new(self.flour_kg, "kg", WEIGHED)
    }

    fn divisor(&self) -> (f64, Method) {
        match self.basis() {
            Basis::Flour => (self.flour_kg / 100.0, ON_FLOUR),
            Basis::TotalMass => (self.mass_kg / 100.0, ON_TOTAL),
        }
    }

    /// Share of the flour that goes into preferment and sponge, %; `None` without flour.
    pub(super) fn prefermented_flour(&self) -> Option<Estimate> {
        let early = |line: &&&Line| line.is_flour && matches!(line.stage, Stage::Preferment | Stage::Sponge);
        let early: f64 = self.lines.iter().filter(early).map(|line| line.mass_kg).sum();
        (self.flour_kg > 0.0).then(|| Estimate::new(100.0 * early / self.flour_kg, "%", ON_FLOUR))
    }

    pub(super) fn ingredients(&self) -> Vec<IngredientShare> {
        let (divisor, method) = self.divisor();
        let share = |line: &&Line| IngredientShare {
            name: line.name.clone(),
            stage: line.stage,
            percent: Estimate::new(line.mass_kg / divisor, "%", method),
            true_percent: Estimate::new(100.0 * line.mass_kg / self.mass_kg, "%", ON_TOTAL),
        };
        self.lines.iter().map(share).collect()
    }

    pub(super) fn total_percent(&self) -> Estimate {
        let (divisor, method) = self.divisor();
        Estimate::new(self.mass_kg / divisor, "%", method)
    }

    /// All ingredients but flour.
    fn others(&self) -> impl Iterator<Item = &'a Line> + Clone {
        self.lines.iter().copied().filter(|line| !line.is_flour)
    }

    fn all(&self) -> impl Iterator<Item = &'a Line> + Clone {
        self.lines.iter().copied()
    }

    /// Components together, % on the basis, flour's own included.
    pub(super) fn share(&self, components: &[Component]) -> Total {
        let (divisor, method) = self.divisor();
        total(self.all(), components, divisor, "%", method)
    }

    /// Water of all ingredients but flour, kg.
    pub(super) fn total_water(&self) -> Total {
        total(self.others(), &[Component::Water], 1.0, "kg", TOTAL_WATER)
    }

    /// Water of all ingredients but flour, % on the basis.
    #[must_use]
    pub fn hydration(&self) -> Total {
        total(self.others(), &[Component::Water], self.divisor().0, "%", TOTAL_WATER)
    }

    /// Water of all ingredients, flour included, % of the mass.
    #[must_use]
    pub fn moisture(&self) -> Total {
        total(self.all(), &[Component::Water], self.mass_kg / 100.0, "%", MOISTURE)
    }

    /// Components that the ingredients other than flour bring, together, % on flour; `None` where flour is no basis.
    #[must_use]
    pub fn brought_in(&self, components: &[Component]) -> Option<Total> {
        let on_flour = self.basis() == Basis::Flour;
        on_flour.then(|| total(self.others(), components, self.flour_kg / 100.0, "%", BROUGHT_IN))
    }

    /// Components together, flour's own included, % of the mass.
    #[must_use]
    pub fn in_mass(&self, components: &[Component]) -> Total {
        total(self.all(), components, self.mass_kg / 100.0, "%", IN_MASS)
    }

    /// Some components, % of more components that include them, flour left out; `None` when there are none of either.
    #[must_use]
    pub fn among(&self, some: &[Component], of: &[Component]) -> Option<Total> {
        let rest: Vec<Component> = of.iter().copied().filter(|component| !some.contains(component)).collect();
        let (wanted, rest) = (bounds_kg(self.others(), some), bounds_kg(self.others(), &rest));
        ratio(wanted, rest, AMONG, unknown_in(self.others(), of))
    }

    /// Protein of the flours together, % of the flour; `None` without flour.
    #[must_use]
    pub fn flour_protein(&self) -> Option<Total> {
        let flours = self.lines.iter().copied().filter(|line| line.is_flour);
        (self.flour_kg > 0.0).then(|| total(flours, &[Component::Protein], self.flour_kg / 100.0, "%", FLOUR_PROTEIN))
    }

    /// Sugars in sugars and water together, flour left out, %; `None` when nothing could be in it.
    #[must_use]
    pub fn sugar_in_liquid(&self) -> Option<Total> {
        let (sugars, water) =
            (bounds_kg(self.others(), &Component::SUGARS), bounds_kg(self.others(), &[Component::Water]));
        let both: Vec<Component> = Component::SUGARS.into_iter().chain([Component::Water]).collect();
        ratio(sugars, water, SUGAR_IN_LIQUID, unknown_in(self.others(), &both))
    }

    /// Sugars and salt in the water phase, flour left out, % of that phase; `None` when nothing could be in it.
    #[must_use]
    pub fn syrup_strength(&self) -> Option<Total> {
        let (solids, water) =
            (bounds_kg(self.others(), &Component::DISSOLVED), bounds_kg(self.others(), &[Component::Water]));
        let both: Vec<Component> = Component::DISSOLVED.into_iter().chain([Component::Water]).collect();
        let mut strength = ratio(solids, water, SYRUP_STRENGTH, unknown_in(self.others(), &both))?;
        strength.at_least = judge_saturation(strength.at_least);
        strength.at_most = judge_saturation(strength.at_most);
        Some(strength)
    }
}

fn total<'a>(
    lines: impl Iterator<Item = &'a Line> + Clone,
    components: &[Component],
    divisor: f64,
    unit: &'static str,
    method: Method,
) -> Total {
    Total::of(bounds_kg(lines.clone(), components), divisor, unit, method, unknown_in(lines, components))
}

/// A part of a sum of two bounded masses, %: least with the least of it in the most rest, and most the other way round.
fn ratio(part: Bounds, rest: Bounds, method: Method, unknown: Vec<String>) -> Option<Total> {
    if part.most + rest.most <= 0.0 {
        return None;
    }
    let percent = |part: f64, rest: f64| if part + rest > 0.0 { 100.0 * part / (part + rest) } else { 0.0 };
    let bounds = Bounds { least: percent(part.least, rest.most), most: percent(part.most, rest.least) };
    Some(Total::of(bounds, 1.0, "%", method, unknown))
}

fn judge_saturation(strength: Estimate) -> Estimate {
    let value = strength.value;
    strength.valid_if(value <= SATURATED_SUCROSE_PERCENT, || {
        format!(
            "{value:.0} % is more than dissolves at 20 °C if it is sucrose (about {SATURATED_SUCROSE_PERCENT:.0} %)"
        )
    })
}
