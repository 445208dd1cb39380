//! Volume of what was baked.

use crate::science::{Estimate, Method, Nonsense, input_checks};

const SPECIFIC_VOLUME: Method = Method {
    name: "specific volume: volume / mass",
    source: "AACC Approved Methods, 10-05.01 (seed displacement)",
    domain: "cooled product, mass at the time of the volume",
};
const VOLUME_YIELD: Method = Method {
    name: "volume yield: 100 × volume / flour",
    source: "Canadian Grain Commission, baking quality tables (mL per 100 g flour)",
    domain: "cooled product, flour of all stages",
};

/// Specific volume, mL/g.
///
/// # Errors
/// A volume or mass that is not above zero.
pub fn specific_volume(volume_ml: f64, mass_g: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::positive(&mut faults, "volume_ml", volume_ml);
    input_checks::positive(&mut faults, "mass_g", mass_g);
    faults.or_ok()?;
    let value = volume_ml / mass_g;
    Ok(Estimate::new(value, "mL/g", SPECIFIC_VOLUME)
        .valid_if(value >= 0.7, || format!("{value:.2} mL/g is denser than any dough: a reading or its unit is wrong")))
}

/// Volume per 100 g of flour, mL.
///
/// # Errors
/// A volume or mass of flour that is not above zero.
pub fn volume_yield(volume_ml: f64, flour_g: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::positive(&mut faults, "volume_ml", volume_ml);
    input_checks::positive(&mut faults, "flour_g", flour_g);
    faults.or_ok()?;
    Ok(Estimate::new(100.0 * volume_ml / flour_g, "mL", VOLUME_YIELD))
}
