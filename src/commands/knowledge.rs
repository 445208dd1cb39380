//! Loading rules for a command.

use std::path::Path;

use super::exit::Exit;
use super::output::complain;
use crate::diagnosis::Diagnostician;
use crate::rule_tests::tested;
use crate::rules::{Diagnostic, Loaded, RuleFiles, load};
use crate::settings::TestsPolicy;

/// The files of a folder, or those that the binary carries.
pub(super) fn read_rules(dir: Option<&Path>) -> Result<RuleFiles, Vec<Diagnostic>> {
    dir.map_or_else(|| Ok(RuleFiles::embedded()), RuleFiles::read)
}

/// Loads rules that cases are diagnosed with; faults and warnings go to standard error.
pub(super) fn load_rules(dir: Option<&Path>, tests: TestsPolicy) -> Result<Diagnostician, Exit> {
    let files = read_rules(dir).map_err(|faults| refuse(&faults, "the rules cannot be loaded"))?;
    let Loaded { knowledge, warnings } =
        load(&files).map_err(|faults| refuse(&faults, "the rules cannot be loaded"))?;
    warnings.iter().for_each(complain);
    let diagnostician = Diagnostician::new(knowledge).map_err(|reason| {
        complain(format_args!("the rules cannot be used: {reason}"));
        Exit::Rules
    })?;
    if tests == TestsPolicy::Required {
        tested(&files, &diagnostician).map_err(|faults| {
            refuse(&faults, "the rules fail their tests; the setting `rules.tests` can ignore them")
        })?;
    }
    Ok(diagnostician)
}

fn refuse(faults: &[Diagnostic], why: &str) -> Exit {
    faults.iter().for_each(complain);
    complain(why);
    Exit::Rules
}
