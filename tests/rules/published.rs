//! Pairs of fault and cause in published tables of faults lead to causes of the pack.
//!
//! `tests/reference/published_faults/*.csv` has a row for each published pair, with the symptom and the cause of the pack that stand
//! for it, or the reason why none does.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use serde::Deserialize;
use whybake::knowledge::Declarations;
use whybake::rules::{RuleFiles, load};

/// Share of the published pairs of a family that must be in the pack.
const LEAST_SHARE: f64 = 0.95;

#[derive(Debug, Deserialize)]
struct Row {
    id: String,
    published_symptom: String,
    published_cause: String,
    symptom: String,
    cause: String,
    source: String,
    reason_if_absent: String,
}

impl Row {
    fn is_mapped(&self) -> bool {
        !self.symptom.is_empty() && !self.cause.is_empty()
    }

    fn told(&self) -> String {
        format!("{} {} <- {}", self.id, self.published_symptom, self.published_cause)
    }
}

fn table(path: &Path) -> Vec<Row> {
    let rows: Result<Vec<Row>, csv::Error> = csv::Reader::from_path(path).unwrap().into_deserialize().collect();
    rows.unwrap_or_else(|fault| panic!("{}: {fault}", path.display()))
}

fn tables() -> Vec<(String, Vec<Row>)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference/published_faults");
    let mut paths: Vec<_> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths.iter().map(|path| (path.file_stem().unwrap().to_string_lossy().into_owned(), table(path))).collect()
}

/// Pairs of symptom and cause of the pack.
fn links(declared: &Declarations) -> BTreeSet<(&str, &str)> {
    let of_cause = |cause: &'_ whybake::knowledge::Cause| -> Vec<usize> {
        cause.links.iter().map(|link| link.symptom.index()).collect()
    };
    let symptoms: Vec<&str> = declared.symptoms.iter().map(|(_, symptom)| symptom.id.as_str()).collect();
    let causes = declared.causes.iter();
    causes
        .flat_map(|(_, cause)| of_cause(cause).into_iter().map(|symptom| (symptoms[symptom], cause.id.as_str())))
        .collect()
}

#[test]
fn every_mapped_pair_is_linked_and_every_other_has_its_reason() {
    let loaded = load(&RuleFiles::embedded()).unwrap();
    let linked = links(&loaded.knowledge.declared);
    let mut faults = Vec::new();
    for (family, rows) in tables() {
        assert!(rows.len() >= 30, "{family}: only {} rows", rows.len());
        for row in &rows {
            assert!(!row.source.is_empty(), "{family}: {} has no source", row.told());
            if row.is_mapped() && !linked.contains(&(row.symptom.as_str(), row.cause.as_str())) {
                faults.push(format!("{family}: {} is not linked: {} by {}", row.told(), row.symptom, row.cause));
            }
            if !row.is_mapped() && row.reason_if_absent.is_empty() {
                faults.push(format!("{family}: {} is left out without a reason", row.told()));
            }
        }
    }
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

/// Pairs of a table that speak of another product do not count against a family; their reason begins so.
#[test]
fn nearly_all_published_pairs_of_a_family_are_in_the_pack() {
    for (family, rows) in tables() {
        let elsewhere = |row: &&Row| !row.is_mapped() && row.reason_if_absent.starts_with("another product");
        let (of_others, own): (Vec<&Row>, Vec<&Row>) = rows.iter().partition(|row| elsewhere(row));
        let missed: Vec<String> = own
            .iter()
            .filter(|row| !row.is_mapped())
            .map(|row| format!("{}: {}", row.told(), row.reason_if_absent))
            .collect();
        #[allow(clippy::cast_precision_loss)] // a few hundred
        let share = 1.0 - missed.len() as f64 / own.len() as f64;
        println!(
            "{family}: {} of {} pairs, {} of other products",
            own.len() - missed.len(),
            own.len(),
            of_others.len()
        );
        assert!(share >= LEAST_SHARE, "{family}: {share:.3}\n{}", missed.join("\n"));
    }
}
