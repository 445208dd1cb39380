//! What a change sets, and what stays the same.

use super::answer::{ChangeSetting, HeldSetting, RunSetting};
use super::changes::Candidate;
use super::weights::Applied;
use crate::case::Case;
use crate::diagnosis::{GivenFormula, SetQuantity, measure, needed, quantity_name, with_symbol};
use crate::knowledge::{Basis, Declarations};

/// What a change sets, beside the weights.
pub(super) struct Settings {
    /// All its quantities.
    pub(super) quantities: Vec<ChangeSetting>,
    /// What the runs with it set.
    pub(super) of_runs: Vec<RunSetting>,
    /// What has to be worked out by hand, with the reason.
    pub(super) by_hand: Vec<String>,
}

/// Sorts the quantities of a change; `applied` tells what became of those that are weighed.
/// Masses that the rules reckon for the formula of the case are multiplied by `factor`, as the batch is.
pub(super) fn sort(
    letter: char,
    change: &Candidate<'_, '_>,
    applied: &[Applied],
    factor: Option<f64>,
    declared: &Declarations,
) -> Settings {
    let mut settings = Settings { quantities: Vec::new(), of_runs: Vec::new(), by_hand: Vec::new() };
    for (place, quantity) in change.advice.quantities.iter().enumerate() {
        let value = if is_of_batch(quantity) { quantity.value * factor.unwrap_or(1.0) } else { quantity.value };
        let (own_name, set) = (name(quantity, declared), measure(value, &quantity.setting.unit));
        let text = match &quantity.capped {
            Some(capped) => format!("{own_name} {set} ({capped})"),
            None if quantity.as_now => format!("{own_name} {set}, as it is now"),
            None => format!("{own_name} {set}"),
        };
        let is_amount = quantity.setting.amount().is_some();
        let mut is_in_runs = true;
        if !is_amount {
            let reading = quantity.setting.reading().map(|key| declared.readings[key].id.clone());
            settings.of_runs.push(RunSetting { letter, reading, name: own_name, value: set, text: text.clone() });
        } else if let Some(Applied::ByHand(why)) = applied.get(place) {
            is_in_runs = false;
            settings.by_hand.push(format!("{text}: {why}"));
        } else if applied.is_empty() {
            is_in_runs = false;
            settings.by_hand.push(format!("{text}: the case has no formula to work it into"));
        }
        let (name, unit) = (quantity.name.to_owned(), quantity.unit.to_owned());
        let is_capped = quantity.capped.is_some();
        settings.quantities.push(ChangeSetting { name, value, unit, text, is_capped, is_in_runs });
    }
    if change.advice.quantities.is_empty() {
        let text = change.advice.title.to_string();
        settings.of_runs.push(RunSetting { letter, reading: None, name: text.clone(), value: "done".to_owned(), text });
        settings.by_hand.push(match change.advice.needs.as_slice() {
            [] => "no quantity is known: write down what was set".to_owned(),
            needs => {
                let titles: Vec<String> = needs.iter().map(|id| needed(declared, id, GivenFormula::InMass)).collect();
                format!("how much can be reckoned once these are known: {}", titles.join("; "))
            }
        });
    }
    settings
}

/// Whether a quantity is a mass in the batch.
fn is_of_batch(quantity: &SetQuantity<'_>) -> bool {
    quantity.setting.amount().is_some_and(|amount| amount.basis == Basis::Batch)
}

/// What a quantity is called: by the reading that it sets, else by its own name.
fn name(quantity: &SetQuantity<'_>, declared: &Declarations) -> String {
    let reading = quantity.setting.reading().map(|key| declared.readings[key].title.to_string());
    reading.unwrap_or_else(|| quantity_name(declared, quantity.name))
}

/// What is held by every plant that tries something (common practice).
const USUAL: [&str; 3] = [
    "one lot of every ingredient for all runs, weighed on the same scales",
    "one mixer, one oven, the same places in them, the same people",
    "the same times from mixing to cooling; a run that had to wait is baked again",
];

/// What a change moves.
pub(super) struct Moved {
    pub(super) letter: char,
    /// Readings that it sets.
    pub(super) set: Vec<String>,
    /// Readings that answer to it when it works.
    pub(super) answering: Vec<String>,
}

/// Readings that a change sets stay as they are today in the runs that neither set nor move them; what was measured of the
/// process stays too. `recorded` are readings that answer to the changes and are written down instead.
pub(super) fn hold<'k>(
    case: &Case,
    declared: &'k Declarations,
    changes: &[Moved],
    recorded: &[&str],
) -> Vec<HeldSetting<'k>> {
    let is_set = |id: &str| changes.iter().any(|own| own.set.iter().any(|set| set == id));
    let except_in = |id: &str| -> Vec<char> {
        let moves = |own: &&Moved| own.set.iter().chain(&own.answering).any(|moved| moved == id);
        changes.iter().filter(moves).map(|own| own.letter).collect()
    };
    let mut held: Vec<HeldSetting<'k>> = Vec::new();
    for measured in &case.readings {
        let reading = &declared.readings[measured.reading];
        let is_result = reading.low_shows.is_some() || reading.high_shows.is_some();
        if !is_set(&reading.id) && (is_result || recorded.contains(&reading.id.as_str())) {
            continue;
        }
        let value = with_symbol(measured.value, reading.unit.code());
        let text = format!("{} {value}, as measured", reading.title);
        let except_in = except_in(&reading.id);
        held.push(HeldSetting { reading: Some(&reading.id), value: Some(value), text, except_in });
    }
    for id in changes.iter().flat_map(|own| &own.set) {
        let Some(key) = declared.readings.find(id) else { continue };
        let reading = &declared.readings[key];
        if held.iter().all(|own| own.reading != Some(reading.id.as_str())) {
            let text = format!("{} as today; measure it and write it down", reading.title);
            let except_in = except_in(&reading.id);
            held.push(HeldSetting { reading: Some(&reading.id), value: None, text, except_in });
        }
    }
    held.extend(USUAL.map(usual));
    held
}

fn usual<'k>(text: &str) -> HeldSetting<'k> {
    HeldSetting { reading: None, value: None, text: text.to_owned(), except_in: Vec::new() }
}
