//! `POST /v1/replays`

use actix_web::test::TestRequest;
use serde_json::{Value, json};

use crate::schema;
use crate::service::{Answer, diagnose, send};

const CASE: &str = include_str!("../../src/http/openapi/examples/case.json");

async fn replay(record: String) -> Answer {
    let request = TestRequest::post().uri("/v1/replays").insert_header(("content-type", "application/json"));
    send(request.set_payload(record)).await
}

/// What a caller stores who keeps question and answer.
async fn record() -> String {
    let answer = diagnose(CASE).await;
    let answer = String::from_utf8(answer.body.to_vec()).unwrap();
    format!("{{\"lot\": \"A17\", \"case\": {CASE}, \"diagnosis\": {answer}}}")
}

/// The record is longer than a case may be.
#[actix_web::test]
async fn a_stored_answer_is_the_same_byte_for_byte() {
    let record = record().await;
    assert!(record.len() > crate::service::BODY_LIMIT, "{}", record.len());
    let answer = replay(record).await.success();
    assert_eq!(schema::faults("Replay", &answer), Vec::<String>::new());
    assert_eq!(
        (&answer["same"], &answer["same_rules"], answer.get("same_program")),
        (&json!(true), &json!(true), None)
    );
}

#[actix_web::test]
async fn a_changed_answer_is_told_with_its_place() {
    let mut record: Value = serde_json::from_str(&record().await).unwrap();
    record["diagnosis"]["causes"][0]["probability"] = json!(0.5);
    record["diagnosis"]["rules"]["digest"] = json!("sha256:0");
    let answer = replay(record.to_string()).await.success();
    assert_eq!(schema::faults("Replay", &answer), Vec::<String>::new());
    assert_eq!((&answer["same"], &answer["same_content"]), (&json!(false), &json!(false)));
    assert_eq!(answer["ranking"]["largest_change"]["before"], 0.5);
    let places: Vec<&str> = answer["places"].as_array().unwrap().iter().map(|own| own.as_str().unwrap()).collect();
    assert_eq!(places.len(), 2, "{places:?}");
    assert!(places.contains(&"/rules/digest") && places.contains(&"/causes/0/probability"), "{places:?}");
}

#[actix_web::test]
async fn every_fault_of_a_record_is_told() {
    replay("{\"case\": 1}".to_owned()).await.assert_problem(json!({
        "type": "/v1/problems/faulty-record", "title": "the record has faults", "status": 422,
        "errors": [
            {"pointer": "/case", "code": "wrong-type", "detail": "an object is wanted, this is a number"},
            {"pointer": "", "code": "missing", "detail": "`diagnosis` is missing",
             "help": "a record holds `case` and `diagnosis` as they were"},
        ],
    }));
}
