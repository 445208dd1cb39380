//! The balance of soda and acids: what reacts, what is left, which way the pH goes.

use super::acids::check_neutralising_value;
use super::gas::{Carbonate, GasAmount, Release, gas_volume};
use super::molar;
use crate::science::{Estimate, Method, Nonsense, input_checks};

/// Published neutralising values are whole numbers near 72: half a unit of rounding is about 1 % of the soda,
/// so less than that on either side says nothing about the pH.
const ROUNDING_PERCENT: f64 = 1.0;
/// Residual soda above this tastes soapy, % of the product (common practice).
pub const SOAPY_RESIDUAL_SODA_PERCENT: f64 = 0.15;

const BALANCE: Method = Method {
    name: "leavening balance: soda − sum of acid × neutralising value / 100",
    source: "Miller D.D., Food Chemistry (laboratory manual), section 2.2.2",
    domain: "acids and alkalis of the other ingredients (buttermilk, cocoa, chlorinated flour) counted only when given",
};

/// A mass of acid.
#[derive(Debug, Clone, PartialEq)]
pub struct AcidDose {
    /// Name of the acid.
    pub name: String,
    /// Mass, g.
    pub mass_g: f64,
    /// kg of soda that 100 kg neutralise; see [`super::LEAVENING_ACIDS`].
    pub neutralising_value: f64,
}

/// What is weighed in.
#[derive(Debug, Clone, PartialEq)]
pub struct LeaveningBalance {
    /// Sodium bicarbonate, g, that of baking powders included.
    pub soda_g: f64,
    /// Acids, those of baking powders included.
    pub acids: Vec<AcidDose>,
    /// Mass of the finished product, g.
    pub product_g: f64,
    /// Temperature at which the gas volume is wanted, °C.
    pub celsius: f64,
    /// Pressure, Pa.
    pub pressure_pa: f64,
}

/// Which way the left-over pushes the pH of the crumb.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PhDirection {
    /// Soda is left: up; darker, coarser, soapy.
    Raised,
    /// Neither, within the rounding of neutralising values.
    Neutral,
    /// Acid is left: down; paler, tighter, sharp.
    Lowered,
}

/// What comes of it.
#[derive(Debug, Clone, PartialEq)]
pub struct LeaveningFigures {
    /// Soda that the acids neutralise, g.
    pub soda_neutralised: Estimate,
    /// Soda left, g.
    pub residual_soda: Estimate,
    /// The same, % of the product; see [`SOAPY_RESIDUAL_SODA_PERCENT`].
    pub residual_soda_percent: Estimate,
    /// Acid left, as grams of soda that it could still neutralise.
    pub residual_acid_as_soda: Estimate,
    /// Carbon dioxide from soda and acid, g.
    pub carbon_dioxide: Estimate,
    /// Its volume at the temperature asked for, mL.
    pub carbon_dioxide_volume: Estimate,
    /// Carbon dioxide that heat can still drive out of the soda left, g; leaves alkaline carbonate.
    pub carbon_dioxide_by_heat: Estimate,
    /// Which way the pH of the crumb is pushed.
    pub ph: PhDirection,
}

impl LeaveningBalance {
    fn check(&self) -> Nonsense {
        let mut faults = Nonsense::default();
        input_checks::not_negative(&mut faults, "soda_g", self.soda_g);
        for (position, acid) in self.acids.iter().enumerate() {
            let input = format!("acids[{position}]");
            input_checks::not_negative(&mut faults, &format!("{input}.mass_g"), acid.mass_g);
            let value = format!("{input}.neutralising_value");
            check_neutralising_value(&mut faults, &value, acid.neutralising_value);
        }
        input_checks::positive(&mut faults, "product_g", self.product_g);
        faults
    }

    /// Soda that the acids could neutralise, g.
    fn capacity_g(&self) -> f64 {
        self.acids.iter().map(|acid| acid.mass_g * acid.neutralising_value / 100.0).sum()
    }
}

/// Balance of a leavening system.
///
/// # Errors
/// Lists every mass, neutralising value, temperature or pressure that cannot be meant.
pub fn leavening_figures(balance: &LeaveningBalance) -> Result<LeaveningFigures, Nonsense> {
    let capacity = balance.capacity_g();
    let neutralised = balance.soda_g.min(capacity);
    let mut faults = balance.check();
    let amount = GasAmount {
        carbonate_g: neutralised,
        celsius: balance.celsius,
        pressure_pa: balance.pressure_pa,
        with_steam: false,
    };
    let volume = match gas_volume(Carbonate::SodiumBicarbonate, Release::Acid, &amount) {
        Ok(volume) => volume,
        Err(gas) => {
            faults.faults.extend(gas.faults.into_iter().filter(|fault| fault.input != "carbonate_g"));
            return Err(faults);
        }
    };
    faults.or_ok()?;
    Ok(figures(balance, capacity, volume))
}

fn figures(balance: &LeaveningBalance, capacity: f64, volume: Estimate) -> LeaveningFigures {
    let neutralised = balance.soda_g.min(capacity);
    let residual = balance.soda_g - neutralised;
    let grams = |value: f64| Estimate::new(value, "g", BALANCE);
    let gas_share = molar::CARBON_DIOXIDE / molar::SODIUM_BICARBONATE;
    let percent = 100.0 * residual / balance.product_g;
    LeaveningFigures {
        soda_neutralised: grams(neutralised),
        residual_soda: grams(residual),
        residual_soda_percent: Estimate::new(percent, "%", BALANCE),
        residual_acid_as_soda: grams(capacity - neutralised),
        carbon_dioxide: grams(neutralised * gas_share),
        carbon_dioxide_volume: volume,
        carbon_dioxide_by_heat: grams(residual * gas_share / 2.0),
        ph: direction(balance.soda_g, capacity),
    }
}

fn direction(soda: f64, capacity: f64) -> PhDirection {
    let rounding = soda.max(capacity) * ROUNDING_PERCENT / 100.0;
    let excess = soda - capacity;
    if excess > rounding {
        PhDirection::Raised
    } else if excess < -rounding {
        PhDirection::Lowered
    } else {
        PhDirection::Neutral
    }
}
