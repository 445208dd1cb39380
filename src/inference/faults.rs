//! What is refused: numbers of a network or of a reading, findings, questions about a case.

use std::fmt;

use super::network::{Link, MIN_LEAK};
use super::reading::MAX_READING_CAUSES;

/// What is wrong with the numbers of a network.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NetworkFault {
    /// A prior is not strictly between 0 and 1.
    Prior {
        /// Index of the cause.
        cause: usize,
        /// The prior given.
        value: f64,
    },
    /// A leak is below [`MIN_LEAK`] or not below 1.
    Leak {
        /// Index of the symptom.
        symptom: usize,
        /// The leak given.
        value: f64,
    },
    /// A strength is not strictly between 0 and 1.
    Strength {
        /// The link at fault.
        link: Link,
    },
    /// A link names a cause or a symptom that is not there.
    UnknownEnd {
        /// The link at fault.
        link: Link,
    },
    /// The same cause and symptom are linked twice.
    Duplicate {
        /// The later of the two links.
        link: Link,
    },
}

impl fmt::Display for NetworkFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Prior { cause, value } => {
                write!(f, "prior {value} of cause {cause} is not between 0 and 1")
            }
            Self::Leak { symptom, value } => {
                write!(f, "leak {value} of symptom {symptom} is not between {MIN_LEAK} and 1")
            }
            Self::Strength { link: Link { cause, symptom, strength } } => {
                write!(f, "strength {strength} of cause {cause} for symptom {symptom} is not between 0 and 1")
            }
            Self::UnknownEnd { link: Link { cause, symptom, .. } } => {
                write!(f, "a link joins cause {cause} and symptom {symptom}, which are not both declared")
            }
            Self::Duplicate { link: Link { cause, symptom, .. } } => {
                write!(f, "cause {cause} is linked to symptom {symptom} twice")
            }
        }
    }
}

impl std::error::Error for NetworkFault {}

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
    /// A weight of evidence that is not a finite number.
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
            Self::Weight { cause } => write!(f, "a weight of evidence for cause {cause} is not a finite number"),
            Self::RepeatedCause { cause } => write!(f, "cause {cause} is named twice"),
            Self::TooManyCauses { count, limit } => {
                write!(f, "a joint probability of {count} causes is asked for; at most {limit} are given")
            }
        }
    }
}

impl std::error::Error for FindingsFault {}

/// What is wrong with the numbers of a reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ReadingFault {
    /// A usual share is not above 0, or the shares do not add up to 1.
    Usual {
        /// What the shares add up to.
        sum: f64,
    },
    /// A cause has not one weight a region, or one that is not a finite number.
    Weights {
        /// The cause.
        cause: usize,
    },
    /// A cause is named twice.
    RepeatedCause {
        /// The cause.
        cause: usize,
    },
    /// More than [`MAX_READING_CAUSES`] causes.
    TooManyCauses {
        /// How many there are.
        count: usize,
    },
}

impl fmt::Display for ReadingFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Usual { sum } => {
                write!(f, "usual shares must be above 0 and add up to 1; these add up to {sum}")
            }
            Self::Weights { cause } => {
                write!(f, "cause {cause} needs one finite weight for each region of the reading")
            }
            Self::RepeatedCause { cause } => {
                write!(f, "cause {cause} is named twice in one reading")
            }
            Self::TooManyCauses { count } => {
                write!(f, "a reading bears on {count} causes; at most {MAX_READING_CAUSES} are taken")
            }
        }
    }
}

impl std::error::Error for ReadingFault {}
