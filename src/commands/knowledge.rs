//! Loading rules for a command.

use std::path::Path;

use super::exit::Exit;
use super::output::complain;
use crate::diagnosis::Diagnostician;
use crate::rules::{Diagnostic, Loaded, RuleFiles, load};

/// The files of a folder, or those that the binary carries.
pub(super) fn read_rules(dir: Option<&Path>) -> Result<RuleFiles, Vec<Diagnostic>> {
    dir.map_or_else(|| Ok(RuleFiles::embedded()), RuleFiles::read)
}

/// Loads rules that cases are diagnosed with; faults and warnings go to standard error.
pub(super) fn load_rules(dir: Option<&Path>) -> Result<Diagnostician, Exit> {
    let loaded = read_rules(dir).and_then(|files| load(&files)).map_err(|faults| {
        faults.iter().for_each(complain);
        complain("the rules cannot be loaded");
        Exit::Rules
    });
    let Loaded { knowledge, warnings } = loaded?;
    warnings.iter().for_each(complain);
    Diagnostician::new(knowledge).map_err(|reason| {
        complain(format_args!("the rules cannot be used: {reason}"));
        Exit::Rules
    })
}
