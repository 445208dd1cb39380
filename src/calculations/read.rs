//! Reads the inputs of a calculation from JSON, with every fault listed.

use super::input::{Choice, Input, InputKind, NumberKind, RowsKind};
use super::values::{Value, Values};
use crate::json::{DocumentFaults, FaultCode, Faults, Json, Node, Object, listing};
use crate::units::{Unit, convert, convert_difference};

/// Longest name that comes back in an answer, characters.
pub(crate) const LONGEST_TEXT: usize = 100;

/// Reads a whole document.
pub(super) fn inputs(inputs: &'static [Input], text: &[u8]) -> Result<Values, DocumentFaults> {
    let json = Json::parse(text).map_err(DocumentFaults::Malformed)?;
    let mut faults = Faults::default();
    let values = object(&Node::root(&json), inputs, &mut faults);
    faults.finish(Some(values))
}

/// Reads the members of an object.
fn object(node: &Node<'_>, inputs: &'static [Input], faults: &mut Faults) -> Values {
    let names: Vec<&str> = inputs.iter().map(|input| input.name).collect();
    let mut values = Values::default();
    let Some(object) = node.object(faults, &names) else { return values };
    for input in inputs {
        if let Some(value) = member(&object, input, faults) {
            values.set(input.name, value);
        }
    }
    values
}

fn member(object: &Object<'_>, input: &'static Input, faults: &mut Faults) -> Option<Value> {
    let found = if input.is_required() {
        Some(object.required(faults, input.name, Some(input.in_words()))?)
    } else {
        object.optional(input.name)
    };
    found.map_or_else(|| input.default_value(), |node| value(&node, input, faults))
}

impl Input {
    /// The input in words, with its unit or words.
    pub(crate) fn in_words(&self) -> String {
        match self.kind {
            InputKind::Number(NumberKind { unit, .. }) if unit != "1" => format!("{}, in `{unit}`", self.description),
            InputKind::Choice(choices) => format!("{}: {}", self.description, listing(words(choices))),
            _ => self.description.to_owned(),
        }
    }
}

fn words(choices: &'static [Choice]) -> impl Iterator<Item = &'static str> {
    choices.iter().map(|choice| choice.word)
}

fn value(node: &Node<'_>, input: &'static Input, faults: &mut Faults) -> Option<Value> {
    match input.kind {
        InputKind::Number(kind) => number(node, kind, faults).map(Value::Number),
        InputKind::Choice(choices) => choice(node, choices, faults).map(Value::Word),
        InputKind::Boolean => node.boolean(faults).map(Value::Boolean),
        InputKind::Text => text(node, faults).map(Value::Text),
        InputKind::Composition(components) => composition(node, components, faults).map(Value::Composition),
        InputKind::Rows(kind) => rows(node, kind, faults).map(Value::Rows),
    }
}

/// A bare number in the input's own unit, or a value with its unit.
fn number(node: &Node<'_>, kind: NumberKind, faults: &mut Faults) -> Option<f64> {
    if !node.is_object() {
        let Some(number) = node.number_or_none() else {
            let wanted = format!("a number in `{}`, or an object with `value` and `unit`,", kind.unit);
            node.wrong_type(faults, &wanted);
            return None;
        };
        return within(node, number, kind, faults);
    }
    let object = node.object(faults, &["value", "unit"])?;
    let given = object.required(faults, "value", None).and_then(|node| node.number(faults));
    let unit = object.required(faults, "unit", Some(format!("it is computed in `{}`", kind.unit)));
    let unit = unit.and_then(|node| unit_of(&node, kind, faults));
    let number = converted(given?, &unit?, kind)?;
    within(node, number, kind, faults)
}

fn unit_of(node: &Node<'_>, kind: NumberKind, faults: &mut Faults) -> Option<Unit> {
    let unit = node.unit(faults, Some(&format!("it is computed in `{}`", kind.unit)))?;
    if let Err(why) = converted_or_why(0.0, &unit, kind) {
        let help = format!("give it in `{}` or a unit of that kind", kind.unit);
        node.fault(faults, FaultCode::WrongKindOfUnit, why, Some(help));
        return None;
    }
    Some(unit)
}

/// A value of another unit in the unit of an input.
pub(crate) fn converted(value: f64, unit: &Unit, kind: NumberKind) -> Option<f64> {
    converted_or_why(value, unit, kind).ok()
}

/// The same, with the reason why it cannot be converted.
pub(crate) fn converted_or_why(value: f64, unit: &Unit, kind: NumberKind) -> Result<f64, String> {
    let own = Unit::parse(kind.unit).map_err(|fault| fault.to_string())?;
    let convert = if kind.is_difference { convert_difference } else { convert };
    convert(value, unit, &own).map_err(|fault| fault.to_string())
}

fn within(node: &Node<'_>, number: f64, kind: NumberKind, faults: &mut Faults) -> Option<f64> {
    match kind.out_of_range(number) {
        None => Some(number),
        Some(detail) => {
            node.fault(faults, FaultCode::OutOfRange, detail, None);
            None
        }
    }
}

impl NumberKind {
    /// What is wrong with a number in the input's unit, if it is not plausible.
    pub(crate) fn out_of_range(&self, number: f64) -> Option<String> {
        let Self { unit, low, high, .. } = *self;
        let unit = if unit == "1" { String::new() } else { format!(" {unit}") };
        (!(low..=high).contains(&number)).then(|| format!("{number}{unit} is not between {low} and {high}{unit}"))
    }
}

fn choice(node: &Node<'_>, choices: &'static [Choice], faults: &mut Faults) -> Option<&'static str> {
    let given = node.text(faults)?;
    let found = words(choices).find(|word| *word == given);
    if found.is_none() {
        let all = || Some(format!("the words are {}", listing(words(choices))));
        node.unknown_name(faults, "word", given, words(choices), all);
    }
    found
}

fn text(node: &Node<'_>, faults: &mut Faults) -> Option<String> {
    let text = node.text(faults)?;
    if text.trim().is_empty() || text.chars().count() > LONGEST_TEXT {
        let detail = format!("a name has 1 to {LONGEST_TEXT} characters");
        node.fault(faults, FaultCode::OutOfRange, detail, None);
        return None;
    }
    Some(text.to_owned())
}

fn composition(
    node: &Node<'_>,
    components: &'static [&'static str],
    faults: &mut Faults,
) -> Option<Vec<(&'static str, f64)>> {
    let object = node.object(faults, components)?;
    let kind = NumberKind { unit: "%", low: 0.0, high: 100.0, is_difference: false };
    let share = |name: &'static str| (name, object.optional(name));
    let mut shares = Vec::new();
    for (name, given) in components.iter().copied().map(share) {
        if let Some(node) = given {
            shares.push((name, number(&node, kind, faults)?));
        }
    }
    Some(shares)
}

fn rows(node: &Node<'_>, kind: RowsKind, faults: &mut Faults) -> Option<Vec<Values>> {
    let mut rows = Vec::new();
    let mut count = 0_usize;
    node.items(faults, |faults, item| {
        count += 1;
        if count <= kind.most {
            rows.push(object(&item, kind.inputs, faults));
        }
    });
    if !node.is_array() {
        return None;
    }
    if (kind.least..=kind.most).contains(&count) {
        return Some(rows);
    }
    let detail = format!("{count} rows are given, {} to {} are taken", kind.least, kind.most);
    node.fault(faults, FaultCode::OutOfRange, detail, None);
    None
}
