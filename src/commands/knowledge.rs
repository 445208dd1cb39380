//! Loading rules for a command.

use std::path::Path;

use super::exit::Exit;
use super::output::complain;
use crate::rule_set::{RefusedRules, RuleSet};
use crate::rules::{Diagnostic, RuleFiles};
use crate::settings::TestsPolicy;

/// The files of a folder, or those that the binary carries.
pub(super) fn read_rules(dir: Option<&Path>) -> Result<RuleFiles, Vec<Diagnostic>> {
    dir.map_or_else(|| Ok(RuleFiles::embedded()), RuleFiles::read)
}

/// Loads rules that cases are diagnosed with; faults and warnings go to standard error.
pub(super) fn load_rules(dir: Option<&Path>, tests: TestsPolicy) -> Result<RuleSet, Exit> {
    let loaded = read_rules(dir).map_err(RefusedRules::faulty).and_then(|files| RuleSet::load(files, tests));
    let rules = loaded.map_err(|refused| {
        refused.diagnostics.iter().for_each(complain);
        complain(refused);
        Exit::Rules
    })?;
    rules.warnings.iter().for_each(complain);
    Ok(rules)
}
