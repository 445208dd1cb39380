//! What a calculation gives.

use crate::science::Estimate;

/// A figure that a calculation can give.
#[derive(Debug, Clone, Copy)]
pub struct FigureKind {
    /// Name, `snake_case`.
    pub name: &'static str,
    /// UCUM code.
    pub unit: &'static str,
    /// What it is.
    pub description: &'static str,
}

/// Declares a figure.
pub(super) const fn figure(name: &'static str, unit: &'static str, description: &'static str) -> FigureKind {
    FigureKind { name, unit, description }
}

/// A computed figure.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Its declared name.
    pub name: &'static str,
    /// What it belongs to, where a name has several figures: a lot, a temperature.
    pub of: Option<String>,
    /// The figure.
    pub estimate: Estimate,
}

/// Everything that a run gives.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Outcome {
    /// The figures, the main one first.
    pub figures: Vec<Figure>,
    /// What cannot be said in figures; cautions.
    pub remarks: Vec<String>,
}

impl Outcome {
    /// One figure.
    pub(super) fn of(name: &'static str, estimate: Estimate) -> Self {
        Self::default().and(name, estimate)
    }

    /// Adds a figure.
    pub(super) fn and(mut self, name: &'static str, estimate: Estimate) -> Self {
        self.figures.push(Figure { name, of: None, estimate });
        self
    }

    /// Adds a figure when it is known.
    pub(super) fn and_if_known(self, name: &'static str, estimate: Option<Estimate>) -> Self {
        match estimate {
            Some(estimate) => self.and(name, estimate),
            None => self,
        }
    }

    /// Adds a figure of something that has a name of its own.
    pub(super) fn and_of(mut self, name: &'static str, of: impl Into<String>, estimate: Estimate) -> Self {
        self.figures.push(Figure { name, of: Some(of.into()), estimate });
        self
    }

    /// Adds a figure of something that may have a name of its own.
    pub(super) fn and_of_some(self, name: &'static str, of: Option<&str>, estimate: Estimate) -> Self {
        match of {
            Some(of) => self.and_of(name, of, estimate),
            None => self.and(name, estimate),
        }
    }

    /// Adds a remark.
    pub(super) fn remark(mut self, remark: impl Into<String>) -> Self {
        self.remarks.push(remark.into());
        self
    }

    /// Adds remarks.
    pub(super) fn remarks(mut self, remarks: impl IntoIterator<Item = String>) -> Self {
        self.remarks.extend(remarks);
        self
    }
}
