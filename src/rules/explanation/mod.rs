//! What every code means, with a wrong example, what the checker says of it, and the right one.
//!
//! The examples are tried by tests on a small pack of one family (`soft_rolls`) with one cause (`dough_too_warm`); they are
//! shown by `whybake explain` and in the authors' guide.

mod doubts;
mod rule_tests;
mod scripts;

use std::fmt;

use super::code::Code;

/// What a code means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Explanation {
    /// The code.
    pub code: Code,
    /// What it means, in a sentence.
    pub meaning: &'static str,
    /// A mistake that has this code.
    pub wrong: Example,
    /// What the checker says of it, with place and source line.
    pub says: &'static str,
    /// The mistake mended.
    pub right: Example,
    /// Why it is a mistake, or what to do about it.
    pub why: &'static str,
}

/// A piece of a pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Example {
    /// One more property of a cause.
    Cause(&'static str),
    /// A file: its path within the pack and its text.
    File(&'static str, &'static str),
    /// A file that is saved as ISO 8859-1 in place of UTF-8.
    OldEncoding(&'static str, &'static str),
}

impl Code {
    /// What the code means.
    #[must_use]
    pub fn explanation(self) -> &'static Explanation {
        match self {
            Self::File => &scripts::FILE,
            Self::Syntax => &scripts::SYNTAX,
            Self::UnknownName => &scripts::UNKNOWN_NAME,
            Self::UnknownWord => &scripts::UNKNOWN_WORD,
            Self::WrongArguments => &scripts::WRONG_ARGUMENTS,
            Self::OutOfRange => &scripts::OUT_OF_RANGE,
            Self::Duplicate => &scripts::DUPLICATE,
            Self::WrongFile => &scripts::WRONG_FILE,
            Self::Incomplete => &scripts::INCOMPLETE,
            Self::Unit => &scripts::UNIT,
            Self::InconsistentWeights => &scripts::INCONSISTENT_WEIGHTS,
            Self::Limit => &scripts::LIMIT,
            Self::Script => &scripts::SCRIPT,
            Self::Unused => &doubts::UNUSED,
            Self::NeverApplies => &doubts::NEVER_APPLIES,
            Self::NeverMatters => &doubts::NEVER_MATTERS,
            Self::ImplausibleThreshold => &doubts::IMPLAUSIBLE_THRESHOLD,
            Self::Indistinguishable => &doubts::INDISTINGUISHABLE,
            Self::LookAlike => &doubts::LOOK_ALIKE,
            Self::HighPriors => &doubts::HIGH_PRIORS,
            Self::Contradiction => &rule_tests::CONTRADICTION,
            Self::ExpectsNothing => &rule_tests::EXPECTS_NOTHING,
            Self::FailedTest => &rule_tests::FAILED_TEST,
        }
    }
}

impl Example {
    /// Where it stands, in words.
    #[must_use]
    pub fn place(&self) -> String {
        match self {
            Self::Cause(_) => "in a cause".to_owned(),
            Self::File(path, _) => format!("in `{path}`"),
            Self::OldEncoding(path, _) => format!("in `{path}`, saved as ISO 8859-1"),
        }
    }

    /// Its text, without the end of the last line.
    #[must_use]
    pub fn text(&self) -> &'static str {
        match self {
            Self::Cause(text) | Self::File(_, text) | Self::OldEncoding(_, text) => text.trim_end(),
        }
    }

    /// The language that it is written in: `json` or `rhai`.
    #[must_use]
    pub fn language(&self) -> &'static str {
        match self {
            Self::File(path, _) if path.ends_with(".json") => "json",
            _ => "rhai",
        }
    }
}

impl fmt::Display for Explanation {
    /// For a terminal.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let indented = |text: &str| text.lines().map(|line| format!("    {line}\n")).collect::<String>();
        writeln!(f, "{}: {}\n", self.code.word(), self.meaning)?;
        writeln!(f, "Wrong, {}:\n\n{}", self.wrong.place(), indented(self.wrong.text()))?;
        writeln!(f, "The checker says:\n\n{}", indented(self.says))?;
        writeln!(f, "Right, {}:\n\n{}", self.right.place(), indented(self.right.text()))?;
        writeln!(f, "{}", self.why)
    }
}
