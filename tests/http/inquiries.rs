//! `POST /v1/inquiries`

use std::time::Duration;

use actix_web::test::TestRequest;
use actix_web::web::Data;
use serde_json::{Value, json};
use whybake::http::{AppState, Planning};

use crate::schema;
use crate::service::{Answer, diagnose, send, send_to, state};

const EXAMPLE: &str = include_str!("../../src/http/openapi/examples/inquiry_request.json");

fn request(body: impl ToString) -> TestRequest {
    let request = TestRequest::post().uri("/v1/inquiries").insert_header(("content-type", "application/json"));
    request.set_payload(body.to_string())
}

async fn inquire(body: impl ToString) -> Answer {
    send(request(body)).await
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

/// Every point of a plan.
fn points<'v>(step: &'v Value, found: &mut Vec<&'v Value>) {
    found.push(step);
    for outcome in step["outcomes"].as_array().into_iter().flatten() {
        points(&outcome["then"], found);
    }
}

#[actix_web::test]
async fn the_example_is_answered_as_the_document_says() {
    let answer = inquire(EXAMPLE).await.success();
    assert_eq!(schema::faults("Inquiries", &answer), Vec::<String>::new());
    assert_eq!(answer["reference"], json!({"lot": "A18"}));
    assert_eq!(answer["options"]["least_bits_per_minute"], 0.002);
    let shares: Vec<f64> =
        answer["inquiries"].as_array().unwrap().iter().map(|one| number(&one["find_out"]["bits_per_minute"])).collect();
    assert!(shares.len() > 20 && shares.is_sorted_by(|a, b| a >= b), "{shares:?}");
    for inquiry in answer["inquiries"].as_array().unwrap() {
        let total: f64 = inquiry["outcomes"].as_array().unwrap().iter().map(|one| number(&one["probability"])).sum();
        assert!((total - 1.0).abs() < 1e-9, "{inquiry}");
    }
}

#[actix_web::test]
async fn the_same_request_gives_the_same_bytes() {
    assert_eq!(inquire(EXAMPLE).await.body, inquire(EXAMPLE).await.body);
}

/// What an outcome is said to do is what a diagnosis says of the case with that finding.
#[actix_web::test]
async fn an_outcome_foretells_the_diagnosis() {
    let case = json!({"product": "hamburger_bun", "symptoms": [{"symptom": "hollow_under_crust"}]});
    let answer = inquire(json!({"case": case})).await.success();
    let inquiries = answer["inquiries"].as_array().unwrap();
    let outcomes = |finding: &str| {
        let inquiry = inquiries.iter().find(|one| one["find_out"]["finding"] == finding).unwrap();
        inquiry["outcomes"].as_array().unwrap().clone()
    };
    let mut hot = case.clone();
    hot["readings"] = json!({"dough_temperature": {"value": 40, "unit": "Cel"}});
    let mut gassy = case.clone();
    gassy["symptoms"].as_array_mut().unwrap().push(json!({"symptom": "gassy_dough"}));
    for (case, outcome) in
        [(hot, outcomes("dough_temperature").pop().unwrap()), (gassy, outcomes("gassy_dough").pop().unwrap())]
    {
        let diagnosis = diagnose(case.to_string()).await.success();
        let causes = ["causes", "other_causes"].map(|list| diagnosis[list].as_array().unwrap().clone()).concat();
        let probability =
            |id: &Value| number(&causes.iter().find(|cause| cause["cause"] == *id).unwrap()["probability"]);
        assert_eq!(outcome["leader"]["cause"], diagnosis["causes"][0]["cause"]);
        for change in outcome["changes"].as_array().unwrap() {
            assert!((number(&change["after"]) - probability(&change["cause"])).abs() < 1e-9, "{change}");
        }
    }
}

#[actix_web::test]
async fn a_diagnosis_tells_the_outcomes_of_what_is_next() {
    let diagnosis = diagnose(r#"{"product":"hamburger_bun","symptoms":[{"symptom":"low_volume"}]}"#).await.success();
    let next = ["next_readings", "next_questions"].map(|list| diagnosis[list].as_array().unwrap().clone()).concat();
    assert_eq!(next.len(), 10);
    for next in &next {
        let outcomes = next["outcomes"].as_array().unwrap();
        let total: f64 = outcomes.iter().map(|outcome| number(&outcome["probability"])).sum();
        assert!(outcomes.len() > 1 && (total - 1.0).abs() < 1e-9, "{next}");
        assert!(outcomes.iter().all(|outcome| (1..=3).contains(&outcome["causes"].as_array().unwrap().len())));
    }
}

#[actix_web::test]
async fn a_plan_keeps_to_its_options() {
    let case = json!({"product": "hamburger_bun", "symptoms": [{"symptom": "low_volume"}]});
    let plan = inquire(json!({"case": case, "most_minutes": 3, "depth": 2})).await.success()["plan"].clone();
    assert!(number(&plan["expected_minutes"]) <= 3.0, "{plan}");
    let (mut found, reasons) = (Vec::new(), |found: &[&Value]| -> Vec<String> {
        found.iter().filter_map(|step| step["stop"]["reason"].as_str().map(str::to_owned)).collect()
    });
    points(&plan["start"], &mut found);
    assert!(
        reasons(&found).contains(&"depth_reached".to_owned())
            || reasons(&found).contains(&"minutes_used_up".to_owned())
    );
    let lazy = inquire(json!({"case": case, "least_bits_per_minute": 5})).await.success()["plan"].clone();
    assert_eq!(lazy["start"]["stop"]["reason"], "not_worth_the_effort");
    assert_eq!((&lazy["expected_minutes"], &lazy["probability_certain"]), (&json!(0.0), &json!(0.0)));
    let hurried = inquire(json!({"case": case, "most_minutes": 0.5})).await.success()["plan"].clone();
    assert_eq!(hurried["start"]["stop"]["reason"], "minutes_used_up");
}

#[actix_web::test]
async fn every_fault_of_a_request_is_told() {
    let body = json!({"case": {"product": "hamburger_bum", "fact": {}}, "certain_enough": 1, "depth": 2.5, "dept": 3,
        "most_minutes": "long", "least_bits_per_minute": -1});
    let answer = inquire(body).await;
    assert_eq!(answer.status, 422);
    let errors = answer.json()["errors"].clone();
    let pointers: Vec<&str> =
        errors.as_array().unwrap().iter().map(|error| error["pointer"].as_str().unwrap()).collect();
    let expected = [
        "/dept",
        "/case/fact",
        "/case/product",
        "/certain_enough",
        "/most_minutes",
        "/least_bits_per_minute",
        "/depth",
    ];
    assert_eq!(pointers, expected, "{errors}");
}

#[actix_web::test]
async fn a_plan_waits_for_a_place_and_then_asks_to_come_again() {
    let full = AppState { planning: Data::new(Planning::new(0, Duration::ZERO)), ..state().clone() };
    let busy = send_to(&full, request(json!({ "case": { "product": "hamburger_bun" } }))).await;
    assert_eq!((busy.status, busy.header("retry-after")), (503, "10"));
    assert_eq!(busy.json()["type"], "/v1/problems/busy");
}

#[actix_web::test]
async fn a_request_without_a_case_is_told_what_to_give() {
    let answer = inquire(json!({"product": "hamburger_bun"})).await;
    assert_eq!(answer.status, 422);
    let errors = answer.json()["errors"].clone();
    assert_eq!(errors[1]["detail"], "`case` is missing");
    assert_eq!(errors[1]["help"], "give the case as for a diagnosis");
}
