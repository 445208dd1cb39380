//! A range of conditions within which a gel sets, and where a filling stands in it.

/// A range of a condition, with its source.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// What is measured, for example `pH`.
    pub quantity: &'static str,
    /// UCUM unit.
    pub unit: &'static str,
    /// Lower end, when there is one.
    pub low: Option<f64>,
    /// Upper end, when there is one.
    pub high: Option<f64>,
    /// What happens below.
    pub below: &'static str,
    /// What happens above.
    pub above: &'static str,
    /// Publication, `common practice` or `from memory: <work>`.
    pub source: &'static str,
}

/// Where a value stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Position {
    /// Under the lower end.
    Below,
    /// Inside, ends included.
    Inside,
    /// Over the upper end.
    Above,
}

/// A value held against a window.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Check {
    /// The window.
    pub window: Window,
    /// The value, in the window's unit.
    pub value: f64,
    /// Where it stands.
    pub position: Position,
}

impl Window {
    /// Holds a value against the window.
    #[must_use]
    pub fn check(self, value: f64) -> Check {
        let position = if self.low.is_some_and(|low| value < low) {
            Position::Below
        } else if self.high.is_some_and(|high| value > high) {
            Position::Above
        } else {
            Position::Inside
        };
        Check { window: self, value, position }
    }
}

impl Check {
    /// What follows from a value outside the window.
    #[must_use]
    pub fn consequence(&self) -> Option<&'static str> {
        match self.position {
            Position::Below => Some(self.window.below),
            Position::Inside => None,
            Position::Above => Some(self.window.above),
        }
    }
}
