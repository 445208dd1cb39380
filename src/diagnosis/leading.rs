//! The causes that an answer argues for, and those that it acts on.

use super::inquiry::at_issue;
use crate::inference::{Odds, Posterior};
use crate::knowledge::ProductView;

/// Most causes with their arguments in an answer.
const MOST_LEADING: usize = 6;

/// Fewest causes with their arguments, however improbable.
const FEWEST_LEADING: usize = 3;

/// A less probable cause is only named.
const LEAST_LEADING: f64 = 0.02;

/// Of a less probable cause, unless it leads, no action is prescribed: what hardly any bake needs only buries the rest.
const LEAST_ACTED_ON: f64 = 0.05;

/// Positions of the causes in the view of the product, most probable first.
pub(super) struct Leading {
    /// All causes.
    pub(super) ranking: Vec<usize>,
    /// Those that are argued for: the ones at issue, which explain something seen or were found beside it. What is merely
    /// common says nothing about the complaint. Where nothing was found, all causes are at issue.
    pub(super) argued: Vec<usize>,
    acted_on: usize,
}

impl Leading {
    pub(super) fn of(view: &ProductView, posterior: &Posterior<'_>) -> Self {
        let ranking = rank(posterior.odds());
        let probability = |position: usize| posterior.odds().get(position).map_or(0.0, |odds| odds.probability());
        let is_at_issue = |position: &usize| at_issue(view, posterior.standing(), *position);
        let mut argued: Vec<usize> = ranking.iter().copied().filter(is_at_issue).collect();
        if argued.is_empty() {
            argued.clone_from(&ranking);
        }
        let probable = argued.iter().take_while(|position| probability(**position) >= LEAST_LEADING).count();
        argued.truncate(probable.clamp(FEWEST_LEADING, MOST_LEADING));
        let acted_on = argued.partition_point(|position| probability(*position) >= LEAST_ACTED_ON).max(1);
        Self { ranking, argued, acted_on }
    }

    /// Those of the argued causes for which actions are prescribed.
    pub(super) fn acted_on(&self) -> &[usize] {
        self.argued.get(..self.acted_on).unwrap_or(&self.argued)
    }
}

/// Positions of the causes, most probable first; of equals the one declared first.
fn rank(odds: &[Odds]) -> Vec<usize> {
    let mut ranking: Vec<(f64, usize)> =
        odds.iter().enumerate().map(|(position, odds)| (odds.present / odds.absent, position)).collect();
    ranking.sort_by(|(a, _), (b, _)| b.total_cmp(a));
    ranking.into_iter().map(|(_, position)| position).collect()
}
