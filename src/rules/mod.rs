//! From the text of rule files to linked knowledge.
//!
//! ```text
//! files --stage by stage: names, compile, run--> Declarations --check--> Knowledge
//! ```
//!
//! [`RuleFiles`] holds text. [`load`] runs the files stage by stage in a sandbox (vocabulary before causes); the words of
//! the rule [`language`] build [`Declarations`](crate::knowledge::Declarations); [`checks`] judge the whole. Every fault
//! is a [`Diagnostic`] with its place, all are reported at once, and a pack with a fault is not loaded.

mod ancestors;
mod blank;
mod build;
mod calculation;
mod checks;
mod closure;
mod code;
mod diagnostic;
mod doubts;
mod explanation;
mod failure;
mod files;
mod folder_stamp;
pub mod guide;
mod language;
mod load;
mod names;
mod reference;
mod sandbox;
mod script;
mod stage;
mod term;

pub use code::Code;
pub use diagnostic::{Diagnostic, Severity};
pub use explanation::{Example, Explanation};
pub use files::RuleFiles;
pub use folder_stamp::FolderStamp;
pub use load::{Loaded, load, load_before};
pub use reference::{WordReference, WordSection, words};
