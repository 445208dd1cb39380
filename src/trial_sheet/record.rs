//! What to write down at each run, and what counts as fixed.

use super::answer::{FixedWhen, Recorded, RecordedKind};
use super::changes::Candidate;
use super::measure::Target;
use crate::case::{Case, Measured};
use crate::diagnosis::{ConfirmingReading, Diagnostician, SetQuantity, in_sentence, with_symbol};
use crate::knowledge::{Basis, Circumstances, Condition, Declarations, Input, Key, Reading, Symptom};
use crate::units::convert;

/// What is written down, from symptoms to readings, each once.
pub(super) struct Records<'k> {
    declared: &'k Declarations,
    /// What is known of the case.
    circumstances: Circumstances,
    /// What the changes set readings to, in the readings' units.
    set: Vec<(Key<Reading>, f64)>,
    /// The list so far.
    pub(super) list: Vec<Recorded<'k>>,
    /// What counts as fixed.
    pub(super) fixed: Vec<FixedWhen<'k>>,
}

impl<'k> Records<'k> {
    /// Of the symptoms that were seen and the readings of a case, of the causes that are tried, of the wanted difference.
    pub(super) fn of(
        diagnostician: &'k Diagnostician,
        case: &Case,
        seen: &[Key<Symptom>],
        changes: &[Candidate<'_, 'k>],
        target: Option<&Target>,
    ) -> Self {
        let declared = &diagnostician.knowledge().declared;
        let (circumstances, _) = diagnostician.known(case);
        let quantities = changes.iter().flat_map(|change| &change.advice.quantities);
        let set = quantities.filter_map(|own| set_reading(own, declared)).collect();
        let mut records = Self { declared, circumstances, set, list: Vec::new(), fixed: Vec::new() };
        for key in seen {
            records.symptom(*key, target);
        }
        if let Some(Target::Proportion { symptom: Some(key), .. }) = target {
            records.symptom(*key, target);
        }
        if let Some(Target::Difference { reading: Some(key), .. }) = target {
            records.reading(*key, "what the trial shall show".to_owned());
        }
        for change in changes {
            for confirm in &change.cause.confirm {
                records.confirmation(confirm, change);
            }
            for quantity in &change.advice.quantities {
                if let Some(key) = quantity.setting.reading() {
                    records.reading(key, "set by a change".to_owned());
                }
            }
        }
        for measured in &case.readings {
            records.limits(measured);
        }
        records
    }

    fn symptom(&mut self, key: Key<Symptom>, target: Option<&Target>) {
        let symptom = &self.declared.symptoms[key];
        if self.list.iter().any(|own| own.id == symptom.id) {
            return;
        }
        self.list.push(Recorded {
            kind: RecordedKind::Symptom,
            id: &symptom.id,
            title: symptom.title.to_string(),
            unit: None,
            how: format!("{} Count the pieces that show it.", symptom.description),
            why: "the complaint".to_owned(),
        });
        let (text, from) = match target {
            Some(Target::Proportion { symptom: own, wanted, .. }) if own.is_none_or(|own| own == key) => {
                (format!("{} in {} of the pieces at most", symptom.title, with_symbol(*wanted, "%")), "the request")
            }
            _ => (format!("not seen: {}", in_sentence(&symptom.title)), "the complaint"),
        };
        self.fixed.push(FixedWhen { id: &symptom.id, text, from: from.to_owned() });
    }

    fn reading(&mut self, key: Key<Reading>, why: String) {
        let reading = &self.declared.readings[key];
        if self.list.iter().all(|own| own.id != reading.id) {
            self.list.push(Recorded {
                kind: RecordedKind::Reading,
                id: &reading.id,
                title: reading.title.to_string(),
                unit: Some(reading.unit.code()),
                how: reading.method.to_string(),
                why,
            });
        }
    }

    fn confirmation(&mut self, confirm: &ConfirmingReading<'k>, change: &Candidate<'_, 'k>) {
        let why = format!("tells whether it was “{}”: {}", change.cause.title, confirm.expect);
        match self.declared.readings.find(confirm.reading) {
            Some(key) => self.reading(key, why),
            None if self.list.iter().all(|own| own.id != confirm.reading) && !confirm.reading.is_empty() => {
                self.list.push(Recorded {
                    kind: RecordedKind::Fact,
                    id: confirm.reading,
                    title: confirm.reading.replace('_', " "),
                    unit: None,
                    how: format!("ask or look: {}", confirm.method),
                    why,
                });
            }
            None => {}
        }
        // What people answer tells the cause, not whether the product is in order.
        let is_read = self.declared.readings.find(confirm.reading).is_some();
        let excluded = confirm.confirmation.excluded.as_ref().filter(|own| is_read && self.can_be_met(own));
        if let (Some(excludes), Some(_)) = (&confirm.excludes, excluded) {
            let from = format!("excludes “{}”", change.cause.title);
            let fixed = FixedWhen { id: confirm.reading, text: excludes.to_string(), from };
            if !self.fixed.contains(&fixed) {
                self.fixed.push(fixed);
            }
        }
    }

    /// Whether a reading that is in order can meet a condition: what the changes set it to must, and something within its
    /// limits. What tells that a cause is not at work can be a fault of the other kind.
    fn can_be_met(&self, condition: &Condition) -> bool {
        let met_at = |key: Key<Reading>, value: f64| {
            let mut tried = self.circumstances.clone();
            tried.set_reading(key, Some(value));
            condition.judge(&tried, &mut |_, _| {}).grade().is_some_and(|grade| grade >= 1.0)
        };
        let mut can = true;
        condition.inputs(&mut |input| {
            let Input::Reading(key) = input else { return };
            can &= self.set.iter().filter(|(own, _)| *own == key).all(|(_, value)| met_at(key, *value));
            let limits = self.circumstances.limits(key);
            if let (Some(low), Some(high)) = (limits.low, limits.high) {
                can &= [low, f64::midpoint(low, high), high].into_iter().any(|value| met_at(key, value));
            }
        });
        can
    }

    /// Limits of the plant's own.
    fn limits(&mut self, measured: &Measured) {
        let reading = &self.declared.readings[measured.reading];
        let said = |value: f64| with_symbol(value, reading.unit.code());
        let window = match (measured.limits.low, measured.limits.high) {
            (Some(low), Some(high)) => format!("from {} to {}", said(low), said(high)),
            (Some(low), None) => format!("{} or more", said(low)),
            (None, Some(high)) => format!("{} or less", said(high)),
            (None, None) => match measured.limits.target {
                Some(target) => format!("about {}", said(target)),
                None => return,
            },
        };
        self.reading(measured.reading, "the plant has limits for it".to_owned());
        let text = format!("{} {window}", reading.title);
        self.fixed.push(FixedWhen { id: &reading.id, text, from: "the plant's limits".to_owned() });
    }
}

/// The reading that a quantity sets, or that shall read it when the amount is right, with its value in the reading's unit.
fn set_reading(quantity: &SetQuantity<'_>, declared: &Declarations) -> Option<(Key<Reading>, f64)> {
    let counted = quantity.setting.amount().and_then(|amount| match amount.basis {
        Basis::Reading(key) => Some(key),
        _ => None,
    });
    let key = quantity.setting.reading().or(counted)?;
    let value = convert(quantity.value, &quantity.setting.unit, &declared.readings[key].unit).ok()?;
    Some((key, value))
}
