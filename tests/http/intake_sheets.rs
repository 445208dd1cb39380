//! `GET /v1/intake_sheets/{product}`

use std::collections::BTreeSet;

use serde_json::{Value, json};

use crate::schema;
use crate::service::get;

fn rates(items: &Value) -> Vec<f64> {
    let items = items.as_array().unwrap().iter();
    items
        .map(|item| item["information_bits"].as_f64().unwrap() / item["effort_minutes"].as_f64().unwrap().max(1.0))
        .collect()
}

#[actix_web::test]
async fn the_most_telling_question_stands_first() {
    let sheet = get("/v1/intake_sheets/hamburger_bun").await.success();
    assert_eq!(schema::faults("IntakeSheet", &sheet), Vec::<String>::new());
    for list in ["readings", "facts"] {
        let rates = rates(&sheet[list]);
        assert!(rates.len() >= 5 && rates.is_sorted_by(|a, b| a >= b), "{list}: {rates:?}");
        assert!(rates.iter().all(|rate| *rate > 0.0), "{list}: {rates:?}");
    }
    assert_eq!(sheet["readings"][0]["reading"], "dough_temperature");
    assert!(sheet["formula"]["gives"].as_array().unwrap().iter().any(|one| one["reading"] == "salt_on_flour"));
}

/// Nothing that can be seen on the product is left out, and nothing stands twice.
#[actix_web::test]
async fn every_symptom_of_the_product_is_there_once() {
    for product in ["white_pan_bread", "wire_cut_cookie", "jam"] {
        let sheet = get(&format!("/v1/intake_sheets/{product}")).await.success();
        let listed = get(&format!("/v1/symptoms?product={product}")).await.success();
        let of_parts =
            sheet["symptoms"].as_array().unwrap().iter().flat_map(|part| part["symptoms"].as_array().unwrap());
        let others = sheet["other_symptoms"].as_array().unwrap().iter().map(|one| one["id"].as_str().unwrap());
        let told: Vec<&str> = of_parts.map(|one| one["symptom"].as_str().unwrap()).chain(others).collect();
        let expected: BTreeSet<&str> =
            listed["symptoms"].as_array().unwrap().iter().map(|one| one["id"].as_str().unwrap()).collect();
        assert_eq!((told.len(), told.into_iter().collect::<BTreeSet<_>>()), (expected.len(), expected), "{product}");
    }
}

#[actix_web::test]
async fn the_page_stands_alone() {
    let answer = get("/v1/intake_sheets/filled_hand_pie?format=page").await;
    assert_eq!((answer.status, answer.header("content-type")), (200, "text/html; charset=utf-8"));
    assert!(answer.header("content-security-policy").starts_with("default-src 'none'"));
    let page = std::str::from_utf8(&answer.body).unwrap();
    for absent in ["<script", "http:", "https:", "src=", "href=", "url(", "@import"] {
        assert!(!page.contains(absent), "{absent}");
    }
    assert!(page.contains("@media print") && page.contains("size: A4") && page.contains("<html lang=\"en\">"));
}

/// Every field has a name for those who do not see it: a label about it, or one of its own.
#[actix_web::test]
async fn every_field_of_the_page_has_a_label() {
    let answer = get("/v1/intake_sheets/jam?format=page").await;
    let page = std::str::from_utf8(&answer.body).unwrap();
    let fields: Vec<(usize, &str)> = page.match_indices("<input").chain(page.match_indices("<textarea")).collect();
    assert!(fields.len() > 100, "{}", fields.len());
    for (at, _) in fields {
        let tag = page[at..].split('>').next().unwrap();
        let before = &page[..at];
        let in_label =
            before.rfind("<label").is_some_and(|open| before.rfind("</label").is_none_or(|close| close < open));
        assert!(in_label || tag.contains("aria-label"), "{tag}");
    }
}

#[actix_web::test]
async fn what_is_unknown_is_told() {
    get("/v1/intake_sheets/hamburger_bum").await.assert_problem(json!({
        "type": "/v1/problems/unknown-item",
        "title": "there is no such item",
        "status": 404,
        "detail": "unknown product `hamburger_bum`; did you mean `hamburger_bun`?"
    }));
    let answer = get("/v1/intake_sheets/jam?format=pdf").await;
    assert_eq!(answer.status, 422);
    assert_eq!(answer.json()["errors"][0]["help"], "the formats are `json` and `page`");
    assert_eq!(get("/v1/intake_sheets/jam?fromat=page").await.json()["errors"][0]["help"], "did you mean `format`?");
}
