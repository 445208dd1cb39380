//! Settings of the rules.

use std::path::PathBuf;

use super::source::Section;

/// Where the rules come from.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct RulesSettings {
    /// Folder of the rule pack; `None` takes the pack that the binary carries.
    pub dir: Option<PathBuf>,
    /// What a failing rule test means; `None`: see [`Self::tests_policy`].
    pub tests: Option<TestsPolicy>,
}

/// What it means that a rule test of the pack fails.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TestsPolicy {
    /// The pack is not used.
    Required,
    /// The tests are not run.
    Ignored,
}

impl RulesSettings {
    pub(super) fn read(section: &mut Section<'_>) -> Self {
        Self { dir: section.value("dir"), tests: section.value("tests") }
    }

    /// The setting, or else: tests of a folder are required; the pack that the binary carries was tested when it was built.
    #[must_use]
    pub fn tests_policy(&self) -> TestsPolicy {
        let usual = if self.dir.is_some() { TestsPolicy::Required } else { TestsPolicy::Ignored };
        self.tests.unwrap_or(usual)
    }
}
