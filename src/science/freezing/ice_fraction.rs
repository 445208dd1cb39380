//! How much of the water is ice at a temperature (lever rule on the freezing curve).

use super::{ice, point};
use crate::science::water_activity::{CompositionPer100g, best_estimate, water_at_activity};
use crate::science::{Estimate, Method, Nonsense, input_checks};

const METHOD: Method = Method {
    name: "ice by the lever rule on the freezing curve",
    source: "mass balance at the water activity of ice; solution by the Norrish mixture, starch and protein by the GAB \
        isotherm",
    domain: "equilibrium, 0 to -32 Cel: a sucrose system stops freezing near -32 Cel at about 80 % solids (Le Meste and \
        Huang, J. Food Sci. 57 (1992)); fast freezing leaves less ice; accuracy not published",
};

/// Onset of melting of the freeze-concentrated sucrose solution, °C (Le Meste and Huang 1992).
const STOPS_FREEZING: f64 = -32.0;

/// What is frozen at a temperature.
#[derive(Debug, Clone, PartialEq)]
pub struct IceEstimate {
    /// Ice, g per 100 g of product (unit `%`).
    pub ice: Estimate,
    /// Frozen share of the water, 0-1.
    pub frozen_share_of_water: Estimate,
    /// Initial freezing point, °C.
    pub freezing_point: Estimate,
}

/// Ice in a composition at `temperature_celsius` (20 to -40 °C) once it has come to rest there.
///
/// # Errors
/// [`Nonsense`] of the composition and of the temperature, all listed.
pub fn ice_fraction(composition: &CompositionPer100g, temperature_celsius: f64) -> Result<IceEstimate, Nonsense> {
    let mut nonsense = composition.check().err().unwrap_or_default();
    input_checks::within(&mut nonsense, "temperature", temperature_celsius, ice::COLDEST..=20.0, "Cel");
    nonsense.or_ok()?;
    let freezing_point = point::freezing_point_of(composition)?;
    let water = composition.water;
    let liquid = if temperature_celsius < freezing_point.value {
        water_at_activity(composition, ice::activity(temperature_celsius)).min(water)
    } else {
        water
    };
    let frozen = water - liquid;
    let mut grams = Estimate::new(frozen, "%", METHOD).valid_if(temperature_celsius >= STOPS_FREEZING, || {
        format!("{temperature_celsius:.1} Cel is below -32 Cel, where no more ice forms: the figure is too high")
    });
    // The remarks on the composition hold for the ice as well.
    grams.outside_domain.extend(best_estimate(composition)?.water_activity.outside_domain);
    let share = Estimate { value: frozen / water, unit: "1", ..grams.clone() };
    Ok(IceEstimate { ice: grams, frozen_share_of_water: share, freezing_point })
}
