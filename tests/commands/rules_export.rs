//! `whybake rules export`

use std::fs;

use crate::program::run;

#[test]
fn the_exported_rules_can_be_checked_and_have_the_same_digest() {
    let dir = tempfile::tempdir().unwrap();
    let rules = dir.path().join("house/rules");
    let rules = rules.to_str().unwrap();
    run(&["rules", "export", rules]).success();
    run(&["check", rules]).success();

    let case = dir.path().join("case.json");
    fs::write(&case, r#"{"product": "hamburger_bun"}"#).unwrap();
    let case = case.to_str().unwrap();
    let embedded = run(&["diagnose", case, "--json"]).success();
    assert_eq!(run(&["diagnose", case, "--json", "--rules", rules]).success(), embedded);
}

#[test]
fn the_guide_for_authors_comes_with_the_rules() {
    let dir = tempfile::tempdir().unwrap();
    run(&["rules", "export", dir.path().to_str().unwrap()]).success();
    assert!(dir.path().join("README.md").is_file());
}

#[test]
fn nothing_is_overwritten() {
    let dir = tempfile::tempdir().unwrap();
    let mine = dir.path().join("pack.rhai");
    fs::write(&mine, "mine").unwrap();
    let run = run(&["rules", "export", dir.path().to_str().unwrap()]);
    assert_eq!((run.code, run.output.as_str()), (Some(4), ""));
    assert_eq!(run.complaints, format!("{}: is not empty; nothing was written\n", dir.path().display()));
    assert_eq!(fs::read_dir(dir.path()).unwrap().count(), 1);
    assert_eq!(fs::read_to_string(&mine).unwrap(), "mine");
}

#[test]
fn a_file_is_no_folder() {
    let dir = tempfile::tempdir().unwrap();
    let file = dir.path().join("file");
    fs::write(&file, "").unwrap();
    assert_eq!(run(&["rules", "export", file.to_str().unwrap()]).code, Some(4));
}
