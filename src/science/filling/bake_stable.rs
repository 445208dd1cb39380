//! A fruit filling that keeps its shape in the oven.

use super::{Check, Window};
use crate::science::{Nonsense, input_checks};

const RECIPE: &str = "Bake-stable filling recipe, ingredient house note: LM pectin 12 g, calcium citrate 0.6 g per 1000 g, at least 65 % solids, 24 h rest";

const fn at_least(quantity: &'static str, unit: &'static str, low: f64, below: &'static str) -> Window {
    Window { quantity, unit, low: Some(low), high: None, below, above: "", source: RECIPE }
}

const WINDOWS: [Window; 4] = [
    at_least("soluble solids", "%", 65.0, "boils out in the oven: cook further"),
    at_least("low-methoxyl pectin", "%", 1.2, "melts in the oven: more low-methoxyl pectin"),
    at_least("calcium citrate", "%", 0.06, "melts in the oven: the pectin lacks calcium"),
    at_least("rest before use", "h", 24.0, "the gel is not ripe: rest it longer"),
];

/// A fruit filling set with low-methoxyl pectin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BakeStableFilling {
    /// Soluble solids, %.
    pub soluble_solids_percent: f64,
    /// Low-methoxyl pectin, % of the filling.
    pub pectin_percent: f64,
    /// Calcium citrate, % of the filling.
    pub calcium_citrate_percent: f64,
    /// Rest between filling hot and use, h.
    pub rest_hours: f64,
}

/// Holds a filling against a published bake-stable recipe. One recipe is no law: a filling outside it can be
/// stable, and one inside it still deserves a bake test.
///
/// # Errors
/// A share that is no percentage, a negative rest.
pub fn bake_stable_filling(filling: &BakeStableFilling) -> Result<Vec<Check>, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::percent(&mut nonsense, "soluble_solids", filling.soluble_solids_percent);
    input_checks::percent(&mut nonsense, "pectin", filling.pectin_percent);
    input_checks::percent(&mut nonsense, "calcium_citrate", filling.calcium_citrate_percent);
    input_checks::not_negative(&mut nonsense, "rest", filling.rest_hours);
    nonsense.or_ok()?;
    let values =
        [filling.soluble_solids_percent, filling.pectin_percent, filling.calcium_citrate_percent, filling.rest_hours];
    Ok(WINDOWS.into_iter().zip(values).map(|(window, value)| window.check(value)).collect())
}
