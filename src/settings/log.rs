//! Settings of the log.

use tracing::level_filters::LevelFilter;

use super::source::Section;

/// What is logged, and how.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LogSettings {
    /// Least severe level that is logged.
    pub level: LevelFilter,
    /// Form of a line.
    pub format: LogFormat,
}

/// Form of a line of the log.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LogFormat {
    /// For people.
    Text,
    /// For log collectors: one JSON object a line.
    Json,
}

impl Default for LogSettings {
    fn default() -> Self {
        Self { level: LevelFilter::INFO, format: LogFormat::Text }
    }
}

impl LogSettings {
    pub(super) fn read(section: &mut Section<'_>) -> Self {
        let default = Self::default();
        Self {
            level: section.value("level").unwrap_or(default.level),
            format: section.value("format").unwrap_or(default.format),
        }
    }
}
