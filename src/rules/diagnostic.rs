//! The one kind of message about rule files.

use std::fmt;

use serde::Serialize;
use utoipa::ToSchema;

use super::code::Code;

/// How bad it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// The pack cannot be loaded.
    Fault,
    /// The pack can be loaded, but is probably not what was meant.
    Warning,
}

/// One message about a rule file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Diagnostic {
    /// Kind.
    pub code: Code,
    /// How bad it is.
    pub severity: Severity,
    /// File within the pack.
    #[schema(example = "soft_rolls/mixing.rhai")]
    pub file: String,
    /// Line, from 1; 0 when the whole file is meant.
    pub line: usize,
    /// Column in characters, from 1; 0 when the whole line is meant.
    pub column: usize,
    /// Number of characters that are meant, from `column` on; at least 1.
    pub width: usize,
    /// The line itself.
    pub source_line: String,
    /// What is wrong, lower case, without a full stop.
    #[schema(example = "unknown name `dough_temprature`")]
    pub message: String,
    /// What to do about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "did you mean `dough_temperature`?")]
    pub help: Option<String>,
}

impl Diagnostic {
    /// A fault of a whole file; of the whole pack where `file` is empty.
    #[must_use]
    pub fn of_file(code: Code, file: &str, message: String) -> Self {
        Self {
            code,
            severity: Severity::Fault,
            file: file.to_owned(),
            line: 0,
            column: 0,
            width: 1,
            source_line: String::new(),
            message,
            help: None,
        }
    }
}

impl fmt::Display for Diagnostic {
    /// Several lines: what, where, the source line with the place underlined, help.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let severity = match self.severity {
            Severity::Fault => "fault",
            Severity::Warning => "warning",
        };
        writeln!(f, "{severity}[{}]: {}", self.code.word(), self.message)?;
        let gutter = self.line.to_string().len();
        let place = match (self.file.as_str(), self.line, self.column) {
            ("", ..) => String::new(),
            (file, 0, _) => file.to_owned(),
            (file, line, 0) => format!("{file}:{line}"),
            (file, line, column) => format!("{file}:{line}:{column}"),
        };
        if !place.is_empty() {
            writeln!(f, "{:gutter$}--> {place}", "")?;
        }
        if self.line > 0 {
            writeln!(f, "{:gutter$} |", "")?;
            writeln!(f, "{} | {}", self.line, self.source_line)?;
            if self.column > 0 {
                let indent: String = self
                    .source_line
                    .chars()
                    .take(self.column - 1)
                    .map(|c| if c == '\t' { '\t' } else { ' ' })
                    .collect();
                writeln!(f, "{:gutter$} | {indent}{}", "", "^".repeat(self.width.max(1)))?;
            }
        }
        if let Some(help) = &self.help {
            writeln!(f, "{:gutter$} = help: {help}", "")?;
        }
        Ok(())
    }
}
