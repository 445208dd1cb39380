//! Sucrose by the osmotic coefficients of Robinson and Stokes.

use super::WATER_MOLAR_MASS;
use crate::science::{Estimate, Method, Nonsense, input_checks};

const METHOD: Method = Method {
    name: "Robinson-Stokes, sucrose",
    source: "from memory: Robinson and Stokes, Electrolyte Solutions, isopiestic osmotic coefficient of sucrose",
    domain: "25 Cel, to 6 mol/kg (67.3 %), aw +-0.001",
};

/// Highest molality of the polynomial, mol/kg.
pub(super) const HIGHEST_MOLALITY: f64 = 6.0;

/// Water activity of a sucrose solution of 0-7 mol/kg water; remarked above 6.
///
/// # Errors
/// [`Nonsense`] for a molality outside that range.
pub fn sucrose_robinson_stokes(molality: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "molality", molality, 0.0..=7.0, "mol/kg");
    nonsense.or_ok()?;
    Ok(Estimate::new(unchecked(molality), "1", METHOD)
        .valid_if(molality <= HIGHEST_MOLALITY, || format!("{molality:.2} mol/kg is above the fitted 6 mol/kg")))
}

fn unchecked(m: f64) -> f64 {
    let osmotic_coefficient = 1.0 + m * (0.07028 + m * (0.01847 + m * (-0.004_045 + m * 0.000_228)));
    (-WATER_MOLAR_MASS / 1000.0 * m * osmotic_coefficient).exp()
}
