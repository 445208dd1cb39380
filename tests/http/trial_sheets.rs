//! `POST /v1/trial_sheets`

use actix_web::test::TestRequest;
use serde_json::{Value, json};

use crate::schema;
use crate::service::{Answer, send};

const REQUEST: &str = include_str!("../../src/http/openapi/examples/trial_sheet_request.json");

async fn ask(query: &str, body: &Value) -> Answer {
    let request = TestRequest::post().uri(&format!("/v1/trial_sheets{query}"));
    send(request.insert_header(("content-type", "application/json")).set_payload(body.to_string())).await
}

fn example() -> Value {
    serde_json::from_str(REQUEST).unwrap()
}

/// 20 kg of a formula of 90.5 kg: flour 50 × 20 / 90.5 kg; salt for 1.9 % of it, less the little that flour and yeast bring.
#[actix_web::test]
async fn a_sheet_plans_the_runs_and_fits_its_schema() {
    let sheet = ask("", &example()).await.success();
    assert_eq!(schema::faults("TrialSheet", &sheet), Vec::<String>::new());
    let labels: Vec<&str> =
        sheet["runs"].as_array().unwrap().iter().map(|run| run["label"].as_str().unwrap()).collect();
    assert_eq!(labels, ["control", "A", "B"]);
    let flour = 50.0 * 20.0 / 90.5;
    let of_run = |run: usize, name: &str| {
        let lines = sheet["runs"][run]["weights"].as_array().unwrap();
        lines.iter().find(|line| line["ingredient"] == name).unwrap()["mass_kg"].as_f64().unwrap()
    };
    assert!((of_run(1, "bread_flour") - flour).abs() < 1e-9);
    assert!((of_run(0, "salt") - 1.5 * 20.0 / 90.5).abs() < 1e-9);
    let salt = of_run(1, "salt");
    assert!((0.0188 * flour..0.019 * flour).contains(&salt), "{salt}");
    assert_eq!(sheet["sample"]["pieces_each_setting"], 12, "d = 1.2 by the non-central t: 11.9");
    assert_eq!(sheet["reference"], json!({"lot": "A17"}));
}

#[actix_web::test]
async fn the_same_request_gives_the_same_bytes() {
    assert_eq!(ask("", &example()).await.body, ask("?format=json", &example()).await.body);
}

#[actix_web::test]
async fn paper_is_markdown_or_a_page_without_scripts() {
    let markdown = ask("?format=markdown", &example()).await;
    assert_eq!((markdown.status, markdown.header("content-type")), (200, "text/markdown; charset=utf-8"));
    assert!(markdown.body.starts_with(b"# Trial sheet: Hamburger bun\n"));
    let page = ask("?format=page", &example()).await;
    assert_eq!((page.status, page.header("content-type")), (200, "text/html; charset=utf-8"));
    assert!(page.header("content-security-policy").starts_with("default-src 'none'"));
    let text = String::from_utf8(page.body.to_vec()).unwrap();
    assert!(text.starts_with("<!doctype html>") && !text.contains("<script"), "{text}");
}

#[actix_web::test]
async fn unknown_formats_are_refused() {
    let answer = ask("?format=pages", &example()).await;
    answer.assert_problem(json!({
        "type": "/v1/problems/faulty-parameters", "title": "the query parameters have faults", "status": 422,
        "errors": [{"parameter": "format", "code": "unknown-name", "detail": "unknown format `pages`",
                    "help": "did you mean `page`?"}],
    }));
}

#[actix_web::test]
async fn faults_of_case_and_trial_are_told_together() {
    let mut request = example();
    request["case"]["product"] = json!("hamburger_bum");
    request["case"]["formula"]["ingredients"][1]["amount"] = json!(-1);
    request["batch"] = json!({});
    request["design"] = json!("factorials");
    let answer = ask("", &request).await;
    assert_eq!((answer.status, &answer.json()["type"]), (422, &json!("/v1/problems/faulty-trial-sheet")));
    let problem = answer.json();
    let pointers: Vec<&str> =
        problem["errors"].as_array().unwrap().iter().map(|entry| entry["pointer"].as_str().unwrap()).collect();
    assert_eq!(pointers, ["/case/product", "/case/formula/ingredients/1/amount", "/batch", "/design"]);
}

#[actix_web::test]
async fn text_that_is_no_json_is_malformed() {
    let request = TestRequest::post().uri("/v1/trial_sheets").insert_header(("content-type", "application/json"));
    let answer = send(request.set_payload("{")).await;
    assert_eq!((answer.status, &answer.json()["type"]), (400, &json!("/v1/problems/malformed-json")));
}
