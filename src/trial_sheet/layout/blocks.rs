//! The order of the sheet.

use super::block::Block;
use super::detail::Detail;
use super::record::{self, as_sentence};
use super::{runs, tried};
use crate::trial_sheet::answer::{HeldSetting, SampleKind, TrialSheet};

/// The blocks of a sheet by where they stand on paper.
#[derive(Debug, Default)]
pub(super) struct Parts {
    /// What is worked by, at the full width.
    pub(super) bench: Vec<Block>,
    /// What is read, in columns.
    pub(super) notes: Vec<Block>,
    /// Lines to sign.
    pub(super) foot: Vec<Block>,
    /// What to write down, where it takes a page of its own; most sheets have none.
    pub(super) second: Vec<Block>,
}

impl Parts {
    /// All blocks, one after the other.
    pub(super) fn all(self) -> Vec<Block> {
        [self.bench, self.notes, self.foot, self.second].into_iter().flatten().collect()
    }
}

/// Rules of deciding at the bench: what has helped, and against what it is held.
const BENCH_RULES: usize = 2;

/// The sheet on one page.
pub(super) fn of(sheet: &TrialSheet<'_>, detail: Detail) -> Parts {
    let mut bench = bench(sheet, detail);
    bench.extend(records(sheet, detail));
    Parts { bench, notes: notes(sheet, detail), foot: foot(sheet), second: Vec::new() }
}

/// The sheet on two pages: what to do, and what to write down.
pub(super) fn on_two_pages(sheet: &TrialSheet<'_>, detail: Detail) -> Parts {
    let mut bench = bench(sheet, detail);
    bench.push(Block::Text("What to write down at every run stands on page 2: it takes a page of its own.".to_owned()));
    let mut second = vec![Block::Title(format!("Trial sheet: {}, page 2", sheet.product_title))];
    second.push(about(sheet));
    second.extend(records(sheet, detail));
    Parts { bench, notes: notes(sheet, detail), foot: foot(sheet), second }
}

const CAUTIONS: &str = "Cautions: read them before the first run";

fn bench(sheet: &TrialSheet<'_>, detail: Detail) -> Vec<Block> {
    let mut blocks = vec![Block::Title(format!("Trial sheet: {}", sheet.product_title))];
    blocks.push(about(sheet));
    let complaint: Vec<&str> = sheet.complaint.iter().map(|own| own.title).collect();
    let complaint = (!complaint.is_empty()).then(|| format!("Complaint: {}.", complaint.join("; ")));
    let of_case = reference(sheet).map(|own| format!("Case: {own}."));
    let about: Vec<String> = complaint.into_iter().chain(of_case).collect();
    if !about.is_empty() {
        blocks.push(Block::Text(about.join(" ")));
    }
    blocks.extend(tried::tried(sheet, detail));
    blocks.push(Block::Heading("Runs"));
    blocks.push(Block::Text(runs::design(sheet, detail)));
    blocks.extend(runs::tables(sheet).into_iter().map(Block::Table));
    blocks.extend(runs::remarks(sheet).map(Block::Text));
    blocks
}

/// Date, line and lot.
fn about(sheet: &TrialSheet<'_>) -> Block {
    Block::Blanks(sheet.blanks.iter().take(3).map(|blank| blank.label.to_owned()).collect())
}

fn records(sheet: &TrialSheet<'_>, detail: Detail) -> impl Iterator<Item = Block> {
    let heading = Block::Heading("Write down at every run");
    std::iter::once(heading).chain(record::tables(sheet, detail).into_iter().map(Block::Table))
}

fn notes(sheet: &TrialSheet<'_>, detail: Detail) -> Vec<Block> {
    let mut blocks = Vec::new();
    section(&mut blocks, "Hold the same", held(sheet));
    blocks.extend(pieces(sheet, detail));
    let rules = if detail.has_desk() { sheet.decide.len() } else { BENCH_RULES };
    section(&mut blocks, "Decide", sheet.decide.iter().take(rules).cloned().collect());
    section(&mut blocks, "Stop when", sheet.stop.clone());
    section(&mut blocks, CAUTIONS, sheet.cautions.iter().map(|own| detail.caution(&own.text)).collect());
    blocks.extend(detail.remark().map(|text| Block::Text(text.to_owned())));
    blocks
}

fn foot(sheet: &TrialSheet<'_>) -> Vec<Block> {
    let labels = sheet.blanks.iter().skip(3).map(|blank| blank.label.to_owned());
    let rules = format!("rules {} {}", sheet.rules.version, sheet.rules.digest);
    vec![Block::Blanks(labels.collect()), Block::Text(rules)]
}

pub(super) fn section(blocks: &mut Vec<Block>, heading: &'static str, items: Vec<String>) {
    if !items.is_empty() {
        blocks.push(Block::Heading(heading));
        blocks.push(Block::List(items));
    }
}

/// How many pieces; where nobody said what shall be seen, the bench has a line for the number.
fn pieces(sheet: &TrialSheet<'_>, detail: Detail) -> Vec<Block> {
    let heading = Block::Heading("How many pieces");
    if !detail.has_desk() && sheet.sample.kind == SampleKind::Open {
        return vec![heading, Block::Blanks(vec!["Pieces of every run, the same of all".to_owned()])];
    }
    let (text, remarks) = (sheet.sample.text.as_str(), sheet.sample.remarks.as_slice());
    let (text, remarks) = if detail.has_desk() {
        (text, remarks)
    } else {
        // How the number was reckoned, and that one batch shows no setting, is for whoever decides.
        (text.split_once(": ").map_or(text, |(pieces, _)| pieces), remarks.split_last().map_or(remarks, |(_, own)| own))
    };
    let told = std::iter::once(text).chain(remarks.iter().map(String::as_str)).map(as_sentence);
    vec![heading, Block::Text(told.collect::<Vec<_>>().join(" "))]
}

/// What is held, and does not stand in the table of runs.
fn held(sheet: &TrialSheet<'_>) -> Vec<String> {
    let set = sheet.runs.iter().flat_map(|run| &run.settings).filter_map(|own| own.reading.as_deref());
    let is_set = |held: &HeldSetting<'_>| held.reading.is_some_and(|id| set.clone().any(|own| own == id));
    sheet.hold.iter().filter(|own| !is_set(own)).map(|own| own.text.clone()).collect()
}

/// Longest reference that is printed, characters.
const LONGEST_REFERENCE: usize = 120;

/// The caller's reference, as far as it is words and numbers by name.
fn reference(sheet: &TrialSheet<'_>) -> Option<String> {
    let own: serde_json::Value = serde_json::from_str(sheet.reference.as_ref()?.get()).ok()?;
    let told = match &own {
        serde_json::Value::Object(members) => {
            let told = members.iter().filter_map(|(name, value)| Some(format!("{name} {}", scalar(value)?)));
            told.collect::<Vec<_>>().join(", ")
        }
        own => scalar(own)?,
    };
    (!told.is_empty()).then(|| told.chars().take(LONGEST_REFERENCE).collect())
}

fn scalar(value: &serde_json::Value) -> Option<String> {
    match value {
        serde_json::Value::String(text) => Some(text.clone()),
        serde_json::Value::Number(number) => Some(number.to_string()),
        _ => None,
    }
}
