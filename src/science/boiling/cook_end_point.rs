//! At which temperature to stop cooking, and how far a batch has come.

use super::place::Place;
use super::syrup::{self, END};
use super::water;
use crate::science::{Estimate, Nonsense, input_checks};

/// What must stand beside every cooking temperature.
pub const CAUTION: &str = "Boiling syrup and fruit mass cling and burn far deeper than boiling water: long gloves, face \
    protection, no overfull kettle, never add water to a hot syrup; follow the plant's safety rules. Check the end point \
    with a refractometer at 20 °C; the thermometer alone is not exact enough for a legal minimum of soluble solids.";

/// Temperature at which to stop cooking.
#[derive(Debug, Clone, PartialEq)]
pub struct CookEndPoint {
    /// Boiling point of water at the place, °C.
    pub water: Estimate,
    /// Rise of the syrup over it, K.
    pub rise: Estimate,
    /// Thermometer reading at the end point, °C.
    pub end_point: Estimate,
    /// [`CAUTION`].
    pub caution: &'static str,
}

/// Temperature at which a syrup or jam of the wanted soluble solids, as sucrose (0-95 %), boils at a place.
///
/// # Errors
/// [`Nonsense`] listing every input out of range.
pub fn cook_end_point(soluble_solids_percent: f64, place: Place) -> Result<CookEndPoint, Nonsense> {
    let mut nonsense = Nonsense::default();
    syrup::check_solids(&mut nonsense, soluble_solids_percent);
    let pascal = place.pascal(&mut nonsense);
    nonsense.or_ok()?;
    let water = water::unchecked(pascal);
    let rise = syrup::rise(soluble_solids_percent);
    let sum = Estimate { value: water.value + rise.value, unit: "Cel", ..rise.clone() };
    // The rise changes with the boiling point, about as T² (ebullioscopy).
    let end_point = sum.valid_if((93.0..=103.0).contains(&water.value), || {
        format!("water boils at {:.0} °C here; the rise was tabulated near 100 °C", water.value)
    });
    Ok(CookEndPoint { water, rise, end_point, caution: CAUTION })
}

/// Soluble solids, % by mass as sucrose, of a syrup that boils at `reading_celsius` (-20 to 400 °C) at a place.
///
/// # Errors
/// [`Nonsense`] for an altitude or pressure out of range, or a reading that is not 0-13.9 K above boiling water there.
pub fn soluble_solids_at(reading_celsius: f64, place: Place) -> Result<Estimate, Nonsense> {
    let input = "boiling_temperature";
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, input, reading_celsius, -20.0..=400.0, "Cel");
    let pascal = place.pascal(&mut nonsense);
    nonsense.or_ok()?;
    let raised = reading_celsius - water::saturation_celsius(pascal);
    let mut nonsense = Nonsense::default();
    nonsense.unless(
        (0.0..=END.1).contains(&raised),
        input,
        format!("{raised:.1} K above boiling water is outside the table's 0-13.9 K"),
    );
    nonsense.or_ok()?;
    syrup::solids_at_rise(raised)
}
