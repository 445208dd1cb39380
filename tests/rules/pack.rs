//! What the embedded pack promises: complete causes, its own cases, the published tables of faults.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use serde_json::{Value, json};
use whybake::case::Case;
use whybake::diagnosis::Diagnostician;
use whybake::rule_tests::RuleTests;
use whybake::rules::{RuleFiles, load};

use crate::support::line;

fn diagnostician() -> Diagnostician {
    match load(&RuleFiles::embedded()) {
        Ok(loaded) => Diagnostician::new(loaded.knowledge).expect("all numbers are probabilities"),
        Err(faults) => panic!("{}", faults.iter().map(line).collect::<Vec<_>>().join("\n")),
    }
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The files `rules/**/cases/*.json`, sorted.
fn case_files() -> Vec<PathBuf> {
    let (mut folders, mut files) = (vec![root().join("rules")], Vec::new());
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "json")
                && path.parent().unwrap().ends_with("cases")
            {
                files.push(path);
            }
        }
    }
    files.sort();
    files
}

fn document(path: &Path) -> Value {
    serde_json::from_str(&fs::read_to_string(path).unwrap())
        .unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The answer to a case, as callers get it.
fn answer_text(diagnostician: &Diagnostician, case: &Value) -> String {
    let text = serde_json::to_vec(case).unwrap();
    let case = Case::parse(&text, diagnostician.knowledge()).unwrap_or_else(|faults| panic!("{faults:?}"));
    serde_json::to_string(&diagnostician.diagnose(case).unwrap()).unwrap()
}

fn answer(diagnostician: &Diagnostician, case: &Value) -> Value {
    serde_json::from_str(&answer_text(diagnostician, case)).unwrap()
}

#[test]
fn the_pack_loads_without_warnings() {
    let loaded = load(&RuleFiles::embedded()).unwrap_or_else(|faults| {
        panic!("{}", faults.iter().map(line).collect::<Vec<_>>().join("\n"));
    });
    assert_eq!(loaded.warnings.iter().map(line).collect::<Vec<_>>(), [""; 0]);
}

#[test]
fn the_binary_carries_what_the_folder_holds() {
    assert_eq!(RuleFiles::embedded(), RuleFiles::read(&root().join("rules")).unwrap());
}

#[test]
fn every_cause_shows_something_and_has_evidence_action_confirmation_and_source() {
    let loaded = load(&RuleFiles::embedded()).unwrap();
    let causes = &loaded.knowledge.declared.causes;
    assert!(causes.len() > 40, "only {} causes", causes.len());
    let poor: Vec<&str> = causes
        .iter()
        .filter(|(_, cause)| {
            cause.links.is_empty()
                || cause.evidence.is_empty()
                || cause.prescriptions.is_empty()
                || cause.confirmations.is_empty()
                || cause.sources.is_empty()
        })
        .map(|(_, cause)| cause.id.as_str())
        .collect();
    assert_eq!(poor, [""; 0]);
}

#[test]
fn every_action_says_its_cost_and_its_waste() {
    let diagnostician = diagnostician();
    let actions = &diagnostician.knowledge().declared.actions;
    let silent: Vec<&str> = actions
        .iter()
        .filter(|(_, action)| action.cost.is_none() || action.waste_batches.is_none())
        .map(|(_, action)| action.id.as_str())
        .collect();
    assert_eq!(silent, [""; 0]);
}

#[test]
fn every_symptom_of_a_product_has_a_cause_there() {
    let loaded = load(&RuleFiles::embedded()).unwrap();
    let mut orphans = Vec::new();
    for view in loaded.knowledge.views() {
        let declared = &loaded.knowledge.declared;
        let shown: BTreeSet<&str> = view
            .causes
            .iter()
            .flat_map(|cause| &declared.causes[*cause].links)
            .map(|link| declared.symptoms[link.symptom].id.as_str())
            .collect();
        let of_product = view.symptoms.iter().map(|symptom| declared.symptoms[*symptom].id.as_str());
        orphans.extend(
            of_product
                .filter(|id| !shown.contains(id))
                .map(|id| format!("{} {id}", declared.products[view.product].id)),
        );
    }
    assert_eq!(orphans, [""; 0]);
}

#[test]
fn every_case_beside_the_rules_meets_its_expectation() {
    let diagnostician = diagnostician();
    let tests = RuleTests::read(&RuleFiles::embedded(), diagnostician.knowledge());
    assert_eq!(tests.diagnostics.iter().map(line).collect::<Vec<_>>(), [""; 0]);
    assert_eq!(tests.tests.len(), case_files().len());
    assert!(tests.tests.len() >= 30, "only {} cases", tests.tests.len());
    let failures: Vec<String> = tests.run(&diagnostician).iter().map(|failure| line(&failure.diagnostic())).collect();
    assert_eq!(failures, [""; 0]);
}

/// Causes with probabilities, the most probable first.
fn probabilities(answer: &Value) -> Vec<(&str, f64)> {
    let both = ["causes", "other_causes"].into_iter().flat_map(|list| answer[list].as_array().unwrap());
    both.map(|cause| (cause["cause"].as_str().unwrap(), cause["probability"].as_f64().unwrap())).collect()
}

#[test]
fn the_same_case_gives_the_same_bytes() {
    let (one, other) = (diagnostician(), diagnostician());
    for path in case_files() {
        let case = &document(&path)["case"];
        let first = answer_text(&one, case);
        assert_eq!(first, answer_text(&one, case), "{}", path.display());
        assert_eq!(first, answer_text(&other, case), "{}", path.display());
    }
}

#[test]
fn the_order_of_findings_in_a_case_does_not_matter() {
    let diagnostician = diagnostician();
    for path in case_files() {
        let case = document(&path)["case"].clone();
        let mut turned = case.clone();
        turned["symptoms"] = case["symptoms"].as_array().map_or(json!([]), |list| list.iter().rev().cloned().collect());
        let (straight, turned) = (answer(&diagnostician, &case), answer(&diagnostician, &turned));
        for ((id, probability), (other_id, other)) in probabilities(&straight).into_iter().zip(probabilities(&turned)) {
            assert_eq!(id, other_id, "{}", path.display());
            assert!((probability - other).abs() < 1e-9, "{}: {id} {probability} or {other}", path.display());
        }
    }
}
