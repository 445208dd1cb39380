//! Settings of the rules.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;

use super::author_key::AuthorKey;
use super::source::Section;

/// Where the rules come from, and who may change them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RulesSettings {
    /// Folder of the rule pack; `None` takes the pack that the binary carries.
    pub dir: Option<PathBuf>,
    /// What a failing rule test means; `None`: see [`Self::tests_policy`].
    pub tests: Option<TestsPolicy>,
    /// Whether a change of the folder is looked for and loaded while the service runs.
    pub watch: bool,
    /// How often the folder is looked at, beside the notices of the file system, which network mounts do not give.
    pub poll: Duration,
    /// What a request must carry to reload or to try rules.
    pub author_key: Option<AuthorKey>,
}

impl Default for RulesSettings {
    fn default() -> Self {
        Self { dir: None, tests: None, watch: true, poll: Duration::from_secs(2), author_key: None }
    }
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
        let default = Self::default();
        Self {
            dir: section.value("dir"),
            tests: section.value("tests"),
            watch: section.value("watch").unwrap_or(default.watch),
            poll: section.value("poll_seconds").unwrap_or(default.poll),
            author_key: read_author_key(section),
        }
    }

    /// The setting, or else: tests of a folder are required; the pack that the binary carries was tested when it was built.
    #[must_use]
    pub fn tests_policy(&self) -> TestsPolicy {
        let usual = if self.dir.is_some() { TestsPolicy::Required } else { TestsPolicy::Ignored };
        self.tests.unwrap_or(usual)
    }
}

/// The key itself, or the one that a file holds; not both.
fn read_author_key(section: &mut Section<'_>) -> Option<AuthorKey> {
    let key: Option<AuthorKey> = section.value("author_key");
    let file: Option<PathBuf> = section.value("author_key_file");
    match (key, file) {
        (Some(_), Some(_)) => {
            section.fault("author_key_file", "stands beside `author_key`; one of them is enough".to_owned());
            None
        }
        (key, None) => key,
        (None, Some(file)) => key_in_file(&file).map_err(|message| section.fault("author_key_file", message)).ok(),
    }
}

fn key_in_file(file: &Path) -> Result<AuthorKey, String> {
    let text = fs::read_to_string(file).map_err(|error| format!("`{}` cannot be read: {error}", file.display()))?;
    // A line end is what an editor leaves, never a part of the key.
    AuthorKey::new(text.trim_end_matches(['\r', '\n']))
        .ok_or_else(|| format!("{} is wanted in `{}`", AuthorKey::WANTED, file.display()))
}
