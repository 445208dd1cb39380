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
    assert!(report.lines().last().unwrap().starts_with("0 faults, "), "{report}");
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
