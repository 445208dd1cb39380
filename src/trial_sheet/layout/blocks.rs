//! The order of the sheet, and its wording.

use super::block::{Block, Cell};
use crate::diagnosis::with_symbol;
use crate::trial_sheet::answer::{FirstAction, HeldSetting, Recorded, RunSetting, TrialChange, TrialRun, TrialSheet};
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
    section(&mut blocks, "First do without a trial", sheet.do_first.iter().map(first).collect());
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
    section(&mut blocks, "Hold the same", held(sheet));
    blocks.push(Block::Heading("Write down at every run"));
    blocks.push(Block::Table(record(sheet)));
    blocks.push(Block::Heading("How many pieces"));
    let sample = std::iter::once(&sheet.sample.text).chain(&sheet.sample.remarks).map(|own| sentence(own));
    blocks.push(Block::Text(sample.collect::<Vec<_>>().join(" ")));
    let fixed = sheet.fixed_when.iter().map(|own| format!("{} ({})", own.text, own.from)).collect();
    section(&mut blocks, "Counts as fixed", fixed);
    section(&mut blocks, "Decide", sheet.decide.clone());
    section(&mut blocks, "Stop when", sheet.stop.clone());
    section(
        &mut blocks,
        "Cautions: read them before the first run",
        sheet.cautions.iter().map(|own| own.text.clone()).collect(),
    );
    blocks.push(Block::Blanks(sheet.blanks.iter().skip(3).map(|blank| blank.label.to_owned()).collect()));
    blocks.push(Block::Text(format!("rules {} {}", sheet.rules.version, sheet.rules.digest)));
    blocks
}

fn section(blocks: &mut Vec<Block>, heading: &'static str, items: Vec<String>) {
    if !items.is_empty() {
        blocks.push(Block::Heading(heading));
        blocks.push(Block::List(items));
    }
}

/// A remark as a sentence.
fn sentence(text: &str) -> String {
    let mut rest = text.chars();
    let first = rest.next().map(|own| own.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", rest.as_str().trim_end_matches('.'))
}

/// What the table of runs shows is not told twice, unless the law limits it.
fn change(change: &TrialChange<'_>) -> String {
    let told = change.settings.iter().filter(|own| own.is_capped);
    let limited: String = told.map(|own| format!(" Limit: {}.", own.text)).collect();
    let by_hand: String = change.by_hand.iter().map(|own| format!(" By hand: {own}: __________.")).collect();
    let effects = effects(&change.side_effects);
    let effects = if effects.is_empty() { effects } else { format!(" Watch: {effects}.") };
    format!(
        "{}: {}, for “{}”. {}{limited}{by_hand}{effects}",
        change.letter, change.title, change.cause_title, change.text
    )
}

/// Effects one after the other; what some of them have in common before a colon is told once.
fn effects(all: &[String]) -> String {
    let mut text = String::new();
    let mut common = "";
    for effect in all {
        match effect.split_once(": ") {
            Some((start, rest)) if start == common => text += &format!(", {rest}"),
            start => {
                text += if text.is_empty() { "" } else { "; " };
                text += effect;
                common = start.map_or("", |(start, _)| start);
            }
        }
    }
    text
}

fn first(own: &FirstAction<'_>) -> String {
    format!("{}, {}, for “{}”", own.title, with_symbol(own.effort_minutes, "min"), own.cause_title)
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
    rows.extend(setting_rows(sheet));
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

/// A row for everything that any run sets beside the weights.
fn setting_rows(sheet: &TrialSheet<'_>) -> Vec<Vec<Cell>> {
    let mut set: Vec<&RunSetting> = Vec::new();
    for setting in sheet.runs.iter().flat_map(|run| &run.settings) {
        if set.iter().all(|own| own.name != setting.name) {
            set.push(setting);
        }
    }
    let row = |setting: &RunSetting| {
        let held = sheet.hold.iter().find(|own| own.reading.is_some() && own.reading == setting.reading.as_deref());
        let cell = |run: &TrialRun| {
            let own: Vec<&str> =
                run.settings.iter().filter(|own| own.name == setting.name).map(|own| own.value.as_str()).collect();
            let moves = held.is_some_and(|held| run.changes.iter().any(|letter| held.except_in.contains(letter)));
            match (own.is_empty(), moves) {
                (false, _) => Cell::marked(own.join(", ")),
                (true, true) => Cell::new("as it comes"),
                (true, false) => Cell::new(held.and_then(|own| own.value.as_deref()).unwrap_or("as today")),
            }
        };
        std::iter::once(Cell::new(&setting.name)).chain(sheet.runs.iter().map(cell)).collect()
    };
    set.into_iter().map(row).collect()
}

/// What is held, and does not stand in the table of runs.
fn held(sheet: &TrialSheet<'_>) -> Vec<String> {
    let set = sheet.runs.iter().flat_map(|run| &run.settings).filter_map(|own| own.reading.as_deref());
    let is_set = |held: &HeldSetting<'_>| held.reading.is_some_and(|id| set.clone().any(|own| own == id));
    sheet.hold.iter().filter(|own| !is_set(own)).map(|own| own.text.clone()).collect()
}

/// A mass as it can be weighed: grams, tenths of a gram below 100 g, hundredths below 10 g.
fn kilograms(mass: f64) -> String {
    match mass.abs() {
        size if size < 0.01 => format!("{mass:.5}"),
        size if size < 0.1 => format!("{mass:.4}"),
        _ => format!("{mass:.3}"),
    }
}

fn record(sheet: &TrialSheet<'_>) -> Vec<Vec<Cell>> {
    let head = ["What", "How"].into_iter().map(Cell::new);
    let head = head.chain(sheet.runs.iter().map(|run| Cell::new(run.label.as_str())));
    let row = |own: &Recorded<'_>| {
        let unit = own.unit.and_then(|code| Unit::parse(code).ok()).map(|unit| unit.symbol().to_owned());
        let unit = unit.filter(|unit| !unit.is_empty());
        let title = unit.map_or_else(|| own.title.clone(), |unit| format!("{}, {unit}", own.title));
        let cells = [title, own.how.clone()].into_iter().map(Cell::new);
        cells.chain(sheet.runs.iter().map(|_| Cell::default())).collect()
    };
    std::iter::once(head.collect()).chain(sheet.record.iter().map(row)).collect()
}
