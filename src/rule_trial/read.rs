//! From JSON text to a [`Trial`].

use serde::Deserialize;
use serde_json::value::RawValue;
use utoipa::ToSchema;

use crate::case::CaseDocument;
use crate::json::{DocumentFaults, FaultCode, Faults, Json, Node, without_mark};
use crate::rules::RuleFiles;
use crate::suggest::did_you_mean;

/// Most changed files of a trial.
pub const MOST_FILES: usize = 500;

/// Most cases of a trial.
pub const MOST_CASES: usize = 1_000;

/// Longest path of a file, characters.
const LONGEST_PATH: usize = 200;

/// Changed rules on trial.
#[derive(Debug)]
pub struct Trial {
    /// The rules in force with the changes.
    pub(super) files: RuleFiles,
    /// Texts of the cases of the request.
    pub(super) cases: Vec<Vec<u8>>,
}

/// A trial as JSON: what is changed, and cases to judge the change by.
#[derive(Debug, ToSchema)]
#[schema(as = Trial)]
pub struct TrialDocument {
    /// Texts of rule files (`….rhai`) and rule tests (`…/cases/….json`) by their path within the pack: new ones, and others
    /// in place of those in force; `null` takes a file out.
    #[schema(required = false, value_type = std::collections::BTreeMap<String, Option<String>>)]
    pub files: (),
    /// Cases to judge the change by, beside those of the rule tests.
    #[schema(required = false)]
    pub cases: Vec<CaseDocument>,
}

/// The cases as they were written; everything else has been read.
#[derive(Deserialize)]
struct Cases<'t> {
    #[serde(borrow, default)]
    cases: Vec<&'t RawValue>,
}

impl Trial {
    /// Reads a trial of changes to `files`.
    ///
    /// # Errors
    /// Every fault of the text at once; what is wrong with the rules and the cases themselves is told by the trial.
    pub fn read(text: &[u8], files: &RuleFiles) -> Result<Self, DocumentFaults> {
        let json = Json::parse(text).map_err(DocumentFaults::Malformed)?;
        let mut faults = Faults::default();
        let mut files = files.clone();
        let root = Node::root(&json);
        if let Some(object) = root.object(&mut faults, &["files", "cases"]) {
            if let Some(node) = object.optional("files") {
                change(&mut files, &node, &mut faults);
            }
            if let Some(node) = object.optional("cases") {
                count_cases(&node, &mut faults);
            }
        }
        faults.finish(Some(()))?;
        let Cases { cases } =
            serde_json::from_slice(without_mark(text)).map_err(|error| DocumentFaults::Malformed(error.to_string()))?;
        Ok(Self { files, cases: cases.into_iter().map(|case| case.get().as_bytes().to_vec()).collect() })
    }
}

fn change(files: &mut RuleFiles, node: &Node<'_>, faults: &mut Faults) {
    let mut count = 0;
    node.members(faults, |faults, path, node| {
        count += 1;
        if count > MOST_FILES {
            if count == MOST_FILES + 1 {
                let detail = format!("a trial changes at most {MOST_FILES} files");
                node.fault(faults, FaultCode::OutOfRange, detail, None);
            }
        } else if let Some(message) = faulty_path(path) {
            node.fault(faults, FaultCode::OutOfRange, message, None);
        } else if node.is_null() {
            remove(files, path, &node, faults);
        } else if let Some(text) = text_of(&node, faults) {
            files.insert(path, text);
        }
    });
}

fn text_of<'n>(node: &Node<'n>, faults: &mut Faults) -> Option<&'n str> {
    if !node.is_text() {
        node.wrong_type(faults, "a text or `null`");
        return None;
    }
    let text = node.text(faults)?;
    let longest = RuleFiles::LARGEST_FILE;
    if text.len() as u64 > longest {
        let message = format!("the file is longer than {} KiB", longest / 1024);
        node.fault(faults, FaultCode::OutOfRange, message, None);
        return None;
    }
    Some(text)
}

fn remove(files: &mut RuleFiles, path: &str, node: &Node<'_>, faults: &mut Faults) {
    let is_there = files.iter().chain(files.cases()).any(|(own, _)| own == path);
    if is_there {
        files.remove(path);
        return;
    }
    let help = did_you_mean(path, files.iter().chain(files.cases()).map(|(path, _)| path));
    node.fault(faults, FaultCode::UnknownName, format!("there is no file `{path}` to take out"), help);
}

/// What keeps a path from being one of a pack.
fn faulty_path(path: &str) -> Option<String> {
    let is_plain = |step: &str| !step.is_empty() && !step.starts_with('.') && !step.contains(['\\', '\0']);
    if path.len() > LONGEST_PATH || !path.split('/').all(is_plain) {
        return Some("a path within the pack is wanted, for example `soft_rolls/mixing.rhai`".to_owned());
    }
    let message = "a pack takes files `….rhai`, and `….json` in folders named `cases`";
    (!RuleFiles::takes(path)).then(|| message.to_owned())
}

fn count_cases(node: &Node<'_>, faults: &mut Faults) {
    let mut count = 0;
    node.items(faults, |faults, node| {
        count += 1;
        if count == MOST_CASES + 1 {
            node.fault(faults, FaultCode::OutOfRange, format!("a trial takes at most {MOST_CASES} cases"), None);
        }
    });
}
