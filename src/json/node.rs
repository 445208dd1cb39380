//! A place in a document: a value with its JSON Pointer, read with every fault collected.

use std::collections::HashSet;

use super::fault::{DocumentFaults, Fault, FaultCode};
use super::value::Json;
use crate::numeral::written;
use crate::suggest::did_you_mean;

/// A step from a value to one inside it.
#[derive(Debug, Clone, Copy)]
enum Step<'a> {
    Member(&'a str),
    Item(usize),
}

/// A name as a step of a JSON Pointer (RFC 6901, section 3).
pub(crate) fn step(name: &str) -> String {
    name.replace('~', "~0").replace('/', "~1")
}

/// The way from the document to a value; only written out when a fault needs it.
#[derive(Debug, Clone, Copy)]
struct Path<'a> {
    parent: Option<&'a Path<'a>>,
    step: Option<Step<'a>>,
}

impl Path<'_> {
    fn pointer(&self) -> String {
        let mut pointer = self.parent.map(Path::pointer).unwrap_or_default();
        match self.step {
            None => {}
            Some(Step::Item(index)) => pointer.push_str(&format!("/{index}")),
            Some(Step::Member(name)) => {
                pointer.push('/');
                pointer.push_str(&step(name));
            }
        }
        pointer
    }
}

/// Most faults that are told: nobody mends more at a time, and a hostile body must not make a huge answer.
const MOST_FAULTS: usize = 1_000;

/// The faults found so far, at most [`MOST_FAULTS`].
#[derive(Debug, Default)]
pub(crate) struct Faults(pub(crate) Vec<Fault>);

impl Faults {
    /// What was read, unless there are faults.
    pub(crate) fn finish<T>(self, found: Option<T>) -> Result<T, DocumentFaults> {
        match found {
            Some(found) if self.0.is_empty() => Ok(found),
            _ => Err(DocumentFaults::Faulty(self.0)),
        }
    }

    /// Whether no more are told.
    fn is_full(&self) -> bool {
        self.0.len() >= MOST_FAULTS
    }
}

/// A value and where it stands.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Node<'a> {
    json: &'a Json,
    path: Path<'a>,
}

impl<'a> Node<'a> {
    /// The whole document.
    pub(crate) fn root(json: &'a Json) -> Self {
        Self { json, path: Path { parent: None, step: None } }
    }

    fn inside<'b>(&'b self, json: &'b Json, step: Step<'b>) -> Node<'b> {
        Node { json, path: Path { parent: Some(&self.path), step: Some(step) } }
    }

    /// Records a fault here.
    pub(crate) fn fault(&self, faults: &mut Faults, code: FaultCode, detail: String, help: Option<String>) {
        if !faults.is_full() {
            faults.0.push(Fault { pointer: self.path.pointer(), code, detail, help });
        }
    }

    /// Records that a name is none of `known`, with the nearest of them or what else helps.
    pub(crate) fn unknown_name<'n>(
        &self,
        faults: &mut Faults,
        what: &str,
        name: &str,
        known: impl IntoIterator<Item = &'n str>,
        otherwise: impl FnOnce() -> Option<String>,
    ) {
        let help = did_you_mean(name, known).or_else(otherwise);
        self.fault(faults, FaultCode::UnknownName, format!("unknown {what} `{name}`"), help);
    }

    /// Records that the value is of another type than `wanted`.
    pub(crate) fn wrong_type(&self, faults: &mut Faults, wanted: &str) {
        self.fault(faults, FaultCode::WrongType, format!("{wanted} is wanted, this is {}", self.json.kind()), None);
    }

    /// Whether the value is an object.
    pub(crate) fn is_object(&self) -> bool {
        matches!(self.json, Json::Object(_))
    }

    /// Whether the value is `null`.
    pub(crate) fn is_null(&self) -> bool {
        matches!(self.json, Json::Null)
    }

    /// Whether the value is a string.
    pub(crate) fn is_text(&self) -> bool {
        matches!(self.json, Json::Text(_))
    }

    /// JSON Pointer (RFC 6901) to the value.
    pub(crate) fn pointer(&self) -> String {
        self.path.pointer()
    }

    /// Whether the value is an array.
    pub(crate) fn is_array(&self) -> bool {
        matches!(self.json, Json::Array(_))
    }

    /// The value, when it is a number.
    pub(crate) fn number_or_none(&self) -> Option<f64> {
        if let Json::Number(number) = self.json { Some(*number) } else { None }
    }

    /// The value as a string.
    pub(crate) fn text(&self, faults: &mut Faults) -> Option<&'a str> {
        if let Json::Text(text) = self.json {
            return Some(text);
        }
        self.wrong_type(faults, "a string");
        None
    }

    /// The value as a boolean.
    pub(crate) fn boolean(&self, faults: &mut Faults) -> Option<bool> {
        if let Json::Bool(value) = self.json {
            return Some(*value);
        }
        self.wrong_type(faults, "`true` or `false`");
        None
    }

    /// The value as a number.
    pub(crate) fn number(&self, faults: &mut Faults) -> Option<f64> {
        if let Json::Number(number) = self.json {
            return Some(*number);
        }
        self.wrong_type(faults, "a number");
        None
    }

    /// The value as a number in a range, both ends included.
    pub(crate) fn number_within(&self, faults: &mut Faults, low: f64, high: f64) -> Option<f64> {
        let number = self.number(faults)?;
        if (low..=high).contains(&number) {
            return Some(number);
        }
        let (least, most) = (written(low), written(high));
        let range = if high.is_finite() { format!("between {least} and {most}") } else { format!("at least {least}") };
        self.fault(faults, FaultCode::OutOfRange, format!("{} is not {range}", written(number)), None);
        None
    }

    /// Calls `visit` for every item of an array, as long as faults are told.
    pub(crate) fn items(&self, faults: &mut Faults, mut visit: impl FnMut(&mut Faults, Node<'_>)) {
        let Json::Array(items) = self.json else { return self.wrong_type(faults, "an array") };
        for (index, item) in items.iter().enumerate() {
            // A suggestion costs more than the name that it is for: what nobody is told is not looked for.
            if faults.is_full() {
                return;
            }
            visit(faults, self.inside(item, Step::Item(index)));
        }
    }

    /// Calls `visit` for every member of an object, as long as faults are told; a member that stands twice is a fault and
    /// visited once.
    pub(crate) fn members(&self, faults: &mut Faults, mut visit: impl FnMut(&mut Faults, &str, Node<'_>)) {
        let Json::Object(members) = self.json else { return self.wrong_type(faults, "an object") };
        let mut earlier = HashSet::with_capacity(members.len());
        for (name, value) in members {
            if faults.is_full() {
                return;
            }
            let node = self.inside(value, Step::Member(name));
            if !earlier.insert(name) {
                node.fault(faults, FaultCode::Duplicate, format!("`{name}` stands twice"), None);
            } else {
                visit(faults, name, node);
            }
        }
    }

    /// The value as an object of which only some members are read; one that stands twice is a fault.
    pub(crate) fn any_object(&'a self, faults: &mut Faults) -> Option<Object<'a>> {
        self.members(faults, |_, _, _| {});
        match self.json {
            Json::Object(members) => Some(Object { node: self, members }),
            _ => None,
        }
    }

    /// The value as an object of known members.
    pub(crate) fn object(&'a self, faults: &mut Faults, known: &[&str]) -> Option<Object<'a>> {
        self.members(faults, |faults, name, node| {
            if !known.contains(&name) {
                let help = did_you_mean(name, known.iter().copied())
                    .unwrap_or_else(|| format!("the members are {}", listing(known)));
                node.fault(faults, FaultCode::UnknownMember, format!("unknown member `{name}`"), Some(help));
            }
        });
        match self.json {
            Json::Object(members) => Some(Object { node: self, members }),
            _ => None,
        }
    }
}

/// An object whose member names have been checked.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Object<'a> {
    pub(crate) node: &'a Node<'a>,
    members: &'a [(String, Json)],
}

impl<'a> Object<'a> {
    /// A member that may be left out.
    pub(crate) fn optional(&self, name: &'static str) -> Option<Node<'a>> {
        let (_, json) = self.members.iter().find(|(own, _)| own == name)?;
        Some(self.node.inside(json, Step::Member(name)))
    }

    /// A member that must be there.
    pub(crate) fn required(&self, faults: &mut Faults, name: &'static str, help: Option<String>) -> Option<Node<'a>> {
        let found = self.optional(name);
        if found.is_none() {
            self.node.fault(faults, FaultCode::Missing, format!("`{name}` is missing"), help);
        }
        found
    }
}

/// Names in backticks, separated by commas.
pub(crate) fn listing<'n>(names: impl IntoIterator<Item = &'n (impl AsRef<str> + ?Sized + 'n)>) -> String {
    let quoted: Vec<String> = names.into_iter().map(|name| format!("`{}`", name.as_ref())).collect();
    quoted.join(", ")
}
