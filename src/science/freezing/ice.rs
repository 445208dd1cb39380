//! Water activity of ice: that of everything that holds ice, whatever else is in it.

use crate::science::{Estimate, Method, Nonsense, bisection, input_checks};

const METHOD: Method = Method {
    name: "water activity in equilibrium with ice",
    source: "from memory: integrated Clausius-Clapeyron form of Robinson and Stokes, Electrolyte Solutions, with heat \
        of fusion 6009.5 J/mol and heat capacity difference 38.1 J/(mol K) at 273.15 K",
    domain: "0 to -40 Cel, +-0.001",
};

const FREEZING_KELVIN: f64 = 273.15;
const GAS_CONSTANT: f64 = 8.314_462_6;
const HEAT_OF_FUSION: f64 = 6009.5;
const HEAT_CAPACITY_DIFFERENCE: f64 = 38.1;
/// Coldest temperature of the domain, °C.
pub(super) const COLDEST: f64 = -40.0;

/// Water activity of any system that holds ice at 0 to -40 °C.
///
/// # Errors
/// [`Nonsense`] for a temperature outside that range.
pub fn ice_water_activity(temperature_celsius: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "temperature", temperature_celsius, COLDEST..=0.0, "Cel");
    nonsense.or_ok()?;
    Ok(Estimate::new(activity(temperature_celsius), "1", METHOD))
}

pub(super) fn activity(celsius: f64) -> f64 {
    let t = celsius + FREEZING_KELVIN;
    let fusion = (HEAT_OF_FUSION - HEAT_CAPACITY_DIFFERENCE * FREEZING_KELVIN) / GAS_CONSTANT;
    let warming = HEAT_CAPACITY_DIFFERENCE / GAS_CONSTANT * (t / FREEZING_KELVIN).ln();
    (fusion * (1.0 / FREEZING_KELVIN - 1.0 / t) + warming).exp()
}

/// Temperature, °C, at which ice has this water activity; held at -40 °C below it.
pub(super) fn temperature(water_activity: f64) -> f64 {
    bisection::root_of_rising(COLDEST, 0.0, |celsius| activity(celsius) - water_activity)
}
