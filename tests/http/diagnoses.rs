//! `POST /v1/diagnoses`

use actix_web::test::TestRequest;
use serde_json::{Value, json};

use crate::schema;
use crate::service::{BODY_LIMIT, ask, diagnose, post, send};

const EXAMPLE: &str = include_str!("../../src/http/openapi/examples/case.json");

#[actix_web::test]
async fn the_example_case_is_diagnosed() {
    let diagnosis = diagnose(EXAMPLE).await.success();
    assert_eq!(schema::faults("Diagnosis", &diagnosis), Vec::<String>::new());
    assert_eq!(diagnosis["product"], "hamburger_bun");
    assert_eq!(diagnosis["reference"], json!({"lot": "A17", "line": "2"}));
    let causes = diagnosis["causes"].as_array().unwrap();
    assert!(!causes.is_empty());
    let probabilities: Vec<f64> = causes.iter().map(|cause| cause["probability"].as_f64().unwrap()).collect();
    assert!(probabilities.is_sorted_by(|a, b| a >= b), "{probabilities:?}");
    assert!(probabilities.iter().all(|probability| (0.0..=1.0).contains(probability)), "{probabilities:?}");
}

#[actix_web::test]
async fn the_answer_names_the_rules_in_force() {
    let diagnosis = diagnose(EXAMPLE).await.success();
    let rules = crate::service::get("/v1/rules").await.success();
    assert_eq!(diagnosis["rules"]["digest"], rules["digest"]);
    assert_eq!(diagnosis["rules"]["version"], rules["version"]);
}

#[actix_web::test]
async fn the_same_case_gives_the_same_bytes() {
    assert_eq!(diagnose(EXAMPLE).await.body, diagnose(EXAMPLE).await.body);
}

#[actix_web::test]
async fn the_order_of_members_does_not_matter() {
    let turned = r#"{"symptoms":[{"present":true,"symptom":"open_grain"}],"product":"hamburger_bun"}"#;
    let straight = r#"{"product":"hamburger_bun","symptoms":[{"symptom":"open_grain"}]}"#;
    assert_eq!(diagnose(turned).await.body, diagnose(straight).await.body);
}

#[actix_web::test]
async fn a_product_alone_is_a_case() {
    diagnose(r#"{"product":"hamburger_bun"}"#).await.success();
}

#[actix_web::test]
async fn the_reference_comes_back_byte_for_byte() {
    let case = r#"{"product":"hamburger_bun","reference":{"lot" : 12345678901234567890123, "n":1.10}}"#;
    let body = diagnose(case).await.body;
    let body = std::str::from_utf8(&body).unwrap();
    assert!(body.contains(r#""reference":{"lot" : 12345678901234567890123, "n":1.10}"#), "{body}");
}

#[actix_web::test]
async fn every_fault_of_a_case_is_told() {
    let case = json!({
        "product": "hamburger_bum",
        "symptom": [],
        "symptoms": [{"symptom": "open_grain", "certainty": 2}, {"present": true}],
        "readings": {"dough_temperature": {"value": "warm", "unit": "Cel"}},
        "facts": {"dough_waits_before_divider": null},
        "formula": {"ingredients": [{"ingredient": "bread_flour", "amount": 1, "unit": "kg"},
                                    {"ingredient": "water", "amount": 60, "unit": "%"}]}
    });
    diagnose(case.to_string()).await.assert_problem(json!({
        "type": "/v1/problems/faulty-case",
        "title": "the case has faults",
        "status": 422,
        "errors": [
            {"pointer": "/symptom", "code": "unknown-member", "detail": "unknown member `symptom`",
             "help": "did you mean `symptoms`?"},
            {"pointer": "/product", "code": "unknown-name", "detail": "unknown product `hamburger_bum`",
             "help": "did you mean `hamburger_bun`?"},
            {"pointer": "/symptoms/0/certainty", "code": "out-of-range", "detail": "2 is not between 0 and 1"},
            {"pointer": "/symptoms/1", "code": "missing", "detail": "`symptom` is missing"},
            {"pointer": "/readings/dough_temperature/value", "code": "wrong-type",
             "detail": "a number is wanted, this is a string"},
            {"pointer": "/facts/dough_waits_before_divider", "code": "wrong-type",
             "detail": "`true` or `false` is wanted, this is null"},
            {"pointer": "/formula/ingredients", "code": "contradiction",
             "detail": "masses and percentages are mixed",
             "help": "give every amount as a mass, or every amount in % on flour"}
        ]
    }));
}

#[actix_web::test]
async fn units_must_be_of_the_readings_kind() {
    let case = json!({"product": "hamburger_bun", "readings": {"dough_temperature": {"value": 3, "unit": "kg"}}});
    let answer = diagnose(case.to_string()).await;
    assert_eq!(answer.status, 422);
    let error = &answer.json()["errors"][0];
    assert_eq!(error["pointer"], "/readings/dough_temperature/unit");
    assert_eq!(error["code"], "wrong-kind-of-unit");
}

#[actix_web::test]
async fn malformed_json_is_told_with_its_place() {
    diagnose(r#"{"product" "hamburger_bun"}"#).await.assert_problem(json!({
        "type": "/v1/problems/malformed-json",
        "title": "the body is not JSON",
        "status": 400,
        "detail": "expected `:` at line 1 column 12"
    }));
}

#[actix_web::test]
async fn an_empty_body_is_malformed() {
    assert_eq!(diagnose("").await.json()["type"], "/v1/problems/malformed-json");
}

#[actix_web::test]
async fn deep_nesting_is_refused() {
    let answer = diagnose("[".repeat(BODY_LIMIT)).await;
    assert_eq!(answer.status, 400);
    assert_eq!(answer.json()["type"], "/v1/problems/malformed-json");
}

#[actix_web::test]
async fn json_may_name_its_charset() {
    let answer = send(post("application/json; charset=utf-8", r#"{"product":"hamburger_bun"}"#)).await;
    answer.success();
}

#[actix_web::test]
async fn other_media_types_are_refused() {
    let answer = send(post("text/plain", r#"{"product":"hamburger_bun"}"#)).await;
    answer.assert_problem(unsupported("the body is `text/plain`, not `application/json`"));
    assert_eq!(answer.header("accept"), "application/json");
}

#[actix_web::test]
async fn a_body_without_media_type_is_refused() {
    let answer = send(TestRequest::post().uri("/v1/diagnoses").set_payload("{}")).await;
    answer.assert_problem(unsupported("the request has no `Content-Type`; it must be `application/json`"));
}

#[actix_web::test]
async fn compressed_bodies_are_refused() {
    let answer = send(post("application/json", "{}").insert_header(("content-encoding", "gzip"))).await;
    answer.assert_problem(unsupported("the body is coded as `gzip`; send it as it is"));
    assert_eq!(answer.header("accept-encoding"), "identity");
}

fn unsupported(detail: &str) -> Value {
    json!({
        "type": "/v1/problems/unsupported-media-type",
        "title": "the body is not JSON text in UTF-8",
        "status": 415,
        "detail": detail
    })
}

#[actix_web::test]
async fn a_body_at_the_limit_is_read_and_one_byte_more_is_not() {
    let case = r#"{"product":"hamburger_bun"}"#;
    let at_limit = format!("{case}{}", " ".repeat(BODY_LIMIT - case.len()));
    diagnose(at_limit.clone()).await.success();
    diagnose(at_limit + " ").await.assert_problem(json!({
        "type": "/v1/problems/body-too-large",
        "title": "the body is too large",
        "status": 413,
        "detail": "the body is longer than 20000 bytes"
    }));
}

#[actix_web::test]
async fn a_promised_length_over_the_limit_is_refused_unread() {
    let answer = send(post("application/json", "{}").insert_header(("content-length", "20001"))).await;
    assert_eq!(answer.status, 413);
}

#[actix_web::test]
async fn query_parameters_are_refused() {
    let request = post("application/json", EXAMPLE).uri("/v1/diagnoses?verbose=1");
    send(request).await.assert_problem(json!({
        "type": "/v1/problems/faulty-parameters",
        "title": "the query parameters have faults",
        "status": 422,
        "errors": [{"parameter": "verbose", "code": "unknown-parameter", "detail": "unknown parameter `verbose`",
                    "help": "this route takes no parameters"}]
    }));
}

#[actix_web::test]
async fn other_methods_are_told_what_is_allowed() {
    let answer = ask(actix_web::http::Method::GET, "/v1/diagnoses").await;
    answer.assert_problem(json!({
        "type": "/v1/problems/method-not-allowed",
        "title": "the method is not allowed here",
        "status": 405,
        "detail": "allowed is POST"
    }));
    assert_eq!(answer.header("allow"), "POST");
}
