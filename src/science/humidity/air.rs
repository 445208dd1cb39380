//! Relative humidity from dry and wet bulb, and the wet bulb that a wanted humidity needs.

use super::dew_point::at_vapour_pressure;
use super::saturation::saturation_pressure;
use crate::science::{Estimate, Method, Nonsense, bisection, input_checks};

const METHOD: Method = Method {
    name: "psychrometric equation, dry and wet bulb",
    source: "ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 20, 33 and 35",
    domain: "perfect gas, thermodynamic wet bulb: a ventilated (3-5 m/s), clean, wet wick; 0.3 K of error in the \
        depression is about 2 % RH near 38 Cel",
};

/// Ratio of the molar masses of water and dry air (ASHRAE Fundamentals 2017, ch. 1, eq. 20).
const MOLAR_MASS_RATIO: f64 = 0.621_945;

/// A reading of the two thermometers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BulbReading {
    /// Air temperature, -40 to 100 °C.
    pub dry_bulb_celsius: f64,
    /// Temperature of the wetted thermometer, °C, at most the dry bulb.
    pub wet_bulb_celsius: f64,
    /// Air pressure, 50 000-110 000 Pa; 101 325 Pa at sea level.
    pub pressure_pascal: f64,
}

/// What the two thermometers say of the air.
#[derive(Debug, Clone, PartialEq)]
pub struct AirCondition {
    /// Relative humidity, %.
    pub relative_humidity: Estimate,
    /// Dew point, °C.
    pub dew_point: Estimate,
    /// Kilograms of vapour per kilogram of dry air, unit `1`.
    pub humidity_ratio: Estimate,
}

/// Humidity and dew point of the air in which the two thermometers hang.
///
/// # Errors
/// [`Nonsense`] listing inputs out of range, a wet bulb above the dry bulb, or a depression that no air can have.
pub fn air_condition(reading: BulbReading) -> Result<AirCondition, Nonsense> {
    check(&reading)?;
    let ratio = humidity_ratio(&reading);
    let vapour = ratio * reading.pressure_pascal / (MOLAR_MASS_RATIO + ratio);
    let mut nonsense = Nonsense::default();
    nonsense.unless(
        ratio > 0.0,
        "wet_bulb",
        format!("`{}` Cel is lower than dry air could bring it", reading.wet_bulb_celsius),
    );
    nonsense.or_ok()?;
    let percent = 100.0 * vapour / saturation_pressure(reading.dry_bulb_celsius);
    Ok(AirCondition {
        // At equal bulbs rounding may end a hair above saturation.
        relative_humidity: Estimate::new(percent.min(100.0), "%", METHOD),
        dew_point: at_vapour_pressure(vapour, reading.dry_bulb_celsius),
        humidity_ratio: Estimate::new(ratio, "1", METHOD),
    })
}

/// Wet bulb, °C, to set for a wanted relative humidity (1-100 %) at a dry bulb of 0-100 °C.
///
/// # Errors
/// [`Nonsense`] listing every input out of range.
pub fn wet_bulb_for(
    dry_bulb_celsius: f64,
    relative_humidity_percent: f64,
    pressure_pascal: f64,
) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "dry_bulb", dry_bulb_celsius, 0.0..=100.0, "Cel");
    input_checks::within(&mut nonsense, "relative_humidity", relative_humidity_percent, 1.0..=100.0, "%");
    check_pressure(&mut nonsense, pressure_pascal);
    let vapour = saturation_pressure(dry_bulb_celsius) * relative_humidity_percent / 100.0;
    nonsense.unless(
        !vapour.is_finite() || vapour < pressure_pascal,
        "pressure",
        format!("`{pressure_pascal}` Pa is below the vapour pressure of that air"),
    );
    nonsense.or_ok()?;
    let wanted = MOLAR_MASS_RATIO * vapour / (pressure_pascal - vapour);
    let celsius = bisection::root_of_rising(-40.0, dry_bulb_celsius, |wet_bulb_celsius| {
        let reading = BulbReading { dry_bulb_celsius, wet_bulb_celsius, pressure_pascal };
        if saturation_pressure(wet_bulb_celsius) < pressure_pascal {
            humidity_ratio(&reading) - wanted
        } else {
            f64::INFINITY
        }
    });
    Ok(Estimate::new(celsius, "Cel", METHOD))
}

fn check_pressure(nonsense: &mut Nonsense, pascal: f64) {
    input_checks::within(nonsense, "pressure", pascal, 50_000.0..=110_000.0, "Pa");
}

fn check(reading: &BulbReading) -> Result<(), Nonsense> {
    let BulbReading { dry_bulb_celsius: dry, wet_bulb_celsius: wet, pressure_pascal: pressure } = *reading;
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "dry_bulb", dry, -40.0..=100.0, "Cel");
    input_checks::within(&mut nonsense, "wet_bulb", wet, -40.0..=100.0, "Cel");
    // Written so that a missing number is reported once, above.
    nonsense.unless(
        wet.is_nan() || dry.is_nan() || wet <= dry,
        "wet_bulb",
        format!("`{wet}` Cel is above the dry bulb of `{dry}` Cel"),
    );
    check_pressure(&mut nonsense, pressure);
    nonsense.unless(
        !(wet.is_finite() && pressure.is_finite()) || saturation_pressure(wet) < pressure,
        "wet_bulb",
        format!("`{wet}` Cel is at or above the boiling point of water at `{pressure}` Pa"),
    );
    nonsense.or_ok()
}

/// ASHRAE eq. 33 (water on the wick) or 35 (ice on the wick), kg/kg.
fn humidity_ratio(reading: &BulbReading) -> f64 {
    let (dry, wet) = (reading.dry_bulb_celsius, reading.wet_bulb_celsius);
    let saturated = saturation_pressure(wet);
    let at_wick = MOLAR_MASS_RATIO * saturated / (reading.pressure_pascal - saturated);
    if wet >= 0.0 {
        ((2501.0 - 2.326 * wet) * at_wick - 1.006 * (dry - wet)) / (2501.0 + 1.86 * dry - 4.186 * wet)
    } else {
        ((2830.0 - 0.24 * wet) * at_wick - 1.006 * (dry - wet)) / (2830.0 + 1.86 * dry - 2.1 * wet)
    }
}
