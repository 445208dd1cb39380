//! `whybake replay` and `whybake diagnose --record`

use serde_json::Value;

use crate::program::{run, run_with_input};

const CASE: &str = "tests/cases/hollow_bun.json";

fn record() -> String {
    run(&["diagnose", CASE, "--record"]).success()
}

#[test]
fn a_record_is_one_line_and_replays_to_the_same_bytes() {
    let record = record();
    assert_eq!(record.matches('\n').count(), 1);
    assert_eq!(run_with_input(&["replay", "-"], &record).success(), "the same answer, byte for byte\n");
    let json: Value = serde_json::from_str(&run_with_input(&["replay", "-", "--json"], &record).success()).unwrap();
    assert_eq!((&json["same"], &json["same_program"]), (&Value::Bool(true), &Value::Bool(true)));
}

#[test]
fn records_are_what_compare_takes() {
    let records = record().repeat(2);
    let text = run_with_input(&["compare", "embedded", "embedded", "--cases", "-"], &records).success();
    assert!(text.starts_with("2 cases: 2 unchanged"), "{text}");
}

#[test]
fn another_answer_ends_in_a_code() {
    let mut record: Value = serde_json::from_str(&record()).unwrap();
    record["diagnosis"]["causes"][0]["probability"] = Value::from(0.5);
    let run = run_with_input(&["replay", "-"], &record.to_string());
    assert_eq!(run.code, Some(1));
    assert!(
        run.output.contains("the record has been changed") && run.output.contains("dough_too_warm: 0.500 ->"),
        "{}",
        run.output
    );
}

#[test]
fn every_fault_is_a_line() {
    let run = run_with_input(&["replay", "-"], "{\"diagnosis\": 1}");
    assert_eq!((run.code, run.output.as_str()), (Some(1), ""));
    let expected = "\
the record: `case` is missing (help: a record holds `case` and `diagnosis` as they were)
/diagnosis: an object is wanted, this is a number
";
    assert_eq!(run.complaints, expected);
    assert_eq!(
        run_with_input(&["replay", "-"], "{").complaints,
        "the record is not JSON: the text ends before the document does, at line 1 column 1\n"
    );
}

#[test]
fn faults_of_a_case_keep_a_record_from_being_written() {
    let run = run_with_input(&["diagnose", "-", "--record"], "{\"product\": \"bum\"}");
    assert_eq!((run.code, run.output.as_str()), (Some(1), ""));
    assert!(run.complaints.starts_with("/product: unknown product `bum`"), "{}", run.complaints);
}
