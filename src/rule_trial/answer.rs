//! What a trial tells.

use serde::Serialize;
use utoipa::ToSchema;

use crate::case::Fault;
use crate::comparison::{CaseComparison, Effect, EffectCounts, ProbabilityChange};
use crate::rule_tests::{Failure, LeadingCause};
use crate::rules::Diagnostic;

/// What a trial of changed rules tells.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct TrialAnswer {
    /// The rules in force, which the trial leaves alone.
    pub rules: TrialRules,
    /// The rules on trial, when they can be loaded.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub trial: Option<TrialRules>,
    /// What is wrong with the rules on trial and their tests, and what is probably not meant as it stands; long lists are
    /// cut.
    pub diagnostics: Vec<Diagnostic>,
    /// Number of diagnostics that were cut off.
    pub diagnostics_left_out: usize,
    /// What the rule tests gave, when the rules can be loaded.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tests: Option<TrialTests>,
    /// How many cases the change touches, those of the rule tests and those of the request.
    pub counts: EffectCounts,
    /// Every case that the change touches: other leaders first, then the largest changes.
    pub rankings: Vec<TrialRanking>,
}

/// A set of rules.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct TrialRules {
    /// The authors' version.
    #[schema(example = "0.1.0")]
    pub version: String,
    /// Hash of the rule files.
    #[schema(example = "sha256:…")]
    pub digest: String,
}

/// What rule tests gave.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct TrialTests {
    /// Number of tests whose expectations were all met.
    pub passed: usize,
    /// Every expectation that was not met.
    pub failed: Vec<Failure>,
}

/// A case that the change touches.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct TrialRanking {
    /// Which case.
    pub case: TrialCase,
    /// What the change does to it.
    pub effect: Effect,
    /// Whether another cause leads; `false` when one of the two sets of rules refuses the case.
    pub leader_changed: bool,
    /// The first three causes with the rules in force.
    pub before: Vec<LeadingCause>,
    /// The first three causes with the rules on trial.
    pub after: Vec<LeadingCause>,
    /// The cause whose probability changes most, if any does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub largest_change: Option<ProbabilityChange>,
    /// Why the rules in force refuse the case.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub refused_before: Vec<Fault>,
    /// Why the rules on trial refuse the case.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub refused_after: Vec<Fault>,
}

impl TrialRanking {
    pub(super) fn new(case: TrialCase, comparison: CaseComparison) -> Self {
        // One member each, for a schema cannot be closed around a part of an object.
        let CaseComparison { effect, leader_changed, before, after, largest_change, refused_before, refused_after } =
            comparison;
        Self { case, effect, leader_changed, before, after, largest_change, refused_before, refused_after }
    }

    /// How far the probability that moves most moves, 0 to 1.
    pub(super) fn size(&self) -> f64 {
        self.largest_change.as_ref().map_or(0.0, ProbabilityChange::size)
    }
}

/// Which case: one of the two members is there.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, ToSchema)]
pub struct TrialCase {
    /// File of the rule test that holds it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "soft_rolls/cases/hollow_top_heat.json")]
    pub file: Option<String>,
    /// Place among the cases of the request, from 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub index: Option<usize>,
}
