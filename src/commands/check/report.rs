//! What `whybake check` found, in several forms.

use std::fmt::Write;
use std::path::Path;

use serde_json::json;

use super::{Tests, coverage};
use crate::diagnosis::Diagnostician;
use crate::rule_tests::{Coverage, Failure, Observed, RuleTests};
use crate::rules::{Diagnostic, Loaded, RuleFiles, Severity, load};

/// What was found in a rule pack.
#[derive(Default)]
pub(super) struct Report {
    diagnostics: Vec<Diagnostic>,
    /// Why the rules, though they load, cannot be used.
    unusable: Option<String>,
    /// What the rule tests gave, when they could be run and were to be.
    tests: Option<Tested>,
}

/// What the rule tests gave.
#[derive(Default)]
struct Tested {
    /// How many were run.
    run: usize,
    failures: Vec<Failure>,
    coverage: Option<Coverage>,
}

impl Report {
    /// Loads the rules, tries whether cases could be diagnosed with them, and runs their tests as `tests` says.
    pub(super) fn new(files: &RuleFiles, tests: Tests) -> Self {
        let Loaded { knowledge, warnings } = match load(files) {
            Ok(loaded) => loaded,
            Err(faults) => return Self::of_faults(faults),
        };
        let mut report = Self { diagnostics: warnings, ..Self::default() };
        match Diagnostician::new(knowledge) {
            Err(fault) => report.unusable = Some(fault.to_string()),
            Ok(_) if tests == Tests::Skip => {}
            Ok(diagnostician) => report.test(files, &diagnostician, tests == Tests::RunWithCoverage),
        }
        report
    }

    /// A pack that cannot be loaded.
    pub(super) fn of_faults(diagnostics: Vec<Diagnostic>) -> Self {
        Self { diagnostics, ..Self::default() }
    }

    fn test(&mut self, files: &RuleFiles, diagnostician: &Diagnostician, with_coverage: bool) {
        let knowledge = diagnostician.knowledge();
        let tests = RuleTests::read(files, knowledge);
        let mut observed = with_coverage.then(|| Observed::new(knowledge));
        let failures = tests.run_and_watch(diagnostician, |test, answer| {
            if let Some(observed) = &mut observed {
                observed.watch(test, answer, diagnostician);
            }
        });
        let coverage = observed.map(|observed| observed.coverage(knowledge));
        self.tests = Some(Tested { run: tests.tests.len(), failures, coverage });
        self.diagnostics.extend(tests.diagnostics);
    }

    /// Whether the rules cannot be used as they are, or fail a test.
    pub(super) fn is_bad(&self) -> bool {
        self.faults() > 0 || self.tests.as_ref().is_some_and(|tests| !tests.failures.is_empty())
    }

    fn faults(&self) -> usize {
        self.count(Severity::Fault) + usize::from(self.unusable.is_some())
    }

    fn count(&self, severity: Severity) -> usize {
        self.diagnostics.iter().filter(|diagnostic| diagnostic.severity == severity).count()
    }

    fn summary(&self) -> String {
        let rules =
            format!("{}, {}", counted(self.faults(), "fault"), counted(self.count(Severity::Warning), "warning"));
        self.tests.as_ref().map_or_else(|| rules.clone(), |tests| format!("{rules}, {}", tests.summary()))
    }

    /// Everything that has a place: diagnostics, then failed tests.
    fn told(&self) -> impl Iterator<Item = Diagnostic> {
        let failures = self.tests.iter().flat_map(|tests| &tests.failures).map(Failure::diagnostic);
        self.diagnostics.iter().cloned().chain(failures)
    }

    /// For people: every place with its source line, and the counts.
    pub(super) fn text(&self) -> String {
        let mut text: String = self.told().map(|diagnostic| format!("{diagnostic}\n")).collect();
        if let Some(reason) = &self.unusable {
            let _ = writeln!(text, "fault: the rules cannot be used: {reason}\n");
        }
        if let Some(first) = self.told().next() {
            let _ = writeln!(
                text,
                "`whybake explain {}` tells more; so it does of every code in brackets\n",
                first.code.word()
            );
        }
        format!("{text}{}{}\n", self.coverage().map(coverage::text).unwrap_or_default(), self.summary())
    }

    fn coverage(&self) -> Option<&Coverage> {
        self.tests.as_ref()?.coverage.as_ref()
    }

    /// For programs: `{"faults", "warnings", "unusable", "diagnostics", "tests"}` in one line; `tests` is `null` when they
    /// were not run, else `{"run", "failed", "failures", "coverage"}`.
    pub(super) fn json(&self) -> String {
        let report = json!({
            "faults": self.faults(),
            "warnings": self.count(Severity::Warning),
            "unusable": self.unusable,
            "diagnostics": self.diagnostics,
            "tests": self.tests.as_ref().map(Tested::json),
        });
        format!("{report}\n")
    }

    /// One workflow command a diagnostic; paths start with `dir`, as the checkout knows them.
    pub(super) fn github(&self, dir: Option<&Path>) -> String {
        let mut text: String = self.told().map(|diagnostic| github_command(&diagnostic, dir)).collect();
        if let Some(reason) = &self.unusable {
            let _ = writeln!(text, "::error::the rules cannot be used: {}", escape_message(reason));
        }
        format!("{text}{}{}\n", self.coverage().map(coverage::table).unwrap_or_default(), self.summary())
    }
}

impl Tested {
    /// How many tests have an expectation that is not met.
    fn failed(&self) -> usize {
        let mut files: Vec<&str> = self.failures.iter().map(|failure| failure.file.as_str()).collect();
        files.dedup();
        files.len()
    }

    fn summary(&self) -> String {
        match self.failed() {
            0 => format!("{} passed", counted(self.run, "rule test")),
            failed => format!("{failed} of {} failed", counted(self.run, "rule test")),
        }
    }

    fn json(&self) -> serde_json::Value {
        json!({ "run": self.run, "failed": self.failed(), "failures": self.failures, "coverage": self.coverage })
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

    use super::{Report, Tested};
    use crate::rule_tests::{Failure, LeadingCause};
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
        let failure = Failure {
            file: "soft_rolls/cases/hot.json".to_owned(),
            line: 9,
            column: 15,
            width: 6,
            source_line: "    \"leader\": \"cold\"".to_owned(),
            title: "Hot dough".to_owned(),
            expectation: "leader",
            wanted: "`cold`".to_owned(),
            found: "`hot`".to_owned(),
            leading: vec![LeadingCause { cause: "hot".to_owned(), probability: 0.97 }],
        };
        Report {
            diagnostics: vec![fault, warning],
            unusable: Some("too many causes".to_owned()),
            tests: Some(Tested { run: 34, failures: vec![failure], coverage: None }),
        }
    }

    #[test]
    fn github_commands_stay_in_one_line() {
        let expected = "\
::error file=rules/soft_rolls/mixing.rhai,title=unknown-name,line=3,col=11,endColumn=15::unknown name `foam`, 100 %25%0Ahelp: declare it
::warning file=rules/soft_rolls/mixing.rhai,title=unknown-name::unknown name `foam`, 100 %25
::error file=rules/soft_rolls/cases/hot.json,title=failed-test,line=9,col=15,endColumn=21::`leader`: wanted `cold`, came `hot`%0Ahelp: the first causes are `hot` 0.970
::error::the rules cannot be used: too many causes
2 faults, 1 warning, 1 of 34 rule tests failed
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
 --> soft_rolls/mixing.rhai

fault[failed-test]: `leader`: wanted `cold`, came `hot`
 --> soft_rolls/cases/hot.json:9:15
  |
9 |     \"leader\": \"cold\"
  |               ^^^^^^
  = help: the first causes are `hot` 0.970

fault: the rules cannot be used: too many causes

`whybake explain unknown-name` tells more; so it does of every code in brackets

2 faults, 1 warning, 1 of 34 rule tests failed
";
        assert_eq!(report().text(), expected);
    }

    #[test]
    fn json_counts_and_lists() {
        let report: serde_json::Value = serde_json::from_str(&report().json()).unwrap();
        assert_eq!(report["faults"], 2);
        assert_eq!(report["warnings"], 1);
        assert_eq!(report["diagnostics"][0]["code"], "unknown-name");
        assert_eq!((&report["tests"]["run"], &report["tests"]["failed"]), (&34.into(), &1.into()));
        assert_eq!(report["tests"]["failures"][0]["leading"][0]["cause"], "hot");
    }
}
