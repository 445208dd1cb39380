//! The surface temperature below which air sheds water: on cold dough in a proofer, on a warm loaf in a bag.

use super::saturation::saturation_pressure;
use crate::science::{Estimate, Method, Nonsense, bisection, input_checks};

const METHOD: Method = Method {
    name: "dew point from the saturation curve",
    source: "ASHRAE Handbook, Fundamentals (2017), ch. 1: vapour pressure equals saturation pressure at the dew point",
    domain: "-40 to 100 Cel; below 0.01 Cel it is the frost point",
};

/// Dew point, °C, of air at `dry_bulb_celsius` (-40 to 100 °C) and `relative_humidity_percent` (0.1-100 %).
///
/// # Errors
/// [`Nonsense`] listing every input out of range.
pub fn dew_point(dry_bulb_celsius: f64, relative_humidity_percent: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "dry_bulb", dry_bulb_celsius, -40.0..=100.0, "Cel");
    input_checks::within(&mut nonsense, "relative_humidity", relative_humidity_percent, 0.1..=100.0, "%");
    nonsense.or_ok()?;
    let vapour = saturation_pressure(dry_bulb_celsius) * relative_humidity_percent / 100.0;
    Ok(at_vapour_pressure(vapour, dry_bulb_celsius))
}

/// Dew point of air whose vapour pressure is known; never above the dry bulb.
pub(super) fn at_vapour_pressure(vapour_pascal: f64, dry_bulb_celsius: f64) -> Estimate {
    let celsius =
        bisection::root_of_rising(-100.0, dry_bulb_celsius, |celsius| saturation_pressure(celsius) - vapour_pascal);
    Estimate::new(celsius, "Cel", METHOD)
}
