//! Diets, allergens and markets that a case may require.

use super::Named;

/// A diet, for example halal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Diet {
    /// Id.
    pub id: String,
    /// Title for people.
    pub title: String,
}

/// An allergen, for example milk.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Allergen {
    /// Id.
    pub id: String,
    /// Title for people.
    pub title: String,
}

/// A market whose law applies.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Market {
    /// Id, for example `EU`.
    pub id: String,
    /// Title for people.
    pub title: String,
}

impl Named for Diet {
    fn id(&self) -> &str {
        &self.id
    }
}

impl Named for Allergen {
    fn id(&self) -> &str {
        &self.id
    }
}

impl Named for Market {
    fn id(&self) -> &str {
        &self.id
    }
}
