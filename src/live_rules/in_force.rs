//! The rules that answers are made with, exchanged as one.

use std::fmt;
use std::sync::Arc;
use std::time::SystemTime;

use arc_swap::{ArcSwap, ArcSwapOption};

use super::attempt::Attempt;
use crate::diagnosis::Diagnostician;
use crate::intake::Intake;
use crate::rule_set::RuleSet;
use crate::rules::RuleFiles;

/// Rules in force, and since when.
pub struct RulesInForce {
    /// Diagnoses cases with these rules.
    pub diagnostician: Diagnostician,
    /// Takes complaints for what these rules know.
    pub intake: Intake,
    /// The text they were made from.
    pub files: RuleFiles,
    /// When they were loaded.
    pub loaded_at: SystemTime,
}

/// Holds the [`RulesInForce`]; they are exchanged as one.
pub struct LiveRules {
    current: ArcSwap<RulesInForce>,
    last_attempt: ArcSwapOption<Attempt>,
}

impl LiveRules {
    /// Starts with rules that were loaded at `loaded_at`.
    #[must_use]
    pub fn new(rules: RuleSet, loaded_at: SystemTime) -> Self {
        Self {
            current: ArcSwap::from_pointee(RulesInForce::new(rules, loaded_at)),
            last_attempt: ArcSwapOption::empty(),
        }
    }

    /// The rules in force now. Whoever asks keeps them, also when they are exchanged meanwhile.
    #[must_use]
    pub fn current(&self) -> Arc<RulesInForce> {
        self.current.load_full()
    }

    /// Puts other rules in force, for requests that come from now on.
    pub fn replace(&self, rules: RuleSet, loaded_at: SystemTime) {
        self.current.store(Arc::new(RulesInForce::new(rules, loaded_at)));
    }

    /// The last attempt to exchange the rules; `None` when there was none.
    #[must_use]
    pub fn last_attempt(&self) -> Option<Arc<Attempt>> {
        self.last_attempt.load_full()
    }

    pub(super) fn record(&self, attempt: Arc<Attempt>) {
        self.last_attempt.store(Some(attempt));
    }
}

impl RulesInForce {
    fn new(rules: RuleSet, loaded_at: SystemTime) -> Self {
        let RuleSet { files, diagnostician, intake, .. } = rules;
        Self { diagnostician, intake, files, loaded_at }
    }
}

impl fmt::Debug for LiveRules {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let rules = self.current();
        f.debug_tuple("LiveRules").field(&rules.diagnostician.knowledge().declared.pack.digest).finish()
    }
}

impl fmt::Debug for RulesInForce {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("RulesInForce").field("loaded_at", &self.loaded_at).finish_non_exhaustive()
    }
}
