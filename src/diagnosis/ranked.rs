//! The causes that an answer argues for, each with its arguments, actions and checks.

use super::advice::Advising;
use super::answer::{ExcludedAction, RankedCause, RuleFault};
use super::arguments::Arguing;
use super::leading::Leading;
use crate::inference::Posterior;

/// The argued causes, and what they may not do.
pub(super) struct Ranked<'k> {
    pub(super) causes: Vec<RankedCause<'k>>,
    /// Actions that the requirements exclude.
    pub(super) excluded_actions: Vec<ExcludedAction<'k>>,
}

/// Argues for the leading causes; calculations that fail go to `rule_faults`.
pub(super) fn ranked<'k>(
    leading: &Leading,
    arguing: &Arguing<'_, 'k>,
    advising: Advising<'_, 'k>,
    posterior: &Posterior<'_>,
    rule_faults: &mut Vec<RuleFault>,
) -> Ranked<'k> {
    let view = advising.view;
    let mut excluded_actions = Vec::new();
    let told = |(rank, position): (usize, &usize)| {
        let key = *view.causes.get(*position)?;
        let cause = &advising.declared().causes[key];
        let actions = if leading.acted_on().contains(position) {
            advising.actions(cause, &mut excluded_actions, rule_faults)
        } else {
            Vec::new()
        };
        Some(RankedCause {
            cause: &cause.id,
            title: &cause.title,
            mechanism: &cause.mechanism,
            prior: view.priors.get(*position).copied().unwrap_or(0.0),
            probability: probability(posterior, *position),
            evidence: arguing.arguments(cause, rank),
            actions,
            confirm: advising.confirmations(key),
            sources: advising.sources(&cause.sources),
        })
    };
    let causes = leading.argued.iter().enumerate().filter_map(told).collect();
    Ranked { causes, excluded_actions }
}

/// Probability of the cause at a position.
pub(super) fn probability(posterior: &Posterior<'_>, cause: usize) -> f64 {
    posterior.odds().get(cause).map_or(0.0, |odds| odds.probability())
}
