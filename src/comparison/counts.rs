//! How many cases a change of rules touches.

use serde::Serialize;
use utoipa::ToSchema;

use super::case_comparison::Effect;

/// Numbers of cases by what the change does to them.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, ToSchema)]
pub struct EffectCounts {
    /// The same probabilities.
    pub unchanged: usize,
    /// Other probabilities, the same leader.
    pub probabilities: usize,
    /// Another leader.
    pub leader: usize,
    /// Cases that only the old rules take.
    pub newly_refused: usize,
    /// Cases that only the new rules take.
    pub newly_answered: usize,
    /// Cases that neither takes.
    pub refused: usize,
}

impl EffectCounts {
    /// Counts a case.
    pub fn add(&mut self, effect: Effect) {
        let count = match effect {
            Effect::Unchanged => &mut self.unchanged,
            Effect::Probabilities => &mut self.probabilities,
            Effect::Leader => &mut self.leader,
            Effect::NewlyRefused => &mut self.newly_refused,
            Effect::NewlyAnswered => &mut self.newly_answered,
            Effect::Refused => &mut self.refused,
        };
        *count += 1;
    }

    /// All cases.
    #[must_use]
    pub fn total(&self) -> usize {
        self.unchanged + self.probabilities + self.leader + self.newly_refused + self.newly_answered + self.refused
    }
}
