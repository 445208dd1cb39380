//! `GET /v1/products`

use serde_json::json;

use crate::schema;
use crate::service::{get, item};

#[actix_web::test]
async fn products_are_listed_with_their_family() {
    let list = get("/v1/products").await.success();
    assert_eq!(schema::faults("ProductList", &list), Vec::<String>::new());
    let bun = item(&list["products"], "hamburger_bun");
    assert_eq!(bun["title"], "Hamburger bun");
    assert_eq!(bun["family"]["id"], "soft_rolls");
}

#[actix_web::test]
async fn the_other_words_for_a_product_are_listed() {
    let list = get("/v1/products").await.success();
    let synonyms = item(&list["products"], "hamburger_bun")["synonyms"].as_array().unwrap();
    assert!(synonyms.iter().any(|synonym| synonym == "burger bun"), "{synonyms:?}");
}

#[actix_web::test]
async fn parameters_are_refused() {
    get("/v1/products?family=soft_rolls").await.assert_problem(json!({
        "type": "/v1/problems/faulty-parameters",
        "title": "the query parameters have faults",
        "status": 422,
        "errors": [{"parameter": "family", "code": "unknown-parameter", "detail": "unknown parameter `family`",
                    "help": "this route takes no parameters"}]
    }));
}
