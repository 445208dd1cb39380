//! What can be wrong with findings, or with a question about them.

use std::fmt;

/// Why a question about a case cannot be answered.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FindingsFault {
    /// More present or uncertain symptoms than the exact method takes.
    TooManySymptoms {
        /// How many there are.
        count: usize,
        /// How many there may be.
        limit: usize,
    },
    /// A symptom index beyond the network.
    UnknownSymptom {
        /// The index.
        symptom: usize,
    },
    /// A cause index beyond the network.
    UnknownCause {
        /// The index.
        cause: usize,
    },
    /// A symptom that is observed twice, or asked about although it is observed.
    ObservedTwice {
        /// The symptom.
        symptom: usize,
    },
    /// A certainty outside 0 to 1.
    Certainty {
        /// The symptom.
        symptom: usize,
        /// The certainty given.
        certainty: f64,
    },
    /// A weight of evidence that is not a number.
    Weight {
        /// The cause it is for.
        cause: usize,
    },
    /// A cause named twice where distinct causes are needed.
    RepeatedCause {
        /// The cause.
        cause: usize,
    },
    /// More causes than a joint probability is given for.
    TooManyCauses {
        /// How many there are.
        count: usize,
        /// How many there may be.
        limit: usize,
    },
}

impl fmt::Display for FindingsFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooManySymptoms { count, limit } => {
                write!(f, "{count} symptoms are present or uncertain; exact inference takes at most {limit}")
            }
            Self::UnknownSymptom { symptom } => write!(f, "there is no symptom {symptom}"),
            Self::UnknownCause { cause } => write!(f, "there is no cause {cause}"),
            Self::ObservedTwice { symptom } => write!(f, "symptom {symptom} is observed already"),
            Self::Certainty { symptom, certainty } => {
                write!(f, "certainty {certainty} of symptom {symptom} is not between 0 and 1")
            }
            Self::Weight { cause } => write!(f, "a weight of evidence for cause {cause} is not a number"),
            Self::RepeatedCause { cause } => write!(f, "cause {cause} is named twice"),
            Self::TooManyCauses { count, limit } => {
                write!(f, "a joint probability of {count} causes is asked for; at most {limit} are given")
            }
        }
    }
}

impl std::error::Error for FindingsFault {}
