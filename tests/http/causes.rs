//! `GET /v1/causes` and `GET /v1/causes/{id}`

use serde_json::{Value, json};

use crate::schema;
use crate::service::get;

async fn listed(uri: &str) -> Vec<Value> {
    let list = get(uri).await.success();
    assert_eq!(schema::faults("CauseList", &list), Vec::<String>::new());
    list["causes"].as_array().unwrap().clone()
}

#[actix_web::test]
async fn causes_of_a_product_have_a_prior() {
    let causes = listed("/v1/causes?product=hamburger_bun").await;
    assert!(!causes.is_empty());
    for cause in causes {
        let prior = cause["prior"].as_f64().unwrap();
        assert!(0.0 < prior && prior < 1.0, "{cause}");
    }
}

#[actix_web::test]
async fn without_a_product_there_are_no_priors() {
    assert!(listed("/v1/causes").await.iter().all(|cause| cause["prior"] == Value::Null));
}

#[actix_web::test]
async fn every_listed_cause_can_be_shown() {
    for listed in listed("/v1/causes?product=hamburger_bun").await {
        let id = listed["id"].as_str().unwrap();
        let cause = get(&format!("/v1/causes/{id}")).await.success();
        assert_eq!(schema::faults("CauseRule", &cause), Vec::<String>::new());
        assert_eq!(cause["title"], listed["title"]);
        let products = cause["products"].as_array().unwrap();
        let bun = products.iter().find(|product| product["product"] == "hamburger_bun").unwrap();
        assert_eq!(bun["prior"], listed["prior"]);
        assert_ne!(cause["sources"], json!([]), "{id}");
    }
}

#[actix_web::test]
async fn an_unknown_cause_is_told_with_a_suggestion() {
    let known = listed("/v1/causes").await[0]["id"].as_str().unwrap().to_owned();
    let misspelt = format!("{known}x");
    get(&format!("/v1/causes/{misspelt}")).await.assert_problem(json!({
        "type": "/v1/problems/unknown-item",
        "title": "there is no such item",
        "status": 404,
        "detail": format!("unknown cause `{misspelt}`; did you mean `{known}`?")
    }));
}

#[actix_web::test]
async fn an_id_that_is_no_text_is_an_unknown_cause() {
    assert_eq!(get("/v1/causes/%FF%00").await.json()["type"], "/v1/problems/unknown-item");
}
