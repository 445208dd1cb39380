//! Yes-or-no facts about the line or the ingredients.

use super::{Named, Scope, Text};

/// A fact that somebody can state.
#[derive(Debug, Clone, PartialEq)]
pub struct Fact {
    /// Id.
    pub id: String,
    /// Title, so that "stated: dough waits before the divider" reads well.
    pub title: Text,
    /// The question to ask.
    pub question: Text,
    /// Products it concerns; empty means all.
    pub products: Vec<Scope>,
    /// Minutes to find out.
    pub effort_minutes: f64,
}

impl Named for Fact {
    fn id(&self) -> &str {
        &self.id
    }

    fn other_names(&self) -> Vec<&str> {
        vec![&self.title]
    }
}
