//! One moisture basis for figures that are to be compared.

use crate::science::{Estimate, Method, Nonsense, input_checks};

/// Moisture that flour figures are reported at, %.
pub const STANDARD_MOISTURE_PERCENT: f64 = 14.0;
/// Moisture of the dry basis, %.
pub const DRY_BASIS_PERCENT: f64 = 0.0;

const MOISTURE_BASIS: Method = Method {
    name: "moisture basis: value × (100 − wanted moisture) / (100 − moisture)",
    source: "Regan R.M. (Kansas State University), Miller Magazine, flour testing",
    domain: "shares of the flour: protein, ash, gluten, starch damage; not Falling Number",
};

/// A share of flour (protein, ash, gluten) at another moisture, %.
///
/// # Errors
/// A share outside 0 to 100 %, a moisture of 100 % or more.
pub fn to_moisture_basis(
    share_percent: f64,
    moisture_percent: f64,
    wanted_moisture_percent: f64,
) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::percent(&mut faults, "share_percent", share_percent);
    input_checks::percent_below_hundred(&mut faults, "moisture_percent", moisture_percent);
    input_checks::percent_below_hundred(&mut faults, "wanted_moisture_percent", wanted_moisture_percent);
    faults.or_ok()?;
    let value = share_percent * (100.0 - wanted_moisture_percent) / (100.0 - moisture_percent);
    Ok(Estimate::new(value, "%", MOISTURE_BASIS).valid_if(value <= 100.0, || {
        format!("{value:.1} % at the wanted moisture: share and moisture do not fit together")
    }))
}

/// A share of flour at 14 % moisture, %.
///
/// # Errors
/// As for [`to_moisture_basis`].
pub fn to_standard_moisture(share_percent: f64, moisture_percent: f64) -> Result<Estimate, Nonsense> {
    to_moisture_basis(share_percent, moisture_percent, STANDARD_MOISTURE_PERCENT)
}
