//! `POST /v1/what_if`

use actix_web::test::TestRequest;
use serde_json::{Value, json};

use crate::schema;
use crate::service::{Answer, send};

const EXAMPLE: &str = include_str!("../../src/http/openapi/examples/what_if_request.json");

async fn ask(body: &str) -> Answer {
    let request = TestRequest::post().uri("/v1/what_if").insert_header(("content-type", "application/json"));
    send(request.set_payload(body.to_owned())).await
}

#[actix_web::test]
async fn both_diagnoses_come_side_by_side() {
    let answer = ask(EXAMPLE).await.success();
    assert_eq!(schema::faults("WhatIf", &answer), Vec::<String>::new());
    assert_eq!(schema::faults("WhatIfRequest", &serde_json::from_str(EXAMPLE).unwrap()), Vec::<String>::new());
    assert_eq!(answer["reference"], json!({ "lot": "A17" }));
    assert_eq!(answer["applied"][0]["changes"], json!({ "ingredient": "water", "how": "adds" }));
    let warm = answer["causes"].as_array().unwrap().iter().find(|cause| cause["cause"] == "dough_too_warm").unwrap();
    assert!(warm["change"].as_f64().unwrap() < -0.5, "{warm}");
}

#[actix_web::test]
async fn the_example_of_the_contract_is_what_the_service_answers() {
    let answer = ask(EXAMPLE).await.success();
    let example: Value = serde_json::from_str(include_str!("../../src/http/openapi/examples/what_if.json")).unwrap();
    for member in ["product", "reference", "applied", "not_applied", "computed"] {
        assert_eq!(answer[member], example[member], "{member}");
    }
    for side in ["before", "after"] {
        assert_eq!(answer["leader"][side]["cause"], example["leader"][side]["cause"], "{side}");
    }
}

#[actix_web::test]
async fn every_fault_is_told_with_its_place() {
    let body = json!({ "case": { "product": "hamburger_bum" }, "changes": { "actions": ["colder_water"] } });
    let problem = ask(&body.to_string()).await;
    assert_eq!(problem.status, 422);
    let problem = problem.json();
    assert_eq!(problem["type"], "/v1/problems/faulty-case");
    let pointers: Vec<&Value> = problem["errors"].as_array().unwrap().iter().map(|error| &error["pointer"]).collect();
    assert_eq!(pointers, ["/case/product", "/changes/actions/0"]);
    let problem = ask(&json!({ "case": { "product": "hamburger_bun" } }).to_string()).await;
    assert_eq!(problem.status, 422);
    let problem = problem.json();
    assert_eq!(problem["errors"][0]["detail"], "`changes` is missing");
}

#[actix_web::test]
async fn one_symptom_too_many_is_told_where_it_is_added() {
    let sixteen = [
        "dense_grain",
        "open_grain",
        "large_holes",
        "streaked_crumb",
        "cores_and_seams",
        "crumbly_crumb",
        "gummy_crumb",
        "grey_crumb",
        "tough_crumb",
        "weak_sidewalls",
        "dry_crumb",
        "crushed_when_sliced",
        "pale_crust",
        "dark_crust",
        "uneven_crust_colour",
        "pale_sides",
    ];
    let symptoms: Vec<Value> = sixteen.iter().map(|id| json!({ "symptom": id, "certainty": 0.4 })).collect();
    let body = json!({ "case": { "product": "hamburger_bun", "symptoms": symptoms },
        "changes": { "symptoms": [{ "symptom": "thick_crust" }] } });
    let problem = ask(&body.to_string()).await;
    assert_eq!(problem.status, 422);
    assert_eq!(problem.json()["errors"][0]["pointer"], "/changes/symptoms", "{}", problem.json());
}
