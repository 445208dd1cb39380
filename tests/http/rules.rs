//! `GET /v1/rules`

use serde_json::json;

use crate::schema;
use crate::service::get;

#[actix_web::test]
async fn the_rules_in_force_are_named() {
    let rules = get("/v1/rules").await.success();
    assert_eq!(schema::faults("RulesStatus", &rules), Vec::<String>::new());
    assert_eq!(rules["loaded_at"], "2026-01-31T06:30:00Z");
    let digest = rules["digest"].as_str().unwrap().strip_prefix("sha256:").unwrap();
    assert!(digest.len() == 64 && digest.bytes().all(|byte| byte.is_ascii_hexdigit()), "{digest}");
    assert!(rules["files"].as_array().unwrap().contains(&json!("pack.rhai")));
    let products = get("/v1/products").await.success()["products"].as_array().unwrap().len();
    assert_eq!(rules["counts"]["products"], products);
}
