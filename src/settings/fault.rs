//! What is wrong with a setting.

use std::fmt;

/// One faulty setting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SettingFault {
    /// The key of the file or the name of the environment variable.
    pub place: String,
    /// What is wrong, lower case, without a full stop.
    pub message: String,
    /// What to do about it.
    pub help: Option<String>,
}

impl SettingFault {
    pub(super) fn new(place: impl fmt::Display, message: String) -> Self {
        Self { place: place.to_string(), message, help: None }
    }

    pub(super) fn help(self, help: Option<String>) -> Self {
        Self { help, ..self }
    }
}

impl fmt::Display for SettingFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.place, self.message)?;
        self.help.as_ref().map_or(Ok(()), |help| write!(f, " (help: {help})"))
    }
}
