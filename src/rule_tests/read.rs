//! From the text of case files to rule tests.

use super::expectation::{self, Expectation};
use super::places::{Places, Span};
use crate::case::Case;
use crate::json::{DocumentFaults, Fault, FaultCode, Faults, Json, Node};
use crate::knowledge::Knowledge;
use crate::rules::{Code, Diagnostic, RuleFiles, Severity};

/// The tests of a pack, and what is wrong with their files.
#[derive(Debug, Clone, Default)]
pub struct RuleTests {
    /// The tests that can be run, by path.
    pub tests: Vec<RuleTest>,
    /// Faults of the files that cannot be run, and warnings.
    pub diagnostics: Vec<Diagnostic>,
}

/// A case with what its answer must say.
#[derive(Debug, Clone)]
pub struct RuleTest {
    /// File within the pack.
    pub file: String,
    /// What it is about.
    pub title: String,
    /// Where the case comes from, and what else is to be known; may be empty.
    pub note: String,
    /// The case.
    pub case: Case,
    /// What the answer must say.
    pub expectations: Vec<Expectation>,
}

impl RuleTests {
    /// Reads the case files of a pack against the knowledge that was loaded from it. A faulty file is told, and the others
    /// are read all the same.
    #[must_use]
    pub fn read(files: &RuleFiles, knowledge: &Knowledge) -> Self {
        let mut tests = Self::default();
        for (path, text) in files.cases() {
            let mut diagnostics = Vec::new();
            match serde_json::from_str::<Json>(text) {
                // Only what the parser let pass is searched for places: it refuses texts that are nested without end.
                Ok(json) => {
                    let file = CaseFile { path, places: Places::of(text), knowledge };
                    tests.tests.extend(file.read(&json, &mut diagnostics));
                }
                Err(error) => diagnostics.push(malformed(path, text, &error)),
            }
            diagnostics.sort_by_key(|diagnostic| (diagnostic.line, diagnostic.column));
            tests.diagnostics.extend(diagnostics);
        }
        tests
    }

    /// Whether a file cannot be run.
    #[must_use]
    pub fn has_faults(&self) -> bool {
        self.diagnostics.iter().any(|diagnostic| diagnostic.severity == Severity::Fault)
    }
}

struct CaseFile<'f> {
    path: &'f str,
    places: Places<'f>,
    knowledge: &'f Knowledge,
}

impl CaseFile<'_> {
    /// The test; `None` after a fault.
    fn read(&self, json: &Json, diagnostics: &mut Vec<Diagnostic>) -> Option<RuleTest> {
        let mut faults = Faults::default();
        let test = self.test(&Node::root(json), &mut faults);
        let faulty = !faults.0.is_empty();
        diagnostics.extend(faults.0.iter().map(|fault| self.faulty(fault)));
        let test = test.filter(|_| !faulty)?;
        if test.expectations.is_empty() {
            diagnostics.push(self.expects_nothing());
        }
        Some(test)
    }

    fn test(&self, root: &Node<'_>, faults: &mut Faults) -> Option<RuleTest> {
        let object = root.object(faults, &["title", "note", "case", "expect"])?;
        let title = object.required(faults, "title", None).and_then(|node| node.text(faults));
        let note = object.optional("note").map(|node| node.text(faults));
        let case = object.required(faults, "case", None).and_then(|node| self.case(&node, faults));
        let declared = &self.knowledge.declared;
        let expectations =
            object.optional("expect").map(|node| expectation::read(&node, declared, &self.places, faults));
        Some(RuleTest {
            file: self.path.to_owned(),
            title: title?.to_owned(),
            note: note.flatten().unwrap_or_default().to_owned(),
            case: case?,
            expectations: expectations.unwrap_or_default(),
        })
    }

    /// The case, from its own text, so that it is read exactly as callers' cases are.
    fn case(&self, node: &Node<'_>, faults: &mut Faults) -> Option<Case> {
        let pointer = node.pointer();
        match Case::parse(self.places.value(&pointer)?.as_bytes(), self.knowledge) {
            Ok(case) => Some(case),
            Err(DocumentFaults::Faulty(found)) => {
                faults.0.extend(
                    found.into_iter().map(|fault| Fault { pointer: format!("{pointer}{}", fault.pointer), ..fault }),
                );
                None
            }
            Err(DocumentFaults::Malformed(message)) => {
                node.fault(faults, FaultCode::WrongType, message, None);
                None
            }
        }
    }

    fn faulty(&self, fault: &Fault) -> Diagnostic {
        let span = self.places.of_fault(fault);
        self.diagnostic(code(fault.code), Severity::Fault, span, fault.detail.clone(), fault.help.clone())
    }

    fn expects_nothing(&self) -> Diagnostic {
        let span = self.places.name_span("/expect").or_else(|| self.places.span(""));
        let help = "add `\"expect\": { \"leader\": \"…\" }`".to_owned();
        let message = "the case expects nothing".to_owned();
        self.diagnostic(Code::ExpectsNothing, Severity::Warning, span, message, Some(help))
    }

    fn diagnostic(
        &self,
        code: Code,
        severity: Severity,
        span: Option<Span>,
        message: String,
        help: Option<String>,
    ) -> Diagnostic {
        let whole = Diagnostic { severity, help, ..Diagnostic::of_file(code, self.path, message) };
        match span {
            Some(Span { line, column, width, source_line }) => Diagnostic { line, column, width, source_line, ..whole },
            None => whole,
        }
    }
}

/// A file that is no JSON.
fn malformed(path: &str, text: &str, error: &serde_json::Error) -> Diagnostic {
    let message = error.to_string();
    let message = message.split(" at line ").next().unwrap_or_default().to_lowercase();
    let source_line = text.lines().nth(error.line().saturating_sub(1)).unwrap_or_default();
    // The parser counts bytes, and ends on the character that it cannot read.
    let column = source_line.char_indices().take_while(|(at, _)| *at < error.column()).count();
    Diagnostic {
        line: error.line(),
        column: column.max(1),
        source_line: source_line.to_owned(),
        ..Diagnostic::of_file(Code::Syntax, path, format!("the file is not JSON: {message}"))
    }
}

/// The same kind of mistake has the same code in a rule and in a rule test.
fn code(code: FaultCode) -> Code {
    match code {
        FaultCode::Missing => Code::Incomplete,
        FaultCode::UnknownMember => Code::UnknownWord,
        FaultCode::UnknownName => Code::UnknownName,
        FaultCode::WrongType => Code::WrongArguments,
        FaultCode::OutOfRange => Code::OutOfRange,
        FaultCode::UnknownUnit | FaultCode::WrongKindOfUnit => Code::Unit,
        FaultCode::Duplicate => Code::Duplicate,
        FaultCode::Contradiction | FaultCode::Impossible => Code::Contradiction,
    }
}
