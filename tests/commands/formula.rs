//! `whybake formula`

use actix_web::test::{TestRequest, call_and_read_body, init_service};
use serde_json::Value;
use whybake::http::create_app;

use crate::program::run_with_input;
use crate::service::embedded;

const REQUEST: &str = include_str!("../../src/http/openapi/examples/formula.json");
const ALONE: &str = r#"{"ingredients": [{"ingredient": "bread_flour", "amount": 100, "unit": "%"},
    {"ingredient": "water", "amount": 60, "unit": "%"}], "complete": true}"#;

#[test]
fn figures_are_text_for_people() {
    let text = run_with_input(&["formula", "-"], REQUEST).success();
    assert!(text.contains("syrup strength") && text.contains("mind: water activity"), "{text}");
}

#[actix_web::test]
async fn json_is_what_the_service_answers_byte_for_byte() {
    let answer = run_with_input(&["formula", "-", "--json"], REQUEST).success();
    let service = init_service(create_app(&embedded(REQUEST.len()))).await;
    let request = TestRequest::post()
        .uri("/v1/formulas/figures")
        .insert_header(("content-type", "application/json"))
        .set_payload(REQUEST)
        .to_request();
    assert_eq!(answer.as_bytes(), call_and_read_body(&service, request).await);
}

#[test]
fn a_batch_is_scaled_to_a_mass_or_to_pieces() {
    let batch: Value =
        serde_json::from_str(&run_with_input(&["formula", "-", "--batch", "80 kg", "--json"], ALONE).success())
            .unwrap();
    assert_eq!(batch["flour_kg"], 50.0);
    let pieces = ["formula", "-", "--pieces", "1000", "--piece-weight", "0.06kg", "--bake-loss", "12%"];
    let text = run_with_input(&pieces, ALONE).success();
    assert!(text.starts_with("dough: 68.182 kg, of which 42.614 kg flour"), "{text}");
}

#[test]
fn every_fault_is_a_line() {
    let faulty = r#"{"ingredients": [{"ingredient": "bread_flower", "amount": -1, "unit": "kg"}]}"#;
    let run = run_with_input(&["formula", "-", "--batch", "0kg"], faulty);
    assert_eq!((run.code, run.output.as_str()), (Some(1), ""));
    let expected = "\
/formula/ingredients/0/ingredient: unknown ingredient `bread_flower` (help: did you mean `bread_flour`?)
/formula/ingredients/0/amount: -1 is not at least 0
/mass: 0 kg is not between 1e-9 and 1e9 kg
";
    assert_eq!(run.complaints, expected);
}

#[test]
fn a_size_without_a_unit_is_a_usage_error() {
    let run = run_with_input(&["formula", "-", "--batch", "120"], ALONE);
    assert_eq!(run.code, Some(2));
    assert!(run.complaints.contains("`120` is not a number with a unit"), "{}", run.complaints);
}

/// The last of the two was once taken without a word.
#[test]
fn a_member_that_stands_twice_is_a_fault() {
    let line = r#"{"ingredient": "bread_flour", "amount": 50, "amount": 5, "unit": "kg"}"#;
    let alone = format!(r#"{{"ingredients": [{line}]}}"#);
    let request = format!(r#"{{"formula": {alone}, "formula": {alone}}}"#);
    for (text, pointer) in [(&alone, "/formula/ingredients/0/amount"), (&request, "/formula")] {
        let run = run_with_input(&["formula", "-", "--batch", "80kg"], text);
        assert_eq!((run.code, run.output.as_str()), (Some(1), ""));
        assert!(run.complaints.lines().any(|line| line.starts_with(&format!("{pointer}: `"))), "{}", run.complaints);
        assert!(run.complaints.contains("stands twice"), "{}", run.complaints);
    }
}

#[test]
fn an_option_takes_the_place_of_what_the_file_says() {
    let request = format!(r#"{{"formula": {ALONE}, "mass": {{"value": 1, "unit": "kg"}}, "reference": "A17"}}"#);
    let batch = run_with_input(&["formula", "-", "--batch", "80kg", "--json"], &request).success();
    assert_eq!(serde_json::from_str::<Value>(&batch).unwrap()["mass_kg"], 80.0);
}

/// `calculate` always took such a number, this command said that `e2kg` is no unit.
#[test]
fn a_size_may_have_an_exponent() {
    let batch = run_with_input(&["formula", "-", "--batch", "1e2kg", "--json"], ALONE).success();
    assert_eq!(serde_json::from_str::<Value>(&batch).unwrap()["mass_kg"], 100.0);
}
