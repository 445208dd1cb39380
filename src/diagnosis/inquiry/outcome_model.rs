//! The outcomes of readings and facts as numbers, for programs that simulate cases.

use super::super::circumstances::lay_out;
use super::super::diagnostician::Diagnostician;
use crate::case::Case;
use crate::knowledge::Input;

/// How an open reading or fact turns out, by the causes that are at work.
///
/// P(outcome | causes) is proportional to its usual share times 10 to the power of the weights of the causes that are
/// present.
#[derive(Debug, Clone)]
pub struct OutcomeModel {
    /// The reading or fact.
    pub input: Input,
    /// Minutes to find it out.
    pub effort_minutes: f64,
    /// Its outcomes.
    pub outcomes: Vec<ModelledOutcome>,
}

/// One outcome of a reading or fact.
#[derive(Debug, Clone)]
pub struct ModelledOutcome {
    /// A value of the reading in its unit that stands for the outcome; of a fact 1 is yes.
    pub value: f64,
    /// How usual it is when none of the causes is at work.
    pub usual: f64,
    /// Weight, log10 of the likelihood ratio, by position in [`ProductView::causes`](crate::knowledge::ProductView::causes).
    pub weights: Vec<(usize, f64)>,
}

impl Diagnostician {
    /// How the readings and facts that a case leaves open turn out, in the order in which the rules need them.
    #[must_use]
    pub fn outcome_models(&self, case: &Case) -> Vec<OutcomeModel> {
        let knowledge = self.knowledge();
        let view = knowledge.view(case.product);
        let mut circumstances = lay_out(case, knowledge, view).circumstances;
        let open = self.model(view).candidates.iter();
        let mut models = Vec::new();
        for candidate in open {
            if circumstances.knows(candidate.input) {
                continue;
            }
            let weights = candidate.weights_in(knowledge, view, &mut circumstances);
            let outcomes = candidate.samples.iter().zip(&candidate.usual).enumerate();
            let outcomes = outcomes.map(|(region, (&value, &usual))| ModelledOutcome {
                value,
                usual,
                weights: weights.iter().filter_map(|(cause, all)| Some((*cause, *all.get(region)?))).collect(),
            });
            let (input, effort_minutes) = (candidate.input, candidate.minutes);
            models.push(OutcomeModel { input, effort_minutes, outcomes: outcomes.collect() });
        }
        models
    }
}
