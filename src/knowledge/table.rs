//! Typed indices and the tables that they index.

use std::collections::HashMap;
use std::fmt;
use std::hash::{Hash, Hasher};
use std::marker::PhantomData;
use std::ops::Index;

/// A declared thing that has an id.
pub trait Named {
    /// Its id, `snake_case`, unique within the pack.
    fn id(&self) -> &str;

    /// What people may call it instead: titles and synonyms.
    fn other_names(&self) -> Vec<&str> {
        Vec::new()
    }
}

/// Position of a `T` in its [`Table`]; a key is only meaningful with the knowledge that gave it.
pub struct Key<T> {
    index: u32,
    of: PhantomData<fn() -> T>,
}

impl<T> Key<T> {
    pub(crate) fn new(index: usize) -> Self {
        // A pack with four thousand million declarations would not fit in memory.
        Self { index: u32::try_from(index).unwrap_or(u32::MAX), of: PhantomData }
    }

    /// Zero-based position in the table.
    #[must_use]
    pub fn index(self) -> usize {
        self.index as usize
    }
}

impl<T> Clone for Key<T> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<T> Copy for Key<T> {}
impl<T> PartialEq for Key<T> {
    fn eq(&self, other: &Self) -> bool {
        self.index == other.index
    }
}
impl<T> Eq for Key<T> {}
impl<T> PartialOrd for Key<T> {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}
impl<T> Ord for Key<T> {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.index.cmp(&other.index)
    }
}
impl<T> Hash for Key<T> {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.index.hash(state);
    }
}
impl<T> fmt::Debug for Key<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "#{}", self.index)
    }
}

/// All declared `T`s, in order of declaration, found by key or by id.
#[derive(Debug, Clone)]
pub struct Table<T> {
    items: Vec<T>,
    by_id: HashMap<String, u32>,
}

impl<T> Default for Table<T> {
    fn default() -> Self {
        Self { items: Vec::new(), by_id: HashMap::new() }
    }
}

impl<T: Named> Table<T> {
    /// Appends an item; a later item with the same id is found under that id.
    pub fn push(&mut self, item: T) -> Key<T> {
        let key = Key::new(self.items.len());
        self.by_id.insert(item.id().to_owned(), key.index);
        self.items.push(item);
        key
    }

    /// The key of an id.
    #[must_use]
    pub fn find(&self, id: &str) -> Option<Key<T>> {
        self.by_id.get(id).map(|&index| Key::new(index as usize))
    }

    /// Items with their keys, in order of declaration.
    pub fn iter(&self) -> impl Iterator<Item = (Key<T>, &T)> {
        self.items.iter().enumerate().map(|(index, item)| (Key::new(index), item))
    }

    /// The item of a key, to be completed while a pack is loaded.
    pub(crate) fn get_mut(&mut self, key: Key<T>) -> Option<&mut T> {
        self.items.get_mut(key.index())
    }

    /// All keys, in order of declaration.
    pub fn keys(&self) -> impl Iterator<Item = Key<T>> + use<T> {
        (0..self.items.len()).map(Key::new)
    }

    /// All ids, in order of declaration.
    pub fn ids(&self) -> impl Iterator<Item = &str> {
        self.items.iter().map(Named::id)
    }

    /// Number of items.
    #[must_use]
    pub fn len(&self) -> usize {
        self.items.len()
    }

    /// Whether nothing is declared.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.items.is_empty()
    }
}

impl<T> Index<Key<T>> for Table<T> {
    type Output = T;

    // A key comes from the table that it indexes: tables only grow, so it stays in range.
    #[allow(clippy::indexing_slicing)]
    fn index(&self, key: Key<T>) -> &T {
        &self.items[key.index()]
    }
}
