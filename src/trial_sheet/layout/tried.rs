//! What is tried, what is done first, what is not tried.

use super::block::Block;
use super::blocks::section;
use super::detail::Detail;
use crate::diagnosis::with_symbol;
use crate::trial_sheet::answer::{ActionWithoutRun, TrialChange, TrialSheet};

pub(super) fn tried(sheet: &TrialSheet<'_>, detail: Detail) -> Vec<Block> {
    let mut blocks = Vec::new();
    section(&mut blocks, "What is tried", sheet.changes.iter().map(|own| change(own, detail)).collect());
    section(&mut blocks, "First do without a trial", sheet.do_first.iter().map(first).collect());
    if detail.has_desk() {
        section(&mut blocks, "Not tried", sheet.not_tried.clone());
    }
    blocks
}

/// What the table of runs shows is not told twice, unless the law limits it.
fn change(change: &TrialChange<'_>, detail: Detail) -> String {
    let told = change.settings.iter().filter(|own| own.is_capped);
    let limited: String = told.map(|own| format!(" Limit: {}.", own.text)).collect();
    let by_hand: String = change.by_hand.iter().map(|own| format!(" By hand: {own}: __________.")).collect();
    let effects = if detail.has_texts() { effects(&change.side_effects) } else { String::new() };
    let effects = if effects.is_empty() { effects } else { format!(" Watch: {effects}.") };
    let text = detail.shortened(&change.text);
    let ways = ways(&change.other_ways);
    format!(
        "{}: {}, for “{}”. {text}{ways}{limited}{by_hand}{effects}",
        change.letter, change.title, change.cause_title
    )
}

/// What leads to the same figures; which of them does, today's reading tells.
fn ways(all: &[ActionWithoutRun<'_>]) -> String {
    let titles: Vec<String> = all.iter().map(|own| format!("“{}”", own.title)).collect();
    if titles.is_empty() {
        return String::new();
    }
    format!(
        " To the same figures leads: {}; go by today's reading, take one way in all runs, write down which: __________.",
        titles.join(", ")
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

fn first(own: &ActionWithoutRun<'_>) -> String {
    format!("{}, {}, for “{}”", own.title, with_symbol(own.effort_minutes, "min"), own.cause_title)
}
