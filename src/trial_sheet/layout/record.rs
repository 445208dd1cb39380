//! What to write down: a column for every bake, in the order of baking; many bakes take more than one table.

use super::block::{Cell, CellKind};
use super::detail::Detail;
use super::runs::bakes;
use crate::trial_sheet::answer::{FixedWhen, Recorded, RecordedKind, TrialSheet};
use crate::units::Unit;

/// Most bakes side by side: about 10 mm each to write in.
const MOST_BAKES: usize = 10;

pub(super) fn tables(sheet: &TrialSheet<'_>, detail: Detail) -> Vec<Vec<Vec<Cell>>> {
    let bakes = bakes(sheet);
    let width = bakes.len().div_ceil(bakes.len().div_ceil(MOST_BAKES).max(1)).max(1);
    let told = std::iter::once(Some(detail)).chain(std::iter::repeat(None));
    bakes.chunks(width).zip(told).map(|(bakes, detail)| table(sheet, bakes, detail)).collect()
}

/// Methods and limits stand in the first table alone; the others have `detail` of `None`.
fn table(sheet: &TrialSheet<'_>, bakes: &[(u32, &str)], detail: Option<Detail>) -> Vec<Vec<Cell>> {
    let row = |what: Cell, fixed: Cell| -> Vec<Cell> {
        let fixed = detail.is_some().then_some(fixed);
        std::iter::once(what).chain(fixed).chain(bakes.iter().map(|_| Cell::blank())).collect()
    };
    let mut rows = vec![row(Cell::new(HEAD), Cell::new("Counts as fixed"))];
    if let Some(head) = rows.first_mut() {
        let blanks = head.iter_mut().filter(|cell| cell.kind == CellKind::Blank);
        blanks.zip(bakes).for_each(|(cell, (place, label))| *cell = Cell::new(format!("no. {place} {label}")));
    }
    rows.push(row(Cell::new("Start of mixing, time of day"), Cell::default()));
    rows.extend(sheet.record.iter().map(|own| row(what(own, detail), Cell::new(fixed(sheet, own, detail)))));
    rows.extend(without_record(sheet).map(|own| row(Cell::new(as_sentence(&own.text)), Cell::new(&own.from))));
    rows.push(row(Cell::new("Deviations, remarks, initials"), Cell::default()));
    rows
}

const HEAD: &str = "What, and how; of a fault: pieces with it / looked at";

fn what(own: &Recorded<'_>, detail: Option<Detail>) -> Cell {
    let unit = own.unit.and_then(|code| Unit::parse(code).ok()).map(|unit| unit.symbol().to_owned());
    let unit = unit.filter(|unit| !unit.is_empty());
    let title = unit.map_or_else(|| own.title.clone(), |unit| format!("{}, {unit}", own.title));
    detail.map_or_else(
        || Cell::new(&title),
        |detail| Cell::noted(&title, detail.method(&own.how, own.kind == RecordedKind::Symptom)),
    )
}

/// Its limits and the like; the title is not told again.
fn fixed(sheet: &TrialSheet<'_>, own: &Recorded<'_>, detail: Option<Detail>) -> String {
    let told = |fixed: &FixedWhen<'_>| {
        let text =
            fixed.text.strip_prefix(&own.title).map_or(fixed.text.as_str(), |own| own.trim_start_matches([':', ' ']));
        let text =
            if text.to_lowercase() == format!("not seen: {}", own.title.to_lowercase()) { "not seen" } else { text };
        if detail.is_some_and(Detail::has_texts) { format!("{text} ({})", fixed.from) } else { text.to_owned() }
    };
    let mut all: Vec<String> = sheet.fixed_when.iter().filter(|fixed| fixed.id == own.id).map(told).collect();
    all.dedup();
    all.join("; ")
}

/// What counts as fixed and is written down nowhere else.
fn without_record<'s, 'k>(sheet: &'s TrialSheet<'k>) -> impl Iterator<Item = &'s FixedWhen<'k>> {
    sheet.fixed_when.iter().filter(|fixed| sheet.record.iter().all(|own| own.id != fixed.id))
}

/// A remark as a sentence.
pub(super) fn as_sentence(text: &str) -> String {
    let mut rest = text.chars();
    let first = rest.next().map(|own| own.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", rest.as_str().trim_end_matches('.'))
}
