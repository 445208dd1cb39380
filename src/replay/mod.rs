//! Replay of a diagnosis that somebody stored: the same answer, or what has changed since.
//!
//! A [`Record`] holds the case as it was given and the answer as it came. [`Record::replay`] diagnoses the case again and
//! compares byte for byte; where the answers differ, the [`Replay`] tells rules and program then and now, and what became
//! of ranking, actions and cautions.

mod answer;
mod differences;
mod record;
mod recorded;
mod run;
mod words;

pub use answer::{
    ActionChange, ActionDifference, CautionDifferences, Made, QuantityChange, RankingDifferences, RecordDocument,
    Replay,
};
pub use record::{Record, write_record};
pub use words::text;

/// Version of this program, as records and replays name it.
pub const PROGRAM_VERSION: &str = env!("CARGO_PKG_VERSION");
