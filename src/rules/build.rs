//! What has been declared so far, and the faults found so far.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use rhai::{AST, Engine, Position};

use super::blank::blank;
use super::code::Code;
use super::diagnostic::{Diagnostic, Severity};
use super::files::RuleFiles;
use super::sandbox;
use super::stage::Stage;
use super::term::{Kind, Term};
use crate::knowledge::{Declarations, Input, Key, Place, Quantity, Reading};
use crate::suggest::did_you_mean;

/// Most diagnostics of a load; a loop can repeat one fault for ever.
const MOST_DIAGNOSTICS: usize = 1_000;

/// Longest name, bytes.
const LONGEST_NAME: usize = 64;

/// A declared or reserved name.
#[derive(Debug, Clone)]
pub(super) struct Name {
    pub(super) term: Term,
    /// Where its declaration stands, run or not.
    pub(super) seen: Place,
    /// Where it is declared; `None` while it is only reserved.
    pub(super) place: Option<Place>,
}

/// The state of a load.
pub(super) struct Build {
    pub(super) declared: Declarations,
    pub(super) names: BTreeMap<String, Name>,
    pub(super) diagnostics: Vec<Diagnostic>,
    /// Properties that a declaration states, rightly or wrongly: kind and index of the thing, and the word.
    pub(super) stated: BTreeSet<(Kind, usize, &'static str)>,
    /// Readings whose unit is known by now; what the others are counted in is not judged.
    pub(super) in_units: BTreeSet<Key<Reading>>,
    /// Engine for closures in requests.
    pub(super) judging: Arc<Engine>,
    /// Functions of the file that is running, for its closures.
    pub(super) functions: Arc<AST>,
    /// The file that is running, and its stage.
    pub(super) file: Arc<str>,
    pub(super) stage: Stage,
    files: Arc<RuleFiles>,
}

impl Build {
    pub(super) fn new(files: Arc<RuleFiles>) -> Self {
        Self {
            declared: Declarations::default(),
            names: BTreeMap::new(),
            diagnostics: Vec::new(),
            stated: BTreeSet::new(),
            in_units: BTreeSet::new(),
            judging: Arc::new(sandbox::judging_engine()),
            functions: Arc::new(AST::empty()),
            file: Arc::from(""),
            stage: Stage::Pack,
            files,
        }
    }

    /// A place in the running file.
    pub(super) fn place(&self, position: Position) -> Place {
        place(&self.file, position)
    }

    /// Records a diagnostic with its source line.
    pub(super) fn report(
        &mut self,
        severity: Severity,
        code: Code,
        at: &Place,
        width: usize,
        message: String,
        help: Option<String>,
    ) {
        let source_line = self.source_line(at).unwrap_or_default().to_owned();
        let diagnostic = Diagnostic {
            code,
            severity,
            file: at.file.to_string(),
            line: at.line,
            column: at.column,
            width,
            source_line,
            message,
            help,
        };
        if self.diagnostics.len() < MOST_DIAGNOSTICS && !self.diagnostics.contains(&diagnostic) {
            self.diagnostics.push(diagnostic);
        }
    }

    fn source_line(&self, at: &Place) -> Option<&str> {
        self.files.text(&at.file)?.lines().nth(at.line.checked_sub(1)?)
    }

    /// Records a fault.
    pub(super) fn fault(&mut self, code: Code, at: &Place, width: usize, message: String, help: Option<String>) {
        self.report(Severity::Fault, code, at, width, message, help);
    }

    /// Declares an id in the running file: gives what it stands for, or [`Term::Unknown`] after a fault.
    pub(super) fn declare(&mut self, word: &str, kind: Kind, id: &str, at: &Place) -> Term {
        if !self.may_declare(word, at) || !self.is_free(word, kind, id, at) {
            return Term::Unknown;
        }
        let term = self.reserve(kind, id, at);
        if let Some(name) = self.names.get_mut(id) {
            name.place = Some(at.clone());
        }
        term
    }

    /// Declares a word of a scale.
    pub(super) fn declare_value(&mut self, word: &str, id: &str, value: Term, at: &Place) {
        if self.may_declare(word, at) && self.is_free(word, value.kind(), id, at) {
            self.names.insert(id.to_owned(), Name { term: value, seen: at.clone(), place: Some(at.clone()) });
        }
    }

    /// Makes sure that an id stands for something; gives what it stands for, which may be of another kind.
    pub(super) fn reserve(&mut self, kind: Kind, id: &str, at: &Place) -> Term {
        if let Some(name) = self.names.get(id) {
            return name.term.clone();
        }
        let term = blank(&mut self.declared, kind, id, &self.file);
        self.names.insert(id.to_owned(), Name { term: term.clone(), seen: at.clone(), place: None });
        term
    }

    /// Takes an id for declared although its declaration fails: that is told already.
    pub(super) fn believe_declared(&mut self, id: &str) {
        let nowhere = self.place(Position::NONE);
        if let Some(name) = self.names.get_mut(id) {
            name.place.get_or_insert(nowhere);
        }
    }

    /// Whether the unit of every reading in a quantity is known.
    pub(super) fn knows_units_of(&self, quantity: &Quantity) -> bool {
        let mut known = true;
        quantity.inputs(&mut |input| {
            if let Input::Reading(key) = input {
                known &= self.in_units.contains(&key);
            }
        });
        known
    }

    /// Whether the running file may use a declaring word.
    fn may_declare(&mut self, word: &str, at: &Place) -> bool {
        let Some(stage) = Stage::declared_by(word) else {
            return false;
        };
        if stage == self.stage {
            return true;
        }
        let message = format!("`{word}` may not stand in this file");
        self.fault(Code::WrongFile, at, word.len(), message, Some(stage.belongs_in()));
        false
    }

    /// Whether an id is a name that nothing else has.
    fn is_free(&mut self, word: &str, kind: Kind, id: &str, at: &Place) -> bool {
        let width = word.len();
        if !self.is_name(id, kind) {
            let help = "names are lower case: letters, digits and `_`; words of a scale and markets are upper case";
            self.fault(Code::OutOfRange, at, width, format!("`{id}` is not a name"), Some(help.to_owned()));
            return false;
        }
        match self.names.get(id).cloned() {
            Some(Name { place: Some(first), .. }) => {
                let message = format!("`{id}` is declared twice");
                self.fault(Code::Duplicate, at, width, message, Some(format!("the first is at {first}")));
                false
            }
            Some(Name { term, .. }) if term.kind() != kind => {
                let message = format!("`{id}` is already {}", term.kind().phrase());
                self.fault(Code::Duplicate, at, width, message, Some("ids are unique within the pack".to_owned()));
                false
            }
            _ => true,
        }
    }

    /// Whether a text can be a name of its kind.
    pub(super) fn is_name(&self, id: &str, kind: Kind) -> bool {
        is_name(&self.judging, id, kind)
    }

    /// "did you mean" among all names.
    pub(super) fn suggestion(&self, name: &str) -> Option<String> {
        did_you_mean(name, self.names.keys().map(String::as_str))
    }
}

/// A place in a file.
pub(super) fn place(file: &Arc<str>, position: Position) -> Place {
    Place { file: Arc::clone(file), line: position.line().unwrap_or(0), column: position.position().unwrap_or(0) }
}

/// Whether a text can be a name of its kind: a plain identifier that the script language does not keep for itself.
fn is_name(engine: &Engine, id: &str, kind: Kind) -> bool {
    let upper = matches!(kind, Kind::Market) || kind.is_of_scale();
    let letter = |c: char| {
        if upper { c.is_ascii_uppercase() } else { c.is_ascii_lowercase() }
    };
    let mut characters = id.chars();
    id.len() <= LONGEST_NAME
        && characters.next().is_some_and(letter)
        && characters.all(|c| letter(c) || c.is_ascii_digit() || c == '_')
        && id != "this"
        && engine.compile(id).is_ok()
}
