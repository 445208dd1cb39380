//! Cautions that hang on a condition.

use super::{Caution, Condition, Key, Place, Scope};

/// A caution that stands in the answer when its condition holds.
#[derive(Debug, Clone)]
pub struct Warning {
    /// The caution.
    pub caution: Key<Caution>,
    /// When it stands in the answer; `None` only while a pack is loaded.
    pub when: Option<Condition>,
    /// Whether it stands in the answer too while the condition is unknown.
    pub also_when_unknown: bool,
    /// Products that it concerns; empty: all.
    pub products: Vec<Scope>,
    /// Where it is declared.
    pub place: Place,
}
