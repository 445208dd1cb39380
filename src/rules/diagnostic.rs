//! The one kind of message about rule files.

use std::fmt;

use serde::Serialize;
use utoipa::ToSchema;

/// How bad it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// The pack cannot be loaded.
    Fault,
    /// The pack can be loaded, but is probably not what was meant.
    Warning,
}

/// Kind of a diagnostic; the word is stable.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Code {
    /// A file that cannot be read, is no text or is too long.
    File,
    /// Text that is no script, or a rule test that is no JSON.
    Syntax,
    /// A name that nothing declares.
    UnknownName,
    /// A word that the rule language or a rule test does not have.
    UnknownWord,
    /// A word used with the wrong number or kind of things.
    WrongArguments,
    /// A number outside the range that it can have.
    OutOfRange,
    /// The same id declared twice, or one property set twice.
    Duplicate,
    /// A word in a file that may not use it.
    WrongFile,
    /// A declaration that lacks something.
    Incomplete,
    /// A unit that is no UCUM code, or measures something else.
    Unit,
    /// Weights for and against that cannot both be right.
    InconsistentWeights,
    /// A limit of the sandbox that a script ran over.
    Limit,
    /// A script that failed while it ran.
    Script,
    /// Something that is declared and never used.
    Unused,
    /// Evidence or a confirmation that no case can meet, or that every case meets.
    NeverApplies,
    /// Evidence that changes nothing.
    NeverMatters,
    /// A reading compared with a number that it cannot have.
    ImplausibleThreshold,
    /// Two causes that nothing in the rules tells apart.
    Indistinguishable,
    /// Ids or titles that are easily taken for each other.
    LookAlike,
    /// Priors of a product that add up to more causes than can be at work.
    HighPriors,
    /// Two statements of a rule test that cannot both hold.
    Contradiction,
    /// A rule test that expects nothing.
    ExpectsNothing,
    /// An expectation of a rule test that the answer does not meet.
    FailedTest,
}

impl Code {
    /// The stable word, for example `unknown-name`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::File => "file",
            Self::Syntax => "syntax",
            Self::UnknownName => "unknown-name",
            Self::UnknownWord => "unknown-word",
            Self::WrongArguments => "wrong-arguments",
            Self::OutOfRange => "out-of-range",
            Self::Duplicate => "duplicate",
            Self::WrongFile => "wrong-file",
            Self::Incomplete => "incomplete",
            Self::Unit => "unit",
            Self::InconsistentWeights => "inconsistent-weights",
            Self::Limit => "limit",
            Self::Script => "script",
            Self::Unused => "unused",
            Self::NeverApplies => "never-applies",
            Self::NeverMatters => "never-matters",
            Self::ImplausibleThreshold => "implausible-threshold",
            Self::Indistinguishable => "indistinguishable",
            Self::LookAlike => "look-alike",
            Self::HighPriors => "high-priors",
            Self::Contradiction => "contradiction",
            Self::ExpectsNothing => "expects-nothing",
            Self::FailedTest => "failed-test",
        }
    }
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

impl fmt::Display for Diagnostic {
    /// Several lines: what, where, the source line with the place underlined, help.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let severity = match self.severity {
            Severity::Fault => "fault",
            Severity::Warning => "warning",
        };
        writeln!(f, "{severity}[{}]: {}", self.code.word(), self.message)?;
        let gutter = self.line.to_string().len();
        writeln!(f, "{:gutter$}--> {}:{}:{}", "", self.file, self.line, self.column)?;
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
