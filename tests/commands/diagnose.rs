//! `whybake diagnose`

use std::fs;
use std::io::Read;
use std::process::Stdio;

use actix_web::test::{TestRequest, call_and_read_body, init_service};
use whybake::http::create_app;

use crate::program::{run, run_with_input, whybake};
use crate::service::embedded;

const EXAMPLE: &str = include_str!("../../src/http/openapi/examples/case.json");
const BUN: &str = r#"{"product": "hamburger_bun", "symptoms": [{"symptom": "low_volume"}]}"#;

#[test]
fn the_answer_is_text_for_people() {
    let answer = run_with_input(&["diagnose", "-"], BUN).success();
    assert!(!answer.starts_with('{') && answer.ends_with('\n'), "{answer}");
}

#[test]
fn a_record_and_a_rule_test_hold_the_case_too() {
    let wrapped = format!("{{\"title\": \"x\", \"case\": {BUN}, \"expect\": {{}}}}");
    for command in [&["diagnose", "-"][..], &["inquire", "-", "--depth=1"], &["what-if", "-", "--symptom=pale_crust"]] {
        assert_eq!(run_with_input(command, &wrapped).success(), run_with_input(command, BUN).success(), "{command:?}");
    }
}

#[actix_web::test]
async fn json_is_what_the_service_answers_byte_for_byte() {
    let answer = run_with_input(&["diagnose", "-", "--json"], EXAMPLE).success();

    let service = init_service(create_app(&embedded(EXAMPLE.len()))).await;
    let request = TestRequest::post()
        .uri("/v1/diagnoses")
        .insert_header(("content-type", "application/json"))
        .set_payload(EXAMPLE)
        .to_request();
    assert_eq!(answer.as_bytes(), call_and_read_body(&service, request).await);
}

#[test]
fn a_case_can_be_a_file() {
    let dir = tempfile::tempdir().unwrap();
    let file = dir.path().join("case.json");
    fs::write(&file, BUN).unwrap();
    let from_file = run(&["diagnose", file.to_str().unwrap(), "--json"]).success();
    assert_eq!(from_file, run_with_input(&["diagnose", "-", "--json"], BUN).success());
}

#[test]
fn every_fault_of_a_case_is_a_line_with_place_and_help() {
    let case = r#"{"product": "hamburger_bum", "symptoms": [{"symptom": "low_volume", "certainty": 2}], "fact": {}}"#;
    let run = run_with_input(&["diagnose", "-"], case);
    assert_eq!((run.code, run.output.as_str()), (Some(1), ""));
    let expected = "\
/fact: unknown member `fact` (help: did you mean `facts`?)
/product: unknown product `hamburger_bum` (help: did you mean `hamburger_bun`?)
/symptoms/0/certainty: 2 is not between 0 and 1
";
    assert_eq!(run.complaints, expected);
}

#[test]
fn text_that_is_no_json_is_a_faulty_case() {
    let run = run_with_input(&["diagnose", "-"], "{");
    assert_eq!(run.code, Some(1));
    assert_eq!(run.complaints, "the case is not JSON: the text ends before the document does, at line 1 column 1\n");
}

#[test]
fn a_case_that_is_an_empty_object_lacks_its_product() {
    let run = run_with_input(&["diagnose", "-"], "{}");
    assert_eq!(run.code, Some(1));
    assert!(
        run.complaints.starts_with("the case: `product` is missing (help: the products are `"),
        "{}",
        run.complaints
    );
}

#[test]
fn a_file_that_is_not_there_is_a_failure() {
    let run = run(&["diagnose", "no/such/case.json"]);
    assert_eq!((run.code, run.output.as_str()), (Some(4), ""));
    assert!(run.complaints.starts_with("no/such/case.json: cannot be read: "), "{}", run.complaints);
}

#[test]
fn rules_that_cannot_be_loaded_end_with_a_code_of_their_own() {
    let run = run_with_input(&["diagnose", "-", "--rules", "no/such/rules"], BUN);
    assert_eq!((run.code, run.output.as_str()), (Some(3), ""));
    assert!(run.complaints.ends_with("the rules cannot be loaded\n"), "{}", run.complaints);
}

#[test]
fn a_reader_that_hangs_up_is_no_failure() {
    let mut command = whybake(&["diagnose", "-", "--json"]);
    let command = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut program = command.spawn().unwrap();
    drop(program.stdout.take());
    std::io::Write::write_all(&mut program.stdin.take().unwrap(), BUN.as_bytes()).unwrap();
    let mut complaints = String::new();
    program.stderr.take().unwrap().read_to_string(&mut complaints).unwrap();
    assert_eq!((program.wait().unwrap().code(), complaints.as_str()), (Some(0), ""));
}
