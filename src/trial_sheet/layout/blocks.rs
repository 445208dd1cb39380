//! The order of the sheet, and its wording.

use super::block::{Block, Cell};
use crate::trial_sheet::answer::{HeldSetting, Recorded, TrialCaution, TrialChange, TrialRun, TrialSheet};
use crate::units::Unit;

/// The blocks of a sheet.
pub(super) fn of(sheet: &TrialSheet<'_>) -> Vec<Block> {
    let mut blocks = vec![Block::Title(format!("Trial sheet: {}", sheet.product_title))];
    blocks.push(Block::Blanks(sheet.blanks.iter().take(3).map(|blank| blank.label.to_owned()).collect()));
    let complaint: Vec<&str> = sheet.complaint.iter().map(|own| own.title).collect();
    if !complaint.is_empty() {
        blocks.push(Block::Text(format!("Complaint: {}.", complaint.join("; "))));
    }
    blocks.push(Block::Heading("What is tried"));
    blocks.push(Block::List(sheet.changes.iter().map(change).collect()));
    section(&mut blocks, "Not tried", sheet.not_tried.clone());
    blocks.push(Block::Heading("Runs"));
    blocks.push(Block::Text(design(sheet)));
    blocks.push(Block::Table(runs(sheet)));
    if let Some(batch) = &sheet.batch {
        let remarks: String = batch.remarks.iter().map(|own| format!(" Mind: {own}.")).collect();
        blocks.push(Block::Text(format!(
            "Weights in kg of the {}; what differs from the control is marked. Flour of the control {}.{remarks}",
            batch.part,
            kilograms(batch.flour_kg)
        )));
    }
    section(&mut blocks, "Hold the same", sheet.hold.iter().map(held).collect());
    blocks.push(Block::Heading("Write down at every run"));
    blocks.push(Block::Table(record(sheet)));
    blocks.push(Block::Heading("How many pieces"));
    blocks.push(Block::Text(sheet.sample.text.clone()));
    section(&mut blocks, "", sheet.sample.remarks.clone());
    let fixed = sheet.fixed_when.iter().map(|own| format!("{} ({})", own.text, own.from)).collect();
    section(&mut blocks, "Counts as fixed", fixed);
    section(&mut blocks, "Decide", sheet.decide.clone());
    section(&mut blocks, "Stop when", sheet.stop.clone());
    section(&mut blocks, "Cautions", sheet.cautions.iter().map(caution).collect());
    blocks.push(Block::Blanks(sheet.blanks.iter().skip(3).map(|blank| blank.label.to_owned()).collect()));
    blocks.push(Block::Text(format!("rules {} {}", sheet.rules.version, sheet.rules.digest)));
    blocks
}

fn section(blocks: &mut Vec<Block>, heading: &'static str, items: Vec<String>) {
    if items.is_empty() {
        return;
    }
    if !heading.is_empty() {
        blocks.push(Block::Heading(heading));
    }
    blocks.push(Block::List(items));
}

fn change(change: &TrialChange<'_>) -> String {
    let settings: Vec<&str> = change.settings.iter().map(|own| own.text.as_str()).collect();
    let settings = if settings.is_empty() { String::new() } else { format!(" Set: {}.", settings.join("; ")) };
    let by_hand: String = change.by_hand.iter().map(|own| format!(" By hand: {own}: __________.")).collect();
    let effects: String = change.side_effects.iter().map(|own| format!(" Watch: {own}.")).collect();
    format!(
        "{}: {}, for “{}”. {}{settings}{by_hand}{effects}",
        change.letter, change.title, change.cause_title, change.text
    )
}

fn design(sheet: &TrialSheet<'_>) -> String {
    let design = &sheet.design;
    let named = match (&design.resolution, &design.generator) {
        (Some(resolution), Some(generator)) => format!(" (resolution {resolution}, {generator})"),
        _ => String::new(),
    };
    let repeats =
        if design.repeats > 1 { format!(" Every run is baked {} times.", design.repeats) } else { String::new() };
    format!("Design: {}{named}. {}{repeats} Order by lot, seed {}.", design.name, design.text.join(" "), design.seed)
}

fn runs(sheet: &TrialSheet<'_>) -> Vec<Vec<Cell>> {
    let head = std::iter::once(Cell::new("Run")).chain(sheet.runs.iter().map(|run| Cell::new(run.label.as_str())));
    let order = |run: &TrialRun| run.order.iter().map(u32::to_string).collect::<Vec<_>>().join(", ");
    let order = std::iter::once(Cell::new("Bake as no.")).chain(sheet.runs.iter().map(|run| Cell::new(order(run))));
    let mut rows = vec![head.collect(), order.collect()];
    rows.extend(weight_rows(sheet));
    let mass = |run: &TrialRun| run.mass_kg.map_or_else(Cell::default, |mass| Cell::new(kilograms(mass)));
    if sheet.runs.iter().any(|run| run.mass_kg.is_some()) {
        rows.push(std::iter::once(Cell::new("Batch, kg")).chain(sheet.runs.iter().map(mass)).collect());
    }
    rows
}

/// A row for every line of any run, in the order of the control; what a change brings in comes last.
fn weight_rows(sheet: &TrialSheet<'_>) -> Vec<Vec<Cell>> {
    let mut names: Vec<(&str, &str)> = Vec::new();
    for line in sheet.runs.iter().flat_map(|run| &run.weights) {
        if !names.contains(&(line.name.as_str(), line.stage)) {
            names.push((&line.name, line.stage));
        }
    }
    let main = names.first().map_or("", |(_, stage)| stage);
    let has_stages = names.iter().any(|(_, stage)| *stage != main);
    let row = |(name, stage): &(&str, &str)| {
        let label = if has_stages { format!("{name} [{stage}]") } else { (*name).to_owned() };
        let cell = |run: &TrialRun| match run.weights.iter().find(|line| line.name == *name && line.stage == *stage) {
            Some(line) if line.is_changed => Cell::marked(kilograms(line.mass_kg)),
            Some(line) => Cell::new(kilograms(line.mass_kg)),
            None => Cell::new("–"),
        };
        std::iter::once(Cell::new(label)).chain(sheet.runs.iter().map(cell)).collect()
    };
    names.iter().map(row).collect()
}

/// A mass as it can be weighed: grams, and tenths of a gram below 100 g.
fn kilograms(mass: f64) -> String {
    if mass.abs() < 0.1 { format!("{mass:.4}") } else { format!("{mass:.3}") }
}

fn held(held: &HeldSetting<'_>) -> String {
    if held.except_in.is_empty() {
        return held.text.clone();
    }
    let letters: Vec<String> = held.except_in.iter().map(char::to_string).collect();
    format!("{} (not in runs with {})", held.text, letters.join(", "))
}

fn record(sheet: &TrialSheet<'_>) -> Vec<Vec<Cell>> {
    let head = ["What", "How", "Why"].into_iter().map(Cell::new);
    let head = head.chain(sheet.runs.iter().map(|run| Cell::new(run.label.as_str())));
    let row = |own: &Recorded<'_>| {
        let unit = own.unit.and_then(|code| Unit::parse(code).ok()).map(|unit| unit.symbol().to_owned());
        let unit = unit.filter(|unit| !unit.is_empty());
        let title = unit.map_or_else(|| own.title.clone(), |unit| format!("{}, {unit}", own.title));
        let cells = [title, own.how.clone(), own.why.clone()].into_iter().map(Cell::new);
        cells.chain(sheet.runs.iter().map(|_| Cell::default())).collect()
    };
    std::iter::once(head.collect()).chain(sheet.record.iter().map(row)).collect()
}

fn caution(caution: &TrialCaution) -> String {
    match &caution.why {
        Some(why) => format!("{} ({why})", caution.text),
        None => caution.text.clone(),
    }
}
