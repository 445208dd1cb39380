//! `whybake intake-sheet`

use actix_web::test::{TestRequest, call_and_read_body, init_service};
use whybake::http::create_app;

use crate::program::run;
use crate::service::embedded;

#[actix_web::test]
async fn json_and_page_are_what_the_service_answers_byte_for_byte() {
    let service = init_service(create_app(&embedded(100))).await;
    for (option, query) in [("--json", ""), ("--page", "?format=page")] {
        let printed = run(&["intake-sheet", "jam", option]).success();
        let request = TestRequest::get().uri(&format!("/v1/intake_sheets/jam{query}")).to_request();
        assert_eq!(printed.as_bytes(), call_and_read_body(&service, request).await, "{option}");
    }
}

#[test]
fn the_text_tells_what_to_ask() {
    let text = run(&["intake-sheet", "hamburger_bun"]).success();
    for part in
        ["Intake sheet: Hamburger bun", "[hollow_under_crust]", "[dough_temperature]", "diets: ", "Lot or batch"]
    {
        assert!(text.contains(part), "{part}: {text}");
    }
}

#[test]
fn an_unknown_product_is_a_fault() {
    let run = run(&["intake-sheet", "hamburger_bum"]);
    assert_eq!(run.code, Some(1));
    assert_eq!(run.complaints, "unknown product `hamburger_bum` (help: did you mean `hamburger_bun`?)\n");
}
