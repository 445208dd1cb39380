//! `whybake complaint`

use actix_web::test::{TestRequest, call_and_read_body, init_service};
use serde_json::{Value, json};
use whybake::http::create_app;

use crate::program::{run, run_with_input};
use crate::service::embedded;

const TEXT: &str = "hollow under the lid, dough was at 31 °C, no open grain";

#[test]
fn a_complaint_is_told_in_words_and_drafted() {
    let text = run(&["complaint", TEXT, "--product", "hamburger_bun"]).success();
    for part in ["hollow_under_crust: Hollow under the top crust", "open_grain, not there", "dough_temperature: 31 Cel"]
    {
        assert!(text.contains(part), "{part}: {text}");
    }
    let draft = text.lines().last().unwrap();
    run_with_input(&["diagnose", "-"], draft).success();
}

#[actix_web::test]
async fn json_is_what_the_service_answers_byte_for_byte() {
    let arguments = ["complaint", "-", "--product", "hamburger_bun", "--most", "4", "--json"];
    let answer = run_with_input(&arguments, TEXT).success();
    let body = json!({"text": TEXT, "product": "hamburger_bun", "most": 4}).to_string();
    let service = init_service(create_app(&embedded(body.len()))).await;
    let request = TestRequest::post()
        .uri("/v1/complaints")
        .insert_header(("content-type", "application/json"))
        .set_payload(body)
        .to_request();
    assert_eq!(answer.as_bytes(), call_and_read_body(&service, request).await);
}

#[test]
fn without_a_product_the_possible_ones_are_named() {
    let text = run(&["complaint", "our buns have a pale crust"]).success();
    assert!(
        text.starts_with("product: not certain; name it with --product") && text.contains("hamburger_bun"),
        "{text}"
    );
    assert!(!text.contains("draft of a case"), "{text}");
    let answer: Value = serde_json::from_str(&run(&["complaint", "hello", "--json"]).success()).unwrap();
    assert_eq!(answer["not_understood"][0]["text"], "hello");
}

#[test]
fn a_danger_to_people_is_told_before_all_else() {
    let text = run(&["complaint", "piece of metal wire in bun", "--product", "hamburger_bun"]).success();
    assert!(text.starts_with("first of all\n  - Foreign matter"), "{text}");
    assert!(text.contains("(“metal wire”)\n\nproduct: hamburger_bun"), "{text}");
}

#[test]
fn every_fault_is_a_line() {
    let run = run(&["complaint", " ", "--product", "hamburger_bum", "--most", "99"]);
    assert_eq!((run.code, run.output.as_str()), (Some(1), ""));
    let expected = "\
/text: the text is empty
/product: unknown product `hamburger_bum` (help: did you mean `hamburger_bun`?)
/most: 99 is not between 1 and 50
";
    assert_eq!(run.complaints, expected);
}

#[test]
fn degrees_without_a_scale_say_what_they_can_be() {
    let text = run(&["complaint", "dough was 31 degrees, oven temperature 240 degrees", "--product", "hamburger_bun"]);
    let words = text.success().split_whitespace().collect::<Vec<_>>().join(" ");
    for part in [
        "31 Cel (“dough was 31 degrees”; the scale is not said: 31 [degF] cannot be true for it)",
        "in Cel: 240 Cel, plausible",
    ] {
        assert!(words.contains(part), "{part}: {words}");
    }
}
