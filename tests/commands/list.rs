//! `whybake list`

use actix_web::test::{TestRequest, call_and_read_body, init_service};
use whybake::http::create_app;

use crate::program::run;
use crate::service::embedded;

#[actix_web::test]
async fn json_is_what_the_service_answers_byte_for_byte() {
    let service = init_service(create_app(&embedded(100))).await;
    for kind in ["products", "symptoms", "readings", "facts", "ingredients"] {
        let request = TestRequest::get().uri(&format!("/v1/{kind}")).to_request();
        let listed = run(&["list", kind, "--json"]).success();
        assert_eq!(listed.as_bytes(), call_and_read_body(&service, request).await, "{kind}");
    }
    let request = TestRequest::get().uri("/v1/readings?product=jam").to_request();
    let listed = run(&["list", "readings", "--product", "jam", "--json"]).success();
    assert_eq!(listed.as_bytes(), call_and_read_body(&service, request).await);
}

#[test]
fn a_table_has_the_ids_first() {
    let symptoms = run(&["list", "symptoms", "--product", "hamburger_bun"]).success();
    assert!(symptoms.lines().any(|line| {
        let mut columns = line.split_whitespace();
        columns.next() == Some("hollow_under_crust") && columns.next() == Some("crust")
    }));
    assert!(!symptoms.contains("filling_cloudy"), "{symptoms}");
    assert!(run(&["list", "ingredients"]).success().contains("fresh_yeast"));
}

#[test]
fn what_cannot_be_listed_is_told() {
    let unknown = run(&["list", "symptoms", "--product", "hamburger_bum"]);
    assert_eq!((unknown.code, unknown.complaints.contains("did you mean `hamburger_bun`?")), (Some(1), true));
    assert_eq!(run(&["list", "ingredients", "--product", "jam"]).code, Some(2));
    assert_eq!(run(&["list", "causes"]).code, Some(2));
}
