//! Yeast in its four forms, and the gas that it makes of sugar.

use super::{Estimate, Method, Nonsense, input_checks};

const CONVERSION: Method = Method {
    name: "fresh : active dry : instant = 1 : 0.40 : 0.33 by mass, water made up",
    source: "bread textbook, yeast conversions fresh to dry; cream yeast of 18 % dry matter by dry matter \
             against fresh yeast of 30 % (common practice)",
    domain: "bread yeast of usual strength; makers' strengths differ, follow the maker's own factor; \
             osmotolerant yeast is another strain",
};
const FERMENTATION: Method = Method {
    name: "alcoholic fermentation: two CO2 a hexose, four a disaccharide",
    source: "stoichiometry, IUPAC standard atomic weights",
    domain: "sugar that is fermented whole; growth takes a part, lactose is not fermented",
};

/// A form of baker's yeast.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum YeastForm {
    /// Compressed yeast, about 70 % water.
    Fresh,
    /// Granules that have to be soaked first.
    ActiveDry,
    /// Fine granules that go into the flour.
    Instant,
    /// Pumpable yeast, about 18 % dry matter.
    Cream,
}

impl YeastForm {
    /// Mass that does the work of one of fresh yeast.
    #[must_use]
    pub fn per_fresh(self) -> f64 {
        match self {
            Self::Fresh => 1.0,
            Self::ActiveDry => 0.40,
            Self::Instant => 0.33,
            // 30 % dry matter over 18 % (common practice).
            Self::Cream => 30.0 / 18.0,
        }
    }
}

/// Another form of yeast in place of one.
#[derive(Debug, Clone, PartialEq)]
pub struct YeastSubstitute {
    /// Mass of the other form, kg.
    pub yeast: Estimate,
    /// Water to add so that the dough keeps its mass, kg; negative is water to leave out.
    pub extra_water: Estimate,
}

/// Mass of another form of yeast, and the water that makes up the difference.
///
/// # Errors
/// A mass that is negative or not a number.
pub fn substitute_yeast(mass_kg: f64, from: YeastForm, to: YeastForm) -> Result<YeastSubstitute, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::not_negative(&mut faults, "mass_kg", mass_kg);
    faults.or_ok()?;
    let other = mass_kg / from.per_fresh() * to.per_fresh();
    Ok(YeastSubstitute {
        yeast: Estimate::new(other, "kg", CONVERSION),
        extra_water: Estimate::new(mass_kg - other, "kg", CONVERSION),
    })
}

/// A sugar that baker's yeast ferments.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FermentableSugar {
    /// Glucose or fructose.
    Hexose,
    /// Sucrose or maltose, which takes up one water on the way.
    Disaccharide,
}

/// Carbon dioxide of a mass of sugar that is fermented whole, g.
///
/// # Errors
/// A mass that is negative or not a number.
pub fn fermentation_carbon_dioxide(sugar_g: f64, sugar: FermentableSugar) -> Result<Estimate, Nonsense> {
    /// Molar masses, g/mol.
    const CARBON_DIOXIDE: f64 = 44.009;
    const HEXOSE: f64 = 180.156;
    const DISACCHARIDE: f64 = 342.297;
    let mut faults = Nonsense::default();
    input_checks::not_negative(&mut faults, "sugar_g", sugar_g);
    faults.or_ok()?;
    let share = match sugar {
        FermentableSugar::Hexose => 2.0 * CARBON_DIOXIDE / HEXOSE,
        FermentableSugar::Disaccharide => 4.0 * CARBON_DIOXIDE / DISACCHARIDE,
    };
    Ok(Estimate::new(sugar_g * share, "g", FERMENTATION))
}
