//! The changed case, and both diagnoses.

use std::fmt;

use super::amount::{self, Size, is_flour};
use super::answer::{Applied, NotApplied, WhatIf};
use super::compared::compared;
use crate::case::{Case, CaseChanges, IngredientChange, Measured, TriedAmount, WhatIfRequest};
use crate::diagnosis::{ChangeText, Diagnosis, DiagnosisFault, Diagnostician, change_text};
use crate::knowledge::{Amount, Basis, Change, How, Key, Portion, Reading};

/// Why there is nothing to compare.
#[derive(Debug, Clone, PartialEq)]
pub enum WhatIfFault {
    /// The case as it is cannot be diagnosed.
    Case(DiagnosisFault),
    /// The changed case cannot.
    Changed(DiagnosisFault),
}

impl fmt::Display for WhatIfFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Case(fault) => fault.fmt(f),
            Self::Changed(fault) => write!(f, "the changed case: {fault}"),
        }
    }
}

impl std::error::Error for WhatIfFault {}

/// Diagnoses a case as it is and as it would be.
///
/// # Errors
/// More present or uncertain symptoms than can be weighed exactly.
pub fn what_if(request: WhatIfRequest, diagnostician: &Diagnostician) -> Result<WhatIf<'_>, WhatIfFault> {
    let WhatIfRequest { case, changes, reference } = request;
    let before = diagnostician.diagnose(case.clone()).map_err(WhatIfFault::Case)?;
    let mut trial = Trial { diagnostician, case, applied: Vec::new(), not_applied: Vec::new() };
    trial.change(&changes);
    trial.act(&changes.actions, &ranking(&before));
    let Trial { case, applied, not_applied, .. } = trial;
    let after = diagnostician.diagnose(case).map_err(WhatIfFault::Changed)?;
    Ok(compared(before, after, reference, applied, not_applied))
}

/// Ids of the causes, most probable first.
fn ranking<'k>(diagnosis: &Diagnosis<'k>) -> Vec<&'k str> {
    let leading = diagnosis.causes.iter().map(|cause| (cause.cause, cause.probability));
    let mut all: Vec<(&str, f64)> =
        leading.chain(diagnosis.other_causes.iter().map(|cause| (cause.cause, cause.probability))).collect();
    all.sort_by(|(_, a), (_, b)| b.total_cmp(a));
    all.into_iter().map(|(cause, _)| cause).collect()
}

/// Share of a computed value by which it has changed.
const LEAST_CHANGE: f64 = 1e-9;

/// A case that is being changed, and what came of it.
pub(super) struct Trial<'k> {
    pub(super) diagnostician: &'k Diagnostician,
    pub(super) case: Case,
    pub(super) applied: Vec<Applied<'k>>,
    pub(super) not_applied: Vec<NotApplied<'k>>,
}

/// Who changes something: an action with one of its quantities, or nobody.
pub(super) type By<'k> = Option<(&'k str, &'k str)>;

impl<'k> Trial<'k> {
    /// Applies what the request changes itself.
    fn change(&mut self, changes: &CaseChanges) {
        let declared = &self.diagnostician.knowledge().declared;
        for measured in &changes.readings {
            self.read(measured.clone(), None);
        }
        for aside in &changes.set_aside {
            let reading = &declared.readings[aside.measured.reading];
            let text = "the value is outside the plausible range of the reading".to_owned();
            self.not_applied.push(NotApplied { action: None, quantity: Some(&reading.id), text });
        }
        for (fact, stated) in &changes.facts {
            let before = self.case.facts.iter().find(|(own, _)| own == fact).map(|(_, own)| f64::from(u8::from(*own)));
            self.case.facts.retain(|(own, _)| own != fact);
            self.case.facts.push((*fact, *stated));
            self.found(&declared.facts[*fact].id, before, f64::from(u8::from(*stated)));
        }
        for seen in &changes.symptoms {
            let earlier = self.case.symptoms.iter().find(|own| own.symptom == seen.symptom);
            let before = earlier.map(|own| own.certainty);
            self.case.symptoms.retain(|own| own.symptom != seen.symptom);
            self.case.symptoms.push(*seen);
            self.found(&declared.symptoms[seen.symptom].id, before, seen.certainty);
        }
        for (place, change) in changes.ingredients.iter().enumerate() {
            let later = changes.ingredients.get(place + 1..).unwrap_or_default();
            let brings_flour =
                |own: &IngredientChange| own.how != How::TakesOut && declared.ingredients[own.ingredient].is_flour;
            self.weigh(change, later.iter().any(brings_flour));
        }
    }

    fn found(&mut self, id: &'k str, before: Option<f64>, after: f64) {
        let (action, quantity, changes, unit) = (None, None, None, None);
        self.applied.push(Applied { action, quantity, finding: Some(id), changes, before, after, unit });
    }

    /// Sets a reading; limits that are not given stay.
    pub(super) fn read(&mut self, measured: Measured, by: By<'k>) {
        let key = measured.reading;
        let reading = &self.diagnostician.knowledge().declared.readings[key];
        let before = self.diagnostician.known(&self.case).0.reading(key);
        let earlier = self.case.readings.iter().find(|own| own.reading == key).map(|own| own.limits);
        let limits = earlier.map_or(measured.limits, |earlier| measured.limits.over(earlier));
        let after = measured.value;
        self.case.readings.retain(|own| own.reading != key);
        self.case.set_aside.retain(|aside| aside.measured.reading != key);
        self.case.readings.push(Measured { limits, ..measured });
        self.applied.push(Applied {
            action: by.map(|(action, _)| action),
            quantity: by.map(|(_, quantity)| quantity),
            finding: None,
            changes: Some(ChangeText { reading: Some(&reading.id), ..ChangeText::default() }),
            before,
            after,
            unit: Some(reading.unit.code()),
        });
    }

    /// Changes an amount that the request names.
    fn weigh(&mut self, change: &IngredientChange, flour_follows: bool) {
        let (size, basis) = match change.amount {
            Some(TriedAmount::Mass(mass)) => (Size::Mass(mass), Basis::Batch),
            Some(TriedAmount::OnFlour(share)) => (Size::OnFlour(share), Basis::Flour),
            None => (Size::All, Basis::Batch),
        };
        let amount = Amount { of: Portion::Ingredients(vec![change.ingredient]), how: change.how, basis };
        let (earlier, applied) = (self.case.clone(), self.applied.len());
        let had_flour = self.has_flour();
        let mut outcome = self.weighed(&amount, size, None);
        if outcome.is_ok() && had_flour && !flour_follows && !self.has_flour() {
            self.case = earlier.clone();
            self.applied.truncate(applied);
            outcome = Err("no flour would be left, and every figure is counted on it".to_owned());
        }
        if outcome.is_ok() {
            self.read_again(&earlier);
        }
        if let Err(text) = outcome {
            let id = &self.diagnostician.knowledge().declared.ingredients[change.ingredient].id;
            self.not_applied.push(NotApplied { action: None, quantity: Some(id), text });
        }
    }

    /// Readings that somebody took and that follow from the formula: what was measured of the earlier formula tells nothing
    /// of the changed one, which is read as it computes.
    fn read_again(&mut self, earlier: &Case) {
        let declared = &self.diagnostician.knowledge().declared;
        let computes = |measured: &&Measured| declared.readings[measured.reading].computed.is_some();
        let measured: Vec<Measured> = self.case.readings.iter().filter(computes).cloned().collect();
        for own in measured {
            let computed = |case: &Case| {
                let mut unread = case.clone();
                unread.readings.retain(|other| other.reading != own.reading);
                self.diagnostician.known(&unread).0.reading(own.reading)
            };
            let (Some(before), Some(after)) = (computed(earlier), computed(&self.case)) else { continue };
            if (after - before).abs() > LEAST_CHANGE * before.abs().max(1.0) {
                let unit = declared.readings[own.reading].unit.clone();
                self.read(Measured { value: after, given: after, unit, ..own }, None);
            }
        }
    }

    /// Whether the formula lists any flour.
    fn has_flour(&self) -> bool {
        let declared = &self.diagnostician.knowledge().declared;
        self.case.formula.iter().flat_map(|formula| &formula.lines).any(|line| is_flour(line, declared))
    }

    /// Changes an amount.
    pub(super) fn weighed(&mut self, amount: &Amount, size: Size, by: By<'k>) -> Result<(), String> {
        let declared = &self.diagnostician.knowledge().declared;
        let mut tried = self.case.clone();
        let changed = amount::change(&mut tried, self.diagnostician, &amount.of, amount.how, size)?;
        let in_mass = tried.formula.as_ref().is_some_and(|formula| formula.in_mass);
        self.case = tried;
        self.applied.push(Applied {
            action: by.map(|(action, _)| action),
            quantity: by.map(|(_, quantity)| quantity),
            finding: None,
            changes: Some(change_text(declared, &Change::Amount(amount.clone()))),
            before: Some(changed.before),
            after: changed.after,
            unit: Some(if in_mass { "kg" } else { "%" }),
        });
        Ok(())
    }

    /// Whether somebody measured a reading.
    pub(super) fn is_measured(&self, key: Key<Reading>) -> bool {
        self.case.readings.iter().any(|measured| measured.reading == key)
    }
}
