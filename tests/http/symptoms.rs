//! `GET /v1/symptoms`

use serde_json::json;

use crate::schema;
use crate::service::{get, item};

#[actix_web::test]
async fn symptoms_of_a_product_tell_how_to_recognise_them() {
    let list = get("/v1/symptoms?product=hamburger_bun").await.success();
    assert_eq!(schema::faults("SymptomList", &list), Vec::<String>::new());
    for id in ["hollow_under_crust", "open_grain", "pale_crust", "low_volume"] {
        let symptom = item(&list["symptoms"], id);
        for member in ["title", "description", "part"] {
            assert_ne!(symptom[member], "", "{member} of {id}");
        }
    }
}

#[actix_web::test]
async fn without_a_product_all_symptoms_are_listed() {
    let all = get("/v1/symptoms").await.success()["symptoms"].as_array().unwrap().len();
    let rules = get("/v1/rules").await.success();
    assert_eq!(rules["counts"]["symptoms"], all);
}

#[actix_web::test]
async fn an_unknown_product_is_told_with_a_suggestion() {
    get("/v1/symptoms?product=hamburger-bum").await.assert_problem(json!({
        "type": "/v1/problems/faulty-parameters",
        "title": "the query parameters have faults",
        "status": 422,
        "errors": [{"parameter": "product", "code": "unknown-name", "detail": "unknown product `hamburger-bum`",
                    "help": "did you mean `hamburger_bun`?"}]
    }));
}

#[actix_web::test]
async fn every_faulty_parameter_is_told() {
    get("/v1/symptoms?prodct=a&product=hamburger_bun&product=b&x=%20").await.assert_problem(json!({
        "type": "/v1/problems/faulty-parameters",
        "title": "the query parameters have faults",
        "status": 422,
        "errors": [
            {"parameter": "prodct", "code": "unknown-parameter", "detail": "unknown parameter `prodct`",
             "help": "did you mean `product`?"},
            {"parameter": "product", "code": "duplicate", "detail": "`product` stands twice"},
            {"parameter": "x", "code": "unknown-parameter", "detail": "unknown parameter `x`",
             "help": "the parameters are `product`"}
        ]
    }));
}
