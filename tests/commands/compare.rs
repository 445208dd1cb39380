//! `whybake compare`

use std::fs;
use std::path::Path;

use serde_json::{Value, json};
use tempfile::TempDir;

use crate::program::{run, run_with_input};

/// A small pack with the priors of its two causes.
fn write_pack(dir: &Path, warm: f64, lean: f64) {
    let cause = |id: &str, prior: f64, strength: f64| {
        format!(
            "cause(\"{id}\").title(\"T\").mechanism(\"M.\").products(rolls).prior({prior:?}).shows(hollow, {strength:?})\
             .source(practice);\n"
        )
    };
    let files = [
        ("pack.rhai", "pack(\"small\").title(\"Small\").version(\"1.0.0\");\n".to_owned()),
        ("sources.rhai", "source(\"practice\").citation(\"rule of thumb\").common_practice();\n".to_owned()),
        ("products.rhai", "family(\"rolls\").title(\"R\");\nproduct(\"bun\").title(\"B\").family(rolls);\n".to_owned()),
        ("symptoms.rhai", "symptom(\"hollow\").title(\"H\").description(\"A gap.\").products(rolls);\n".to_owned()),
        ("causes.rhai", [cause("too_warm", warm, 0.9), cause("lean", lean, 0.1)].concat()),
    ];
    fs::create_dir_all(dir).unwrap();
    for (name, text) in files {
        fs::write(dir.join(name), text).unwrap();
    }
}

const BLANK: &str = r#"{"product": "bun"}"#;
const HOLLOW: &str = r#"{"title": "a record", "case": {"product": "bun", "symptoms": [{"symptom": "hollow"}]}}"#;

struct Setting {
    dir: TempDir,
}

impl Setting {
    /// Old rules by which `too_warm` leads, and new ones.
    fn new(warm: f64, lean: f64) -> Self {
        let dir = tempfile::tempdir().unwrap();
        write_pack(&dir.path().join("old"), 0.2, 0.1);
        write_pack(&dir.path().join("new"), warm, lean);
        Self { dir }
    }

    fn path(&self, name: &str) -> String {
        self.dir.path().join(name).to_str().unwrap().to_owned()
    }

    /// Runs the comparison; warnings about the small packs are of no interest.
    fn compare(&self, cases: &str, more: &[&str]) -> (Option<i32>, String) {
        let (old, new) = (self.path("old"), self.path("new"));
        let arguments = [&["compare", &old, &new, "--cases", "-"], more].concat();
        let run = run_with_input(&arguments, cases);
        (run.code, run.output)
    }
}

#[test]
fn equal_rules_change_nothing() {
    let (code, output) = Setting::new(0.2, 0.1).compare(&format!("{BLANK}\n\n{HOLLOW}"), &[]);
    assert_eq!(code, Some(0));
    let expected = "2 cases: 2 unchanged, 0 with other probabilities, 0 with another leader, 0 refused by the new rules, \
                    0 answered only by the new rules, 0 faulty\n";
    assert_eq!(output, expected);
}

#[test]
fn other_leaders_come_first_and_end_in_a_code() {
    let (code, output) = Setting::new(0.2, 0.3).compare(&format!("{HOLLOW}\n{BLANK}\n"), &[]);
    assert_eq!(code, Some(1));
    let lines: Vec<&str> = output.lines().collect();
    assert_eq!(lines[0], "line 2: the leader was `too_warm` 0.200, now it is `lean` 0.300");
    assert_eq!(lines[1], "    `lean` changes most: 0.100 -> 0.300");
    assert!(lines[2].starts_with("line 1: `too_warm` ") && lines[2].contains(" still leads; it had "), "{output}");
    assert!(
        lines[4].starts_with("2 cases: 0 unchanged, 1 with other probabilities, 1 with another leader, "),
        "{output}"
    );
}

#[test]
fn other_probabilities_alone_are_no_fault() {
    let (code, output) = Setting::new(0.25, 0.1).compare(BLANK, &[]);
    assert_eq!(code, Some(0), "{output}");
    assert!(output.starts_with("line 1: `too_warm` 0.250 still leads; it had 0.200\n"), "{output}");
}

#[test]
fn faulty_lines_are_told_with_their_number_and_stop_nothing() {
    let cases = format!("{BLANK}\n{{\"product\":\n\n{{\"product\": \"loaf\"}}\n\u{fffd}\n{BLANK}\n");
    let (code, output) = Setting::new(0.2, 0.1).compare(&cases, &[]);
    assert_eq!(code, Some(1));
    assert!(output.starts_with("line 2: the case: the case is not JSON: the text ends before"), "{output}");
    assert!(output.contains("\nline 4: /product: unknown product `loaf`\nline 5: the case: "), "{output}");
    assert!(output.contains("5 cases: 2 unchanged, ") && output.ends_with("3 faulty\n"), "{output}");
}

#[test]
fn cases_that_the_new_rules_refuse_are_told() {
    let setting = Setting::new(0.2, 0.1);
    let symptoms = setting.dir.path().join("new/symptoms.rhai");
    let renamed = "symptom(\"gap\").title(\"G\").description(\"A gap.\").products(rolls);\n";
    fs::write(symptoms, renamed).unwrap();
    let causes = setting.dir.path().join("new/causes.rhai");
    fs::write(&causes, fs::read_to_string(&causes).unwrap().replace("hollow", "gap")).unwrap();
    let (code, output) = setting.compare(HOLLOW, &[]);
    assert_eq!(code, Some(1));
    assert!(output.starts_with("line 1: refused by the new rules; before, `too_warm` "), "{output}");
    assert!(output.contains("\n    /symptoms/0/symptom: unknown symptom `hollow`"), "{output}");
    assert!(output.contains(" 1 refused by the new rules, "), "{output}");
}

#[test]
fn json_tells_every_change() {
    let setting = Setting::new(0.2, 0.3);
    let (code, output) = setting.compare(&format!("{BLANK}\n{BLANK}\n[]\n"), &["--json", "--most", "1"]);
    assert_eq!(code, Some(1));
    let report: Value = serde_json::from_str(&output).unwrap();
    let counts =
        json!({"unchanged": 0, "probabilities": 0, "leader": 2, "newly_refused": 0, "newly_answered": 0, "refused": 1});
    assert_eq!((&report["cases"], &report["counts"]), (&json!(3), &counts));
    assert_ne!(report["old"]["digest"], report["new"]["digest"]);
    let lines: Vec<&Value> = report["changes"].as_array().unwrap().iter().map(|change| &change["line"]).collect();
    assert_eq!(lines, [1, 2]);
    assert_eq!(report["changes"][0]["effect"], "leader");
    assert_eq!(report["faulty_lines"][0]["line"], 3);
    assert_eq!(report["faulty_lines"][0]["faults"][0]["detail"], "an object is wanted, this is an array");
}

#[test]
fn many_lines_keep_their_numbers() {
    let cases: String = (0..9_000).map(|n| if n == 8_191 { "[]\n".to_owned() } else { format!("{BLANK}\n") }).collect();
    let (_, output) = Setting::new(0.2, 0.3).compare(&cases, &["--most", "1"]);
    assert!(output.starts_with("line 8192: the case: an object is wanted"), "{output}");
    assert!(
        output.contains("\nline 1: the leader was") && output.contains("\nand 8998 more cases that change\n"),
        "{output}"
    );
}

#[test]
fn the_rules_of_the_program_can_be_compared() {
    let dir = tempfile::tempdir().unwrap();
    let cases = dir.path().join("cases.ndjson");
    fs::write(&cases, "{\"product\": \"hamburger_bun\"}\n").unwrap();
    let run = run(&["compare", "embedded", "embedded", "--cases", cases.to_str().unwrap()]);
    assert_eq!(run.code, Some(0));
    assert!(run.output.starts_with("1 cases: 1 unchanged, "), "{}", run.output);
}

#[test]
fn what_cannot_be_read_is_told() {
    let setting = Setting::new(0.2, 0.1);
    let (old, none) = (setting.path("old"), setting.path("none"));
    assert_eq!(run(&["compare", &old, &none, "--cases", "-"]).code, Some(3));
    let run = run(&["compare", &old, &old, "--cases", &none]);
    assert_eq!(run.code, Some(4));
    assert!(run.complaints.contains("none: cannot be read: "), "{}", run.complaints);
}
