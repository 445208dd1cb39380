//! Options that several commands have.

use std::path::PathBuf;

use clap::Args;
use serde::Serialize;

use super::exit::Exit;
use super::knowledge::load_rules;
use super::output::{print, print_json};
use crate::rule_set::RuleSet;
use crate::settings::TestsPolicy;

/// Which rules answer.
#[derive(Debug, Args)]
pub(super) struct RulesOption {
    /// Folder of a rule pack, in place of the rules that the program carries
    #[arg(long, value_name = "DIR")]
    rules: Option<PathBuf>,
}

impl RulesOption {
    /// The rules; their tests are not run.
    pub(super) fn load(&self) -> Result<RuleSet, Exit> {
        load_rules(self.rules.as_deref(), TestsPolicy::Ignored)
    }
}

/// Whether the answer is for programs.
#[derive(Debug, Args)]
pub(super) struct JsonOption {
    /// Print the JSON that the HTTP service answers, byte for byte
    #[arg(long)]
    json: bool,
}

impl JsonOption {
    /// Whether it is.
    pub(super) fn is_wanted(&self) -> bool {
        self.json
    }

    /// Prints an answer: as JSON where that is wanted, else in words.
    pub(super) fn show(&self, answer: &impl Serialize, in_words: impl FnOnce() -> String) -> Result<(), Exit> {
        if self.json { print_json(answer) } else { print(in_words().as_bytes()) }
    }
}
