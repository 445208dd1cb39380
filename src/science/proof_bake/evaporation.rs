//! Heat that evaporating water takes: in the oven, and in cooling under vacuum or in air.

use crate::science::{Estimate, Method, Nonsense, input_checks};

/// Latent heat at 0 °C, kJ/kg, and its fall per kelvin, kJ/(kg K): a line through the values of IAPWS-95 at 0 and 100 °C.
const LATENT_HEAT: (f64, f64) = (2500.9, 2.445);

const EVAPORATION: Method = Method {
    name: "latent heat of evaporation, linear in temperature",
    source: "line through IAPWS-95 at 0 and 100 °C (2500.9 and 2256.4 kJ/kg)",
    domain: "0 to 100 °C, within 0.2 % of IAPWS-95; water bound by starch and sugar takes a little more",
};
const COOLING: Method = Method {
    name: "evaporative cooling: latent heat × water lost / specific heat",
    source: "first law; latent heat from IAPWS-95",
    domain: "no heat from outside, loss small against the mass",
};

/// Heat that evaporates a mass of water at a temperature, kJ.
///
/// # Errors
/// A mass that is negative or not a number, a temperature outside 0 to 100 °C.
pub fn evaporation_heat(water_kg: f64, celsius: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::not_negative(&mut faults, "water_kg", water_kg);
    input_checks::within(&mut faults, "celsius", celsius, 0.0..=100.0, "Cel");
    faults.or_ok()?;
    Ok(Estimate::new(water_kg * latent_heat(celsius), "kJ", EVAPORATION))
}

/// By how much a product cools itself when it loses water, K.
///
/// # Errors
/// A loss outside 0 to 100 %, a temperature outside 0 to 100 °C, a specific heat outside 0.5 to 4.5 kJ/(kg K).
pub fn evaporative_cooling(
    loss_percent: f64,
    celsius: f64,
    specific_heat_kj_per_kg_k: f64,
) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::percent(&mut faults, "loss_percent", loss_percent);
    input_checks::within(&mut faults, "celsius", celsius, 0.0..=100.0, "Cel");
    let heat = specific_heat_kj_per_kg_k;
    input_checks::within(&mut faults, "specific_heat_kj_per_kg_k", heat, 0.5..=4.5, "kJ/(kg.K)");
    faults.or_ok()?;
    let drop = latent_heat(celsius) * loss_percent / 100.0 / specific_heat_kj_per_kg_k;
    Ok(Estimate::new(drop, "K", COOLING)
        .valid_if(loss_percent <= 10.0, || format!("a loss of {loss_percent} % is not small against the mass")))
}

fn latent_heat(celsius: f64) -> f64 {
    LATENT_HEAT.0 - LATENT_HEAT.1 * celsius
}
