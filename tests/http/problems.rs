//! `GET /v1/problems` and `GET /v1/problems/{id}`

use serde_json::json;

use crate::schema;
use crate::service::get;

#[actix_web::test]
async fn every_type_is_explained_where_it_points() {
    let list = get("/v1/problems").await.success();
    assert_eq!(schema::faults("ProblemList", &list), Vec::<String>::new());
    for problem in list["problems"].as_array().unwrap() {
        let shown = get(problem["type"].as_str().unwrap()).await.success();
        assert_eq!(shown, *problem);
    }
}

#[actix_web::test]
async fn an_unknown_problem_is_a_problem() {
    get("/v1/problems/bad-luck").await.assert_problem(json!({
        "type": "/v1/problems/unknown-item",
        "title": "there is no such item",
        "status": 404,
        "detail": "unknown problem `bad-luck`"
    }));
}
