//! Yes-or-no facts about the line or the ingredients.

use super::{Condition, Named, Scope, Text};

/// A fact that somebody can state.
#[derive(Debug, Clone)]
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
    /// What a formula has when it holds: where nobody states the fact, the formula answers.
    pub answered_by: Option<Condition>,
}

impl Named for Fact {
    fn id(&self) -> &str {
        &self.id
    }

    fn other_names(&self) -> Vec<&str> {
        vec![&self.title]
    }
}
