//! `GET /v1/readings`

use serde_json::Value;

use crate::schema;
use crate::service::{get, item};

#[actix_web::test]
async fn readings_of_a_product_tell_unit_range_window_and_method() {
    let list = get("/v1/readings?product=hamburger_bun").await.success();
    assert_eq!(schema::faults("ReadingList", &list), Vec::<String>::new());
    let reading = item(&list["readings"], "dough_temperature");
    assert_eq!(reading["unit"], "Cel");
    assert_ne!(reading["method"], "");
    let (window, plausible) = (&reading["window"], &reading["plausible"]);
    let ascending = [&plausible["low"], &window["low"], &window["target"], &window["high"], &plausible["high"]];
    let ascending: Vec<f64> = ascending.iter().map(|value| value.as_f64().unwrap()).collect();
    assert!(ascending.is_sorted_by(|a, b| a < b), "{ascending:?}");
}

#[actix_web::test]
async fn without_a_product_there_are_no_windows() {
    let list = get("/v1/readings").await.success();
    let readings = list["readings"].as_array().unwrap();
    assert!(readings.iter().all(|reading| reading["window"] == Value::Null));
}

#[actix_web::test]
async fn the_other_words_for_a_reading_are_listed() {
    for list in ["/v1/readings", "/v1/readings?product=hamburger_bun"] {
        let list = get(list).await.success();
        let synonyms = item(&list["readings"], "proof_humidity")["synonyms"].as_array().unwrap().clone();
        assert!(synonyms.iter().any(|synonym| synonym == "proofer humidity"), "{synonyms:?}");
    }
}
