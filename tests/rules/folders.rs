//! Folders of rules as they are met: links, devices, endings, marks of editors.

use std::fs;
use std::path::Path;

use tempfile::TempDir;
use whybake::rules::{FolderStamp, RuleFiles};

use crate::support::line;

const RULE: &str = "source(\"common_practice\").title(\"common practice\");\n";

fn folder(files: &[(&str, &str)]) -> TempDir {
    let dir = TempDir::new().unwrap();
    for (path, text) in files {
        let path = dir.path().join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }
    dir
}

fn faults(dir: &Path) -> Vec<String> {
    RuleFiles::read(dir).unwrap_err().iter().map(line).collect()
}

/// A device or a pipe has no end, and nobody writes rules into it.
#[cfg(unix)]
#[test]
fn a_device_is_no_rule_file() {
    let dir = folder(&[("a.rhai", RULE)]);
    std::os::unix::fs::symlink("/dev/null", dir.path().join("x.rhai")).unwrap();
    std::os::unix::net::UnixListener::bind(dir.path().join("y.rhai")).unwrap();
    let mut told = faults(dir.path());
    told.sort();
    let refused = |file: &str| format!("file {file}:0:0 [] cannot read the file: it is no ordinary file");
    assert_eq!(told, [refused("x.rhai"), refused("y.rhai")]);
}

/// Two such links once made a fault for each of the ways through them.
#[cfg(unix)]
#[test]
fn links_in_a_circle_are_one_fault_each() {
    let dir = folder(&[("buns/a.rhai", RULE)]);
    std::os::unix::fs::symlink(".", dir.path().join("here")).unwrap();
    std::os::unix::fs::symlink("..", dir.path().join("buns/back")).unwrap();
    let mut told = faults(dir.path());
    told.sort();
    let refused =
        |link: &str| format!("file {link}:0:0 [] the folder is a link to one that it stands in -- take the link out");
    assert_eq!(told, [refused("buns/back"), refused("here")]);
    let stamp = FolderStamp::of(dir.path());
    fs::remove_file(dir.path().join("here")).unwrap();
    assert!(!FolderStamp::of(dir.path()).looks_like(&stamp), "a link that is taken out is a change");
}

/// The same folder twice, side by side, is no circle.
#[cfg(unix)]
#[test]
fn a_link_beside_its_folder_is_read() {
    let dir = folder(&[("buns/a.rhai", RULE)]);
    std::os::unix::fs::symlink("buns", dir.path().join("rolls")).unwrap();
    let files = RuleFiles::read(dir.path()).unwrap();
    assert_eq!(files.iter().map(|(path, _)| path).collect::<Vec<_>>(), ["buns/a.rhai", "rolls/a.rhai"]);
}

#[test]
fn folders_that_are_nested_too_deep_are_told_once() {
    let dir = folder(&[("1/2/3/4/5/6/7/8/9/a.rhai", RULE), ("1/2/3/4/5/6/7/8/10/a.rhai", RULE)]);
    let told = faults(dir.path());
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(told[0].contains("folders are nested deeper than 8"), "{told:?}");
}

/// Such a file was once passed over without a word.
#[test]
fn an_ending_in_capital_letters_is_told() {
    let dir = folder(&[("a.rhai", RULE), ("buns/Fat.RHAI", RULE), ("buns/cases/b.Json", "{}"), ("notes.TXT", "")]);
    let mut told = faults(dir.path());
    told.sort();
    let refused = |file: &str, meant: &str| {
        format!("file {file}:0:0 [] the ending of a file is written in small letters -- rename it to `{meant}`")
    };
    let expected = [refused("buns/Fat.RHAI", "buns/Fat.rhai"), refused("buns/cases/b.Json", "buns/cases/b.json")];
    assert_eq!(told, expected);
    let stamp = FolderStamp::of(dir.path());
    fs::remove_file(dir.path().join("buns/Fat.RHAI")).unwrap();
    assert!(!FolderStamp::of(dir.path()).looks_like(&stamp), "a file that is taken out is a change");
}

#[test]
fn a_file_that_is_too_long_or_no_text_is_told() {
    let long = "é".repeat(RuleFiles::LARGEST_FILE as usize / 2) + "é";
    let dir = folder(&[("long.rhai", &long)]);
    assert_eq!(faults(dir.path()), ["file long.rhai:0:0 [] the file is longer than 256 KiB"]);
    fs::write(dir.path().join("long.rhai"), b"\xff").unwrap();
    assert_eq!(faults(dir.path()), ["file long.rhai:0:0 [] cannot read the file: it is not text in UTF-8"]);
}

/// Some editors write a byte order mark at the beginning of a text.
#[test]
fn a_byte_order_mark_is_no_part_of_a_rule_or_a_case() {
    let marked = format!("\u{feff}{RULE}");
    let dir = folder(&[("a.rhai", &marked), ("buns/cases/b.json", "\u{feff}{\"title\": 1}")]);
    let files = RuleFiles::read(dir.path()).unwrap();
    assert_eq!(files.text("a.rhai"), Some(RULE));
    assert_eq!(files.cases().collect::<Vec<_>>(), [("buns/cases/b.json", "{\"title\": 1}")]);
}
