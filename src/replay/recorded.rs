//! What is read of an answer, stored or of now.

use crate::json::{FaultCode, Faults, Node, Object};
use crate::numeral::written;
use crate::rule_tests::LeadingCause;

/// The parts of an answer that are compared one by one.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Recorded {
    pub(super) rules_version: String,
    pub(super) rules_digest: String,
    /// The leading causes, then the others, each most probable first.
    pub(super) ranking: Vec<LeadingCause>,
    pub(super) actions: Vec<RecordedAction>,
    pub(super) cautions: Vec<RecordedCaution>,
}

/// An action of a leading cause.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct RecordedAction {
    pub(super) cause: String,
    pub(super) action: String,
    pub(super) quantities: Vec<RecordedQuantity>,
}

/// A quantity of an action.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct RecordedQuantity {
    pub(super) name: String,
    pub(super) value: f64,
    pub(super) unit: String,
}

/// A caution with its words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct RecordedCaution {
    pub(super) caution: String,
    pub(super) words: (String, String),
}

impl Recorded {
    /// Reads an answer; every fault goes to `faults`. Members that are not read may be there, other program versions
    /// write them.
    pub(super) fn read(node: &Node<'_>, faults: &mut Faults) -> Self {
        let mut recorded = Self::default();
        let Some(object) = node.any_object(faults) else { return recorded };
        if let Some(rules) = object.required(faults, "rules", Some("version and digest of the rules".to_owned()))
            && let Some(rules) = rules.any_object(faults)
        {
            recorded.rules_version = text(&rules, "version", faults);
            recorded.rules_digest = text(&rules, "digest", faults);
        }
        items(&object, "causes", faults, |faults, item| recorded.leading(item, faults));
        items(&object, "other_causes", faults, |faults, item| {
            if let Some(cause) = item.any_object(faults).and_then(|own| cause(&own, faults)) {
                recorded.ranking.push(cause);
            }
        });
        items(&object, "cautions", faults, |faults, item| {
            let Some(own) = item.any_object(faults) else { return };
            let why = own.optional("why").and_then(|node| node.text(faults)).unwrap_or_default().to_owned();
            let words = (text(&own, "text", faults), why);
            recorded.cautions.push(RecordedCaution { caution: text(&own, "caution", faults), words });
        });
        recorded
    }

    fn leading(&mut self, item: &Node<'_>, faults: &mut Faults) {
        let Some(object) = item.any_object(faults) else { return };
        let leading = cause(&object, faults);
        let id = leading.as_ref().map(|own| own.cause.clone()).unwrap_or_default();
        items(&object, "actions", faults, |faults, item| {
            let Some(own) = item.any_object(faults) else { return };
            let mut quantities = Vec::new();
            items(&own, "quantities", faults, |faults, item| {
                let Some(own) = item.any_object(faults) else { return };
                let (name, unit) = (text(&own, "name", faults), text(&own, "unit", faults));
                if let Some(value) = own.required(faults, "value", None).and_then(|node| node.number(faults)) {
                    quantities.push(RecordedQuantity { name, value, unit });
                }
            });
            let action = text(&own, "action", faults);
            self.actions.push(RecordedAction { cause: id.clone(), action, quantities });
        });
        self.ranking.extend(leading);
    }
}

fn cause(object: &Object<'_>, faults: &mut Faults) -> Option<LeadingCause> {
    let cause = text(object, "cause", faults);
    let probability = object.required(faults, "probability", None)?;
    let value = probability.number(faults)?;
    if !(0.0..=1.0).contains(&value) {
        let detail = format!("{} is not between 0 and 1", written(value));
        probability.fault(faults, FaultCode::OutOfRange, detail, None);
        return None;
    }
    Some(LeadingCause { cause, probability: value })
}

/// A text that must be there; empty when it is not, for the record is refused then.
fn text(object: &Object<'_>, name: &'static str, faults: &mut Faults) -> String {
    let node = object.required(faults, name, None);
    node.and_then(|node| node.text(faults)).unwrap_or_default().to_owned()
}

fn items(object: &Object<'_>, name: &'static str, faults: &mut Faults, mut visit: impl FnMut(&mut Faults, &Node<'_>)) {
    if let Some(node) = object.required(faults, name, None) {
        node.items(faults, |faults, item| visit(faults, &item));
    }
}
