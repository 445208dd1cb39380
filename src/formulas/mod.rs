//! The formula of a case, worked out: from lines that name ingredients of the rules to every figure of
//! [`science`](crate::science).
//!
//! [`Weighed`] resolves the lines once; [`Weighed::figure`] gives one [`Figure`], known or with the reason why not;
//! [`Weighed::circumstances`] lays out what conditions of the rules may ask; [`Weighed::report`], [`Weighed::batch`] and
//! [`Weighed::compare`] answer questions about the formula alone.
//!
//! A formula of fewer than four lines that does not say `complete` is a fragment: people write down what they think
//! matters, so what is not named is unknown, not zero.

mod batch;
mod conditions;
mod figure;
mod leavening;
mod ratio;
mod report;
mod water_activity;
mod weighed;

pub use batch::{Batch, BatchLine};
pub use figure::Figure;
pub use ratio::{RatioComparison, RatioItemReport};
pub use report::{FigureReport, LineReport, MethodReport, PartReport, Report};
pub use weighed::Weighed;
