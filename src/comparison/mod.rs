//! What a change of rules does to cases: the ranking before, the ranking after, and what is different.

mod case_comparison;
mod case_text;
mod counts;

pub(crate) use case_comparison::probability_changes;
pub use case_comparison::{CaseComparison, Effect, ProbabilityChange};
pub use case_text::case_text;
pub use counts::EffectCounts;
