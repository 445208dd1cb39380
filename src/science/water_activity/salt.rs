//! Common salt in water.

use super::WATER_MOLAR_MASS;
use crate::science::{Estimate, Method, Nonsense, input_checks};

const HAND: Method = Method {
    name: "Resnik-Chirife quadratic, salt",
    source: "from memory: Resnik and Chirife, J. Food Prot. 51 (1988) 419",
    domain: "25 Cel, % w/w salt in the water phase; against the Pitzer model within 0.001 to 12 %, 0.002 at 15 %, 0.007 at \
        20 %; not above 17 %",
};
const INVERSE: Method = Method {
    name: "Resnik-Chirife inverse quadratic, salt",
    source: "from memory: Resnik and Chirife, J. Food Prot. 51 (1988) 419",
    domain: "aw 0.92-0.97: returns the salt of the forward equation within 0.05 % between 5 and 12 %",
};
const PITZER: Method = Method {
    name: "Pitzer, salt",
    source: "from memory: Pitzer and Mayorga, J. Phys. Chem. 77 (1973) 2300, sodium chloride, beta0 0.0765, beta1 0.2664, \
        C 0.00127",
    domain: "25 Cel, to 6 mol/kg (26 %), aw +-0.0005 to 24 %; 0.0006 low at 6 mol/kg",
};

/// Highest molality of the Pitzer fit, mol/kg.
pub(super) const HIGHEST_MOLALITY: f64 = 6.0;

/// Water activity of brine from its salt, 0-26 % w/w of the water phase; a formula for the back of an envelope.
///
/// # Errors
/// [`Nonsense`] for a concentration outside that range.
pub fn salt_hand_formula(percent: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "salt", percent, 0.0..=26.0, "%");
    nonsense.or_ok()?;
    let activity = 1.0 - 0.005_247_1 * percent - 0.000_122_06 * percent * percent;
    Ok(Estimate::new(activity, "1", HAND)
        .valid_if(percent <= 17.0, || format!("{percent:.1} % salt is above 17 %: the water activity is really lower")))
}

/// Salt, % w/w of the water phase, that gives a water activity of 0.85-0.98.
///
/// # Errors
/// [`Nonsense`] for a water activity outside that range.
pub fn salt_percent_for(water_activity: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "water_activity", water_activity, 0.85..=0.98, "1");
    nonsense.or_ok()?;
    let above = water_activity - 0.95;
    let percent = 8.0 - 140.07 * above - 405.12 * above * above;
    Ok(Estimate::new(percent, "%", INVERSE).valid_if((0.92..=0.97).contains(&water_activity), || {
        format!("water activity {water_activity:.3} is outside 0.92-0.97")
    }))
}

/// Water activity of brine of 0-6.5 mol salt per kg water; remarked above 6.
///
/// # Errors
/// [`Nonsense`] for a molality outside that range.
pub fn salt_pitzer(molality: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "molality", molality, 0.0..=6.5, "mol/kg");
    nonsense.or_ok()?;
    Ok(Estimate::new(pitzer(molality), "1", PITZER)
        .valid_if(molality <= HIGHEST_MOLALITY, || format!("{molality:.2} mol/kg is above the fitted 6 mol/kg")))
}

/// The same without the checks.
pub(super) fn pitzer(m: f64) -> f64 {
    // Debye-Hueckel slope for the osmotic coefficient at 25 Cel and the fixed b of Pitzer's equation, both (kg/mol)^0.5.
    let (slope, b) = (0.3915, 1.2);
    // Beyond any brine the result is zero; without the limit an all but dry mixture would end in infinity / infinity.
    let m = m.min(1e4);
    let root = m.sqrt();
    let virial = m * (0.0765 + 0.2664 * (-2.0 * root).exp()) + m * m * 0.00127;
    let osmotic_coefficient = 1.0 - slope * root / (1.0 + b * root) + virial;
    let ions = 2.0;
    (-ions * WATER_MOLAR_MASS / 1000.0 * m * osmotic_coefficient).exp()
}
