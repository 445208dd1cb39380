//! Settings of the rules.

use std::path::PathBuf;

use super::source::Section;

/// Where the rules come from.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct RulesSettings {
    /// Folder of the rule pack; `None` takes the pack that the binary carries.
    pub dir: Option<PathBuf>,
}

impl RulesSettings {
    pub(super) fn read(section: &mut Section<'_>) -> Self {
        Self { dir: section.value("dir") }
    }
}
