//! What a rule test expects of an answer.

use super::places::{Places, Span};
use crate::case::{find, find_named};
use crate::json::{Faults, Node};
use crate::knowledge::{Action, Cause, Caution, Declarations, Key, Named, Reading, Symptom, Table};

/// One thing that the answer must say.
#[derive(Debug, Clone, PartialEq)]
pub struct Expectation {
    /// What is wanted.
    pub wanted: Wanted,
    /// Where it stands in the file of the test.
    pub(super) span: Span,
}

/// What can be wanted of an answer.
#[derive(Debug, Clone, PartialEq)]
pub enum Wanted {
    /// The cause ranks first.
    Leader(Key<Cause>),
    /// The cause ranks first, second or third.
    AmongFirstThree(Key<Cause>),
    /// The cause is more probable than this, 0 to 1.
    Above(Key<Cause>, f64),
    /// The cause is less probable than this, 0 to 1.
    Below(Key<Cause>, f64),
    /// The reading is one of the first three to take next.
    NextReadingAmongFirstThree(Key<Reading>),
    /// The caution is given.
    Caution(Key<Caution>),
    /// The caution is not given.
    NoCaution(Key<Caution>),
    /// An action says that it needs something, by id, to set a quantity.
    Needs(Key<Action>, String),
    /// An action of a cause sets a quantity.
    Quantity(WantedQuantity),
    /// The requirements exclude the action.
    ExcludedAction(Key<Action>),
    /// No probable cause explains the symptom.
    Unexplained(Key<Symptom>),
    /// The reading or fact, by id, is set aside.
    SetAside(String),
    /// A reading out of its limits shows the symptom.
    Raised(Key<Symptom>),
}

/// A quantity that an action must set.
#[derive(Debug, Clone, PartialEq)]
pub struct WantedQuantity {
    /// The cause whose action it is; `None` is the leader.
    pub cause: Option<Key<Cause>>,
    /// The action.
    pub action: Key<Action>,
    /// Name of the quantity.
    pub name: String,
    /// Value, in the unit of the rule.
    pub value: f64,
    /// How far from it the answer may be, same unit, 0 or more.
    pub within: f64,
}

/// Reads the expectations of one kind.
type Read = fn(&Node<'_>, &mut Reader<'_, '_>, &mut Faults);

/// Every kind of expectation by its name in the file.
const KINDS: [(&str, Read); 13] = [
    ("leader", |node, reader, faults| {
        if let Some(key) = find(node, &reader.declared.causes, "cause", faults) {
            reader.push(Wanted::Leader(key), node);
        }
    }),
    ("among_first_three", |node, reader, faults| {
        reader.each(node, |declared| &declared.causes, "cause", Wanted::AmongFirstThree, faults);
    }),
    ("above", |node, reader, faults| reader.probabilities(node, Wanted::Above, faults)),
    ("below", |node, reader, faults| reader.probabilities(node, Wanted::Below, faults)),
    ("next_reading_among_first_three", |node, reader, faults| {
        reader.each(node, |declared| &declared.readings, "reading", Wanted::NextReadingAmongFirstThree, faults);
    }),
    ("caution", |node, reader, faults| {
        reader.each(node, |declared| &declared.cautions, "caution", Wanted::Caution, faults);
    }),
    ("no_caution", |node, reader, faults| {
        reader.each(node, |declared| &declared.cautions, "caution", Wanted::NoCaution, faults);
    }),
    ("needs", |node, reader, faults| reader.needs(node, faults)),
    ("quantity", |node, reader, faults| {
        if node.is_array() {
            node.items(faults, |faults, item| reader.quantity(&item, faults));
        } else {
            reader.quantity(node, faults);
        }
    }),
    ("excluded_action", |node, reader, faults| {
        reader.each(node, |declared| &declared.actions, "action", Wanted::ExcludedAction, faults);
    }),
    ("unexplained", |node, reader, faults| {
        reader.each(node, |declared| &declared.symptoms, "symptom", Wanted::Unexplained, faults);
    }),
    ("set_aside", |node, reader, faults| node.items(faults, |faults, item| reader.set_aside(&item, faults))),
    ("raised", |node, reader, faults| {
        reader.each(node, |declared| &declared.symptoms, "symptom", Wanted::Raised, faults);
    }),
];

/// Reads `expect` of a test; gives the expectations in the order in which they stand.
pub(super) fn read(
    expect: &Node<'_>,
    declared: &Declarations,
    places: &Places<'_>,
    faults: &mut Faults,
) -> Vec<Expectation> {
    let mut reader = Reader { declared, places, expectations: Vec::new() };
    let names = KINDS.map(|(name, _)| name);
    if let Some(object) = expect.object(faults, &names) {
        for (name, read) in KINDS {
            if let Some(node) = object.optional(name) {
                read(&node, &mut reader, faults);
            }
        }
    }
    reader.expectations.sort_by_key(|expectation| (expectation.span.line, expectation.span.column));
    reader.expectations
}

struct Reader<'d, 't> {
    declared: &'d Declarations,
    places: &'d Places<'t>,
    expectations: Vec<Expectation>,
}

impl<'d> Reader<'d, '_> {
    fn push(&mut self, wanted: Wanted, node: &Node<'_>) {
        let by_name = matches!(wanted, Wanted::Above(..) | Wanted::Below(..));
        let pointer = node.pointer();
        let span = if by_name { self.places.name_span(&pointer) } else { self.places.span(&pointer) };
        self.expectations.extend(span.map(|span| Expectation { wanted, span }));
    }

    /// A list of ids of one kind.
    fn each<T: Named>(
        &mut self,
        node: &Node<'_>,
        table: fn(&'d Declarations) -> &'d Table<T>,
        what: &str,
        wanted: fn(Key<T>) -> Wanted,
        faults: &mut Faults,
    ) {
        node.items(faults, |faults, item| {
            if let Some(key) = find(&item, table(self.declared), what, faults) {
                self.push(wanted(key), &item);
            }
        });
    }

    /// Probabilities by cause.
    fn probabilities(&mut self, node: &Node<'_>, wanted: fn(Key<Cause>, f64) -> Wanted, faults: &mut Faults) {
        node.members(faults, |faults, id, value| {
            let cause = find_named(&value, id, &self.declared.causes, "cause", faults);
            if let (Some(cause), Some(limit)) = (cause, value.number_within(faults, 0.0, 1.0)) {
                self.push(wanted(cause, limit), &value);
            }
        });
    }

    fn quantity(&mut self, node: &Node<'_>, faults: &mut Faults) {
        let members = ["cause", "action", "name", "value", "within"];
        let Some(object) = node.object(faults, &members) else { return };
        let required = |faults: &mut Faults, name| object.required(faults, name, None);
        let action = required(faults, "action").and_then(|node| find(&node, &self.declared.actions, "action", faults));
        let name = required(faults, "name").and_then(|node| node.text(faults).map(str::to_owned));
        let value = required(faults, "value").and_then(|node| node.number(faults));
        let within = required(faults, "within").and_then(|node| node.number_within(faults, 0.0, f64::INFINITY));
        let cause = object.optional("cause").map(|node| find(&node, &self.declared.causes, "cause", faults));
        if let (Some(action), Some(name), Some(value), Some(within)) = (action, name, value, within)
            && cause != Some(None)
        {
            let wanted = WantedQuantity { cause: cause.flatten(), action, name, value, within };
            self.push(Wanted::Quantity(wanted), node);
        }
    }

    /// What actions lack, by action.
    fn needs(&mut self, node: &Node<'_>, faults: &mut Faults) {
        node.members(faults, |faults, id, needs| {
            let Some(action) = find_named(&needs, id, &self.declared.actions, "action", faults) else { return };
            needs.items(faults, |faults, item| {
                let Some(need) = item.text(faults) else { return };
                if need == "formula" || self.is_finding(&item, need, faults) {
                    self.push(Wanted::Needs(action, need.to_owned()), &item);
                }
            });
        });
    }

    /// The id of a reading or a fact.
    fn set_aside(&mut self, item: &Node<'_>, faults: &mut Faults) {
        let Some(id) = item.text(faults) else { return };
        if self.is_finding(item, id, faults) {
            self.push(Wanted::SetAside(id.to_owned()), item);
        }
    }

    /// Whether an id is that of a reading or a fact.
    fn is_finding(&self, item: &Node<'_>, id: &str, faults: &mut Faults) -> bool {
        let is_fact = self.declared.facts.find(id).is_some();
        is_fact || find_named(item, id, &self.declared.readings, "reading", faults).is_some()
    }
}
