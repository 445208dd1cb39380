//! An attempt to exchange the rules, and how it ended.

use std::time::{Duration, SystemTime};

use serde::Serialize;
use utoipa::ToSchema;

use crate::rule_set::RefusedRules;
use crate::rules::Diagnostic;

/// Most diagnostics that an attempt keeps; the rest is counted.
pub const MOST_DIAGNOSTICS: usize = 100;

/// Most diagnostics that are logged.
const MOST_LOGGED: usize = 10;

/// What made the service load its rules again.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Trigger {
    /// A look at the folder, as every few seconds.
    Poll,
    /// A notice of the file system.
    Watch,
    /// The signal SIGHUP.
    Signal,
    /// A request.
    Request,
}

impl Trigger {
    /// The word of the answer of `/v1/rules`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Poll => "poll",
            Self::Watch => "watch",
            Self::Signal => "signal",
            Self::Request => "request",
        }
    }
}

/// One attempt.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Attempt {
    /// When it ended.
    pub at: SystemTime,
    /// What made it.
    pub by: Trigger,
    /// How long reading, loading and testing took.
    pub took: Duration,
    /// How it ended.
    pub outcome: AttemptOutcome,
}

/// How an attempt ended.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AttemptOutcome {
    /// The rules of this version and digest are in force.
    Loaded {
        /// The authors' version.
        version: String,
        /// Hash of the rule files.
        digest: String,
    },
    /// The rules stayed as they were.
    Refused {
        /// The reason in a few words.
        reason: &'static str,
        /// Number of faults and failed expectations.
        count: usize,
        /// The first [`MOST_DIAGNOSTICS`] of them.
        diagnostics: Vec<Diagnostic>,
    },
}

impl AttemptOutcome {
    pub(super) fn refused(refused: RefusedRules) -> Self {
        let RefusedRules { reason, mut diagnostics } = refused;
        let count = diagnostics.len();
        diagnostics.truncate(MOST_DIAGNOSTICS);
        Self::Refused { reason, count, diagnostics }
    }
}

impl Attempt {
    pub(super) fn log(&self) {
        let (by, took_ms) = (self.by.word(), u64::try_from(self.took.as_millis()).unwrap_or(u64::MAX));
        match &self.outcome {
            AttemptOutcome::Loaded { version, digest } => {
                tracing::info!(by, took_ms, version, digest, "rules loaded");
            }
            AttemptOutcome::Refused { reason, count, diagnostics } => {
                for diagnostic in diagnostics.iter().take(MOST_LOGGED) {
                    let place = format!("{}:{}:{}", diagnostic.file, diagnostic.line, diagnostic.column);
                    tracing::warn!(by, place, code = diagnostic.code.word(), "{}", diagnostic.message);
                }
                tracing::error!(by, took_ms, reason, count, "rules refused; those in force stay");
            }
        }
    }
}
