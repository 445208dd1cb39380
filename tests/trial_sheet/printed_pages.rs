//! Prints trial sheets of the embedded rules' cases as JSON lines, `name`, `page` and how it was fitted, to measure them on paper.
//! `cargo run --example printed_pages -- STEP` takes every STEP-th case (1 when left out).
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test program fails by panicking")]

use std::env::args;

use serde_json::{Value, json};
use whybake::diagnosis::Diagnostician;
use whybake::rules::{RuleFiles, load};
use whybake::trial_sheet::{TrialRequest, TrialSheet, page, page_fit};

/// Lines of a long formula.
const LINES: usize = 15;

fn main() {
    let step = args().nth(1).map_or(1, |own| own.parse().unwrap());
    let files = RuleFiles::embedded();
    let rules = Diagnostician::new(load(&files).unwrap().knowledge).unwrap();
    let cases: Vec<(&str, &str)> = files.cases().collect();
    for (place, (path, text)) in cases.iter().enumerate().step_by(step) {
        let record: Value = serde_json::from_str(text).unwrap();
        for (name, request) in requests(&rules, &record["case"], place) {
            print_page(&rules, &format!("{path} {name}"), &request);
        }
    }
}

fn print_page(rules: &Diagnostician, name: &str, request: &Value) {
    let Ok(request) = TrialRequest::parse(request.to_string().as_bytes(), rules.knowledge()) else { return };
    if let Ok(sheet) = TrialSheet::plan(rules, &request) {
        let fit = page_fit(&sheet);
        let line = json!({
            "name": name, "page": page(&sheet), "type_size_pt": fit.type_size_pt, "detail": format!("{:?}", fit.detail),
            "pages": fit.pages, "filled": fit.filled,
        });
        println!("{line}");
    }
}

/// Ids of the actions that are tried one at a time.
fn tried(rules: &Diagnostician, request: &Value) -> Vec<String> {
    let Ok(request) = TrialRequest::parse(request.to_string().as_bytes(), rules.knowledge()) else { return Vec::new() };
    let sheet = TrialSheet::plan(rules, &request);
    sheet.map_or_else(|_| Vec::new(), |sheet| sheet.changes.iter().map(|own| own.action.to_owned()).collect())
}

/// A request with other members.
fn with(base: &Value, members: &Value) -> Value {
    let mut own = base.clone();
    own.as_object_mut().unwrap().extend(members.as_object().unwrap().clone());
    own
}

/// The case as it is, and with a long formula, in a batch of one of several sizes.
fn requests(rules: &Diagnostician, case: &Value, place: usize) -> Vec<(String, Value)> {
    let batch = [
        json!({"mass": {"value": 2, "unit": "kg"}}),
        json!({"mass": {"value": 20, "unit": "kg"}}),
        json!({"mass": {"value": 180, "unit": "kg"}}),
        json!({"pieces": 240, "piece_mass": {"value": 62, "unit": "g"}, "bake_loss": {"value": 11, "unit": "%"}}),
    ];
    let base = json!({"case": case, "batch": batch[place % batch.len()]});
    let long = with(&base, &json!({"case": long_formula(case)}));
    [designs(rules, "own formula", &base), designs(rules, "long formula", &long)].concat()
}

/// Every design, one to four changes, repeats, a size to reckon.
fn designs(rules: &Diagnostician, kind: &str, base: &Value) -> Vec<(String, Value)> {
    let shares = json!({"faulty_now": {"value": 30, "unit": "%"}, "faulty_wanted": {"value": 8, "unit": "%"}});
    let actions = tried(rules, base);
    let three: Vec<&String> = actions.iter().take(3).collect();
    let mut all = vec![
        ("chosen".to_owned(), json!({})),
        ("factorial".to_owned(), json!({"design": "factorial", "measure": shares})),
        ("factorial of four".to_owned(), json!({"design": "factorial", "actions": actions, "measure": shares})),
        ("half of three".to_owned(), json!({"design": "half_factorial", "actions": three})),
        ("two repeats".to_owned(), json!({"repeats": 2, "measure": shares})),
        ("four repeats".to_owned(), json!({"repeats": 4, "measure": shares})),
    ];
    all.extend(
        (1..=actions.len()).map(|count| (format!("{count} of one at a time"), json!({"actions": actions[..count]}))),
    );
    all.into_iter().map(|(name, members)| (format!("{kind}, {name}"), with(base, &members))).collect()
}

/// The case with lines of the plant's own until its formula has fifteen.
fn long_formula(case: &Value) -> Value {
    let mut case = case.clone();
    if case.get("formula").is_none() {
        case["formula"] = json!({"ingredients": [{"ingredient": "water", "amount": 31, "unit": "kg"}, {"name": "Flour, house blend", "amount": 50, "unit": "kg", "flour": true}]});
    }
    let lines = case["formula"]["ingredients"].as_array_mut().unwrap();
    let unit = lines.first().map_or(json!("kg"), |line| line["unit"].clone());
    for place in lines.len()..LINES {
        lines.push(json!({"name": format!("Improver or seed blend {place} of the plant"), "amount": 0.05 * place as f64, "unit": unit}));
    }
    case
}
