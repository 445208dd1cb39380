//! What is known of a case, laid out for conditions.

use super::{Fact, FormulaFigures, FormulaQuantity, Ingredient, Input, Key, Reading, Window};
use crate::science::formula::{Part, Role};

/// The limits that apply to a reading in a case, in its unit; `None` where nobody set one.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Limits {
    /// Low limit.
    pub low: Option<f64>,
    /// Target.
    pub target: Option<f64>,
    /// High limit.
    pub high: Option<f64>,
    /// How far past a limit counts fully.
    pub margin: Option<f64>,
}

impl Limits {
    /// Limits of a usual window: the target is its middle, the margin a quarter of its width unless given.
    #[must_use]
    pub fn usual(window: Window, margin: Option<f64>) -> Self {
        let Window { low, high } = window;
        Self {
            low: Some(low),
            target: Some(f64::midpoint(low, high)),
            high: Some(high),
            margin: margin.or(Some((high - low) / 4.0)),
        }
    }

    /// These limits, and those of `earlier` that are not stated anew and agree with what is.
    #[must_use]
    pub fn over(self, earlier: Self) -> Self {
        let low = self.low.or(earlier.low.filter(|low| self.high.is_none_or(|high| *low < high)));
        let high = self.high.or(earlier.high.filter(|high| self.low.is_none_or(|low| low < *high)));
        let within = |target: &f64| low.is_none_or(|low| low <= *target) && high.is_none_or(|high| *target <= high);
        let target = self.target.or(earlier.target.filter(within));
        Self { low, target, high, margin: self.margin.or(earlier.margin) }
    }
}

/// Everything that conditions may ask of a case. Starts with nothing known.
#[derive(Debug, Clone, Default)]
pub struct Circumstances {
    readings: Vec<Option<f64>>,
    limits: Vec<Limits>,
    facts: Vec<Option<bool>>,
    formula: Option<FormulaFigures>,
}

impl Circumstances {
    /// Nothing known, with the limits that hold for the product (by reading key) and room for the facts.
    #[must_use]
    pub fn new(limits: &[Limits], facts: usize) -> Self {
        Self { readings: vec![None; limits.len()], limits: limits.to_vec(), facts: vec![None; facts], formula: None }
    }

    /// Value of a reading in its own unit.
    #[must_use]
    pub fn reading(&self, key: Key<Reading>) -> Option<f64> {
        self.readings.get(key.index()).copied().flatten()
    }

    /// Sets or forgets a reading.
    pub fn set_reading(&mut self, key: Key<Reading>, value: Option<f64>) {
        if let Some(slot) = self.readings.get_mut(key.index()) {
            *slot = value;
        }
    }

    /// Limits of a reading.
    #[must_use]
    pub fn limits(&self, key: Key<Reading>) -> Limits {
        self.limits.get(key.index()).copied().unwrap_or_default()
    }

    /// Replaces the limits of a reading.
    pub fn set_limits(&mut self, key: Key<Reading>, limits: Limits) {
        if let Some(slot) = self.limits.get_mut(key.index()) {
            *slot = limits;
        }
    }

    /// A stated fact.
    #[must_use]
    pub fn fact(&self, key: Key<Fact>) -> Option<bool> {
        self.facts.get(key.index()).copied().flatten()
    }

    /// States or forgets a fact.
    pub fn set_fact(&mut self, key: Key<Fact>, value: Option<bool>) {
        if let Some(slot) = self.facts.get_mut(key.index()) {
            *slot = value;
        }
    }

    /// Sets or forgets the formula.
    pub fn set_formula(&mut self, formula: Option<FormulaFigures>) {
        self.formula = formula;
    }

    /// Forgets the formula and gives it.
    pub fn take_formula(&mut self) -> Option<FormulaFigures> {
        self.formula.take()
    }

    /// The formula.
    #[must_use]
    pub fn formula(&self) -> Option<&FormulaFigures> {
        self.formula.as_ref()
    }

    /// Share of an ingredient, % on flour; 0 when the formula does not name it, `None` without a formula.
    #[must_use]
    pub fn share(&self, key: Key<Ingredient>) -> Option<f64> {
        self.formula.as_ref()?.share(key).on_flour
    }

    /// Share of an ingredient, % of the mass of a part, or of the main part.
    #[must_use]
    pub fn share_in_mass(&self, key: Key<Ingredient>, part: Option<Part>) -> Option<f64> {
        let formula = self.formula.as_ref()?;
        formula.share(key).in_mass.get(part.unwrap_or(formula.main) as usize).copied().flatten()
    }

    /// Whether the formula names an ingredient in any part.
    #[must_use]
    pub fn names(&self, key: Key<Ingredient>) -> Option<bool> {
        self.formula.as_ref()?.share(key).named
    }

    /// Share of everything with a role, % on flour.
    #[must_use]
    pub fn role_share(&self, role: Role) -> Option<f64> {
        self.formula.as_ref()?.role(role).on_flour
    }

    /// Whether anything in the formula has a role.
    #[must_use]
    pub fn names_role(&self, role: Role) -> Option<bool> {
        self.formula.as_ref()?.role(role).named
    }

    /// A quantity computed from a part of the formula, or from its main part.
    #[must_use]
    pub fn formula_quantity(&self, quantity: FormulaQuantity, part: Option<Part>) -> Option<f64> {
        self.formula.as_ref()?.quantity(quantity, part)
    }

    /// Whether the case tells `input`.
    #[must_use]
    pub fn knows(&self, input: Input) -> bool {
        match input {
            Input::Reading(key) => self.reading(key).is_some(),
            Input::Fact(key) => self.fact(key).is_some(),
            Input::Share(key) => self.tells_of(key),
            Input::Formula => self.formula.is_some(),
        }
    }

    fn tells_of(&self, key: Key<Ingredient>) -> bool {
        self.formula.as_ref().is_some_and(|formula| {
            let share = formula.share(key);
            share.named.is_some() || share.on_flour.is_some() || share.in_mass.iter().any(Option::is_some)
        })
    }
}
