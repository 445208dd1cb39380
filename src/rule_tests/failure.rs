//! What an answer did not meet.

use std::fmt::Write;

use serde::Serialize;
use utoipa::ToSchema;

use crate::rules::{Code, Diagnostic, Severity};

/// An expectation of a rule test that the answer does not meet.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Failure {
    /// File of the test within the pack.
    #[schema(example = "soft_rolls/cases/hollow_top_heat.json")]
    pub file: String,
    /// Line of the expectation, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// Number of characters that are meant, from `column` on.
    pub width: usize,
    /// The line itself.
    pub source_line: String,
    /// Title of the test.
    pub title: String,
    /// Name of the expectation in the file; `case` when the case could not be diagnosed at all.
    #[schema(example = "leader")]
    pub expectation: &'static str,
    /// What was wanted, in words.
    #[schema(example = "`dough_too_warm` first")]
    pub wanted: String,
    /// What came instead, in words.
    #[schema(example = "`proof_too_short`")]
    pub found: String,
    /// The first three causes of the answer.
    pub leading: Vec<LeadingCause>,
}

/// A cause that leads an answer.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct LeadingCause {
    /// Id of the cause.
    pub cause: String,
    /// Its probability.
    pub probability: f64,
}

impl Failure {
    /// The failure as a message about the file of the test.
    #[must_use]
    pub fn diagnostic(&self) -> Diagnostic {
        Diagnostic {
            code: Code::FailedTest,
            severity: Severity::Fault,
            file: self.file.clone(),
            line: self.line,
            column: self.column,
            width: self.width,
            source_line: self.source_line.clone(),
            message: format!("`{}`: wanted {}, came {}", self.expectation, self.wanted, self.found),
            help: self.first_causes(),
        }
    }

    /// The first causes with their probabilities.
    fn first_causes(&self) -> Option<String> {
        let mut text = "the first causes are".to_owned();
        for (place, LeadingCause { cause, probability }) in self.leading.iter().enumerate() {
            let comma = if place == 0 { "" } else { "," };
            let _ = write!(text, "{comma} `{cause}` {probability:.3}");
        }
        (!self.leading.is_empty()).then_some(text)
    }
}
