//! A batch of a formula as an answer.

use serde::Serialize;
use utoipa::ToSchema;

use super::Weighed;
use super::report::MethodReport;
use crate::case::{BatchSize, LineContent};
use crate::science::Nonsense;
use crate::science::formula::{self, Part, PieceOrder, scale_to_mass, scale_to_pieces};

/// What to weigh for a batch.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct Batch {
    /// The part that is scaled: `dough`, `filling` or `icing`.
    #[schema(example = "dough")]
    pub part: &'static str,
    /// By how much the formula was multiplied.
    #[schema(example = 1.5)]
    pub factor: f64,
    /// Mass of the part before baking, kg.
    #[schema(example = 120.0)]
    pub mass_kg: f64,
    /// Flour in it, kg.
    #[schema(example = 71.0)]
    pub flour_kg: f64,
    /// What to weigh, in the order of the formula.
    pub lines: Vec<BatchLine>,
    /// How it is computed.
    pub method: MethodReport,
    /// What to mind.
    pub remarks: Vec<String>,
}

/// One line of a batch.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct BatchLine {
    /// Id, of an ingredient that the rules declare.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "bread_flour")]
    pub ingredient: Option<String>,
    /// Title, or the caller's own name.
    pub name: String,
    /// When it goes in.
    #[schema(example = "dough")]
    pub stage: &'static str,
    /// Mass to weigh, kg.
    #[schema(example = 41.8)]
    pub mass_kg: f64,
}

impl Weighed<'_> {
    /// Scales a part, or the main part.
    ///
    /// # Errors
    /// A size that cannot be meant, a part without lines, pieces of something that is not baked as dough.
    pub fn batch(&self, part: Option<Part>, size: BatchSize) -> Result<Batch, Nonsense> {
        let part = part.unwrap_or_else(|| self.main_part());
        let batch = match size {
            BatchSize::Mass(kilograms) => scale_to_mass(&self.formula, part, kilograms)?,
            BatchSize::Pieces { pieces, baked_piece_kg, bake_loss_percent } => {
                let mut faults = Nonsense::default();
                faults.unless(
                    part == Part::Dough,
                    "pieces",
                    format!("counts pieces of dough; the {} is scaled to a mass", part.name()),
                );
                faults.or_ok()?;
                scale_to_pieces(&self.formula, &PieceOrder { pieces, baked_piece_kg, bake_loss_percent })?
            }
        };
        Ok(self.batch_answer(part, &batch))
    }

    fn batch_answer(&self, part: Part, batch: &formula::Batch) -> Batch {
        let mut given = self.lines().filter(|(_, own)| *own == part).map(|(line, _)| line);
        let lines = batch.lines.iter().map(|line| BatchLine {
            ingredient: given.next().and_then(|line| match line.content {
                LineContent::Declared(key) => Some(self.declared.ingredients[key].id.clone()),
                LineContent::Described { .. } => None,
            }),
            name: line.name.clone(),
            stage: line.stage.name(),
            mass_kg: line.mass.value,
        });
        let mut remarks = batch.mass.outside_domain.clone();
        if !self.whole {
            remarks.push("the formula is a fragment: what it does not list is not in the batch".to_owned());
        }
        Batch {
            part: part.name(),
            factor: batch.factor.value,
            mass_kg: batch.mass.value,
            flour_kg: batch.flour.value,
            lines: lines.collect(),
            method: batch.mass.method.into(),
            remarks,
        }
    }
}
