//! A text of an answer: the rules' own, or made for the case.

use std::fmt;
use std::ops::Deref;

use serde::{Serialize, Serializer};

use crate::knowledge::Text;

/// A text of an answer.
#[derive(Debug, Clone)]
pub enum Said<'k> {
    /// Stands in the rules, or follows from them alone.
    Always(&'k Text),
    /// Made for the case.
    Now(String),
}

impl Deref for Said<'_> {
    type Target = str;

    fn deref(&self) -> &str {
        match self {
            Self::Always(text) => text,
            Self::Now(text) => text,
        }
    }
}

impl fmt::Display for Said<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self)
    }
}

impl Serialize for Said<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Always(text) => text.serialize(serializer),
            Self::Now(text) => text.serialize(serializer),
        }
    }
}
