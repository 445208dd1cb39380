//! The trial sheet: from a case to the plan of a trial bake that a plant can run.
//!
//! ```text
//! TrialRequest --diagnosis--> changes in the order of the answer --> runs (design, order by lot)
//!                                                                  +--> weights and settings of every run
//!                                                                  +--> what to record, how many pieces, when it counts
//! TrialSheet --layout--> blocks --> text, Markdown, a page to print
//! ```
//!
//! Not to be confused with [`rule_trial`](crate::rule_trial), which tries changed rules.

mod answer;
mod cautions;
mod changes;
mod decision;
mod design;
mod document;
mod layout;
mod measure;
mod plan;
mod record;
mod request;
mod sample;
mod settings;
mod weights;

pub use answer::{
    ActionWithoutRun, BatchWeights, Blank, ChangeSetting, DesignAnswer, FixedWhen, HeldSetting, Recorded, RecordedKind,
    RunSetting, RunWeight, SampleAnswer, SampleKind, SeenSymptom, TrialCaution, TrialChange, TrialRun, TrialSheet,
};
pub use document::{TrialBatchDocument, TrialMeasureDocument, TrialSheetDocument};
pub use layout::{Detail, PageFit, markdown, page, page_fit, text};
pub use measure::{Measure, Target};
pub use request::{ControlPlace, DesignKind, TrialRequest};
