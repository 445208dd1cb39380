//! Sugar lifts the temperature at which starch gelatinises: why a sweet batter sets late.

use crate::science::{Estimate, Method, Nonsense, input_checks};

const ONSET: Method = Method {
    name: "onset of gelatinisation of wheat starch in sucrose syrup, straight lines between four points",
    source: "from memory: composite of Spies and Hoseney, Cereal Chem. 59 (1982) 128; Johnson 1990; \
             Allan, Chamberlain and Mauer, Foods 9 (2020) 757",
    domain: "wheat starch, sucrose 0 to 60 % of the liquid, enough water; low confidence, never a limit to release on; \
             glucose and fructose lift it less",
};

/// Sucrose in the liquid (%), and the range of published onsets (°C).
const ONSETS: [(f64, f64, f64); 4] = [(0.0, 58.0, 60.0), (30.0, 66.0, 69.0), (50.0, 77.0, 82.0), (60.0, 88.0, 93.0)];

/// Range in which gelatinisation starts, °C.
#[derive(Debug, Clone, PartialEq)]
pub struct GelatinisationOnset {
    /// Lower end.
    pub low: Estimate,
    /// Upper end.
    pub high: Estimate,
}

/// Onset of gelatinisation of wheat starch for a sucrose share of the liquid.
///
/// Above 60 % the value at 60 % is given as a lower bound, marked as outside the domain.
///
/// # Errors
/// A share outside 0 to 100 %.
pub fn wheat_starch_onset(sucrose_in_liquid_percent: f64) -> Result<GelatinisationOnset, Nonsense> {
    let mut faults = Nonsense::default();
    let input = "sucrose_in_liquid_percent";
    input_checks::percent(&mut faults, input, sucrose_in_liquid_percent);
    faults.or_ok()?;
    let estimate = |value: f64| {
        Estimate::new(value, "Cel", ONSET).valid_if(sucrose_in_liquid_percent <= 60.0, || {
            format!("{sucrose_in_liquid_percent:.0} % sucrose is above the 60 % studied: a lower bound")
        })
    };
    let (low, high) = interpolate(sucrose_in_liquid_percent);
    Ok(GelatinisationOnset { low: estimate(low), high: estimate(high) })
}

/// Straight lines between the points; beyond the last one its value.
fn interpolate(sucrose: f64) -> (f64, f64) {
    let [first, ..] = ONSETS;
    let mut left = first;
    for right in ONSETS {
        if sucrose < right.0 {
            let part = (sucrose - left.0) / (right.0 - left.0);
            let between = |from: f64, to: f64| from + part * (to - from);
            return (between(left.1, right.1), between(left.2, right.2));
        }
        left = right;
    }
    (left.1, left.2)
}
