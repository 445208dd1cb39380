//! A quantity that a calculation outside of the knowledge computes from quantities of a case.

use std::fmt;
use std::sync::Arc;

use super::{Circumstances, Fact, Key, Place, Quantity};
use crate::units::Unit;

/// A figure of a calculation.
#[derive(Debug, Clone)]
pub struct Calculated {
    /// Its name in words, for example `mixing water temperature`.
    pub title: String,
    /// Unit of the figure.
    pub unit: Unit,
    /// What the calculation takes, in its order. All must be known before it is called.
    pub arguments: Vec<CalculationArgument>,
    /// The calculation.
    pub calculate: Arc<dyn Calculate>,
    /// Where it stands.
    pub place: Place,
}

/// What is handed to a calculation.
#[derive(Debug, Clone)]
pub enum CalculationArgument {
    /// A quantity, brought to the unit of the calculation: `slope` × value + `offset`.
    Quantity {
        /// The quantity.
        quantity: Quantity,
        /// Size of its unit in that of the calculation.
        slope: f64,
        /// Its zero in the unit of the calculation.
        offset: f64,
    },
    /// A fact; 1 when it is stated true, else 0.
    Fact(Key<Fact>),
}

/// A calculation with its constants; the numbers are those of [`Calculated::arguments`], in their order.
pub trait Calculate: Send + Sync + fmt::Debug {
    /// Computes the figure; `None` when the calculation has none for these numbers.
    ///
    /// # Errors
    /// Numbers from which nothing can be computed.
    fn figure(&self, arguments: &[f64]) -> Result<Option<CalculatedFigure>, CalculationFault>;
}

/// A computed figure and how it came about.
#[derive(Debug, Clone, PartialEq)]
pub struct CalculatedFigure {
    /// The figure, in the unit of [`Calculated::unit`].
    pub value: f64,
    /// Equation or rule.
    pub method: &'static str,
    /// Publication, `common practice`, or `from memory` of a named work.
    pub source: &'static str,
    /// Why the method is stretched here, and what must be said beside the figure.
    pub remarks: Vec<String>,
}

/// Why a calculation gives no figure.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CalculationFault {
    /// Lower case, without a full stop.
    pub message: String,
}

impl Calculated {
    /// The figure in a case; nothing when something that it needs is unknown.
    ///
    /// # Errors
    /// Values from which nothing can be computed.
    pub fn figure(&self, case: &Circumstances) -> Result<Option<CalculatedFigure>, CalculationFault> {
        let numbers: Option<Vec<f64>> = self.arguments.iter().map(|argument| argument.value(case)).collect();
        numbers.map_or(Ok(None), |numbers| self.calculate.figure(&numbers))
    }

    /// The figure alone; nothing when it is unknown or cannot be computed.
    pub(super) fn value(&self, case: &Circumstances) -> Option<f64> {
        self.figure(case).ok().flatten().map(|figure| figure.value)
    }

    /// The quantities that it takes.
    pub(super) fn quantities(&self) -> impl Iterator<Item = &Quantity> {
        self.arguments.iter().filter_map(|argument| match argument {
            CalculationArgument::Quantity { quantity, .. } => Some(quantity),
            CalculationArgument::Fact(_) => None,
        })
    }

    /// The facts that it takes.
    pub(super) fn facts(&self) -> impl Iterator<Item = Key<Fact>> {
        self.arguments.iter().filter_map(|argument| match argument {
            CalculationArgument::Fact(key) => Some(*key),
            CalculationArgument::Quantity { .. } => None,
        })
    }
}

impl CalculationArgument {
    fn value(&self, case: &Circumstances) -> Option<f64> {
        match self {
            Self::Quantity { quantity, slope, offset } => quantity.value(case).map(|value| slope * value + offset),
            Self::Fact(key) => case.fact(*key).map(f64::from),
        }
    }
}

impl Quantity {
    /// Visits the calculations that count in a case, each before those that it takes its arguments from.
    pub fn calculations<'q>(&'q self, case: &Circumstances, visit: &mut dyn FnMut(&'q Calculated)) {
        match self {
            Self::Calculated(calculated) => {
                visit(calculated);
                for argument in &calculated.arguments {
                    if let CalculationArgument::Quantity { quantity, .. } = argument {
                        quantity.calculations(case, visit);
                    }
                }
            }
            Self::Abs(inner) => inner.calculations(case, visit),
            Self::Either(first, second) => Self::alternative(first, second, case).calculations(case, visit),
            Self::Binary(_, left, right) => {
                left.calculations(case, visit);
                right.calculations(case, visit);
            }
            Self::Number(_)
            | Self::Reading(_)
            | Self::LowLimit(_)
            | Self::Target(_)
            | Self::HighLimit(_)
            | Self::BakerPercent(_)
            | Self::MassPercent(..)
            | Self::RolePercent(_)
            | Self::Formula(..) => {}
        }
    }
}
