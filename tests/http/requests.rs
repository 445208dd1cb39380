//! What holds for every route that takes a case in a request.

use actix_web::test::TestRequest;
use serde_json::{Value, json};

use crate::service::{Answer, diagnose, send};

const CASE: &str = include_str!("../../src/http/openapi/examples/case.json");

async fn ask(path: &str, body: impl Into<String>) -> Answer {
    let request = TestRequest::post().uri(path).insert_header(("content-type", "application/json"));
    send(request.set_payload(body.into())).await
}

/// A case that every route takes.
fn case() -> Value {
    json!({"product": "hamburger_bun", "symptoms": [{"symptom": "hollow_under_crust"}],
        "formula": {"ingredients": [{"ingredient": "bread_flour", "amount": 50, "unit": "kg"},
            {"ingredient": "water", "amount": 29, "unit": "kg"}]}})
}

/// Routes that take a request with a case in it.
fn requests(case: &Value) -> [(&'static str, Value); 3] {
    [
        ("/v1/inquiries", json!({"case": case, "depth": 1})),
        ("/v1/what_if", json!({"case": case, "changes": {"symptoms": [{"symptom": "pale_crust"}]}})),
        ("/v1/trial_sheets", json!({"case": case, "batch": {"mass": {"value": 20, "unit": "kg"}}})),
    ]
}

/// Each route once had a rule of its own, and one dropped a reference that is `null`.
#[actix_web::test]
async fn the_reference_is_that_of_the_request_else_that_of_the_case() {
    for (own, of_case, expected) in [
        (None, None, None),
        (None, Some(json!("case")), Some(json!("case"))),
        (Some(json!("request")), None, Some(json!("request"))),
        (Some(json!("request")), Some(json!("case")), Some(json!("request"))),
        (None, Some(Value::Null), Some(Value::Null)),
        (Some(Value::Null), Some(json!("case")), Some(Value::Null)),
    ] {
        let mut case = case();
        if let Some(of_case) = of_case {
            case["reference"] = of_case;
        }
        for (path, mut request) in requests(&case) {
            if let Some(own) = &own {
                request["reference"] = own.clone();
            }
            let answer = ask(path, request.to_string()).await.success();
            assert_eq!(answer.get("reference"), expected.as_ref(), "{path}: {own:?} {case}");
        }
        let diagnosis = diagnose(case.to_string()).await.success();
        assert_eq!(diagnosis.get("reference"), case.get("reference"));
    }
}

/// Some editors write it, and two routes once refused it.
#[actix_web::test]
async fn a_byte_order_mark_is_passed_over() {
    let answer = String::from_utf8(diagnose(CASE).await.body.to_vec()).unwrap();
    let record = format!("{{\"case\": {CASE}, \"diagnosis\": {answer}}}");
    let requests = requests(&case()).map(|(path, request)| (path, request.to_string()));
    for (path, body) in requests.into_iter().chain([("/v1/diagnoses", CASE.to_owned()), ("/v1/replays", record)]) {
        let (plain, marked) = (ask(path, body.clone()).await, ask(path, format!("\u{feff}{body}")).await);
        assert_eq!((plain.status, plain.body), (200, marked.body), "{path}");
    }
}
