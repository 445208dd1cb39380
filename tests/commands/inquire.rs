//! `whybake inquire`

use actix_web::test::{TestRequest, call_and_read_body, init_service};
use whybake::http::create_app;

use crate::program::run_with_input;
use crate::service::embedded;

const BUN: &str = r#"{"product": "hamburger_bun", "symptoms": [{"symptom": "mould"}], "reference": 1.10}"#;

#[test]
fn the_answer_is_a_plan_for_people() {
    let answer = run_with_input(&["inquire", "-", "--depth", "2"], BUN).success();
    for part in ["\nPlan: ", "not seen (", "the leader is ", "\nAll that tells something", "\nCautions\n", "\nrules "] {
        assert!(answer.contains(part), "{part}: {answer}");
    }
    assert!(answer.lines().all(|line| line.chars().count() <= 80), "{answer}");
}

#[actix_web::test]
async fn json_is_what_the_service_answers_byte_for_byte() {
    let options =
        ["--certain-enough", "0.8", "--most-minutes", "20", "--least-bits-per-minute", "0.01", "--depth", "1"];
    let arguments = [&["inquire", "-", "--json"][..], &options].concat();
    let answer = run_with_input(&arguments, BUN).success();
    let request = format!(
        r#"{{"case": {BUN}, "certain_enough": 0.8, "most_minutes": 20, "least_bits_per_minute": 0.01, "depth": 1}}"#
    );
    let service = init_service(create_app(&embedded(request.len()))).await;
    let request = TestRequest::post()
        .uri("/v1/inquiries")
        .insert_header(("content-type", "application/json"))
        .set_payload(request)
        .to_request();
    assert_eq!(answer.as_bytes(), call_and_read_body(&service, request).await);
}

#[test]
fn every_fault_is_a_line() {
    let run =
        run_with_input(&["inquire", "-", "--depth", "4", "--certain-enough", "0.2", "--most-minutes", "inf"], "{}");
    assert_eq!((run.code, run.output.as_str()), (Some(1), ""));
    for line in [
        "the case: `product` is missing",
        "/certain_enough: 0.2 is not between 0.5 and 0.999",
        "/most_minutes: a number is wanted",
        "/depth: 4 is not between 1 and 3",
    ] {
        assert!(run.complaints.contains(line), "{line}: {}", run.complaints);
    }
}

#[test]
fn text_that_is_no_json_is_a_faulty_case() {
    let run = run_with_input(&["inquire", "-"], "{");
    assert_eq!(run.code, Some(1));
    assert!(run.complaints.starts_with("the case is not JSON"), "{}", run.complaints);
}
