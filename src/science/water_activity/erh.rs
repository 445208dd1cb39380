//! Equilibrium relative humidity.

use crate::science::{Estimate, Method, Nonsense, input_checks};

const METHOD: Method = Method {
    name: "equilibrium relative humidity",
    source: "definition: 100 times the water activity",
    domain: "exact",
};

/// Equilibrium relative humidity, %, of a water activity of 0-1.
///
/// # Errors
/// [`Nonsense`] for a water activity outside that range.
pub fn equilibrium_relative_humidity(water_activity: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "water_activity", water_activity, 0.0..=1.0, "1");
    nonsense.or_ok()?;
    Ok(Estimate::new(100.0 * water_activity, "%", METHOD))
}
