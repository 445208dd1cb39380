//! Cookie spread.

use crate::science::{Estimate, Method, Nonsense, input_checks};

const SPREAD: Method = Method {
    name: "spread factor: width / thickness × pressure correction",
    source: "AACC Approved Methods, 10-50 (baking quality of cookie flour)",
    domain: "six cookies edge to edge and six stacked, mean of re-stackings; often printed ten times as large",
};

/// Six cookies, measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CookieStack {
    /// Width of six cookies edge to edge, mm; mean of re-arrangements.
    pub width_mm: f64,
    /// Height of six cookies stacked, mm; mean of re-stackings.
    pub thickness_mm: f64,
    /// Correction for barometric pressure, from the table of the method; 1 leaves it out.
    pub pressure_correction: f64,
}

/// Spread factor W/T, a plain ratio.
///
/// # Errors
/// A length that is not above zero, a correction outside 0.5 to 1.5.
pub fn spread_factor(stack: &CookieStack) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::positive(&mut faults, "width_mm", stack.width_mm);
    input_checks::positive(&mut faults, "thickness_mm", stack.thickness_mm);
    let correction = stack.pressure_correction;
    input_checks::within(&mut faults, "pressure_correction", correction, 0.5..=1.5, "1");
    faults.or_ok()?;
    let factor = stack.width_mm / stack.thickness_mm * correction;
    Ok(Estimate::new(factor, "1", SPREAD))
}
