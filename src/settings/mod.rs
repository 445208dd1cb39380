//! Settings of the service: from a TOML file, then the environment, then the command line; the later wins.
//!
//! `http.listen` in the file is `WHYBAKE_HTTP_LISTEN` in the environment. Unknown names are refused, and all faults are
//! told at once.

mod author_key;
mod fault;
mod http;
mod log;
mod rules;
mod source;
mod value;

use std::fs;
use std::path::Path;

pub use author_key::AuthorKey;
pub use fault::SettingFault;
pub use http::HttpSettings;
pub use log::{LogFormat, LogSettings};
pub use rules::{RulesSettings, TestsPolicy};

use source::Source;

/// All settings, one struct a concern.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Settings {
    /// The HTTP service.
    pub http: HttpSettings,
    /// The rules.
    pub rules: RulesSettings,
    /// The log.
    pub log: LogSettings,
}

impl Settings {
    /// Reads settings from a file, if one is named, and from environment variables.
    ///
    /// # Errors
    /// Every fault of the file and of the variables at once.
    pub fn load(
        file: Option<&Path>,
        environment: impl IntoIterator<Item = (String, String)>,
    ) -> Result<Self, Vec<SettingFault>> {
        let (path, text) = match file {
            None => (String::new(), String::new()),
            Some(file) => (file.display().to_string(), read_file(file)?),
        };
        Self::from_text(&path, &text, environment)
    }

    /// Reads settings from the text of a file and from environment variables.
    fn from_text(
        path: &str,
        text: &str,
        environment: impl IntoIterator<Item = (String, String)>,
    ) -> Result<Self, Vec<SettingFault>> {
        let mut source = Source::new(path, text, environment)?;
        let settings = Self {
            http: source.section("http", HttpSettings::read),
            rules: source.section("rules", RulesSettings::read),
            log: source.section("log", LogSettings::read),
        };
        source.finish().map(|()| settings)
    }
}

fn read_file(file: &Path) -> Result<String, Vec<SettingFault>> {
    fs::read_to_string(file)
        .map_err(|error| vec![SettingFault::new(file.display(), format!("cannot be read: {error}"))])
}

#[cfg(test)]
mod tests;
