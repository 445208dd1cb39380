//! A byte order mark at the beginning of a file, as some editors write it, changes nothing.

use std::fs;

use serde_json::Value;

use crate::program::{run, run_with_input};

const CASE: &str = include_str!("../cases/hollow_bun.json");
const FORMULA: &str = include_str!("../../src/http/openapi/examples/formula.json");
const RECORD: &str = include_str!("../../src/http/openapi/examples/record.json");
const INPUTS: &str = r#"{"dry_bulb": 28, "relative_humidity": 70}"#;

#[test]
fn commands_pass_over_it() {
    let commands: [(&[&str], &str); 9] = [
        (&["diagnose", "-", "--json"], CASE),
        (&["diagnose", "-", "--record"], CASE),
        (&["inquire", "-", "--json", "--depth", "1"], CASE),
        (&["what-if", "-", "--json", "--symptom", "pale_crust"], CASE),
        (&["trial-sheet", "-", "--json", "--batch", "20kg"], CASE),
        (&["formula", "-", "--json", "--batch", "80kg"], FORMULA),
        (&["replay", "-", "--json"], RECORD),
        (&["calculate", "dew_point", "--json", "--input", "-"], INPUTS),
        (&["complaint", "-", "--product", "hamburger_bun", "--json"], "hollow under the lid"),
    ];
    for (command, text) in commands {
        let (plain, marked) = (run_with_input(command, text), run_with_input(command, &format!("\u{feff}{text}")));
        assert_eq!((plain.code, plain.output), (marked.code, marked.output), "{command:?}");
        assert_eq!(plain.complaints, marked.complaints, "{command:?}");
    }
}

#[test]
fn a_record_of_a_marked_case_is_json() {
    let record = run_with_input(&["diagnose", "-", "--record"], &format!("\u{feff}{CASE}")).success();
    assert!(serde_json::from_str::<Value>(&record).is_ok_and(|record| record["case"].is_object()), "{record:.80}");
}

#[test]
fn marked_rules_and_cases_are_checked_as_others_are() {
    let dir = tempfile::tempdir().unwrap();
    let dir = dir.path().join("pack").display().to_string();
    run(&["rules", "export", &dir]).success();
    for file in ["products.rhai", "soft_rolls/cases/bottom_heat.json"] {
        let path = std::path::Path::new(&dir).join(file);
        let text = fs::read_to_string(&path).unwrap();
        fs::write(path, format!("\u{feff}{text}")).unwrap();
    }
    run(&["check", &dir, "--no-tests"]).success();
    let cases = std::path::Path::new(&dir).join("cases.ndjson");
    fs::write(&cases, "\u{feff}{\"product\": \"hamburger_bun\"}\n").unwrap();
    run(&["compare", "embedded", "embedded", "--cases", &cases.display().to_string()]).success();
}
