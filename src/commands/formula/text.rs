//! Figures and batches as plain text.

use std::fmt::Write as _;

use crate::formulas::{Batch, FigureReport, PartReport, Report};
use crate::units::Unit;

/// Room for names and titles, characters.
const NAMES: usize = 44;

/// The figures of a formula.
pub(super) fn report(report: &Report) -> String {
    let mut text = String::new();
    for part in &report.parts {
        part_text(&mut text, part);
    }
    if !report.whole {
        text.push_str("The formula is a fragment: say `\"complete\": true` when these are all its ingredients.\n");
    }
    text
}

fn part_text(text: &mut String, part: &PartReport) {
    let _ = writeln!(text, "{} (percent on {})", part.part, part.basis);
    let _ = writeln!(text, "  {:NAMES$} {:>10} {:>10}", "", format!("% {}", part.basis), "% of mass");
    for line in &part.lines {
        let name = format!("{} [{}]", line.name, line.stage);
        let _ = writeln!(text, "  {name:NAMES$} {:>10.2} {:>10.2}", line.percent, line.true_percent);
    }
    let _ = writeln!(text, "figures");
    for figure in part.figures.iter().filter(|figure| figure.value.is_some()) {
        known(text, figure);
    }
    let unknown: Vec<&FigureReport> = part.figures.iter().filter(|figure| figure.value.is_none()).collect();
    if !unknown.is_empty() {
        let _ = writeln!(text, "not known");
    }
    for figure in unknown {
        let _ = writeln!(text, "  {}: {}", figure.title, why(figure));
    }
    text.push('\n');
}

fn known(text: &mut String, figure: &FigureReport) {
    let value = figure.value.unwrap_or_default();
    let unit = Unit::parse(figure.unit).map(|unit| unit.symbol().to_owned()).unwrap_or_default();
    let _ = writeln!(text, "{}", format!("  {:NAMES$} {value:>10.3} {unit}", figure.title).trim_end());
    for remark in &figure.outside_domain {
        let _ = writeln!(text, "      mind: {remark}");
    }
}

fn why(figure: &FigureReport) -> String {
    let bounds = match (figure.at_least, figure.at_most) {
        (Some(least), Some(most)) => format!(" (between {least:.2} and {most:.2} {})", figure.unit),
        _ => String::new(),
    };
    match &figure.why_not {
        Some(why) => why.clone(),
        None => format!("not known of {}{bounds}", figure.unknown_in.join(", ")),
    }
}

/// What to weigh for a batch.
pub(super) fn batch(batch: &Batch) -> String {
    let mut text = String::new();
    let _ = writeln!(text, "{}: {:.3} kg, of which {:.3} kg flour", batch.part, batch.mass_kg, batch.flour_kg);
    for line in &batch.lines {
        let name = format!("{} [{}]", line.name, line.stage);
        let _ = writeln!(text, "  {name:NAMES$} {:>10.3} kg", line.mass_kg);
    }
    for remark in &batch.remarks {
        let _ = writeln!(text, "mind: {remark}");
    }
    text
}
