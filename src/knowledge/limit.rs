//! Limits that the law of a market sets.

use super::{Key, Market, Named, Quantity, Scope, Source, Text};
use crate::units::Unit;

/// A most that the law allows.
#[derive(Debug, Clone)]
pub struct Limit {
    /// Id.
    pub id: String,
    /// What the law says, and of which goods.
    pub text: Text,
    /// Markets whose law it is.
    pub markets: Vec<Key<Market>>,
    /// Products that it concerns; empty: all.
    pub products: Vec<Scope>,
    /// What is limited; `None` only while a pack is loaded.
    pub quantity: Option<Quantity>,
    /// The most that is allowed, in `unit`.
    pub most: f64,
    /// Unit of the quantity.
    pub unit: Unit,
    /// Sources.
    pub sources: Vec<Key<Source>>,
}

impl Named for Limit {
    fn id(&self) -> &str {
        &self.id
    }
}
