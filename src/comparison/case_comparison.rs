//! One case under two sets of rules.

use std::collections::BTreeMap;

use serde::Serialize;
use utoipa::ToSchema;

use crate::case::{Case, Fault, FaultCode};
use crate::diagnosis::Diagnostician;
use crate::json::DocumentFaults;
use crate::rule_tests::LeadingCause;

/// How many causes come first.
const FIRST: usize = 3;

/// Probabilities that differ by less are the same: the inference itself is exact to this (see the tests against a
/// reference).
const SAME: f64 = 1e-9;

/// One case under the rules before and after a change.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CaseComparison {
    /// What the change does to the case.
    pub effect: Effect,
    /// Whether another cause leads; `false` when one of the two sets of rules refuses the case.
    pub leader_changed: bool,
    /// The first three causes before.
    pub before: Vec<LeadingCause>,
    /// The first three causes after.
    pub after: Vec<LeadingCause>,
    /// The cause whose probability changes most, if any does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub largest_change: Option<ProbabilityChange>,
    /// Why the rules before refuse the case.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub refused_before: Vec<Fault>,
    /// Why the rules after refuse the case.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub refused_after: Vec<Fault>,
}

/// What a change of rules does to a case.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Effect {
    /// Nothing.
    Unchanged,
    /// Neither takes the case.
    Refused,
    /// Other probabilities, the same leader.
    Probabilities,
    /// Only the new rules take the case.
    NewlyAnswered,
    /// Another leader.
    Leader,
    /// Only the old rules take the case.
    NewlyRefused,
}

/// A change of the probability of a cause. A cause that one set of rules does not know has the probability 0 there.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct ProbabilityChange {
    /// Id of the cause.
    #[schema(example = "dough_too_warm")]
    pub cause: String,
    /// Probability before.
    #[schema(example = 0.82)]
    pub before: f64,
    /// Probability after.
    #[schema(example = 0.64)]
    pub after: f64,
}

impl ProbabilityChange {
    /// How far the probability moves, 0 to 1.
    #[must_use]
    pub fn size(&self) -> f64 {
        (self.after - self.before).abs()
    }
}

/// All causes with their probabilities, in the order of the answer; or why there are none.
type Ranking = Result<Vec<LeadingCause>, Vec<Fault>>;

impl CaseComparison {
    /// Diagnoses the text of a case with both sets of rules.
    #[must_use]
    pub fn new(case: &[u8], before: &Diagnostician, after: &Diagnostician) -> Self {
        let (before, after) = (ranking(case, before), ranking(case, after));
        let largest_change = match (&before, &after) {
            (Ok(before), Ok(after)) => largest_change(before, after),
            _ => None,
        };
        let leader_changed = match (&before, &after) {
            (Ok(before), Ok(after)) => {
                before.first().map(|cause| &cause.cause) != after.first().map(|cause| &cause.cause)
            }
            _ => false,
        };
        let effect = match (&before, &after) {
            (Ok(_), Ok(_)) if leader_changed => Effect::Leader,
            (Ok(_), Ok(_)) if largest_change.is_some() => Effect::Probabilities,
            (Ok(_), Ok(_)) => Effect::Unchanged,
            (Ok(_), Err(_)) => Effect::NewlyRefused,
            (Err(_), Ok(_)) => Effect::NewlyAnswered,
            (Err(_), Err(_)) => Effect::Refused,
        };
        let (before, refused_before) = first(before);
        let (after, refused_after) = first(after);
        Self { effect, leader_changed, before, after, largest_change, refused_before, refused_after }
    }

    /// How far the probability that moves most moves, 0 to 1.
    #[must_use]
    pub fn size(&self) -> f64 {
        self.largest_change.as_ref().map_or(0.0, ProbabilityChange::size)
    }
}

fn first(ranking: Ranking) -> (Vec<LeadingCause>, Vec<Fault>) {
    match ranking {
        Ok(mut causes) => {
            causes.truncate(FIRST);
            (causes, Vec::new())
        }
        Err(faults) => (Vec::new(), faults),
    }
}

fn ranking(case: &[u8], diagnostician: &Diagnostician) -> Ranking {
    let case = Case::parse(case, diagnostician.knowledge()).map_err(|faults| match faults {
        DocumentFaults::Faulty(faults) => faults,
        DocumentFaults::Malformed(detail) => {
            vec![fault("", FaultCode::WrongType, format!("the case is not JSON: {detail}"))]
        }
    })?;
    // What is no fault of the text is one of its symptoms: there are too many.
    let answer = diagnostician
        .diagnose(case)
        .map_err(|reason| vec![fault("/symptoms", FaultCode::OutOfRange, reason.to_string())])?;
    let leading = answer.causes.iter().map(|cause| (cause.cause, cause.probability));
    let others = answer.other_causes.iter().map(|cause| (cause.cause, cause.probability));
    Ok(leading
        .chain(others)
        .map(|(cause, probability)| LeadingCause { cause: cause.to_owned(), probability })
        .collect())
}

fn fault(pointer: &str, code: FaultCode, detail: String) -> Fault {
    Fault { pointer: pointer.to_owned(), code, detail, help: None }
}

/// Of equal changes the one of the first cause by name.
fn largest_change(before: &[LeadingCause], after: &[LeadingCause]) -> Option<ProbabilityChange> {
    probability_changes(before, after).into_iter().next()
}

/// All causes whose probability differs, the largest change first; of equal changes the first cause by name.
pub(crate) fn probability_changes(before: &[LeadingCause], after: &[LeadingCause]) -> Vec<ProbabilityChange> {
    let mut changes: BTreeMap<&str, (f64, f64)> = BTreeMap::new();
    for cause in before {
        changes.entry(&cause.cause).or_default().0 = cause.probability;
    }
    for cause in after {
        changes.entry(&cause.cause).or_default().1 = cause.probability;
    }
    let changes = changes.into_iter();
    let changes = changes.map(|(cause, (before, after))| ProbabilityChange { cause: cause.to_owned(), before, after });
    let mut changes: Vec<ProbabilityChange> = changes.filter(|change| change.size() > SAME).collect();
    changes.sort_by(|one, other| other.size().total_cmp(&one.size()));
    changes
}
