//! Listings as text tables.

use std::fmt::Write as _;

use super::Kind;
use crate::knowledge::{Key, Knowledge, ProductView, Table};

/// Most characters of a column but the last, which is never cut.
const WIDEST: usize = 40;

/// A listing with aligned columns: the id first.
pub(super) fn table(kind: Kind, knowledge: &Knowledge, view: Option<&ProductView>) -> String {
    aligned(&rows(kind, knowledge, view))
}

fn rows(kind: Kind, knowledge: &Knowledge, view: Option<&ProductView>) -> Vec<Vec<String>> {
    let declared = &knowledge.declared;
    match kind {
        Kind::Products => declared
            .products
            .iter()
            .map(|(_, one)| {
                let family = one.family.map_or("", |key| declared.families[key].title.as_str());
                row([&one.id, family, &one.title])
            })
            .collect(),
        Kind::Symptoms => keys(&declared.symptoms, view.map(|view| view.listed_symptoms.as_slice()))
            .into_iter()
            .map(|key| &declared.symptoms[key])
            .map(|one| row([&one.id, &one.part, &one.title]))
            .collect(),
        Kind::Readings => keys(&declared.readings, view.map(|view| view.listed_readings.as_slice()))
            .into_iter()
            .map(|key| &declared.readings[key])
            .map(|one| row([&one.id, one.unit.code(), &one.title]))
            .collect(),
        Kind::Facts => keys(&declared.facts, view.map(|view| view.listed_facts.as_slice()))
            .into_iter()
            .map(|key| &declared.facts[key])
            .map(|one| row([&one.id, &one.question]))
            .collect(),
        Kind::Ingredients => declared.ingredients.iter().map(|(_, one)| row([&one.id, &one.title])).collect(),
    }
}

fn keys<T: crate::knowledge::Named>(table: &Table<T>, listed: Option<&[Key<T>]>) -> Vec<Key<T>> {
    listed.map_or_else(|| table.keys().collect(), <[_]>::to_vec)
}

fn row<const N: usize>(cells: [&str; N]) -> Vec<String> {
    cells.map(str::to_owned).to_vec()
}

fn aligned(rows: &[Vec<String>]) -> String {
    let width = |column: usize| {
        let widths = rows.iter().filter_map(|row| row.get(column)).map(|cell| cell.chars().count());
        widths.max().unwrap_or(0).min(WIDEST)
    };
    let columns = rows.first().map_or(0, Vec::len);
    let widths: Vec<usize> = (0..columns).map(width).collect();
    let mut text = String::new();
    for row in rows {
        let mut line = String::new();
        for (cell, width) in row.iter().zip(&widths) {
            let _ = write!(line, "{cell:width$}  ");
        }
        let _ = writeln!(text, "{}", line.trim_end());
    }
    text
}
