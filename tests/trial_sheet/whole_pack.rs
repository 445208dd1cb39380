//! Sheets of every case of the rules that the program carries.

use serde_json::{Value, json};
use whybake::case::CaseFaults;
use whybake::diagnosis::Diagnostician;
use whybake::rules::{RuleFiles, load};
use whybake::trial_sheet::{TrialRequest, TrialSheet, markdown, page, text};

/// Every rule test's case has a sheet, or the only fault is that its causes prescribe nothing or too little. Masses are
/// finite and never negative; what is marked differs.
#[test]
fn every_case_of_the_pack_can_be_planned() {
    let files = RuleFiles::embedded();
    let rules = Diagnostician::new(load(&files).unwrap().knowledge).unwrap();
    let (mut sheets, mut changed) = (0, 0);
    for (path, text_of_case) in files.cases() {
        let record: Value = serde_json::from_str(text_of_case).unwrap();
        for design in ["one_change_at_a_time", "factorial"] {
            let batch = json!({"mass": {"value": 20, "unit": "kg"}});
            let request = json!({"case": record["case"], "batch": batch, "design": design}).to_string();
            let request = TrialRequest::parse(request.as_bytes(), rules.knowledge()).unwrap();
            let sheet = match TrialSheet::plan(&rules, &request) {
                Ok(sheet) => sheet,
                Err(CaseFaults::Faulty(faults)) if faults.iter().all(|own| own.pointer != "/batch/mass") => {
                    assert!(
                        faults.iter().all(|own| own.pointer == "/design" || own.pointer == "/case"),
                        "{path}: {faults:?}"
                    );
                    continue;
                }
                Err(faults) => panic!("{path}: {faults}"),
            };
            sheets += 1;
            for line in sheet.runs.iter().flat_map(|run| &run.weights) {
                assert!(line.mass_kg.is_finite() && line.mass_kg >= 0.0, "{path}: {line:?}");
                assert!(!line.is_changed || line.mass_kg != line.control_kg, "{path}: {line:?}");
                changed += usize::from(line.is_changed);
            }
            assert!(!sheet.changes.is_empty() && sheet.changes.len() <= 4, "{path}");
            for paper in [text(&sheet, 80), markdown(&sheet), page(&sheet)] {
                assert!(!paper.contains("NaN") && !paper.contains("inf "), "{path}");
            }
        }
    }
    assert!(sheets > 600 && changed > 100, "{sheets} sheets, {changed} changed lines");
}
