//! What is known of a case, laid out for conditions.

use super::{Fact, FormulaQuantity, Ingredient, Input, Key, Reading};

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

/// What a formula comes to.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct FormulaFigures {
    /// Share of each ingredient, % on flour (0 when the formula does not name it), by ingredient key; `None`: unknown.
    pub shares: Vec<Option<f64>>,
    /// Computed quantities, by [`FormulaQuantity`]; `None`: unknown.
    pub quantities: [Option<f64>; FormulaQuantity::COUNT],
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
        self.formula.as_ref()?.shares.get(key.index()).copied().flatten()
    }

    /// A quantity computed from the formula.
    #[must_use]
    pub fn formula_quantity(&self, quantity: FormulaQuantity) -> Option<f64> {
        self.formula.as_ref()?.quantities.get(quantity as usize).copied().flatten()
    }

    /// Whether the case tells `input`.
    #[must_use]
    pub fn knows(&self, input: Input) -> bool {
        match input {
            Input::Reading(key) => self.reading(key).is_some(),
            Input::Fact(key) => self.fact(key).is_some(),
            Input::Share(key) => self.share(key).is_some(),
            Input::Formula => self.formula.is_some(),
        }
    }
}
