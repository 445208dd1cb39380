//! Calculations as plain text for a terminal.

use crate::calculations::{
    Calculation, CalculationAnswer, CalculationDescription, CalculationList, ChoiceDescription, DefaultDescription,
    FigureAnswer, InputDescription,
};
use crate::diagnosis::measure;
use crate::paragraphs::Paragraphs;
use crate::units::Unit;

/// All calculations, a line or two each.
pub(super) fn list(list: &CalculationList, width: usize) -> String {
    let mut page = Paragraphs::new(width);
    for item in &list.calculations {
        page.add(0, "", item.name);
        page.add(4, "", item.title);
    }
    page.heading("`whybake calculate NAME` tells the inputs of one.");
    page.into_text()
}

/// A calculation with its inputs, figures, sources and an example.
pub(super) fn description(description: &CalculationDescription, width: usize) -> String {
    let mut page = Paragraphs::new(width);
    page.add(0, "", &format!("{}: {}", description.name, description.title));
    page.add(0, "", description.description);
    page.heading("Inputs");
    for input in &description.inputs {
        add_input(&mut page, 2, input);
    }
    if !description.figures.is_empty() {
        page.heading("Figures");
    }
    for figure in &description.figures {
        page.add(2, "- ", &format!("{} ({}): {}", figure.name, figure.unit, figure.description));
    }
    page.heading("Example, for --input");
    page.add(2, "", description.worked_example.get());
    add_answer(&mut page, &description.worked_answer);
    page.into_text()
}

fn add_input(page: &mut Paragraphs, indent: usize, input: &InputDescription) {
    let unit = input.unit.filter(|unit| *unit != "1").map(|unit| format!(" ({unit})")).unwrap_or_default();
    let range = match (input.low, input.high) {
        (Some(low), Some(high)) => format!("; {low} to {high}"),
        _ => String::new(),
    };
    let presence = match &input.default {
        Some(default) => format!("; default {}", in_words(default)),
        None if input.required => String::new(),
        None => "; may be left out".to_owned(),
    };
    page.add(indent, "- ", &format!("{}{unit}: {}{range}{presence}", input.name, input.description));
    for ChoiceDescription { word, meaning } in &input.choices {
        page.add(indent + 4, "- ", &format!("{word}: {meaning}"));
    }
    if !input.components.is_empty() {
        page.add(indent + 4, "", &format!("an object, each in %: {}", input.components.join(", ")));
    }
    if let (Some(least), Some(most)) = (input.least_rows, input.most_rows) {
        page.add(indent + 4, "", &format!("a list of {least} to {most} objects with"));
    }
    for inner in &input.row {
        add_input(page, indent + 4, inner);
    }
}

fn in_words(default: &DefaultDescription) -> String {
    let number = default.number.map(|number| number.to_string());
    let boolean = default.boolean.map(|yes| yes.to_string());
    let value = number.or(boolean).or(default.word.map(str::to_owned)).unwrap_or_default();
    format!("{value} ({})", default.source)
}

/// The figures with method and source, and the remarks.
pub(super) fn answer(calculation: &Calculation, answer: &CalculationAnswer, width: usize) -> String {
    let mut page = Paragraphs::new(width);
    page.add(0, "", calculation.title);
    add_answer(&mut page, answer);
    page.into_text()
}

fn add_answer(page: &mut Paragraphs, answer: &CalculationAnswer) {
    if !answer.figures.is_empty() {
        page.blank();
    }
    for figure in &answer.figures {
        page.add(2, "", &value(figure));
        for remark in &figure.outside_domain {
            page.add(6, "note: ", remark);
        }
    }
    if !answer.remarks.is_empty() {
        page.heading("Remarks");
    }
    for remark in &answer.remarks {
        page.add(2, "- ", remark);
    }
    add_methods(page, answer);
}

fn value(figure: &FigureAnswer) -> String {
    let of = figure.of.as_ref().map(|of| format!(", {of}")).unwrap_or_default();
    // The registry's own codes are UCUM; a test parses them all.
    let unit = Unit::parse(figure.unit).unwrap_or_default();
    format!("{}{of} = {}", figure.name.replace('_', " "), measure(figure.value, &unit))
}

/// Each method once.
fn add_methods(page: &mut Paragraphs, answer: &CalculationAnswer) {
    let mut told = Vec::new();
    for figure in &answer.figures {
        if told.contains(&figure.method) {
            continue;
        }
        if told.is_empty() {
            page.heading("Methods");
        }
        told.push(figure.method);
        page.add(2, "- ", figure.method);
        page.add(4, "source: ", figure.source);
        page.add(4, "domain: ", figure.domain);
    }
}
