//! Rules ready to use: loaded, linked, and tested where that is required.

use std::fmt;
use std::time::Instant;

use crate::diagnosis::Diagnostician;
use crate::intake::Intake;
use crate::rule_tests::tested;
use crate::rules::{Code, Diagnostic, Loaded, RuleFiles, load, load_before};
use crate::settings::TestsPolicy;

/// Rules that diagnose, with the text they were made from.
#[derive(Debug)]
pub struct RuleSet {
    /// The text.
    pub files: RuleFiles,
    /// Diagnoses cases with the rules.
    pub diagnostician: Diagnostician,
    /// Takes complaints in plain words for what the rules know.
    pub intake: Intake,
    /// What is probably not meant as it stands.
    pub warnings: Vec<Diagnostic>,
}

/// Why files are no usable rules.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RefusedRules {
    /// The reason in a few words, lower case, without a full stop.
    pub reason: &'static str,
    /// Every fault, or every expectation of a rule test that is not met.
    pub diagnostics: Vec<Diagnostic>,
}

impl RefusedRules {
    /// Rules that cannot be loaded.
    #[must_use]
    pub fn faulty(diagnostics: Vec<Diagnostic>) -> Self {
        Self { reason: "the rules cannot be loaded", diagnostics }
    }

    /// Rules with a fault that has no place in a file.
    #[must_use]
    pub fn as_a_whole(reason: &'static str, message: String) -> Self {
        Self { reason, diagnostics: vec![Diagnostic::of_file(Code::Limit, "", message)] }
    }
}

impl fmt::Display for RefusedRules {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.reason)
    }
}

impl std::error::Error for RefusedRules {}

impl RuleSet {
    /// Loads rules: all of them or none.
    ///
    /// # Errors
    /// Every fault of the rules; where tests are required and the rules have no fault, every failed test.
    pub fn load(files: RuleFiles, tests: TestsPolicy) -> Result<Self, RefusedRules> {
        let rules = Self::of(load(&files), files)?;
        if tests == TestsPolicy::Required {
            let reason = "the rules fail their tests; the setting `rules.tests` can ignore them";
            tested(&rules.files, &rules.diagnostician).map_err(|diagnostics| RefusedRules { reason, diagnostics })?;
        }
        Ok(rules)
    }

    /// Loads rules without running their tests; scripts that still run at `deadline` are ended, which is a fault.
    ///
    /// # Errors
    /// Every fault of the rules.
    pub fn load_before(deadline: Instant, files: RuleFiles) -> Result<Self, RefusedRules> {
        Self::of(load_before(deadline, &files), files)
    }

    fn of(loaded: Result<Loaded, Vec<Diagnostic>>, files: RuleFiles) -> Result<Self, RefusedRules> {
        let Loaded { knowledge, warnings } = loaded.map_err(RefusedRules::faulty)?;
        let diagnostician = Diagnostician::new(knowledge)
            .map_err(|reason| RefusedRules::as_a_whole("the rules cannot be used", reason.to_string()))?;
        let intake = Intake::new(diagnostician.knowledge());
        Ok(Self { files, diagnostician, intake, warnings })
    }
}
