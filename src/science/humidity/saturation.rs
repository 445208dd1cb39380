//! Saturation pressure of water vapour over water and over ice.

use crate::science::{Estimate, Method, Nonsense, input_checks};

const METHOD: Method = Method {
    name: "saturation vapour pressure, Hyland-Wexler",
    source: "ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 5 and 6, after Hyland and Wexler 1983",
    domain: "-100 to 0.01 Cel over ice, 0.01 to 200 Cel over water; within 0.1 % of the handbook's table 3",
};

/// Triple point of water, °C, where the curve over ice meets the curve over water.
const TRIPLE_POINT: f64 = 0.01;

/// Saturation vapour pressure, Pa, at -100 to 200 °C.
///
/// # Errors
/// [`Nonsense`] for a temperature outside that range.
pub fn saturation_vapour_pressure(temperature_celsius: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "temperature", temperature_celsius, -100.0..=200.0, "Cel");
    nonsense.or_ok()?;
    Ok(Estimate::new(saturation_pressure(temperature_celsius), "Pa", METHOD))
}

/// The same without the checks.
pub(super) fn saturation_pressure(celsius: f64) -> f64 {
    let t = celsius + 273.15;
    let logarithm = if celsius <= TRIPLE_POINT {
        -5.674_535_9e3 / t
            + 6.392_524_7
            + t * (-9.677_843e-3 + t * (6.221_570_1e-7 + t * (2.074_782_5e-9 - t * 9.484_024e-13)))
            + 4.163_501_9 * t.ln()
    } else {
        -5.800_220_6e3 / t
            + 1.391_499_3
            + t * (-4.864_023_9e-2 + t * (4.176_476_8e-5 - t * 1.445_209_3e-8))
            + 6.545_967_3 * t.ln()
    };
    logarithm.exp()
}
