//! Quantities that follow from a formula.

use std::sync::LazyLock;

use crate::units::Unit;

/// Per cent, the unit of shares.
pub(crate) static PERCENT: LazyLock<Unit> = LazyLock::new(|| Unit::parse("%").unwrap_or_default());

static UNITS: LazyLock<Vec<Unit>> = LazyLock::new(|| {
    let units = FormulaQuantity::ALL.iter().map(|(.., code)| Unit::parse(code).unwrap_or_default());
    units.collect()
});

/// Quantities that are computed from a formula.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FormulaQuantity {
    /// Total water, % on flour; the flour's own moisture is not counted.
    WaterOnFlour,
    /// Salt, % on flour; the flour's own is not counted.
    SaltOnFlour,
    /// Sugars, % on flour; the flour's own are not counted.
    SugarsOnFlour,
    /// Fat, % on flour; the flour's own fat is not counted.
    FatOnFlour,
    /// Flour, kg.
    FlourMass,
    /// The whole mass, kg.
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
    /// Glucose, fructose, lactose and maltose, % on flour; the flour's own are not counted.
    ReducingSugarsOnFlour,
    /// Glucose, fructose, lactose and maltose, % of all sugars; the flour's own are not counted.
    ReducingShareOfSugars,
    /// Protein of the flours together, % of the flour as it is.
    FlourProtein,
    /// Dissolved solids (sugars and salt), % of the whole mass.
    SolubleSolids,
    /// Dissolved solids, % of dissolved solids and water together; flour left out.
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

    /// All, with their names in the rules, titles and UCUM units.
    pub const ALL: [(Self, &'static str, &'static str, &'static str); Self::COUNT] = [
        (Self::WaterOnFlour, "water_on_flour", "water on flour", "%"),
        (Self::SaltOnFlour, "salt_on_flour", "salt on flour", "%"),
        (Self::SugarsOnFlour, "sugars_on_flour", "sugars on flour", "%"),
        (Self::FatOnFlour, "fat_on_flour", "fat on flour", "%"),
        (Self::FlourMass, "flour_mass", "flour", "kg"),
        (Self::DoughMass, "dough_mass", "whole mass", "kg"),
        (Self::SugarsInMass, "sugars_in_mass", "sugars in the whole mass", "%"),
        (Self::FatInMass, "fat_in_mass", "fat in the whole mass", "%"),
        (Self::SaltInMass, "salt_in_mass", "salt in the whole mass", "%"),
        (Self::WaterInMass, "water_in_mass", "water in the whole mass", "%"),
        (Self::StarchInMass, "starch_in_mass", "starch in the whole mass", "%"),
        (Self::ProteinInMass, "protein_in_mass", "protein in the whole mass", "%"),
        (Self::ReducingSugarsOnFlour, "reducing_sugars_on_flour", "reducing sugars on flour", "%"),
        (Self::ReducingShareOfSugars, "reducing_share_of_sugars", "reducing sugars among all sugars", "%"),
        (Self::FlourProtein, "flour_protein", "protein of the flour", "%"),
        (Self::SolubleSolids, "soluble_solids", "soluble solids", "%"),
        (Self::SyrupStrength, "syrup_strength", "syrup strength", "%"),
        (Self::WaterActivity, "water_activity", "water activity", "1"),
        (Self::FreezingPoint, "freezing_point", "freezing point", "Cel"),
        (Self::StarchSettingTemperature, "starch_setting_temperature", "starch setting temperature", "Cel"),
        (Self::SodaSurplusOnFlour, "soda_surplus_on_flour", "soda surplus on flour", "%"),
        (Self::LeaveningCarbonDioxide, "leavening_carbon_dioxide", "carbon dioxide of the leavening", "g/kg"),
    ];

    /// Its name in the rules.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.row().1
    }

    /// Its title for people.
    #[must_use]
    pub fn title(self) -> &'static str {
        self.row().2
    }

    /// Its unit.
    #[must_use]
    pub fn unit(self) -> &'static Unit {
        UNITS.get(self as usize).unwrap_or(&PERCENT)
    }

    fn row(self) -> (Self, &'static str, &'static str, &'static str) {
        // The order of `ALL` is that of the enum; a test holds it to that.
        Self::ALL.get(self as usize).copied().unwrap_or((self, "", "", "1"))
    }

    /// The quantity of a name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.iter().find(|(_, own, ..)| *own == name).map(|(quantity, ..)| *quantity)
    }
}

#[cfg(test)]
mod tests {
    use super::FormulaQuantity;

    #[test]
    fn the_table_stands_in_the_order_of_the_quantities_and_has_units() {
        for (position, (quantity, name, ..)) in FormulaQuantity::ALL.iter().enumerate() {
            assert_eq!(*quantity as usize, position);
            assert_eq!(quantity.name(), *name);
            assert_eq!(quantity.unit().code(), FormulaQuantity::ALL[position].3);
        }
    }
}
