//! `GET /v1/calculations`, `GET` and `POST /v1/calculations/{name}`

use actix_web::test::TestRequest;
use serde_json::{Value, json};
use whybake::calculations::all;

use crate::schema::{self, document, faults_by};
use crate::service::{Answer, get, send};

async fn calculate(name: &str, inputs: &Value) -> Answer {
    let uri = format!("/v1/calculations/{name}");
    let request = TestRequest::post().uri(&uri).insert_header(("content-type", "application/json"));
    send(request.set_payload(inputs.to_string())).await
}

#[actix_web::test]
async fn all_calculations_are_listed_and_described() {
    let list = get("/v1/calculations").await.success();
    assert_eq!(schema::faults("CalculationList", &list), Vec::<String>::new());
    let listed = list["calculations"].as_array().unwrap();
    assert_eq!(listed.len(), all().count());
    for item in listed {
        let name = item["name"].as_str().unwrap();
        let shown = get(&format!("/v1/calculations/{name}")).await.success();
        assert_eq!(schema::faults("Calculation", &shown), Vec::<String>::new(), "{name}");
        assert_eq!(shown["title"], item["title"]);
    }
}

#[actix_web::test]
async fn every_example_runs_and_fits_its_schemas() {
    let document = document();
    for calculation in all() {
        let operation = &document["paths"][format!("/v1/calculations/{}", calculation.name)]["post"];
        let request = &operation["requestBody"]["content"]["application/json"];
        let faults = faults_by(&document, request["schema"].clone(), &request["example"]);
        assert_eq!(faults, Vec::<String>::new(), "{}", calculation.name);
        let answer = calculate(calculation.name, &request["example"]).await.success();
        assert_eq!(schema::faults("CalculationAnswer", &answer), Vec::<String>::new(), "{}", calculation.name);
        let documented = &operation["responses"]["200"]["content"]["application/json"]["example"];
        assert_eq!(answer, *documented, "{}", calculation.name);
        let shown = get(&format!("/v1/calculations/{}", calculation.name)).await.success();
        assert_eq!((&shown["worked_example"], &shown["worked_answer"]), (&request["example"], &answer));
    }
}

#[actix_web::test]
async fn the_schema_refuses_what_the_route_refuses() {
    let document = document();
    let operation = &document["paths"]["/v1/calculations/ice_for_mixing_water"]["post"];
    let request = &operation["requestBody"]["content"]["application/json"];
    for (name, value) in [
        ("tap_temperature", json!(500)),
        ("tap_temperature", json!("18")),
        ("way", json!("on_top")),
        ("water", json!({"value": 3})),
        ("oven", json!(1)),
    ] {
        let mut inputs = request["example"].clone();
        inputs[name] = value;
        assert!(!faults_by(&document, request["schema"].clone(), &inputs).is_empty(), "{inputs}");
        assert_eq!(calculate("ice_for_mixing_water", &inputs).await.status, 422, "{inputs}");
    }
}

#[actix_web::test]
async fn an_answer_has_figures_with_their_source() {
    let inputs = json!({"dough_temperature": {"value": 78.8, "unit": "[degF]"}, "flour_temperature": 22,
        "room_temperature": 24, "friction_factor": 12});
    let answer = calculate("mixing_water_temperature", &inputs).await.success();
    assert_eq!(answer["calculation"], "mixing_water_temperature");
    let figure = &answer["figures"][0];
    assert_eq!((&figure["name"], &figure["unit"]), (&json!("water_temperature"), &json!("Cel")));
    assert!((figure["value"].as_f64().unwrap() - 20.0).abs() < 1e-9, "{figure}");
    assert!(figure["source"].as_str().unwrap().starts_with("Lehmann"), "{figure}");
    assert_eq!((&figure["outside_domain"], &answer["remarks"]), (&json!([]), &json!([])));
}

#[actix_web::test]
async fn an_unknown_calculation_is_a_problem_with_a_suggestion() {
    let problem = json!({
        "type": "/v1/problems/unknown-item",
        "title": "there is no such item",
        "status": 404,
        "detail": "unknown calculation `dew_poimt`; did you mean `dew_point`?"
    });
    get("/v1/calculations/dew_poimt").await.assert_problem(problem.clone());
    calculate("dew_poimt", &json!({})).await.assert_problem(problem);
}

#[actix_web::test]
async fn every_fault_of_the_inputs_is_told() {
    let inputs = json!({"dough": {"value": 450, "unit": "mL"}, "baked": -1, "bake": 2});
    calculate("bake_loss", &inputs).await.assert_problem(json!({
        "type": "/v1/problems/faulty-inputs",
        "title": "the inputs have faults",
        "status": 422,
        "errors": [
            {"pointer": "/bake", "code": "unknown-member", "detail": "unknown member `bake`", "help": "did you mean `baked`?"},
            {"pointer": "/dough/unit", "code": "wrong-kind-of-unit", "detail": "`mL` measures volume, but mass (`g`) is wanted", "help": "give it in `g` or a unit of that kind"},
            {"pointer": "/baked", "code": "out-of-range", "detail": "-1 g is not between 0 and 1000000 g"}
        ]
    }));
    calculate("bake_loss", &json!({"dough": 400, "baked": 450})).await.assert_problem(json!({
        "type": "/v1/problems/faulty-inputs",
        "title": "the inputs have faults",
        "status": 422,
        "errors": [{"pointer": "/baked", "code": "impossible", "detail": "must not be heavier than its dough (400), is 450"}]
    }));
}

#[actix_web::test]
async fn a_body_that_is_no_json_is_malformed() {
    let request =
        TestRequest::post().uri("/v1/calculations/dew_point").insert_header(("content-type", "application/json"));
    let answer = send(request.set_payload("{")).await;
    assert_eq!((answer.status, &answer.json()["type"]), (400, &json!("/v1/problems/malformed-json")));
}
