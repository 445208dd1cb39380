//! Sources and cautions.

use super::{Key, Market, Named, Text};

/// How far a source can be trusted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Provenance {
    /// A publication that was read.
    Published,
    /// A rule of thumb of the trade.
    CommonPractice,
    /// A named work, quoted from memory.
    FromMemory,
}

impl Provenance {
    /// The word for it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::CommonPractice => "common practice",
            Self::FromMemory => "from memory",
        }
    }
}

/// Where a figure or a claim comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Source {
    /// Id.
    pub id: String,
    /// Author, title, year, table.
    pub citation: Text,
    /// How far it can be trusted.
    pub provenance: Provenance,
}

/// A warning about what may hurt people.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Caution {
    /// Id.
    pub id: String,
    /// The warning.
    pub text: Text,
    /// Whether it stands in every answer.
    pub always: bool,
    /// Markets whose law it tells; empty: it holds everywhere.
    pub jurisdiction: Vec<Key<Market>>,
    /// Sources.
    pub sources: Vec<Key<Source>>,
}

impl Named for Source {
    fn id(&self) -> &str {
        &self.id
    }
}

impl Named for Caution {
    fn id(&self) -> &str {
        &self.id
    }
}
