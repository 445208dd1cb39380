//! Expressions over readings and the formula.

use std::sync::Arc;

use super::{Calculated, Circumstances, Ingredient, Input, Key, Reading};

/// Quantities that are computed from a formula.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FormulaQuantity {
    /// Total water, % on flour; the flour's own moisture is not counted.
    WaterOnFlour,
    /// Salt, % on flour.
    SaltOnFlour,
    /// Sugars, % on flour.
    SugarsOnFlour,
    /// Fat, % on flour; the flour's own fat is not counted.
    FatOnFlour,
    /// Flour, kg.
    FlourMass,
    /// Everything, kg.
    DoughMass,
    /// Sugars, % of the whole mass.
    SugarsInMass,
    /// Fat, % of the whole mass.
    FatInMass,
    /// Salt, % of the whole mass.
    SaltInMass,
    /// Water, the flour's own included, % of the whole mass.
    WaterInMass,
    /// Starch, % of the whole mass.
    StarchInMass,
    /// Protein, % of the whole mass.
    ProteinInMass,
    /// Glucose, fructose, lactose and maltose, % on flour.
    ReducingSugarsOnFlour,
    /// Glucose, fructose, lactose and maltose, % of all sugars.
    ReducingShareOfSugars,
    /// Protein of the flours together, % of the flour as it is.
    FlourProtein,
    /// Dissolved solids (sugars and salt), % of the whole mass.
    SolubleSolids,
    /// Dissolved solids, % of dissolved solids and water together.
    SyrupStrength,
    /// Water activity before baking or cooking.
    WaterActivity,
    /// Temperature at which ice begins to form.
    FreezingPoint,
    /// Temperature at which wheat starch gelatinises in the syrup of the formula.
    StarchSettingTemperature,
    /// Soda that no acid neutralises, % on flour; negative: acid left over, counted as the soda it could neutralise.
    SodaSurplusOnFlour,
    /// Carbon dioxide that the chemical leavening can give, g/kg of the whole mass.
    LeaveningCarbonDioxide,
}

impl FormulaQuantity {
    /// How many there are.
    pub const COUNT: usize = 22;

    /// All, with their names in the rules and UCUM units.
    pub const ALL: [(Self, &'static str, &'static str); Self::COUNT] = [
        (Self::WaterOnFlour, "water_on_flour", "%"),
        (Self::SaltOnFlour, "salt_on_flour", "%"),
        (Self::SugarsOnFlour, "sugars_on_flour", "%"),
        (Self::FatOnFlour, "fat_on_flour", "%"),
        (Self::FlourMass, "flour_mass", "kg"),
        (Self::DoughMass, "dough_mass", "kg"),
        (Self::SugarsInMass, "sugars_in_mass", "%"),
        (Self::FatInMass, "fat_in_mass", "%"),
        (Self::SaltInMass, "salt_in_mass", "%"),
        (Self::WaterInMass, "water_in_mass", "%"),
        (Self::StarchInMass, "starch_in_mass", "%"),
        (Self::ProteinInMass, "protein_in_mass", "%"),
        (Self::ReducingSugarsOnFlour, "reducing_sugars_on_flour", "%"),
        (Self::ReducingShareOfSugars, "reducing_share_of_sugars", "%"),
        (Self::FlourProtein, "flour_protein", "%"),
        (Self::SolubleSolids, "soluble_solids", "%"),
        (Self::SyrupStrength, "syrup_strength", "%"),
        (Self::WaterActivity, "water_activity", "1"),
        (Self::FreezingPoint, "freezing_point", "Cel"),
        (Self::StarchSettingTemperature, "starch_setting_temperature", "Cel"),
        (Self::SodaSurplusOnFlour, "soda_surplus_on_flour", "%"),
        (Self::LeaveningCarbonDioxide, "leavening_carbon_dioxide", "g/kg"),
    ];

    /// Its name in the rules.
    #[must_use]
    pub fn name(self) -> &'static str {
        Self::ALL.iter().find(|(own, ..)| *own == self).map_or("", |(_, name, _)| name)
    }

    /// Its UCUM unit.
    #[must_use]
    pub fn unit(self) -> &'static str {
        Self::ALL.iter().find(|(own, ..)| *own == self).map_or("1", |(.., unit)| unit)
    }

    /// The quantity of a name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.iter().find(|(_, own, _)| *own == name).map(|(quantity, ..)| *quantity)
    }
}

/// Arithmetic on two quantities.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Operation {
    /// Sum.
    Add,
    /// Difference.
    Subtract,
    /// Product.
    Multiply,
    /// Quotient; unknown when the divisor is zero.
    Divide,
    /// The smaller.
    Min,
    /// The larger.
    Max,
}

/// A number that follows from a case, or is unknown.
#[derive(Debug, Clone)]
pub enum Quantity {
    /// A constant.
    Number(f64),
    /// The value of a reading, in its own unit.
    Reading(Key<Reading>),
    /// The low limit of a reading.
    LowLimit(Key<Reading>),
    /// The target of a reading.
    Target(Key<Reading>),
    /// The high limit of a reading.
    HighLimit(Key<Reading>),
    /// Share of an ingredient, % on flour.
    BakerPercent(Key<Ingredient>),
    /// A quantity of the formula.
    Formula(FormulaQuantity),
    /// A figure of a calculation.
    Calculated(Arc<Calculated>),
    /// Absolute value.
    Abs(Box<Quantity>),
    /// Arithmetic.
    Binary(Operation, Box<Quantity>, Box<Quantity>),
}

impl Quantity {
    /// The value in a case; `None` when something that it needs is unknown or the result is not finite.
    #[must_use]
    pub fn value(&self, case: &Circumstances) -> Option<f64> {
        let value = match self {
            Self::Number(number) => Some(*number),
            Self::Reading(key) => case.reading(*key),
            Self::LowLimit(key) => case.limits(*key).low,
            Self::Target(key) => case.limits(*key).target,
            Self::HighLimit(key) => case.limits(*key).high,
            Self::BakerPercent(key) => case.share(*key),
            Self::Formula(quantity) => case.formula_quantity(*quantity),
            Self::Calculated(calculated) => calculated.value(case),
            Self::Abs(inner) => inner.value(case).map(f64::abs),
            Self::Binary(operation, left, right) => Some(operation.apply(left.value(case)?, right.value(case)?)),
        };
        value.filter(|number| number.is_finite())
    }

    /// Visits everything that it depends on.
    pub fn inputs(&self, visit: &mut impl FnMut(Input)) {
        match self {
            Self::Number(_) | Self::LowLimit(_) | Self::Target(_) | Self::HighLimit(_) => {}
            Self::Reading(key) => visit(Input::Reading(*key)),
            Self::BakerPercent(key) => visit(Input::Share(*key)),
            Self::Formula(_) => visit(Input::Formula),
            Self::Calculated(calculated) => calculated.inputs(visit),
            Self::Abs(inner) => inner.inputs(visit),
            Self::Binary(_, left, right) => {
                left.inputs(visit);
                right.inputs(visit);
            }
        }
    }
}

impl Operation {
    fn apply(self, left: f64, right: f64) -> f64 {
        match self {
            Self::Add => left + right,
            Self::Subtract => left - right,
            Self::Multiply => left * right,
            Self::Divide => left / right,
            Self::Min => left.min(right),
            Self::Max => left.max(right),
        }
    }
}
