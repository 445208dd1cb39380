//! Starting the log.

use std::io::{self, IsTerminal};

use tracing_subscriber::fmt;

use crate::settings::{LogFormat, LogSettings};

/// Sends the log to standard error from now on.
pub(super) fn start(settings: &LogSettings) {
    let colours = io::stderr().is_terminal();
    let log = fmt().with_max_level(settings.level).with_ansi(colours).with_writer(io::stderr);
    match settings.format {
        LogFormat::Text => log.init(),
        LogFormat::Json => log.json().flatten_event(true).init(),
    }
}
