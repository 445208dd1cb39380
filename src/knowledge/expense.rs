//! What an action costs beside the time that it takes.

use super::Action;

/// Minutes of effort that one lost batch weighs as much as: its flour and the labour to make it again (common practice).
pub const MINUTES_PER_BATCH: f64 = 60.0;

/// Minutes until the next batch is baked and looked at: what any action takes before one knows whether it was the right one
/// (common practice; that the check counts as part of a repair: Heckerman, Breese and Rommelse 1995).
const MINUTES_TO_SEE: f64 = 30.0;

/// A class of cost, declared by a scale.
#[derive(Debug, Clone, PartialEq)]
pub struct Cost {
    /// Word of the scale, for example `PURCHASE`.
    pub word: String,
    /// Minutes of effort that weigh as much.
    pub minutes: f64,
}

impl Action {
    /// What it takes in all, minutes: its effort, what its cost and its waste weigh, and the next batch that shows whether it
    /// helped. What is not stated counts nothing.
    #[must_use]
    pub fn expense_minutes(&self) -> f64 {
        let cost = self.cost.as_ref().map_or(0.0, |cost| cost.minutes);
        self.effort_minutes + MINUTES_TO_SEE + cost + self.waste_batches.unwrap_or(0.0) * MINUTES_PER_BATCH
    }
}

#[cfg(test)]
mod tests {
    use super::Cost;
    use crate::knowledge::{Action, Text};

    fn action(cost: Option<f64>, waste_batches: Option<f64>) -> Action {
        Action {
            id: "a".to_owned(),
            title: Text::default(),
            text: Text::default(),
            effort_minutes: 20.0,
            cost: cost.map(|minutes| Cost { word: "WORD".to_owned(), minutes }),
            waste_batches,
            side_effects: Vec::new(),
            may_show: Vec::new(),
            uses: Vec::new(),
            not_for: Vec::new(),
            instead: Vec::new(),
            undoes: Vec::new(),
            at_once: false,
            cautions: Vec::new(),
            sources: Vec::new(),
        }
    }

    #[test]
    fn effort_cost_and_waste_add_up_and_what_is_unknown_counts_nothing() {
        let minutes = |cost, waste| action(cost, waste).expense_minutes();
        assert!((minutes(None, None) - 50.0).abs() < 1e-12);
        assert!((minutes(Some(240.0), None) - 290.0).abs() < 1e-12);
        assert!((minutes(Some(240.0), Some(0.5)) - 320.0).abs() < 1e-12);
    }
}
