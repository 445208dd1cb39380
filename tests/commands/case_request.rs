//! Commands that put a case of a file into a request: `inquire`, `what-if`, `trial-sheet`.

use serde_json::{Value, json};

use crate::program::run_with_input;

const COMMANDS: [&[&str]; 3] =
    [&["inquire", "-"], &["what-if", "-", "--symptom", "pale_crust"], &["trial-sheet", "-", "--batch", "20kg"]];

/// The faults of the case were once told under `/case` by two of the three, and those of the text eight columns too far.
#[test]
fn faults_of_the_case_stand_where_the_file_has_them() {
    let same = |text: &str| {
        let diagnosed = run_with_input(&["diagnose", "-"], text).complaints;
        for command in COMMANDS {
            let run = run_with_input(command, text);
            assert_eq!((run.code, run.output.as_str()), (Some(1), ""));
            let own: String =
                run.complaints.lines().take(diagnosed.lines().count()).map(|own| format!("{own}\n")).collect();
            assert_eq!(own, diagnosed, "{command:?}");
        }
        diagnosed
    };
    assert_eq!(same(r#"{"product": "hamburger_bum"}"#).split(':').next(), Some("/product"));
    assert_eq!(same("{}").split(':').next(), Some("the case"));
    let text = r#"{"product": "hamburger_bun", "facts": {"a": treu}}"#;
    assert!(same(text).ends_with("at line 1 column 47\n"), "{}", same(text));
    assert!(same(r#"{"product": 1e999}"#).ends_with("at line 1 column 17\n"));
}

/// What follows the case was once taken for a part of the request.
#[test]
fn what_follows_the_case_is_no_part_of_the_request() {
    for command in COMMANDS {
        let text = r#"{"product": "hamburger_bun"}, "certain_enough": 0.6, "x": {}"#;
        let run = run_with_input(command, text);
        assert_eq!((run.code, run.output.as_str()), (Some(1), ""));
        assert!(run.complaints.starts_with("the case is not JSON: "), "{}", run.complaints);
    }
}

#[test]
fn the_reference_of_the_case_comes_back() {
    let case = json!({"product": "hamburger_bun", "symptoms": [{"symptom": "hollow_under_crust"}],
        "formula": {"ingredients": [{"ingredient": "bread_flour", "amount": 50, "unit": "kg"},
            {"ingredient": "water", "amount": 29, "unit": "kg"}]},
        "reference": {"lot": "A17"}});
    for command in COMMANDS {
        let answer = run_with_input(&[command, &["--json"]].concat(), &case.to_string()).success();
        let answer: Value = serde_json::from_str(&answer).unwrap();
        assert_eq!(answer["reference"], json!({"lot": "A17"}), "{command:?}");
    }
}
