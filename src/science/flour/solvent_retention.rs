//! Solvent retention capacity and the gluten performance index.

use crate::science::{Estimate, Method, Nonsense, input_checks};

const RETENTION: Method = Method {
    name: "solvent retention capacity: (gel / flour − 1) × 86 / (100 − moisture) × 100",
    source: "from memory: AACC 56-11",
    domain: "5 g flour in 25 g solvent; the moisture term was corrected in 2009, check the edition used",
};
const PERFORMANCE: Method = Method {
    name: "gluten performance index: lactic acid / (sucrose + sodium carbonate)",
    source: "US Wheat Associates (2018), SRC recommendations; ICC 186",
    domain: "wheat flour; bread at least 0.75, crackers at least 0.60",
};

/// Solvent retention capacity from the drained gel, % at 14 % moisture.
///
/// # Errors
/// A mass that is not above zero, a gel lighter than its flour, a moisture of 100 % or more.
pub fn solvent_retention(gel_g: f64, flour_g: f64, moisture_percent: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::positive(&mut faults, "gel_g", gel_g);
    input_checks::positive(&mut faults, "flour_g", flour_g);
    faults.unless(
        gel_g.is_nan() || flour_g.is_nan() || gel_g >= flour_g,
        "gel_g",
        format!("must not be lighter than its flour ({flour_g}), is {gel_g}"),
    );
    input_checks::percent_below_hundred(&mut faults, "moisture_percent", moisture_percent);
    faults.or_ok()?;
    let value = 100.0 * (gel_g / flour_g - 1.0) * 86.0 / (100.0 - moisture_percent);
    Ok(Estimate::new(value, "%", RETENTION))
}

/// Gluten performance index from three retention capacities in %.
///
/// # Errors
/// A retention capacity that is not above zero.
pub fn gluten_performance_index(
    lactic_acid_percent: f64,
    sucrose_percent: f64,
    sodium_carbonate_percent: f64,
) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::positive(&mut faults, "lactic_acid_percent", lactic_acid_percent);
    input_checks::positive(&mut faults, "sucrose_percent", sucrose_percent);
    let carbonate = "sodium_carbonate_percent";
    input_checks::positive(&mut faults, carbonate, sodium_carbonate_percent);
    faults.or_ok()?;
    let value = lactic_acid_percent / (sucrose_percent + sodium_carbonate_percent);
    Ok(Estimate::new(value, "1", PERFORMANCE))
}
