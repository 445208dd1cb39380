//! What to weigh for every run: the control's lines, and what the changes make of them.

use super::answer::RunWeight;
use crate::case::{Case, FormulaLine, LineContent};
use crate::diagnosis::{ChangeText, Diagnostician, SetQuantity};
use crate::formulas::{Batch, BatchLine};
use crate::knowledge::{Declarations, How, Ingredient, Key, Portion};
use crate::science::formula::{Part, Role, Stage};
use crate::units::{Unit, convert};
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
        let is_set = quantities.iter().any(|own| own.changes.as_ref().is_none_or(|change| change.how.is_none()));
        if is_set || applied.contains(&Applied::Weighed) {
            return None;
        }
        applied.into_iter().find_map(|own| if let Applied::ByHand(why) = own { Some(why) } else { None })
    }

    /// An action often says the same change twice, as a share and as a mass: the first that can be worked out counts.
    fn apply_all(&self, quantities: &[SetQuantity<'_>], changed: &mut Case) -> Vec<Applied> {
        let mut done: Vec<Vec<Key<Ingredient>>> = Vec::new();
        let mut applied = Vec::new();
        for quantity in quantities {
            let outcome = match &quantity.changes {
                Some(change) if change.how.is_some() => {
                    let meant = self.meant(change);
                    let is_said = meant.iter().any(|key| done.iter().any(|own| own.contains(key)));
                    if is_said || (quantity.name.starts_with("or_") && !done.is_empty()) {
                        Applied::SaidBefore
                    } else if let Err(why) = self.apply(quantity, change, changed) {
                        Applied::ByHand(why)
                    } else {
                        done.push(meant);
                        Applied::Weighed
                    }
                }
                _ => Applied::ByHand(String::new()),
            };
            applied.push(outcome);
        }
        applied
    }

    /// Ingredients that a change is about; of a role all that have it.
    fn meant(&self, change: &ChangeText<'_>) -> Vec<Key<Ingredient>> {
        let ids = change.ingredient.iter().chain(&change.ingredients);
        let named = ids.filter_map(|id| self.declared().ingredients.find(id));
        let has_role = |own: &Ingredient| own.roles.iter().any(|role| Some(role.name()) == change.role);
        named.chain(self.declared().ingredients.iter().filter(|(_, own)| has_role(own)).map(|(key, _)| key)).collect()
    }

    fn apply(&self, quantity: &SetQuantity<'_>, change: &ChangeText<'_>, changed: &mut Case) -> Result<(), String> {
        let portion = match change.role.and_then(Role::named) {
            Some(role) => Portion::Role(role),
            None => Portion::Ingredients(self.meant(change)),
        };
        let how = [How::Doses, How::Adds, How::TakesOut].into_iter().find(|how| Some(how.word()) == change.how);
        let how = how.ok_or("it is not said how the amount changes")?;
        let size = self.size(quantity, change)?;
        change_amount(changed, self.diagnostician, &portion, how, size).map(|_| ())
    }

    fn size(&self, quantity: &SetQuantity<'_>, change: &ChangeText<'_>) -> Result<Size, String> {
        if let Some(id) = change.reading {
            let key = self.declared().readings.find(id).ok_or("the reading is not known")?;
            return Ok(Size::Reads(key, converted(quantity, self.declared().readings[key].unit.code())?));
        }
        match change.basis {
            None => Ok(Size::Mass(converted(quantity, "kg")?)),
            Some("flour") => Ok(Size::OnFlour(converted(quantity, "%")?)),
            Some(part) => {
                let part = Part::named(part).ok_or("the part is not known")?;
                Ok(Size::OfPart(part, converted(quantity, "%")?))
            }
        }
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

fn converted(quantity: &SetQuantity<'_>, wanted: &str) -> Result<f64, String> {
    let unit = Unit::parse(quantity.unit).map_err(|fault| fault.to_string())?;
    let wanted = Unit::parse(wanted).map_err(|fault| fault.to_string())?;
    convert(quantity.value, &unit, &wanted).map_err(|fault| fault.to_string())
}
