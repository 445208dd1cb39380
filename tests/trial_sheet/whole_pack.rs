//! Sheets of every case of the rules that the program carries.

use std::sync::LazyLock;

use serde_json::{Value, json};
use whybake::diagnosis::Diagnostician;
use whybake::json::DocumentFaults;
use whybake::rules::{RuleFiles, load};
use whybake::trial_sheet::{TrialRequest, TrialSheet, markdown, page, page_fit, text};

static RULES: LazyLock<Diagnostician> =
    LazyLock::new(|| Diagnostician::new(load(&RuleFiles::embedded()).unwrap().knowledge).unwrap());

/// Calls `check` with the sheet of a case of the rules.
fn sheet_of(path: &str, check: impl FnOnce(&TrialSheet<'_>)) {
    let files = RuleFiles::embedded();
    let (_, text) = files.cases().into_iter().find(|(own, _)| *own == path).unwrap();
    let record: Value = serde_json::from_str(text).unwrap();
    sheet_of_case(&record["case"], check);
}

fn sheet_of_case(case: &Value, check: impl FnOnce(&TrialSheet<'_>)) {
    let request = json!({"case": case, "batch": {"mass": {"value": 20, "unit": "kg"}}}).to_string();
    let request = TrialRequest::parse(request.as_bytes(), RULES.knowledge()).unwrap();
    check(&TrialSheet::plan(&RULES, &request).unwrap());
}

/// What tells that a cause is not at work may be what a run sets, or a fault of the other kind: neither counts as fixed.
#[test]
fn what_counts_as_fixed_can_be_met() {
    let fixed = |sheet: &TrialSheet<'_>| -> Vec<String> {
        let sheet = serde_json::to_value(sheet).unwrap();
        let all = sheet["fixed_when"].as_array().unwrap().iter();
        all.map(|own| format!("{}: {}", own["id"].as_str().unwrap(), own["text"].as_str().unwrap())).collect()
    };
    let jam = json!({
        "product": "jam",
        "symptoms": [{"symptom": "weeping"}, {"symptom": "filling_not_set"}, {"symptom": "filling_too_thin"}],
        "readings": {"filling_ph": {"value": 3.7, "unit": "[pH]"}, "filling_soluble_solids": {"value": 62, "unit": "%"}}
    });
    sheet_of_case(&jam, |sheet| {
        // Acid is tried to 3.15, and under-acid jam is excluded below 3.15.
        assert!(sheet.changes.iter().any(|own| own.action == "set_acid"));
        let fixed = fixed(sheet);
        assert!(fixed.iter().all(|own| !own.starts_with("filling_ph: ")), "{fixed:?}");
        assert!(fixed.iter().any(|own| own.starts_with("filling_soluble_solids: ")), "{fixed:?}");
    });
    let bread = json!({
        "product": "white_pan_bread", "symptoms": [{"symptom": "dark_crust"}, {"symptom": "caved_sides"}],
        "readings": {"core_temperature": {"value": 93, "unit": "Cel"}}
    });
    sheet_of_case(&bread, |sheet| {
        let fixed = fixed(sheet);
        assert!(fixed.iter().all(|own| !own.contains("low limit")), "{fixed:?}");
        assert!(fixed.iter().any(|own| own.starts_with("core_temperature: ")), "{fixed:?}");
    });
}

/// Warming and cooling the dough aim at the same temperature: one run, and both ways to it are told.
#[test]
fn opposite_ways_to_the_same_figure_are_told_together() {
    sheet_of("cookies/cases/oil_dough_stiffens.json", |sheet| {
        let change = sheet.changes.iter().find(|own| own.action == "warm_the_dough").unwrap();
        let ways: Vec<&str> = change.other_ways.iter().map(|own| own.action).collect();
        assert!(ways.contains(&"cool_the_dough"), "{ways:?}");
        assert!(sheet.changes.iter().all(|own| !ways.contains(&own.action)));
        let declared = &RULES.knowledge().declared;
        let title = &declared.actions[declared.actions.find("cool_the_dough").unwrap()].title;
        for paper in [text(sheet, 100), markdown(sheet), page(sheet)] {
            let in_one_line = paper.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(in_one_line.contains(&format!("To the same figures leads: “{title}”")), "{paper}");
        }
    });
}

/// What takes the place of gelatin that is not certified is tried with its quantities.
#[test]
fn replacements_of_excluded_actions_are_tried_with_their_quantities() {
    sheet_of("fillings/cases/weak_bloom_halal.json", |sheet| {
        let replacements = ["raise_certified_gelatin", "plant_gel"];
        let change = sheet.changes.iter().find(|own| replacements.contains(&own.action)).unwrap();
        assert!(!change.settings.is_empty(), "{change:?}");
        assert!(sheet.changes.iter().all(|own| own.action != "raise_gelatin"));
    });
}

/// Every rule test's case has a sheet, or the only fault is that its causes prescribe nothing or too little. Masses are
/// finite and never negative; what is marked differs.
#[test]
fn every_case_of_the_pack_can_be_planned() {
    let files = RuleFiles::embedded();
    let rules = &*RULES;
    let (mut sheets, mut changed, mut two_pages) = (0, 0, 0);
    for (path, text_of_case) in files.cases() {
        let record: Value = serde_json::from_str(text_of_case).unwrap();
        for design in ["one_change_at_a_time", "factorial"] {
            let batch = json!({"mass": {"value": 20, "unit": "kg"}});
            let request = json!({"case": record["case"], "batch": batch, "design": design}).to_string();
            let request = TrialRequest::parse(request.as_bytes(), rules.knowledge()).unwrap();
            let sheet = match TrialSheet::plan(rules, &request) {
                Ok(sheet) => sheet,
                Err(DocumentFaults::Faulty(faults)) if faults.iter().all(|own| own.pointer != "/batch/mass") => {
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
            let fit = page_fit(&sheet);
            assert!(fit.type_size_pt >= 7.5 && fit.filled <= 0.98 && fit.pages <= 2, "{path}: {fit:?}");
            two_pages += usize::from(fit.pages > 1);
            for paper in [text(&sheet, 80), markdown(&sheet), page(&sheet)] {
                assert!(!paper.contains("NaN") && !paper.contains("inf "), "{path}");
            }
        }
    }
    assert!(sheets > 600 && changed > 100, "{sheets} sheets, {changed} changed lines");
    println!("{two_pages} of {sheets} sheets take two pages");
    assert!(50 * two_pages <= sheets, "{two_pages} of {sheets} sheets take two pages");
}
