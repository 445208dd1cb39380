//! `whybake rules export`

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use clap::Args;

use super::exit::Exit;
use super::output::{complain, print};
use crate::rules::RuleFiles;

/// Write the rules that the program carries to a folder
///
/// The folder must be empty or not exist yet: nothing is overwritten.
#[derive(Debug, Args)]
pub(super) struct Export {
    /// Folder to write to
    #[arg(value_name = "DIR")]
    dir: PathBuf,
}

impl Export {
    pub(super) fn run(self) -> Result<(), Exit> {
        let dir = self.dir.display();
        match is_free(&self.dir) {
            Ok(true) => {}
            Ok(false) => {
                complain(format_args!("{dir}: is not empty; nothing was written"));
                return Err(Exit::Failed);
            }
            Err(error) => return Err(failed(&self.dir, &error)),
        }
        let files = RuleFiles::embedded_folder();
        for (path, text) in &files {
            let file = self.dir.join(path);
            write_new(&file, text).map_err(|error| failed(&file, &error))?;
        }
        print(format!("{dir}: {} files\n", files.len()).as_bytes())
    }
}

fn is_free(dir: &Path) -> io::Result<bool> {
    match fs::read_dir(dir) {
        Ok(mut entries) => Ok(entries.next().is_none()),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(true),
        Err(error) => Err(error),
    }
}

fn write_new(file: &Path, text: &str) -> io::Result<()> {
    if let Some(parent) = file.parent() {
        fs::create_dir_all(parent)?;
    }
    io::Write::write_all(&mut fs::File::create_new(file)?, text.as_bytes())
}

fn failed(path: &Path, error: &io::Error) -> Exit {
    complain(format_args!("{}: cannot be written: {error}", path.display()));
    Exit::Failed
}
