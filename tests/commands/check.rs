//! `whybake check`

use std::fs;
use std::path::Path;

use serde_json::Value;
use tempfile::TempDir;

use crate::program::run;

/// A pack whose only file is broken off.
fn broken_pack() -> TempDir {
    let dir = tempfile::tempdir().unwrap();
    fs::write(dir.path().join("pack.rhai"), "pack(\"house\"").unwrap();
    dir
}

fn text(path: &Path) -> &str {
    path.to_str().unwrap()
}

#[test]
fn the_embedded_rules_have_no_faults() {
    let report = run(&["check"]).success();
    let summary = report.lines().last().unwrap();
    assert!(summary.starts_with("0 faults, 0 warnings, ") && summary.ends_with(" rule tests passed"), "{report}");
    assert_eq!(run(&["check", "--no-tests"]).success(), "0 faults, 0 warnings\n");
}

/// The embedded pack with one more rule test.
fn pack_with_test(name: &str, text: &str) -> TempDir {
    let dir = tempfile::tempdir().unwrap();
    let rules = dir.path().join("rules");
    run(&["rules", "export", rules.to_str().unwrap()]).success();
    fs::write(rules.join("soft_rolls/cases").join(name), text).unwrap();
    dir
}

const UNMET: &str = r#"{ "title": "a hollow has no cause", "case": { "product": "hamburger_bun",
  "symptoms": [{ "symptom": "hollow_under_crust" }] },
  "expect": { "leader": "rope_spores" } }"#;

#[test]
fn a_failed_rule_test_is_told_beside_the_diagnostics() {
    let dir = pack_with_test("aaa.json", UNMET);
    let rules = dir.path().join("rules");
    let told = run(&["check", text(&rules)]);
    assert_eq!((told.code, told.complaints.as_str()), (Some(1), ""));
    let start = "fault[failed-test]: `leader`: wanted `rope_spores`, came `";
    assert!(told.output.starts_with(start), "{}", told.output);
    assert!(told.output.contains(" --> soft_rolls/cases/aaa.json:3:25\n"), "{}", told.output);
    assert!(told.output.contains("help: the first causes are `"), "{}", told.output);
    assert!(told.output.contains("0 faults, 0 warnings, 1 of "), "{}", told.output);
    assert_eq!(run(&["check", text(&rules), "--no-tests"]).success(), "0 faults, 0 warnings\n");

    let report: Value = serde_json::from_str(&run(&["check", text(&rules), "--format", "json"]).output).unwrap();
    assert_eq!((&report["faults"], &report["tests"]["failed"]), (&0.into(), &1.into()));
    let failure = &report["tests"]["failures"][0];
    assert_eq!((&failure["expectation"], &failure["wanted"]), (&"leader".into(), &"`rope_spores`".into()));
    assert_eq!(failure["leading"].as_array().unwrap().len(), 3);
}

#[test]
fn coverage_lists_what_no_test_reaches_and_sums_up_each_family() {
    let report = run(&["check", "--coverage"]).success();
    let heading: Vec<&str> =
        report.lines().find(|line| line.starts_with("reached by")).unwrap().split_whitespace().collect();
    assert_eq!(heading.join(" "), "reached by rule tests tests causes evidence regions links actions together");
    assert!(report.contains("\nSoft rolls  ") && report.contains("\nall causes  "), "{report}");
    assert!(report.ends_with(" rule tests passed\n"), "{report}");

    let json = run(&["check", "--coverage", "--format", "json"]).success();
    let json: Value = serde_json::from_str(&json).unwrap();
    let coverage = &json["tests"]["coverage"];
    let unreached = coverage["unreached"].as_array().unwrap();
    let total = &coverage["total"]["links"];
    assert!(total["reached"].as_u64() <= total["of"].as_u64() && total["percent"].as_f64().unwrap() <= 100.0);
    assert!(coverage["families"].as_array().unwrap().iter().any(|family| family["family"] == "soft_rolls"));
    let first = &unreached[0];
    let line = format!(
        "  {}:{}: {}: {}\n",
        first["file"].as_str().unwrap(),
        first["line"],
        first["item"].as_str().unwrap(),
        first["never"].as_str().unwrap()
    );
    assert!(report.contains(&line), "{line}");
    assert_eq!(run(&["check", "--coverage", "--no-tests"]).code, Some(2));
}

#[test]
fn a_faulty_rule_test_is_a_fault_with_its_place() {
    let dir = pack_with_test("aaa.json", &UNMET.replace("rope_spores", "rope_spore"));
    let rules = dir.path().join("rules");
    let told = run(&["check", text(&rules)]);
    assert_eq!(told.code, Some(1));
    assert!(told.output.starts_with("fault[unknown-name]: unknown cause `rope_spore`\n"), "{}", told.output);
    assert!(told.output.contains("1 fault, 0 warnings, "), "{}", told.output);
    assert!(told.output.ends_with(" rule tests passed\n"), "{}", told.output);
}

#[test]
fn faults_are_told_with_their_place_and_a_count() {
    let dir = broken_pack();
    let run = run(&["check", text(dir.path())]);
    assert_eq!((run.code, run.complaints.as_str()), (Some(1), ""));
    assert!(run.output.starts_with("fault[syntax]: "), "{}", run.output);
    assert!(run.output.contains("--> pack.rhai:1:"), "{}", run.output);
    assert!(run.output.contains("1 | pack(\"house\"\n"), "{}", run.output);
    assert!(run.output.ends_with("1 fault, 0 warnings\n"), "{}", run.output);
}

#[test]
fn json_is_for_programs() {
    let dir = broken_pack();
    let run = run(&["check", text(dir.path()), "--format", "json"]);
    assert_eq!(run.code, Some(1));
    let report: Value = serde_json::from_str(&run.output).unwrap();
    assert_eq!((&report["faults"], &report["warnings"]), (&Value::from(1), &Value::from(0)));
    assert_eq!(report["diagnostics"][0]["file"], "pack.rhai");
    assert_eq!(report["diagnostics"][0]["code"], "syntax");
}

#[test]
fn github_marks_the_file_of_the_checkout() {
    let dir = broken_pack();
    let run = run(&["check", text(dir.path()), "--format", "github"]);
    assert_eq!(run.code, Some(1));
    let start = format!("::error file={},title=syntax,line=1,", dir.path().join("pack.rhai").display());
    assert!(run.output.starts_with(&start), "{}", run.output);
}

#[test]
fn a_folder_that_is_not_there_is_a_fault() {
    let run = run(&["check", "no/such/rules"]);
    assert_eq!(run.code, Some(1));
    assert!(run.output.starts_with("fault[file]: "), "{}", run.output);
}
