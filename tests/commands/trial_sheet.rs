//! `whybake trial-sheet`

use actix_web::test::{TestRequest, call_and_read_body, init_service};
use serde_json::{Value, json};
use whybake::http::create_app;

use crate::program::{run_with_input, whybake};
use crate::service::embedded;

const REQUEST: &str = include_str!("../../src/http/openapi/examples/trial_sheet_request.json");

/// The case of the example, as it stands there.
fn case() -> String {
    serde_json::from_str::<Value>(REQUEST).unwrap()["case"].to_string()
}

const OPTIONS: [&str; 16] = [
    "trial-sheet",
    "-",
    "--batch",
    "20kg",
    "--action",
    "set_salt",
    "--action",
    "proof_longer",
    "--reading",
    "specific_volume",
    "--difference",
    "0.3mL/g",
    "--standard-deviation",
    "0.25 mL/g",
    "--seed",
    "7",
];

#[actix_web::test]
async fn json_is_what_the_service_answers_byte_for_byte() {
    let arguments = [&OPTIONS[..], &["--json"]].concat();
    let answer = run_with_input(&arguments, &case()).success();
    let mut request: Value = serde_json::from_str(REQUEST).unwrap();
    request["case"] = serde_json::from_str(&case()).unwrap();
    let service = init_service(create_app(&embedded(100_000))).await;
    let request = TestRequest::post()
        .uri("/v1/trial_sheets")
        .insert_header(("content-type", "application/json"))
        .set_payload(request.to_string())
        .to_request();
    assert_eq!(answer.as_bytes(), call_and_read_body(&service, request).await);
}

#[test]
fn text_is_for_people_and_paper_is_there() {
    let text = run_with_input(&OPTIONS, &case()).success();
    assert!(text.starts_with("Trial sheet: Hamburger bun\n") && text.contains("12 pieces of every run"), "{text}");
    let record = format!("{{\"case\": {}, \"note\": 1}}", case());
    let markdown = run_with_input(&[&OPTIONS[..], &["--markdown"]].concat(), &record).success();
    assert!(markdown.starts_with("# Trial sheet"), "{markdown}");
    let page = run_with_input(&[&OPTIONS[..], &["--page"]].concat(), &case()).success();
    assert!(page.starts_with("<!doctype html>"), "{page}");
}

#[test]
fn faults_of_the_case_stand_at_its_own_places() {
    let faulty = json!({"product": "hamburger_bum"}).to_string();
    let run = run_with_input(&["trial-sheet", "-", "--batch", "20L", "--design", "factorail"], &faulty);
    assert_eq!((run.code, run.output.as_str()), (Some(1), ""));
    let expected = "\
/product: unknown product `hamburger_bum` (help: did you mean `hamburger_bun`?)
/batch/mass/unit: `L` measures volume, but mass (`kg`) is wanted (help: for example `kg`)
/design: unknown design `factorail` (help: did you mean `factorial`?)
";
    assert_eq!(run.complaints, expected);
}

#[test]
fn a_batch_is_wanted() {
    let output = whybake(&["trial-sheet", "case.json"]).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
}
