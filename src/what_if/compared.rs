//! Two diagnoses side by side.

use std::collections::BTreeMap;

use serde_json::value::RawValue;

use super::answer::{Applied, CauseChange, FigureChange, LeaderChange, NotApplied, WhatIf, WhatIfLeader};
use crate::diagnosis::{CautionText, Diagnosis};
use crate::knowledge::Text;

/// A probability that moves by less is the same.
const SAME: f64 = 1e-6;

/// How many causes are told however little they move.
const LEADING: usize = 3;

/// Most causes that are told.
const MOST_CAUSES: usize = 20;

/// Share by which a figure must move to be told.
const SAME_FIGURE: f64 = 1e-9;

pub(super) fn compared<'k>(
    before: Diagnosis<'k>,
    after: Diagnosis<'k>,
    reference: Option<Box<RawValue>>,
    applied: Vec<Applied<'k>>,
    not_applied: Vec<NotApplied<'k>>,
) -> WhatIf<'k> {
    let leader = LeaderChange {
        before: leader(&before),
        after: leader(&after),
        changed: before.causes.first().map(|cause| cause.cause) != after.causes.first().map(|cause| cause.cause),
    };
    let (causes, computed) = (causes(&before, &after), figures(&before, &after));
    let (cautions_new, cautions_gone) =
        (only(&after.cautions, &before.cautions), only(&before.cautions, &after.cautions));
    WhatIf {
        rules: before.rules,
        product: before.product,
        reference,
        applied,
        not_applied,
        leader,
        causes,
        computed,
        cautions_new,
        cautions_gone,
    }
}

fn leader<'k>(diagnosis: &Diagnosis<'k>) -> Option<WhatIfLeader<'k>> {
    let cause = diagnosis.causes.first()?;
    Some(WhatIfLeader { cause: cause.cause, title: cause.title, probability: cause.probability })
}

/// Every cause with its title and probability, the leading ones first.
fn all<'a, 'k>(diagnosis: &'a Diagnosis<'k>) -> impl Iterator<Item = (&'k str, &'k Text, f64)> + 'a {
    let leading = diagnosis.causes.iter().map(|cause| (cause.cause, cause.title, cause.probability));
    leading.chain(diagnosis.other_causes.iter().map(|cause| (cause.cause, cause.title, cause.probability)))
}

fn causes<'k>(before: &Diagnosis<'k>, after: &Diagnosis<'k>) -> Vec<CauseChange<'k>> {
    let then: BTreeMap<&str, f64> = all(after).map(|(cause, _, probability)| (cause, probability)).collect();
    let leads = |cause: &str| all(before).take(LEADING).chain(all(after).take(LEADING)).any(|(own, ..)| own == cause);
    let changes = all(before).map(|(cause, title, before)| {
        let after = then.get(cause).copied().unwrap_or(0.0);
        CauseChange { cause, title, before, after, change: after - before }
    });
    let mut told: Vec<CauseChange<'k>> = changes.filter(|one| one.change.abs() > SAME || leads(one.cause)).collect();
    told.sort_by(|one, other| other.change.abs().total_cmp(&one.change.abs()));
    told.truncate(MOST_CAUSES);
    told
}

fn figures<'k>(before: &Diagnosis<'k>, after: &Diagnosis<'k>) -> Vec<FigureChange<'k>> {
    let mut figures: Vec<FigureChange<'k>> = Vec::new();
    for one in &before.computed {
        let (quantity, title, unit) = (one.quantity, one.title, one.unit);
        figures.push(FigureChange { quantity, title, unit, before: Some(one.value), after: None });
    }
    for one in &after.computed {
        match figures.iter_mut().find(|figure| figure.quantity == one.quantity) {
            Some(figure) => figure.after = Some(one.value),
            None => {
                let (quantity, title, unit) = (one.quantity, one.title, one.unit);
                figures.push(FigureChange { quantity, title, unit, before: None, after: Some(one.value) });
            }
        }
    }
    figures.retain(|figure| match (figure.before, figure.after) {
        (Some(before), Some(after)) => (after - before).abs() > SAME_FIGURE * before.abs().max(1.0),
        _ => true,
    });
    figures
}

/// Cautions of one answer that the other does not have.
fn only<'k>(cautions: &[CautionText<'k>], others: &[CautionText<'k>]) -> Vec<CautionText<'k>> {
    cautions.iter().filter(|one| others.iter().all(|other| other.caution != one.caution)).cloned().collect()
}
