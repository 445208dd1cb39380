//! From a formula to a batch: so much dough, or so many pieces of so much baked mass.

use super::line::{Formula, Line, Part, Stage};
use crate::science::{Estimate, Method, Nonsense, input_checks};

const SCALING: Method = Method {
    name: "batch scaling: every line × wanted mass / mass of the part",
    source: "common practice (batch flour = 100 × dough mass / sum of baker's percentages)",
    domain: "losses in mixing and make-up not included",
};

/// Pieces to be baked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PieceOrder {
    /// Number of pieces.
    pub pieces: u32,
    /// Mass of one piece when baked and cooled, kg.
    pub baked_piece_kg: f64,
    /// Mass lost in baking and cooling, % of the dough.
    pub bake_loss_percent: f64,
}

/// One line of a batch.
#[derive(Debug, Clone, PartialEq)]
pub struct BatchLine {
    /// Name of the ingredient.
    pub name: String,
    /// When it goes in.
    pub stage: Stage,
    /// Mass to weigh, kg.
    pub mass: Estimate,
}

/// A batch of one part of a formula.
#[derive(Debug, Clone, PartialEq)]
pub struct Batch {
    /// By how much the formula was multiplied.
    pub factor: Estimate,
    /// Mass of the part, kg.
    pub mass: Estimate,
    /// Flour in it, kg.
    pub flour: Estimate,
    /// What to weigh, in the order of the formula.
    pub lines: Vec<BatchLine>,
}

/// Scales one part to a wanted mass in kg.
///
/// # Errors
/// A wanted mass that is not above zero or too large to scale to, a part without lines.
pub fn scale_to_mass(formula: &Formula, part: Part, wanted_kg: f64) -> Result<Batch, Nonsense> {
    let lines: Vec<&Line> = formula.part(part).collect();
    let mass: f64 = lines.iter().map(|line| line.mass_kg).sum();
    let mut faults = Nonsense::default();
    input_checks::positive(&mut faults, "wanted_kg", wanted_kg);
    faults.unless(!lines.is_empty(), "formula", format!("has no {part:?}").to_lowercase());
    faults.or_ok()?;
    let factor = wanted_kg / mass;
    let scales = lines.iter().all(|line| (line.mass_kg * factor).is_finite());
    let mut faults = Nonsense::default();
    faults.unless(scales, "wanted_kg", format!("`{wanted_kg:e}` kg is too large beside a formula of `{mass:e}` kg"));
    faults.or_ok()?;
    let flour: f64 = lines.iter().filter(|line| line.is_flour).map(|line| line.mass_kg * factor).sum();
    Ok(Batch {
        factor: Estimate::new(factor, "1", SCALING),
        mass: Estimate::new(wanted_kg, "kg", SCALING),
        flour: Estimate::new(flour, "kg", SCALING),
        lines: lines.iter().map(|line| scaled(line, factor)).collect(),
    })
}

/// Scales the dough to pieces of a baked mass.
///
/// # Errors
/// No pieces, a baked mass that is not above zero, a bake loss of 100 % or more, a formula without dough.
pub fn scale_to_pieces(formula: &Formula, order: &PieceOrder) -> Result<Batch, Nonsense> {
    let mut faults = Nonsense::default();
    faults.unless(order.pieces > 0, "pieces", "must be one or more");
    input_checks::positive(&mut faults, "baked_piece_kg", order.baked_piece_kg);
    input_checks::percent_below_hundred(&mut faults, "bake_loss_percent", order.bake_loss_percent);
    faults.or_ok()?;
    let baked = f64::from(order.pieces) * order.baked_piece_kg;
    scale_to_mass(formula, Part::Dough, baked / (1.0 - order.bake_loss_percent / 100.0))
}

fn scaled(line: &Line, factor: f64) -> BatchLine {
    BatchLine { name: line.name.clone(), stage: line.stage, mass: Estimate::new(line.mass_kg * factor, "kg", SCALING) }
}
