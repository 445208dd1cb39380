//! What people see, feel or taste.

use super::{Caution, Key, Named, Scope, Text};

/// A symptom.
#[derive(Debug, Clone, PartialEq)]
pub struct Symptom {
    /// Id.
    pub id: String,
    /// Title for people.
    pub title: Text,
    /// How a non-expert recognises it.
    pub description: Text,
    /// Part of the product: crust, crumb, shape, volume, flavour, keeping, dough, filling.
    pub part: String,
    /// Products that can show it.
    pub products: Vec<Scope>,
    /// Other words for it.
    pub synonyms: Vec<String>,
    /// Probability that it is seen though no modelled cause is at work, 1e-6 to below 1.
    pub leak: f64,
    /// Symptoms that cannot be present together with it.
    pub contradicts: Vec<Key<Symptom>>,
    /// Cautions to give when it is seen.
    pub cautions: Vec<Key<Caution>>,
}

impl Named for Symptom {
    fn id(&self) -> &str {
        &self.id
    }

    fn other_names(&self) -> Vec<&str> {
        std::iter::once(self.title.as_str()).chain(self.synonyms.iter().map(String::as_str)).collect()
    }
}
