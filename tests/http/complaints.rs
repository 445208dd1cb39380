//! `POST /v1/complaints`

use actix_web::test::TestRequest;
use serde_json::{Value, json};

use crate::schema;
use crate::service::{Answer, diagnose, send};

const EXAMPLE: &str = include_str!("../../src/http/openapi/examples/complaint_request.json");
const EXAMPLE_ANSWER: &str = include_str!("../../src/http/openapi/examples/complaint.json");

async fn complain(body: impl Into<String>) -> Answer {
    let request = TestRequest::post().uri("/v1/complaints").insert_header(("content-type", "application/json"));
    send(request.set_payload(body.into())).await
}

fn ids<'a>(answer: &'a Value, list: &str, id: &str, sure: bool) -> Vec<&'a str> {
    let items = answer[list].as_array().unwrap().iter();
    items.filter(|item| item["sure"] == sure).map(|item| item[id].as_str().unwrap()).collect()
}

#[actix_web::test]
async fn a_complaint_becomes_a_case() {
    let answer = complain(EXAMPLE).await.success();
    assert_eq!(schema::faults("ComplaintReading", &answer), Vec::<String>::new());
    assert_eq!(ids(&answer, "symptoms", "symptom", true), ["open_grain", "pale_crust", "hollow_under_crust"]);
    assert_eq!(answer["readings"][0]["reading"], "dough_temperature");
    assert_eq!(answer["not_understood"][0]["text"], "The driver was late");
    let draft = &answer["draft"];
    assert_eq!(
        draft["readings"],
        json!({"bake_time": {"value": 9.0, "unit": "min"}, "dough_temperature": {"value": 31.5, "unit": "Cel"}})
    );
    assert!(
        draft["symptoms"].as_array().unwrap().contains(&json!({"symptom": "open_grain", "present": false})),
        "{draft}"
    );
    assert!(
        draft["symptoms"].as_array().unwrap().contains(&json!({"symptom": "pale_crust", "certainty": 0.7})),
        "{draft}"
    );
    let diagnosis = diagnose(draft.to_string()).await.success();
    assert_eq!(diagnosis["product"], "hamburger_bun");
}

/// Takes the scores out: they hang on every synonym of the rules.
fn without_scores(value: &Value) -> Value {
    match value {
        Value::Object(members) => {
            let kept = members.iter().filter(|(name, _)| *name != "score");
            kept.map(|(name, value)| (name.clone(), without_scores(value))).collect()
        }
        Value::Array(items) => items.iter().map(without_scores).collect(),
        other => other.clone(),
    }
}

#[actix_web::test]
async fn a_danger_to_people_comes_first() {
    let body = json!({"product": "hamburger_bun", "text": "pale crust, piece of metal wire in bun"});
    let answer = complain(body.to_string()).await;
    let text = String::from_utf8(answer.body.to_vec()).unwrap();
    assert!(text.starts_with("{\"cautions\":"), "{text}");
    let answer = answer.success();
    assert_eq!(schema::faults("ComplaintReading", &answer), Vec::<String>::new());
    let caution = &answer["cautions"][0];
    assert_eq!(caution["kind"], "foreign_matter");
    assert_eq!(caution["quotes"], json!([{"text": "metal wire", "start": 21, "end": 31}]));
    assert_eq!(answer["draft"]["symptoms"], json!([{"symptom": "pale_crust"}]));
    let other = complain(json!({"product": "hamburger_bun", "text": "pale crust"}).to_string()).await.success();
    assert!(other.get("cautions").is_none(), "{other}");
}

/// The document shows part of the lists.
#[actix_web::test]
async fn the_example_of_the_document_is_what_the_service_answers() {
    let shown: Value = serde_json::from_str(EXAMPLE_ANSWER).unwrap();
    assert_eq!(schema::faults("ComplaintReading", &shown), Vec::<String>::new());
    let (answer, shown) = (without_scores(&complain(EXAMPLE).await.success()), without_scores(&shown));
    for (member, value) in shown.as_object().unwrap() {
        match value.as_array() {
            Some(items) => assert_eq!(items[..], answer[member].as_array().unwrap()[..items.len()], "{member}"),
            None => assert_eq!(value, &answer[member], "{member}"),
        }
    }
}

#[actix_web::test]
async fn the_words_are_quoted_with_their_places() {
    let answer =
        complain(json!({"product": "white_pan_bread", "text": "Größe passt; pale crust"}).to_string()).await.success();
    let quote = &answer["symptoms"][0]["quotes"][0];
    assert_eq!(quote, &json!({"text": "pale crust", "start": 13, "end": 23}));
    assert_eq!(answer["not_understood"][0], json!({"text": "Größe passt", "start": 0, "end": 11}));
}

#[actix_web::test]
async fn the_product_is_found_in_the_text_or_left_open() {
    let named = complain(json!({"text": "the hamburger bun is pale"}).to_string()).await.success();
    assert_eq!((&named["product"], &named["draft"]["product"]), (&json!("hamburger_bun"), &json!("hamburger_bun")));
    let open = complain(json!({"text": "buns with a pale crust"}).to_string()).await.success();
    assert_eq!(schema::faults("ComplaintReading", &open), Vec::<String>::new());
    assert!(open.get("product").is_none() && open.get("draft").is_none(), "{open}");
    let possible: Vec<&str> =
        open["products"].as_array().unwrap().iter().map(|one| one["product"].as_str().unwrap()).collect();
    assert!(possible.contains(&"hamburger_bun") && possible.contains(&"hot_dog_bun"), "{possible:?}");
    assert!(ids(&open, "symptoms", "symptom", true).contains(&"pale_crust"), "{open}");
}

#[actix_web::test]
async fn what_contradicts_itself_is_said_and_not_drafted() {
    let text = "pale crust on some, crust too dark on others";
    let answer = complain(json!({"product": "white_pan_bread", "text": text}).to_string()).await.success();
    let mut ids: Vec<&str> =
        answer["contradictions"][0]["ids"].as_array().unwrap().iter().map(|id| id.as_str().unwrap()).collect();
    ids.sort_unstable();
    assert_eq!(ids, ["dark_crust", "pale_crust"]);
    assert!(answer["draft"].get("symptoms").is_none(), "{}", answer["draft"]);
    let twice = json!({"product": "white_pan_bread", "text": "dough temperature 26 °C, later dough temperature 31 °C"});
    let answer = complain(twice.to_string()).await.success();
    assert_eq!(answer["contradictions"][0]["ids"], json!(["dough_temperature"]));
    assert!(answer["draft"].get("readings").is_none(), "{}", answer["draft"]);
}

#[actix_web::test]
async fn values_without_a_name_or_sense_are_told_apart() {
    let text = "20 minutes, dough temperature 310 °C, proof time 50-60 min";
    let answer = complain(json!({"product": "hamburger_bun", "text": text}).to_string()).await.success();
    assert_eq!(answer["readings"], json!([]));
    let values = answer["values"].as_array().unwrap();
    let reasons: Vec<&str> = values.iter().map(|value| value["reason"].as_str().unwrap()).collect();
    assert!(reasons[0].contains("do not tell") && reasons[1].contains("cannot be true"), "{reasons:?}");
    assert!(reasons[2].contains("range"), "{reasons:?}");
    assert_eq!(values[1]["suggestions"][0]["reading"], "dough_temperature");
}

#[actix_web::test]
async fn every_fault_is_told_at_once() {
    let body = json!({"text": "  ", "product": "hamburger_bum", "most": 0, "language": "en"});
    complain(body.to_string()).await.assert_problem(json!({
        "type": "/v1/problems/faulty-complaint",
        "title": "the request about the complaint has faults",
        "status": 422,
        "errors": [
            {"pointer": "/language", "code": "unknown-member", "detail": "unknown member `language`",
             "help": "the members are `text`, `product`, `most`"},
            {"pointer": "/text", "code": "missing", "detail": "the text is empty"},
            {"pointer": "/product", "code": "unknown-name", "detail": "unknown product `hamburger_bum`",
             "help": "did you mean `hamburger_bun`?"},
            {"pointer": "/most", "code": "out-of-range", "detail": "0 is not between 1 and 50"}
        ]
    }));
    let long = complain(json!({"text": "a".repeat(4001)}).to_string()).await;
    assert_eq!(long.json()["errors"][0]["detail"], "the text has 4001 characters, at most 4000 are read");
    assert_eq!(complain("{").await.json()["type"], "/v1/problems/malformed-json");
    assert_eq!(complain(json!({"most": 3}).to_string()).await.json()["errors"][0]["pointer"], "");
}

#[actix_web::test]
async fn no_more_symptoms_are_named_than_wanted() {
    let body = json!({"text": "pale crust, no holes, sour, sticky crumb", "product": "white_pan_bread", "most": 2});
    assert_eq!(complain(body.to_string()).await.success()["symptoms"].as_array().unwrap().len(), 2);
}

/// Odd text is read, too: no place of it is between two bytes of a character.
#[actix_web::test]
async fn odd_text_is_no_danger() {
    for text in [
        "🥐🥐 pale 🥐 crust",
        "１２ °C",
        "-",
        "31,5,2 °C . 4",
        "𝟛𝟙 °C",
        "a\u{301}\u{301} -18 °C -",
        "%%%°°° 5 %%",
        "''''’’’ don’’t",
    ] {
        complain(json!({"text": text}).to_string()).await.success();
    }
    let hostile = "pael hollwo lidd crsut ".repeat(170);
    complain(json!({"text": hostile, "product": "white_pan_bread"}).to_string()).await.success();
}
