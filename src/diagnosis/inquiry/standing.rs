//! How the causes of a case stand.

use crate::inference::Standing;
use crate::knowledge::ProductView;

/// A cause whose probability has grown by this factor is one that the findings speak for.
const LIFTED: f64 = 1.05;

/// Beside a complaint that it does not explain, a cause that the findings speak for is told when it is at least so
/// probable.
const FOUND: f64 = 0.5;

/// Whether a cause is at issue: one that explains something seen, or that was found beside it. What is merely common says
/// nothing about the complaint.
pub(in crate::diagnosis) fn at_issue(view: &ProductView, standing: Standing<'_>, position: usize) -> bool {
    let found = |position| probability(standing, position) >= FOUND || !anything_to_explain(view, standing);
    standing.explains(position) || (lifted(view, standing, position) && found(position))
}

/// Whether any symptom that was seen has a cause.
pub(super) fn anything_to_explain(view: &ProductView, standing: Standing<'_>) -> bool {
    (0..view.causes.len()).any(|cause| standing.explains(cause))
}

/// Whether the findings make a cause more probable than it is before them.
pub(in crate::diagnosis) fn lifted(view: &ProductView, standing: Standing<'_>, position: usize) -> bool {
    view.priors.get(position).is_some_and(|prior| probability(standing, position) > prior * LIFTED)
}

/// P(cause | findings).
pub(super) fn probability(standing: Standing<'_>, position: usize) -> f64 {
    standing.odds().get(position).map_or(0.0, |odds| odds.probability())
}

/// The most probable causes at issue, best first; of all causes when none is.
pub(super) fn leaders(view: &ProductView, standing: Standing<'_>, most: usize) -> Vec<(usize, f64)> {
    let leaders = best(standing, most, |position| at_issue(view, standing, position));
    if leaders.is_empty() { best(standing, most, |_| true) } else { leaders }
}

fn best(standing: Standing<'_>, most: usize, counts: impl Fn(usize) -> bool) -> Vec<(usize, f64)> {
    let mut best: Vec<(usize, f64)> = Vec::with_capacity(most + 1);
    for (position, odds) in standing.odds().iter().enumerate() {
        let probability = odds.probability();
        let enters = best.len() < most || best.last().is_some_and(|(_, least)| probability > *least);
        if enters && counts(position) {
            let place = best.partition_point(|(_, other)| *other >= probability);
            best.insert(place, (position, probability));
            best.truncate(most);
        }
    }
    best
}
