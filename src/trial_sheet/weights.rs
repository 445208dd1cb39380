//! What to weigh for every run: the control's lines, and what the changes make of them.

use super::answer::RunWeight;
use crate::case::{Case, FormulaLine, LineContent};
use crate::diagnosis::{Diagnostician, SetQuantity};
use crate::formulas::{Batch, BatchLine};
use crate::knowledge::{Amount, Declarations};
use crate::science::formula::{Part, Stage};
use crate::what_if::{Size, change_amount};

/// Masses that differ by less are the same, as a share: figures of the rules have four digits.
const SAME: f64 = 5e-5;

/// The control, and the case that it was scaled from.
pub(super) struct Control<'a> {
    pub(super) diagnostician: &'a Diagnostician,
    pub(super) case: &'a Case,
    /// The part that is weighed.
    pub(super) part: Part,
    pub(super) batch: &'a Batch,
}

/// What became of a quantity of a change.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Applied {
    /// It stands in the weights.
    Weighed,
    /// It says what an earlier quantity of the action has said.
    SaidBefore,
    /// It changes no line that can be worked out, with the reason.
    ByHand(String),
}

impl Control<'_> {
    fn declared(&self) -> &Declarations {
        &self.diagnostician.knowledge().declared
    }

    fn main_stage(&self) -> Stage {
        self.declared().main_stage(self.case.product)
    }

    /// By how much masses that the rules reckon for the case are multiplied here; `None` when the case states none.
    pub(super) fn factor(&self) -> Option<f64> {
        self.case.formula.as_ref().filter(|formula| formula.in_mass).map(|_| self.batch.factor)
    }

    /// The control's own weights.
    pub(super) fn weights(&self) -> Vec<RunWeight> {
        self.batch.lines.iter().map(weight).collect()
    }

    /// The weights with the quantities of some changes, action by action, and what became of each quantity.
    pub(super) fn with(&self, changes: &[&[SetQuantity<'_>]]) -> (Vec<RunWeight>, Vec<Vec<Applied>>) {
        let mut changed = self.case.clone();
        let applied = changes.iter().map(|quantities| self.apply_all(quantities, &mut changed)).collect();
        (self.compared(&changed), applied)
    }

    /// Why a run with these quantities would be the control once more; `None` where it is not.
    pub(super) fn obstacle(&self, quantities: &[SetQuantity<'_>]) -> Option<String> {
        let applied = self.apply_all(quantities, &mut self.case.clone());
        let is_set = quantities.iter().any(|own| own.setting.amount().is_none());
        if is_set || applied.contains(&Applied::Weighed) {
            return None;
        }
        applied.into_iter().find_map(|own| if let Applied::ByHand(why) = own { Some(why) } else { None })
    }

    /// An action often says the same change twice, as a share and as a mass: the first that can be worked out counts.
    fn apply_all(&self, quantities: &[SetQuantity<'_>], changed: &mut Case) -> Vec<Applied> {
        let mut done: Vec<&Amount> = Vec::new();
        let mut applied = Vec::new();
        for quantity in quantities {
            let Some(amount) = quantity.setting.amount() else {
                applied.push(Applied::ByHand(String::new()));
                continue;
            };
            let is_said = done.iter().any(|own| own.of.shared_with(&amount.of, self.declared()).is_some());
            let is_choice = quantity.setting.is_alternative() && !done.is_empty();
            applied.push(if is_said || is_choice {
                Applied::SaidBefore
            } else if let Err(why) = self.apply(quantity, amount, changed) {
                Applied::ByHand(why)
            } else {
                done.push(amount);
                Applied::Weighed
            });
        }
        applied
    }

    fn apply(&self, quantity: &SetQuantity<'_>, amount: &Amount, changed: &mut Case) -> Result<(), String> {
        let size = Size::of(quantity.setting, amount, quantity.value, self.declared())?;
        change_amount(changed, self.diagnostician, &amount.of, amount.how, size).map(|_| ())
    }

    /// The control's lines with what they weigh in the changed case, then what came in.
    fn compared(&self, changed: &Case) -> Vec<RunWeight> {
        let (mut lines, mut weights) = (self.scaled(changed), self.weights());
        for own in &mut weights {
            let found = lines.iter().position(|line| line.name == own.name && line.stage == own.stage);
            // A line of nothing is left out of a formula; flour that is not listed stays as it is.
            let is_listed = own.ingredient.is_some() || self.scaled(self.case).iter().any(|line| line.name == own.name);
            own.mass_kg = match found {
                Some(place) => lines.remove(place).mass_kg,
                None if is_listed => 0.0,
                None => own.mass_kg,
            };
        }
        weights.extend(lines);
        for own in &mut weights {
            own.is_changed = (own.mass_kg - own.control_kg).abs() > SAME * own.control_kg.max(own.mass_kg);
        }
        weights
    }

    /// The lines of the part in a case, at the scale of the batch, as if all of them had come in.
    fn scaled(&self, case: &Case) -> Vec<RunWeight> {
        let stage = |line: &FormulaLine| line.stage.unwrap_or_else(|| self.main_stage());
        let lines = case.formula.iter().flat_map(|formula| &formula.lines);
        let lines = lines.filter(|line| stage(line).part() == self.part).map(|line| {
            let (ingredient, name) = match &line.content {
                LineContent::Declared(key) => {
                    let own = &self.declared().ingredients[*key];
                    (Some(own.id.clone()), own.title.clone())
                }
                LineContent::Described { name, .. } => (None, name.clone()),
            };
            let (mass_kg, stage) = (line.amount * self.batch.factor, stage(line).name());
            RunWeight { ingredient, name, stage, mass_kg, control_kg: 0.0, is_changed: false }
        });
        lines.collect()
    }
}

fn weight(line: &BatchLine) -> RunWeight {
    RunWeight {
        ingredient: line.ingredient.clone(),
        name: line.name.clone(),
        stage: line.stage,
        mass_kg: line.mass_kg,
        control_kg: line.mass_kg,
        is_changed: false,
    }
}
