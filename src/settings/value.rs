//! Values of settings, read from text.

use std::net::SocketAddr;
use std::num::NonZeroUsize;
use std::path::PathBuf;
use std::time::Duration;

use tracing::level_filters::LevelFilter;

use super::author_key::AuthorKey;
use super::log::LogFormat;
use super::rules::TestsPolicy;

/// Longest time that a setting may grant: an hour.
const LONGEST_SECONDS: f64 = 3600.0;

/// A value that a setting can have.
pub(super) trait SettingValue: Sized {
    /// What is wanted, in words.
    const WANTED: &'static str;

    /// Whether the text must not be told, not even when it is wrong.
    const IS_SECRET: bool = false;

    /// Reads the value; `None` when the text is something else.
    fn parse(text: &str) -> Option<Self>;
}

impl SettingValue for SocketAddr {
    const WANTED: &'static str = "an IP address with a port, for example `0.0.0.0:8080`";

    fn parse(text: &str) -> Option<Self> {
        text.parse().ok()
    }
}

impl SettingValue for NonZeroUsize {
    const WANTED: &'static str = "a whole number of 1 or more";

    fn parse(text: &str) -> Option<Self> {
        text.parse().ok()
    }
}

impl SettingValue for Duration {
    const WANTED: &'static str = "a number of seconds above 0, at most 3600";

    fn parse(text: &str) -> Option<Self> {
        let seconds = text.parse::<f64>().ok().filter(|seconds| *seconds > 0.0 && *seconds <= LONGEST_SECONDS)?;
        Self::try_from_secs_f64(seconds).ok()
    }
}

impl SettingValue for PathBuf {
    const WANTED: &'static str = "a path";

    fn parse(text: &str) -> Option<Self> {
        (!text.is_empty()).then(|| Self::from(text))
    }
}

impl SettingValue for bool {
    const WANTED: &'static str = "`true` or `false`";

    fn parse(text: &str) -> Option<Self> {
        text.parse().ok()
    }
}

impl SettingValue for AuthorKey {
    const WANTED: &'static str = Self::WANTED;

    const IS_SECRET: bool = true;

    fn parse(text: &str) -> Option<Self> {
        Self::new(text)
    }
}

impl SettingValue for LevelFilter {
    const WANTED: &'static str = "`off`, `error`, `warn`, `info`, `debug` or `trace`";

    fn parse(text: &str) -> Option<Self> {
        match text {
            "off" => Some(Self::OFF),
            "error" => Some(Self::ERROR),
            "warn" => Some(Self::WARN),
            "info" => Some(Self::INFO),
            "debug" => Some(Self::DEBUG),
            "trace" => Some(Self::TRACE),
            _ => None,
        }
    }
}

impl SettingValue for LogFormat {
    const WANTED: &'static str = "`text` or `json`";

    fn parse(text: &str) -> Option<Self> {
        match text {
            "text" => Some(Self::Text),
            "json" => Some(Self::Json),
            _ => None,
        }
    }
}

impl SettingValue for TestsPolicy {
    const WANTED: &'static str = "`required` or `ignored`";

    fn parse(text: &str) -> Option<Self> {
        match text {
            "required" => Some(Self::Required),
            "ignored" => Some(Self::Ignored),
            _ => None,
        }
    }
}
