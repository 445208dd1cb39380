//! Mass lost in baking and cooling.

use crate::science::{Estimate, Method, Nonsense, input_checks};

const BAKE_LOSS: Method = Method {
    name: "bake loss: 100 × (dough mass − baked mass) / dough mass",
    source: "common practice",
    domain: "say whether cooling is included; filled and iced goods: of the dough alone",
};

/// Bake loss, % of the dough.
///
/// # Errors
/// A mass that is not above zero, a baked mass above the dough mass.
pub fn bake_loss(dough_g: f64, baked_g: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::positive(&mut faults, "dough_g", dough_g);
    input_checks::positive(&mut faults, "baked_g", baked_g);
    faults.unless(
        dough_g.is_nan() || baked_g.is_nan() || baked_g <= dough_g,
        "baked_g",
        format!("must not be heavier than its dough ({dough_g}), is {baked_g}"),
    );
    faults.or_ok()?;
    let loss = 100.0 * (dough_g - baked_g) / dough_g;
    Ok(Estimate::new(loss, "%", BAKE_LOSS))
}

/// Dough to scale for a baked mass, g.
///
/// # Errors
/// A baked mass that is not above zero, a loss of 100 % or more.
pub fn dough_for_baked_mass(baked_g: f64, bake_loss_percent: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::positive(&mut faults, "baked_g", baked_g);
    input_checks::percent_below_hundred(&mut faults, "bake_loss_percent", bake_loss_percent);
    faults.or_ok()?;
    let dough = baked_g / (1.0 - bake_loss_percent / 100.0);
    Ok(Estimate::new(dough, "g", BAKE_LOSS))
}
