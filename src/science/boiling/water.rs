//! The boiling point of pure water.

use crate::science::{Estimate, Method, Nonsense, input_checks};

const SATURATION: Method = Method {
    name: "saturation temperature of water (IAPWS-IF97, region 4)",
    source: "IAPWS R7-97(2012), equation 31 and table 34",
    domain: "pressure 612 Pa to 22.064 MPa",
};

/// Coefficients n1 to n10 of IAPWS R7-97(2012), table 34.
const N: [f64; 10] = [
    0.116_705_214_527_67e4,
    -0.724_213_167_032_06e6,
    -0.170_738_469_400_92e2,
    0.120_208_247_024_70e5,
    -0.323_255_503_223_33e7,
    0.149_151_086_135_30e2,
    -0.482_326_573_615_91e4,
    0.405_113_405_420_57e6,
    -0.238_555_575_678_49,
    0.650_175_348_447_98e3,
];

/// Boiling point of water, °C, at 612 to 22 064 000 Pa.
///
/// # Errors
/// [`Nonsense`] for a pressure outside that range.
pub fn water_boiling_point(pressure_pascal: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    check_pressure(&mut nonsense, pressure_pascal);
    nonsense.or_ok()?;
    Ok(unchecked(pressure_pascal))
}

/// The same without the checks.
pub(super) fn unchecked(pressure_pascal: f64) -> Estimate {
    Estimate::new(saturation_celsius(pressure_pascal), "Cel", SATURATION)
}

/// The range of the saturation line, from the triple point to the critical point.
pub(super) fn check_pressure(nonsense: &mut Nonsense, pascal: f64) {
    input_checks::within(nonsense, "pressure", pascal, 612.0..=22_064_000.0, "Pa");
}

/// IAPWS-IF97 equation 31.
pub(super) fn saturation_celsius(pascal: f64) -> f64 {
    let [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = N;
    let beta = (pascal / 1e6).powf(0.25);
    let e = beta * beta + n3 * beta + n6;
    let f = n1 * beta * beta + n4 * beta + n7;
    let g = n2 * beta * beta + n5 * beta + n8;
    let d = 2.0 * g / (-f - (f * f - 4.0 * e * g).sqrt());
    let kelvin = (n10 + d - ((n10 + d).powi(2) - 4.0 * (n9 + n10 * d)).sqrt()) / 2.0;
    kelvin - 273.15
}
