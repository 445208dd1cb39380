//! One fault of a request, as an entry of `errors`.

use serde::Serialize;
use utoipa::ToSchema;

use crate::case::{Fault, FaultCode};

/// Kind of an entry; the word is stable.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ErrorCode {
    /// A member that is needed is not there.
    Missing,
    /// A member that a case does not have.
    UnknownMember,
    /// A query parameter that the route does not take.
    UnknownParameter,
    /// An id that the rules do not declare.
    UnknownName,
    /// A value of another JSON type.
    WrongType,
    /// A value outside the range that it can have.
    OutOfRange,
    /// A unit that is no UCUM code.
    UnknownUnit,
    /// A unit that measures something else.
    WrongKindOfUnit,
    /// The same thing twice.
    Duplicate,
    /// Two statements that cannot both hold.
    Contradiction,
    /// A value from which nothing can be computed, by itself or beside the others.
    Impossible,
}

impl From<FaultCode> for ErrorCode {
    fn from(code: FaultCode) -> Self {
        match code {
            FaultCode::Missing => Self::Missing,
            FaultCode::UnknownMember => Self::UnknownMember,
            FaultCode::UnknownName => Self::UnknownName,
            FaultCode::WrongType => Self::WrongType,
            FaultCode::OutOfRange => Self::OutOfRange,
            FaultCode::UnknownUnit => Self::UnknownUnit,
            FaultCode::WrongKindOfUnit => Self::WrongKindOfUnit,
            FaultCode::Duplicate => Self::Duplicate,
            FaultCode::Contradiction => Self::Contradiction,
            FaultCode::Impossible => Self::Impossible,
        }
    }
}

/// One fault: at a `pointer` into the body, or in a `parameter` of the query.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
#[schema(as = ProblemEntry)]
pub struct ProblemEntry {
    /// JSON Pointer (RFC 6901) to the faulty place of the body; empty for the whole body.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "/readings/dough_temperature/unit")]
    pub pointer: Option<String>,
    /// Name of the faulty query parameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "product")]
    pub parameter: Option<String>,
    /// Kind of the fault.
    pub code: ErrorCode,
    /// What is wrong, lower case, without a full stop.
    #[schema(example = "unknown unit `celsius`")]
    pub detail: String,
    /// What to do about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "write `Cel`")]
    pub help: Option<String>,
}

impl ProblemEntry {
    /// A fault at a place of the body.
    #[must_use]
    pub fn pointer(pointer: &str, code: ErrorCode, detail: String) -> Self {
        Self { pointer: Some(pointer.to_owned()), parameter: None, code, detail, help: None }
    }

    /// A fault of a query parameter.
    #[must_use]
    pub fn parameter(name: &str, code: ErrorCode, detail: String) -> Self {
        Self { pointer: None, parameter: Some(name.to_owned()), code, detail, help: None }
    }

    /// Adds what to do about it.
    #[must_use]
    pub fn help(self, help: String) -> Self {
        Self { help: Some(help), ..self }
    }
}

impl From<Fault> for ProblemEntry {
    fn from(fault: Fault) -> Self {
        Self {
            pointer: Some(fault.pointer),
            parameter: None,
            code: fault.code.into(),
            detail: fault.detail,
            help: fault.help,
        }
    }
}
