//! What `whybake check` found, in several forms.

use std::fmt::Write;
use std::path::Path;

use serde_json::json;

use crate::diagnosis::Diagnostician;
use crate::rules::{Diagnostic, Loaded, Severity};

/// What was found in a rule pack.
pub(super) struct Report {
    diagnostics: Vec<Diagnostic>,
    /// Why the rules, though they load, cannot be used.
    unusable: Option<String>,
}

impl Report {
    /// Also tries whether cases could be diagnosed with the rules.
    pub(super) fn new(loaded: Result<Loaded, Vec<Diagnostic>>) -> Self {
        match loaded {
            Ok(Loaded { knowledge, warnings }) => Self {
                diagnostics: warnings,
                unusable: Diagnostician::new(knowledge).err().map(|fault| fault.to_string()),
            },
            Err(diagnostics) => Self { diagnostics, unusable: None },
        }
    }

    /// Whether the rules cannot be used as they are.
    pub(super) fn has_faults(&self) -> bool {
        self.faults() > 0
    }

    fn faults(&self) -> usize {
        self.count(Severity::Fault) + usize::from(self.unusable.is_some())
    }

    fn count(&self, severity: Severity) -> usize {
        self.diagnostics.iter().filter(|diagnostic| diagnostic.severity == severity).count()
    }

    fn summary(&self) -> String {
        format!("{}, {}", counted(self.faults(), "fault"), counted(self.count(Severity::Warning), "warning"))
    }

    /// For people: every place with its source line, and a count.
    pub(super) fn text(&self) -> String {
        let mut text: String = self.diagnostics.iter().map(|diagnostic| format!("{diagnostic}\n")).collect();
        if let Some(reason) = &self.unusable {
            let _ = writeln!(text, "fault: the rules cannot be used: {reason}\n");
        }
        format!("{text}{}\n", self.summary())
    }

    /// For programs: `{"faults", "warnings", "unusable", "diagnostics"}` in one line.
    pub(super) fn json(&self) -> String {
        let report = json!({
            "faults": self.faults(),
            "warnings": self.count(Severity::Warning),
            "unusable": self.unusable,
            "diagnostics": self.diagnostics,
        });
        format!("{report}\n")
    }

    /// One workflow command a diagnostic; paths start with `dir`, as the checkout knows them.
    pub(super) fn github(&self, dir: Option<&Path>) -> String {
        let mut text: String = self.diagnostics.iter().map(|diagnostic| github_command(diagnostic, dir)).collect();
        if let Some(reason) = &self.unusable {
            let _ = writeln!(text, "::error::the rules cannot be used: {}", escape_message(reason));
        }
        format!("{text}{}\n", self.summary())
    }
}

fn counted(count: usize, noun: &str) -> String {
    format!("{count} {noun}{}", if count == 1 { "" } else { "s" })
}

fn github_command(diagnostic: &Diagnostic, dir: Option<&Path>) -> String {
    let level = match diagnostic.severity {
        Severity::Fault => "error",
        Severity::Warning => "warning",
    };
    let file = dir.map_or_else(|| diagnostic.file.clone(), |dir| dir.join(&diagnostic.file).display().to_string());
    let mut properties = format!("file={},title={}", escape_property(&file), diagnostic.code.word());
    if diagnostic.line > 0 {
        let _ = write!(properties, ",line={}", diagnostic.line);
    }
    if diagnostic.line > 0 && diagnostic.column > 0 {
        let end = diagnostic.column + diagnostic.width.max(1);
        let _ = write!(properties, ",col={},endColumn={end}", diagnostic.column);
    }
    let help = diagnostic.help.as_ref().map(|help| format!("\nhelp: {help}")).unwrap_or_default();
    format!("::{level} {properties}::{}\n", escape_message(&format!("{}{help}", diagnostic.message)))
}

/// A message must stay in one line.
fn escape_message(text: &str) -> String {
    text.replace('%', "%25").replace('\r', "%0D").replace('\n', "%0A")
}

/// A property ends at a comma or colon.
fn escape_property(text: &str) -> String {
    escape_message(text).replace(':', "%3A").replace(',', "%2C")
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::Report;
    use crate::rules::{Code, Diagnostic, Severity};

    fn report() -> Report {
        let fault = Diagnostic {
            code: Code::UnknownName,
            severity: Severity::Fault,
            file: "soft_rolls/mixing.rhai".to_owned(),
            line: 3,
            column: 11,
            width: 4,
            source_line: "  .shows(foam, OFTEN)".to_owned(),
            message: "unknown name `foam`, 100 %".to_owned(),
            help: Some("declare it".to_owned()),
        };
        let warning = Diagnostic { severity: Severity::Warning, line: 0, column: 0, help: None, ..fault.clone() };
        Report { diagnostics: vec![fault, warning], unusable: Some("too many causes".to_owned()) }
    }

    #[test]
    fn github_commands_stay_in_one_line() {
        let expected = "\
::error file=rules/soft_rolls/mixing.rhai,title=unknown-name,line=3,col=11,endColumn=15::unknown name `foam`, 100 %25%0Ahelp: declare it
::warning file=rules/soft_rolls/mixing.rhai,title=unknown-name::unknown name `foam`, 100 %25
::error::the rules cannot be used: too many causes
2 faults, 1 warning
";
        assert_eq!(report().github(Some(Path::new("rules"))), expected);
    }

    #[test]
    fn text_underlines_the_place() {
        let expected = "\
fault[unknown-name]: unknown name `foam`, 100 %
 --> soft_rolls/mixing.rhai:3:11
  |
3 |   .shows(foam, OFTEN)
  |           ^^^^
  = help: declare it

warning[unknown-name]: unknown name `foam`, 100 %
 --> soft_rolls/mixing.rhai:0:0

fault: the rules cannot be used: too many causes

2 faults, 1 warning
";
        assert_eq!(report().text(), expected);
    }

    #[test]
    fn json_counts_and_lists() {
        let report: serde_json::Value = serde_json::from_str(&report().json()).unwrap();
        assert_eq!(report["faults"], 2);
        assert_eq!(report["warnings"], 1);
        assert_eq!(report["diagnostics"][0]["code"], "unknown-name");
    }
}
