//! `GET /healthz` and `GET /readyz`

use serde_json::json;

use crate::schema;
use crate::service::get;

#[actix_web::test]
async fn a_running_service_is_live() {
    assert_eq!(get("/healthz").await.success(), json!({"status": "live"}));
}

#[actix_web::test]
async fn a_ready_service_names_its_rules() {
    let ready = get("/readyz").await.success();
    assert_eq!(schema::faults("Readiness", &ready), Vec::<String>::new());
    assert_eq!(ready["status"], "ready");
    assert_eq!(ready["rules"]["digest"], get("/v1/rules").await.success()["digest"]);
}

#[actix_web::test]
async fn probes_may_add_parameters() {
    assert_eq!(get("/healthz?t=1").await.status, 200);
    assert_eq!(get("/readyz?verbose").await.status, 200);
}
