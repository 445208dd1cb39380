//! Checked inputs of one run.

use crate::science::Nonsense;

/// A checked input.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// A number, in the input's unit.
    Number(f64),
    /// A word of a choice.
    Word(&'static str),
    /// Yes or no.
    Boolean(bool),
    /// A name.
    Text(String),
    /// Components with their shares, %; only those that were given.
    Composition(Vec<(&'static str, f64)>),
    /// Rows.
    Rows(Vec<Values>),
}

/// Checked inputs by name; what may be left out can be missing.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Values(Vec<(&'static str, Value)>);

impl Values {
    /// Adds an input.
    pub fn set(&mut self, name: &'static str, value: Value) {
        self.0.push((name, value));
    }

    fn get(&self, name: &str) -> Option<&Value> {
        self.0.iter().find(|(own, _)| *own == name).map(|(_, value)| value)
    }

    /// A number; not a number when it is missing, which the science refuses.
    pub(super) fn number(&self, name: &str) -> f64 {
        self.optional(name).unwrap_or(f64::NAN)
    }

    /// A number that may be missing.
    pub(super) fn optional(&self, name: &str) -> Option<f64> {
        match self.get(name) {
            Some(Value::Number(number)) => Some(*number),
            _ => None,
        }
    }

    /// What a word stands for.
    ///
    /// # Errors
    /// When the word is missing or stands for nothing.
    pub(super) fn choice<T: Copy>(&self, name: &str, meanings: &[(&str, T)]) -> Result<T, Nonsense> {
        let word = self.word(name).unwrap_or_default();
        let found = meanings.iter().find(|(own, _)| *own == word).map(|(_, meaning)| *meaning);
        found.ok_or_else(|| nonsense(name, format!("`{word}` stands for nothing here")))
    }

    /// The word of a choice that may be missing.
    pub(super) fn word(&self, name: &str) -> Option<&'static str> {
        match self.get(name) {
            Some(Value::Word(word)) => Some(word),
            _ => None,
        }
    }

    /// Yes or no; no when it is missing.
    pub(super) fn boolean(&self, name: &str) -> bool {
        matches!(self.get(name), Some(Value::Boolean(true)))
    }

    /// A name; empty when it is missing.
    pub(super) fn text(&self, name: &str) -> String {
        match self.get(name) {
            Some(Value::Text(text)) => text.clone(),
            _ => String::new(),
        }
    }

    /// The shares of a composition.
    pub(super) fn composition(&self, name: &str) -> &[(&'static str, f64)] {
        match self.get(name) {
            Some(Value::Composition(shares)) => shares,
            _ => &[],
        }
    }

    /// The rows of a list.
    pub(super) fn rows(&self, name: &str) -> &[Values] {
        match self.get(name) {
            Some(Value::Rows(rows)) => rows,
            _ => &[],
        }
    }
}

/// One fault of an input.
pub(super) fn nonsense(input: &str, message: String) -> Nonsense {
    let mut nonsense = Nonsense::default();
    nonsense.unless(false, input, message);
    nonsense
}
