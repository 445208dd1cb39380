//! `GET /v1/ingredients`

use serde_json::json;

use crate::schema;
use crate::service::{get, item};

#[actix_web::test]
async fn ingredients_come_with_composition_roles_and_what_they_must_not_meet() {
    let list = get("/v1/ingredients").await.success();
    assert_eq!(schema::faults("IngredientList", &list), Vec::<String>::new());
    let butter = item(&list["ingredients"], "butter");
    assert_eq!(butter["roles"], json!(["fat"]));
    assert_eq!(butter["allergens"], json!(["milk"]));
    assert_eq!(butter["not_for"], json!(["vegan", "lactose_free"]));
    assert_eq!(butter["composition"]["fat"], 82.9);
    assert!(butter["composition"].get("starch").is_none(), "what is not known is not listed");
    assert!(!butter["sources"].as_array().unwrap().is_empty());
    assert_eq!(item(&list["ingredients"], "bread_flour")["flour"], true);
    assert_eq!(item(&list["ingredients"], "vinegar")["leavening"]["neutralising_value"], 14.0);
}

#[actix_web::test]
async fn it_takes_no_parameters() {
    assert_eq!(get("/v1/ingredients?product=hamburger_bun").await.status, 422);
}
