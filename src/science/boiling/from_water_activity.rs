//! The boiling point of a solution from its water activity, for solutions that no table lists.

use super::water::saturation_celsius;
use crate::science::{Estimate, Method, Nonsense, input_checks};

/// How the boiling point follows from the water activity.
pub(super) const METHOD: Method = Method {
    name: "boiling point from water activity",
    source: "water activity times the saturation pressure equals the pressure; saturation line of IAPWS R7-97(2012)",
    domain: "takes the water activity at 25 Cel; sucrose: within 0.5 K of Browne to 66 %, up to 1.2 K low at 70-80 %",
};

/// Boiling point, °C, of a solution whose water activity (0.2 to 1) is known at 25 °C, at 20 000-110 000 Pa.
///
/// # Errors
/// [`Nonsense`] listing a water activity or a pressure out of range.
pub fn boiling_point_from_water_activity(water_activity: f64, pressure_pascal: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    let input = "water_activity";
    input_checks::within(&mut nonsense, input, water_activity, 0.2..=1.0, "1");
    let possible = 20_000.0..=110_000.0;
    input_checks::within(&mut nonsense, "pressure", pressure_pascal, possible, "Pa");
    nonsense.or_ok()?;
    let celsius = unchecked(water_activity, pressure_pascal);
    Ok(Estimate::new(celsius, "Cel", METHOD).valid_if(water_activity >= 0.85, || {
        format!("water activity {water_activity:.3} belongs to a syrup for which the result is about 1 K low")
    }))
}

/// The same, °C, without the checks: pure water boils there at the pressure over the water activity.
pub(super) fn unchecked(water_activity: f64, pressure_pascal: f64) -> f64 {
    saturation_celsius(pressure_pascal / water_activity)
}
