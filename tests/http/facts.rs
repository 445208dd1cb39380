//! `GET /v1/facts`

use crate::schema;
use crate::service::{get, item};

#[actix_web::test]
async fn facts_of_a_product_come_with_the_question_to_ask() {
    let list = get("/v1/facts?product=hamburger_bun").await.success();
    assert_eq!(schema::faults("FactList", &list), Vec::<String>::new());
    let fact = item(&list["facts"], "dough_waits_before_divider");
    assert!(fact["description"].as_str().unwrap().ends_with('?'));
}

#[actix_web::test]
async fn an_unknown_product_is_a_problem() {
    assert_eq!(get("/v1/facts?product=").await.status, 422);
}
