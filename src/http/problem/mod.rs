//! Problems: every error of the service as `application/problem+json` (RFC 9457).

mod entry;
mod kind;

use std::fmt;

use actix_web::http::StatusCode;
use actix_web::{HttpResponse, ResponseError};
use serde::Serialize;
use utoipa::ToSchema;

pub use entry::{ErrorCode, ProblemEntry};
pub use kind::ProblemKind;

use crate::diagnosis::DiagnosisFault;
use crate::inference::FindingsFault;
use crate::json::DocumentFaults;
use crate::rules::Diagnostic;

/// Media type of a problem.
pub const PROBLEM_JSON: &str = "application/problem+json";

/// Why a request is not answered as it was meant.
#[derive(Debug)]
pub struct Problem {
    kind: ProblemKind,
    detail: Option<String>,
    errors: Vec<ProblemEntry>,
    diagnostics: Vec<Diagnostic>,
    headers: Vec<(&'static str, String)>,
}

/// A problem as it is sent.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[schema(as = Problem)]
pub struct ProblemDocument<'p> {
    /// Kind of the problem: a path at which the service explains it.
    #[serde(rename = "type")]
    #[schema(example = "/v1/problems/faulty-case")]
    pub type_uri: String,
    /// What it is, the same for every occurrence of the kind.
    #[schema(example = "the case has faults")]
    pub title: &'static str,
    /// Status code of the answer.
    #[schema(example = 422)]
    pub status: u16,
    /// What happened this time.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub detail: Option<&'p str>,
    /// Every fault of the request.
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    #[schema(required = false)]
    pub errors: &'p [ProblemEntry],
    /// What is wrong with the rules, where the problem is about them; long lists are cut.
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    #[schema(required = false)]
    pub diagnostics: &'p [Diagnostic],
}

impl Problem {
    /// A problem of a kind, without particulars.
    #[must_use]
    pub fn new(kind: ProblemKind) -> Self {
        Self { kind, detail: None, errors: Vec::new(), diagnostics: Vec::new(), headers: Vec::new() }
    }

    /// A failure of the service itself: `reason` goes to the log and not to the caller.
    pub fn internal(reason: impl fmt::Display) -> Self {
        tracing::error!(%reason, "a request failed");
        Self::new(ProblemKind::Internal)
    }

    /// What is wrong with the document of a request: no JSON, or a problem of this kind with every fault.
    pub fn faulty(kind: ProblemKind) -> impl Fn(DocumentFaults) -> Self {
        move |faults| match faults {
            DocumentFaults::Malformed(detail) => Self::new(ProblemKind::MalformedJson).detail(detail),
            DocumentFaults::Faulty(faults) => Self::new(kind).entries(faults.into_iter().map(ProblemEntry::from)),
        }
    }

    /// Says what happened this time.
    #[must_use]
    pub fn detail(self, detail: impl Into<String>) -> Self {
        Self { detail: Some(detail.into()), ..self }
    }

    /// Lists the faults of the request.
    #[must_use]
    pub fn entries(self, errors: impl IntoIterator<Item = ProblemEntry>) -> Self {
        Self { errors: errors.into_iter().collect(), ..self }
    }

    /// Lists what is wrong with rules.
    #[must_use]
    pub fn diagnostics(self, diagnostics: Vec<Diagnostic>) -> Self {
        Self { diagnostics, ..self }
    }

    /// Adds a header field to the answer.
    #[must_use]
    pub fn header(mut self, name: &'static str, value: impl Into<String>) -> Self {
        self.headers.push((name, value.into()));
        self
    }

    /// The problem as it is sent.
    #[must_use]
    pub fn document(&self) -> ProblemDocument<'_> {
        ProblemDocument {
            type_uri: self.kind.type_uri(),
            title: self.kind.title(),
            status: self.kind.status().as_u16(),
            detail: self.detail.as_deref(),
            errors: &self.errors,
            diagnostics: &self.diagnostics,
        }
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.kind.title())
    }
}

impl ResponseError for Problem {
    fn status_code(&self) -> StatusCode {
        self.kind.status()
    }

    fn error_response(&self) -> HttpResponse {
        let mut response = HttpResponse::build(self.status_code());
        response.content_type(PROBLEM_JSON);
        for (name, value) in &self.headers {
            response.insert_header((*name, value.as_str()));
        }
        if self.kind.ends_connection() {
            response.force_close();
        }
        // A document of strings and numbers cannot fail to serialize; were it to, the status still tells the kind.
        response.body(serde_json::to_vec(&self.document()).unwrap_or_default())
    }
}

impl Problem {
    /// A case that cannot be weighed; `symptoms` points at those of the request.
    pub(in crate::http) fn undiagnosable(fault: DiagnosisFault, symptoms: &str) -> Self {
        match fault.0 {
            FindingsFault::TooManySymptoms { .. } => {
                let entry = ProblemEntry::pointer(symptoms, ErrorCode::OutOfRange, fault.to_string());
                let help = "leave out the symptoms that are least certain".to_owned();
                Self::new(ProblemKind::FaultyCase).entries([entry.help(help)])
            }
            // The network and the findings come from the same knowledge: anything else is a slip of ours.
            FindingsFault::UnknownSymptom { .. }
            | FindingsFault::UnknownCause { .. }
            | FindingsFault::ObservedTwice { .. }
            | FindingsFault::Certainty { .. }
            | FindingsFault::Weight { .. }
            | FindingsFault::RepeatedCause { .. }
            | FindingsFault::TooManyCauses { .. } => Self::internal(fault),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Problem;
    use crate::diagnosis::DiagnosisFault;
    use crate::inference::FindingsFault;

    #[test]
    fn too_many_symptoms_are_a_fault_of_the_case() {
        let fault = DiagnosisFault(FindingsFault::TooManySymptoms { count: 18, limit: 16 });
        let problem = Problem::undiagnosable(fault, "/case/symptoms");
        let document = problem.document();
        assert_eq!((document.status, document.errors[0].pointer.as_deref()), (422, Some("/case/symptoms")));
    }

    #[test]
    fn the_reason_of_a_failure_is_not_told() {
        let fault = DiagnosisFault(FindingsFault::UnknownCause { cause: 7 });
        let problem = Problem::undiagnosable(fault, "/symptoms");
        let document = serde_json::to_string(&problem.document()).unwrap();
        assert_eq!(document, r#"{"type":"/v1/problems/internal","title":"the service failed","status":500}"#);
    }
}
