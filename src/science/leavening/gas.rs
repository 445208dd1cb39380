//! Gas from carbonates: its mass and, by the ideal gas law, its volume.

use super::molar;
use crate::science::{Estimate, Method, Nonsense, input_checks};

/// Molar gas constant, J/(mol K) (CODATA 2018, exact).
const GAS_CONSTANT: f64 = 8.314_462_618;
/// 0 °C in kelvins.
const ZERO_CELSIUS_KELVIN: f64 = 273.15;

const STOICHIOMETRY: Method = Method {
    name: "gas yield by stoichiometry of the carbonate",
    source: "IUPAC standard atomic weights",
    domain: "full reaction; in a real dough part of the gas is lost in mixing and part stays dissolved",
};
const IDEAL_GAS: Method = Method {
    name: "ideal gas law: volume = moles × R × temperature / pressure",
    source: "CODATA 2018 molar gas constant",
    domain: "gas alone, dry, at about atmospheric pressure; water vapour of the dough comes on top",
};

/// A carbonate of the bakery.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Carbonate {
    /// Baking soda, `NaHCO3`.
    SodiumBicarbonate,
    /// `KHCO3`, where sodium is to be low.
    PotassiumBicarbonate,
    /// `NH4HCO3`, leaves no residue; only for thin dry goods.
    AmmoniumBicarbonate,
}

/// How the gas is set free.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Release {
    /// By enough acid.
    Acid,
    /// By heat alone: half of the gas stays behind as an alkaline carbonate, except with ammonium bicarbonate.
    Heat,
}

/// Gases that 100 g of a carbonate give, g.
#[derive(Debug, Clone, PartialEq)]
pub struct GasYield {
    /// Carbon dioxide, % of the carbonate.
    pub carbon_dioxide: Estimate,
    /// Ammonia, % of the carbonate.
    pub ammonia: Estimate,
    /// Water, % of the carbonate: vapour above 100 °C, else part of the dough.
    pub water: Estimate,
}

impl Carbonate {
    /// Molar mass, g/mol.
    #[must_use]
    pub fn molar_mass_g_per_mol(self) -> f64 {
        match self {
            Self::SodiumBicarbonate => molar::SODIUM_BICARBONATE,
            Self::PotassiumBicarbonate => molar::POTASSIUM_BICARBONATE,
            Self::AmmoniumBicarbonate => molar::AMMONIUM_BICARBONATE,
        }
    }

    /// Moles of carbon dioxide, ammonia and water per mole. Ammonium bicarbonate falls apart whole by heat;
    /// with acid its ammonia stays behind as a salt.
    fn moles(self, release: Release) -> (f64, f64, f64) {
        match (self, release) {
            (_, Release::Acid) => (1.0, 0.0, 1.0),
            (Self::AmmoniumBicarbonate, Release::Heat) => (1.0, 1.0, 1.0),
            (_, Release::Heat) => (0.5, 0.0, 0.5),
        }
    }
}

/// Gases of a carbonate, % of its mass.
#[must_use]
pub fn gas_yield(carbonate: Carbonate, release: Release) -> GasYield {
    let (carbon_dioxide, ammonia, water) = carbonate.moles(release);
    let share = |moles: f64, molar_mass: f64| {
        let percent = 100.0 * moles * molar_mass / carbonate.molar_mass_g_per_mol();
        Estimate::new(percent, "%", STOICHIOMETRY)
    };
    GasYield {
        carbon_dioxide: share(carbon_dioxide, molar::CARBON_DIOXIDE),
        ammonia: share(ammonia, molar::AMMONIA),
        water: share(water, molar::WATER),
    }
}

/// Volume of the gases of a mass of carbonate, mL. Water counts as vapour when `with_steam` is set.
///
/// # Errors
/// A mass or temperature that cannot be meant, a pressure outside 50 to 200 kPa.
pub fn gas_volume(carbonate: Carbonate, release: Release, amount: &GasAmount) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::not_negative(&mut faults, "carbonate_g", amount.carbonate_g);
    input_checks::within(&mut faults, "celsius", amount.celsius, -40.0..=300.0, "Cel");
    let pressure = amount.pressure_pa;
    input_checks::within(&mut faults, "pressure_pa", pressure, 50_000.0..=200_000.0, "Pa");
    faults.or_ok()?;
    let (carbon_dioxide, ammonia, water) = carbonate.moles(release);
    let steam = if amount.with_steam { water } else { 0.0 };
    let moles = amount.carbonate_g / carbonate.molar_mass_g_per_mol() * (carbon_dioxide + ammonia + steam);
    Ok(Estimate::new(ideal_volume_ml(moles, amount), "mL", IDEAL_GAS)
        .valid_if(!amount.with_steam || amount.celsius >= 100.0, || {
            "water vapour is counted below 100 °C, where most of it is liquid".to_owned()
        }))
}

/// How much carbonate, how warm, under what pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GasAmount {
    /// Mass of the carbonate, g.
    pub carbonate_g: f64,
    /// Temperature of the gas, °C.
    pub celsius: f64,
    /// Pressure, Pa; 101 325 at sea level.
    pub pressure_pa: f64,
    /// Whether the water of the reaction counts as vapour.
    pub with_steam: bool,
}

/// Carbon dioxide of a baking powder, % of its mass, when it has acid enough for its soda.
///
/// # Errors
/// A share of soda outside 0 to 100 %.
pub fn powder_carbon_dioxide(soda_percent: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::percent(&mut faults, "soda_percent", soda_percent);
    faults.or_ok()?;
    let value = soda_percent * molar::CARBON_DIOXIDE / molar::SODIUM_BICARBONATE;
    Ok(Estimate::new(value, "%", STOICHIOMETRY))
}

/// Soda that a baking powder needs for a share of carbon dioxide, % of its mass.
///
/// # Errors
/// A share of carbon dioxide that is negative or more than pure soda gives (52.4 %).
pub fn soda_for_carbon_dioxide(carbon_dioxide_percent: f64) -> Result<Estimate, Nonsense> {
    let most = 100.0 * molar::CARBON_DIOXIDE / molar::SODIUM_BICARBONATE;
    let mut faults = Nonsense::default();
    let input = "carbon_dioxide_percent";
    input_checks::within(&mut faults, input, carbon_dioxide_percent, 0.0..=most, "%");
    faults.or_ok()?;
    Ok(Estimate::new(100.0 * carbon_dioxide_percent / most, "%", STOICHIOMETRY))
}

/// Moles of gas as a volume, mL.
fn ideal_volume_ml(moles: f64, amount: &GasAmount) -> f64 {
    let kelvin = amount.celsius + ZERO_CELSIUS_KELVIN;
    1e6 * moles * GAS_CONSTANT * kelvin / amount.pressure_pa
}
