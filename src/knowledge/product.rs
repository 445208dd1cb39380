//! Families of products and products.

use super::{Key, Named};
use crate::science::formula::Stage;

/// A family: products that share causes, for example soft rolls.
#[derive(Debug, Clone, PartialEq)]
pub struct Family {
    /// Id.
    pub id: String,
    /// Title for people.
    pub title: String,
    /// Stage of formula lines that name none.
    pub main_stage: Stage,
}

/// A product, for example the hamburger bun.
#[derive(Debug, Clone, PartialEq)]
pub struct Product {
    /// Id.
    pub id: String,
    /// Title for people.
    pub title: String,
    /// What it is, in a sentence.
    pub description: String,
    /// Other words for it.
    pub synonyms: Vec<String>,
    /// The family that it belongs to.
    pub family: Option<Key<Family>>,
}

impl Named for Family {
    fn id(&self) -> &str {
        &self.id
    }
}

impl Named for Product {
    fn id(&self) -> &str {
        &self.id
    }

    fn other_names(&self) -> Vec<&str> {
        std::iter::once(self.title.as_str()).chain(self.synonyms.iter().map(String::as_str)).collect()
    }
}

/// A family with all its products, or one product.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scope {
    /// Every product of the family.
    Family(Key<Family>),
    /// One product.
    Product(Key<Product>),
}

impl Scope {
    /// Whether `product`, of `family`, is meant.
    #[must_use]
    pub fn covers(self, product: Key<Product>, family: Option<Key<Family>>) -> bool {
        match self {
            Self::Family(own) => family == Some(own),
            Self::Product(own) => own == product,
        }
    }
}

/// The entry that fits a product best: its own before its family's.
pub(crate) fn most_specific<T>(
    entries: &[(Scope, T)],
    product: Key<Product>,
    family: Option<Key<Family>>,
) -> Option<&T> {
    let own = entries.iter().find(|(scope, _)| matches!(scope, Scope::Product(key) if *key == product));
    own.or_else(|| entries.iter().find(|(scope, _)| scope.covers(product, family))).map(|(_, value)| value)
}
