//! What can be measured, or computed in its stead.

use super::{Key, Named, Quantity, Scope, Source, Symptom, Text};
use crate::units::Unit;

/// The usual low and high limit of a reading, in its unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// Low limit.
    pub low: f64,
    /// High limit.
    pub high: f64,
}

/// A reading.
#[derive(Debug, Clone)]
pub struct Reading {
    /// Id.
    pub id: String,
    /// Title, so that "dough temperature 31.5 °C is above 30 °C" reads well.
    pub title: Text,
    /// What is measured, where and when.
    pub description: Text,
    /// Other words for it.
    pub synonyms: Vec<String>,
    /// The unit that rules use.
    pub unit: Unit,
    /// Physically plausible range; a value outside it is set aside.
    pub plausible: Window,
    /// Usual windows by family or product.
    pub windows: Vec<(Scope, Window)>,
    /// How far past a limit counts fully, in the reading's unit; a quarter of the window when not given.
    pub margin: Option<f64>,
    /// Margins where a family or product differs.
    pub margins: Vec<(Scope, f64)>,
    /// Method, by standard number where there is one.
    pub method: Text,
    /// Minutes to take it.
    pub effort_minutes: f64,
    /// Products it concerns; empty means those of its windows, or all.
    pub products: Vec<Scope>,
    /// Symptom that counts as seen when the value is under its low limit.
    pub low_shows: Option<Key<Symptom>>,
    /// Symptom that counts as seen when the value is over its high limit.
    pub high_shows: Option<Key<Symptom>>,
    /// What stands in when it was not measured.
    pub computed: Option<Quantity>,
    /// Sources of the window and the method.
    pub sources: Vec<Key<Source>>,
}

impl Named for Reading {
    fn id(&self) -> &str {
        &self.id
    }

    fn other_names(&self) -> Vec<&str> {
        std::iter::once(self.title.as_str()).chain(self.synonyms.iter().map(String::as_str)).collect()
    }
}
