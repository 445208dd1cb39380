//! What is wrong with a JSON document, and where.

use std::fmt;

use serde::Serialize;
use utoipa::ToSchema;

/// Kind of a fault; the word is stable.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FaultCode {
    /// A member that is needed is not there.
    Missing,
    /// A member that is not known here.
    UnknownMember,
    /// An id or word that is not known.
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

/// One fault.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Fault {
    /// JSON Pointer (RFC 6901) to the faulty place; empty for the whole document.
    #[schema(example = "/readings/dough_temperature/unit")]
    pub pointer: String,
    /// Kind of the fault.
    pub code: FaultCode,
    /// What is wrong, lower case, without a full stop.
    #[schema(example = "unknown unit `celsius`")]
    pub detail: String,
    /// What to do about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "write `Cel`")]
    pub help: Option<String>,
}

/// Why a text is not the document that it should be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum DocumentFaults {
    /// It is no JSON; line and column are in the message.
    Malformed(String),
    /// It is JSON with these faults.
    Faulty(Vec<Fault>),
}

impl fmt::Display for DocumentFaults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Malformed(message) => write!(f, "this is not JSON: {message}"),
            Self::Faulty(faults) => {
                let lines: Vec<String> =
                    faults.iter().map(|fault| format!("{}: {}", fault.pointer, fault.detail)).collect();
                f.write_str(&lines.join("\n"))
            }
        }
    }
}

impl std::error::Error for DocumentFaults {}
