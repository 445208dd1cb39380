//! `whybake rules words` and `whybake rules guide`

use std::fs;
use std::path::PathBuf;

use clap::Args;

use super::exit::Exit;
use super::output::{complain, print};
use crate::rules::guide::{with_generated_sections, words_section};

/// Print the words of the rule language, with what they follow and what they mean
#[derive(Debug, Args)]
pub(super) struct Words {}

impl Words {
    pub(super) fn run(self) -> Result<(), Exit> {
        print(words_section().as_bytes())
    }
}

/// Write the generated sections of the authors' guide anew
///
/// The table of words and the list of mistakes in rules/README.md are made from the program; run it after a change of
/// either.
#[derive(Debug, Args)]
pub(super) struct Guide {
    /// The guide
    #[arg(value_name = "FILE")]
    file: PathBuf,
}

impl Guide {
    pub(super) fn run(self) -> Result<(), Exit> {
        let file = self.file.display();
        let failed = |error: std::io::Error| {
            complain(format_args!("{file}: {error}"));
            Exit::Failed
        };
        let text = fs::read_to_string(&self.file).map_err(failed)?;
        let text = with_generated_sections(&text).map_err(|lacking| {
            complain(format_args!("{file}: lacks {}", lacking.join(" and ")));
            Exit::Faulty
        })?;
        fs::write(&self.file, text).map_err(failed)
    }
}
