//! The rules that answers are made with, and their exchange while requests run.

use std::fmt;
use std::sync::Arc;
use std::time::SystemTime;

use arc_swap::ArcSwap;

use crate::diagnosis::Diagnostician;

/// Rules in force, and since when.
pub struct RulesInForce {
    /// Diagnoses cases with these rules.
    pub diagnostician: Diagnostician,
    /// When they were loaded.
    pub loaded_at: SystemTime,
}

/// Holds the [`RulesInForce`]; they are exchanged as one.
pub struct LiveRules(ArcSwap<RulesInForce>);

impl LiveRules {
    /// Starts with rules that were loaded at `loaded_at`.
    #[must_use]
    pub fn new(diagnostician: Diagnostician, loaded_at: SystemTime) -> Self {
        Self(ArcSwap::from_pointee(RulesInForce { diagnostician, loaded_at }))
    }

    /// The rules in force now. Whoever asks keeps them, also when they are exchanged meanwhile.
    #[must_use]
    pub fn current(&self) -> Arc<RulesInForce> {
        self.0.load_full()
    }

    /// Puts other rules in force, for requests that come from now on.
    pub fn replace(&self, diagnostician: Diagnostician, loaded_at: SystemTime) {
        self.0.store(Arc::new(RulesInForce { diagnostician, loaded_at }));
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
