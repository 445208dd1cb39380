//! How much hotter than water a syrup or jam boils.

use super::from_water_activity::{self, unchecked};
use super::water::saturation_celsius;
use crate::science::water_activity::{BinarySolution, Solute, norrish_unchecked};
use crate::science::{Estimate, Method, Nonsense, input_checks, interpolation};

const BROWNE: Method = Method {
    name: "boiling-point rise of sucrose syrup, straight line between tabulated values",
    source: "Browne 1912, as tabulated by a smoothed fit",
    domain: "10 to 82 % sucrose by mass, about 101 kPa, 0.1 K at the rows; within 0.5 K of Lowe's figures at 60 to 70 %; \
        acids, salts, glucose and invert sugar boil hotter at equal solids",
};

/// Sucrose, % by mass; rise over water, K: Browne 1912 (10-82 %), with the origin added.
const ROWS: [(f64, f64); 17] = [
    (0.0, 0.0),
    (10.0, 0.4),
    (20.0, 0.6),
    (32.0, 1.1),
    (40.0, 1.5),
    (50.0, 2.0),
    (62.0, 3.4),
    (64.0, 4.0),
    (66.0, 4.8),
    (68.0, 5.6),
    (70.0, 6.5),
    (72.0, 7.4),
    (74.0, 8.4),
    (76.0, 9.4),
    (78.0, 10.6),
    (80.0, 12.0),
    (82.0, 13.9),
];
/// Where Browne's table ends: sucrose, %, and rise, K.
pub(super) const END: (f64, f64) = (82.0, 13.9);

/// Rise of the boiling point over that of water, K, for soluble solids, as sucrose, of 0-95 % by mass.
///
/// Above 82 % the table has ended and the Norrish water activity takes over, with a remark.
///
/// # Errors
/// [`Nonsense`] for a share outside that range.
pub fn boiling_point_rise(soluble_solids_percent: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    check_solids(&mut nonsense, soluble_solids_percent);
    nonsense.or_ok()?;
    Ok(rise(soluble_solids_percent))
}

/// Soluble solids, % by mass as sucrose, of a syrup that boils so many K above water; a lower bound above 13.9 K.
///
/// # Errors
/// [`Nonsense`] for a rise that is negative or no number.
pub fn solids_at_rise(kelvin: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::not_negative(&mut nonsense, "rise", kelvin);
    nonsense.or_ok()?;
    let by_rise = ROWS.map(|(solids, rise)| (rise, solids));
    let solids = interpolation::piecewise_linear(&by_rise, kelvin);
    Ok(Estimate::new(solids, "%", BROWNE).valid_if(kelvin <= END.1, || {
        format!("{kelvin:.1} K is above the table's 13.9 K: the solids are at least this")
    }))
}

pub(super) fn check_solids(nonsense: &mut Nonsense, percent: f64) {
    input_checks::within(nonsense, "soluble_solids", percent, 0.0..=95.0, "%");
}

/// [`boiling_point_rise`] without the checks.
pub(super) fn rise(percent: f64) -> Estimate {
    if percent > END.0 {
        return rise_beyond_table(percent);
    }
    let kelvin = interpolation::piecewise_linear(&ROWS, percent);
    Estimate::new(kelvin, "K", BROWNE)
        .valid_if(percent == 0.0 || percent >= 10.0, || format!("{percent:.1} % sucrose is below the table's 10 %"))
}

fn rise_beyond_table(percent: f64) -> Estimate {
    let syrup = BinarySolution::from_mass_percent(Solute::Sucrose, percent);
    let atmosphere = 101_325.0;
    let celsius = unchecked(norrish_unchecked(&syrup), atmosphere);
    // Just above 82 % the activity gives 0.6 K less than the table: a stronger syrup never boils cooler.
    let kelvin = (celsius - saturation_celsius(atmosphere)).max(END.1);
    Estimate::new(kelvin, "K", from_water_activity::METHOD)
        .valid_if(false, || format!("{percent:.1} % sucrose is above the table's 82 %: Norrish water activity used"))
}
