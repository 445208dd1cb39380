//! Air pressure at an altitude, where no barometer is at hand.

use crate::science::{Estimate, Method, Nonsense, input_checks};

const METHOD: Method = Method {
    name: "pressure of the standard atmosphere",
    source: "ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 3",
    domain: "-500 to 5000 m; weather moves the true pressure by some 3 %",
};

/// Pressure, Pa, of the standard atmosphere at -500 to 5000 m above the sea.
///
/// # Errors
/// [`Nonsense`] for an altitude outside that range.
pub fn standard_pressure(altitude_metres: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "altitude", altitude_metres, -500.0..=5000.0, "m");
    nonsense.or_ok()?;
    let pascal = 101_325.0 * (1.0 - 2.255_77e-5 * altitude_metres).powf(5.255_9);
    Ok(Estimate::new(pascal, "Pa", METHOD))
}
