//! `POST /v1/formulas/figures`, `/v1/formulas/batches` and `/v1/formulas/ratios`

use actix_web::test::TestRequest;
use serde_json::{Value, json};

use crate::schema;
use crate::service::{Answer, send};

async fn ask(path: &str, body: &Value) -> Answer {
    let request = TestRequest::post().uri(&format!("/v1/formulas/{path}"));
    send(request.insert_header(("content-type", "application/json")).set_payload(body.to_string())).await
}

fn bun() -> Value {
    json!({"ingredients": [
        {"ingredient": "bread_flour", "amount": 50, "unit": "kg"},
        {"ingredient": "water", "amount": 29, "unit": "kg"},
        {"ingredient": "shortening", "amount": 3000, "unit": "g"},
        {"ingredient": "salt", "amount": 1, "unit": "kg"}]})
}

fn figure<'v>(list: &'v Value, quantity: &str) -> &'v Value {
    let items = list.as_array().unwrap();
    items.iter().find(|item| item["quantity"] == quantity).unwrap_or_else(|| panic!("no {quantity} in {list}"))
}

#[actix_web::test]
async fn figures_come_with_percentages_method_and_domain() {
    let report = ask("figures", &json!({"product": "hamburger_bun", "formula": bun()})).await.success();
    assert_eq!(schema::faults("FormulaReport", &report), Vec::<String>::new());
    assert_eq!((&report["whole"], report["parts"].as_array().unwrap().len()), (&json!(true), 1));
    let dough = &report["parts"][0];
    assert_eq!((&dough["part"], &dough["basis"]), (&json!("dough"), &json!("flour")));
    let fat = &dough["lines"][2];
    assert_eq!((&fat["ingredient"], &fat["percent"]), (&json!("shortening"), &json!(6.0)));
    assert!((fat["true_percent"].as_f64().unwrap() - 100.0 * 3.0 / 83.0).abs() < 1e-9);
    assert_eq!(figure(&dough["totals"], "mass")["value"], 83.0);
    let activity = figure(&dough["figures"], "water_activity");
    assert!(activity["outside_domain"][0].as_str().unwrap().contains("fitted 0.11-0.90"), "{activity}");
    for member in ["name", "source", "domain"] {
        assert!(activity["method"][member].as_str().is_some_and(|text| !text.is_empty()), "{member}");
    }
    assert_eq!(dough["figures"].as_array().unwrap().len(), 22, "every quantity is there, known or not");
}

#[actix_web::test]
async fn what_is_not_known_says_why() {
    let mut formula = bun();
    formula["ingredients"].as_array_mut().unwrap().push(json!({"name": "Paste", "amount": 5, "unit": "kg"}));
    let report = ask("figures", &json!({"formula": formula})).await.success();
    assert_eq!(schema::faults("FormulaReport", &report), Vec::<String>::new());
    let water = figure(&report["parts"][0]["figures"], "water_on_flour");
    assert!(water.get("value").is_none(), "{water}");
    assert_eq!(water["unknown_in"], json!(["Paste"]));
    let bounds = (water["at_least"].as_f64().unwrap(), water["at_most"].as_f64().unwrap());
    assert!((bounds.0 - 58.0).abs() < 0.01 && (bounds.1 - 68.0).abs() < 0.01, "{bounds:?}");
}

/// The same shares of a small batch are as open as those of a large one.
#[actix_web::test]
async fn an_open_mass_is_no_figure_in_a_small_batch_either() {
    let formula = json!({"complete": true, "ingredients": [
        {"ingredient": "bread_flour", "amount": 500, "unit": "g"},
        {"ingredient": "water", "amount": 290, "unit": "g"},
        {"name": "Paste", "amount": 200, "unit": "g"}]});
    let report = ask("figures", &json!({"formula": formula})).await.success();
    let water = figure(&report["parts"][0]["totals"], "total_water");
    assert!(water.get("value").is_none(), "{water}");
    let bounds = (water["at_least"].as_f64().unwrap(), water["at_most"].as_f64().unwrap());
    assert!((bounds.0 - 0.29).abs() < 1e-9 && (bounds.1 - 0.49).abs() < 1e-9, "{bounds:?}");
}

#[actix_web::test]
async fn parts_are_told_apart() {
    let mut formula = bun();
    let lines = formula["ingredients"].as_array_mut().unwrap();
    lines.push(json!({"ingredient": "sugar", "amount": 65, "unit": "kg", "stage": "filling"}));
    lines.push(json!({"ingredient": "water", "amount": 35, "unit": "kg", "stage": "filling"}));
    let report = ask("figures", &json!({"formula": formula})).await.success();
    let filling = &report["parts"][1];
    assert_eq!((&filling["part"], &filling["basis"]), (&json!("filling"), &json!("total mass")));
    let solids = figure(&filling["figures"], "soluble_solids")["value"].as_f64().unwrap();
    assert!((solids - 65.0).abs() < 0.01, "{solids}");
    assert!(figure(&filling["figures"], "water_on_flour")["why_not"].as_str().unwrap().contains("no flour"));
}

/// 1000 pieces of 60 g at a bake loss of 12 % take 60 / 0.88 kg of dough.
#[actix_web::test]
async fn a_batch_is_a_mass_or_pieces() {
    let pieces = json!({"formula": bun(), "pieces": 1000, "piece_mass": {"value": 60, "unit": "g"},
        "bake_loss": {"value": 12, "unit": "%"}});
    let batch = ask("batches", &pieces).await.success();
    assert_eq!(schema::faults("Batch", &batch), Vec::<String>::new());
    assert!((batch["mass_kg"].as_f64().unwrap() - 60.0 / 0.88).abs() < 1e-9);
    let mass = json!({"formula": bun(), "mass": {"value": 166, "unit": "kg"}});
    let batch = ask("batches", &mass).await.success();
    assert_eq!((&batch["factor"], &batch["lines"][1]["mass_kg"]), (&json!(2.0), &json!(58.0)));
}

#[actix_web::test]
async fn a_formula_is_set_against_the_ratio_of_its_product() {
    let found = ask("ratios", &json!({"product": "hamburger_bun", "formula": bun()})).await.success();
    assert_eq!(schema::faults("RatioComparison", &found), Vec::<String>::new());
    assert_eq!(found["ratio"], "soft_roll");
    let items = found["items"].as_array().unwrap();
    let fat = items.iter().find(|item| item["title"] == "fat on flour").unwrap();
    assert_eq!((&fat["percent"], &fat["standing"]), (&json!(6.0), &json!("within")));
    let sugar = items.iter().find(|item| item["title"] == "sugar on flour").unwrap();
    assert_eq!(sugar["standing"], "missing");
    let named = ask("ratios", &json!({"formula": bun(), "ratio": "flour_tortilla"})).await.success();
    assert_eq!(named["ratio"], "flour_tortilla");
}

#[actix_web::test]
async fn a_ratio_is_that_of_the_dough_and_says_what_it_leaves_out() {
    let mut formula = bun();
    let lines = formula["ingredients"].as_array_mut().unwrap();
    lines.push(json!({"name": "Crumb softener", "amount": 1, "unit": "kg"}));
    lines.push(json!({"name": "Jam", "amount": 5, "unit": "kg", "stage": "filling"}));
    let found = ask("ratios", &json!({"product": "hamburger_bun", "formula": formula})).await.success();
    assert_eq!(found["roles_unknown_of"], json!(["Crumb softener"]));
}

#[actix_web::test]
async fn a_product_without_a_ratio_is_told_the_ratios() {
    let answer = ask("ratios", &json!({"formula": bun()})).await;
    assert_eq!(answer.status, 422);
    let problem = answer.json();
    assert_eq!(problem["type"], "/v1/problems/faulty-formula");
    assert_eq!(problem["errors"][0]["detail"], "neither `product` nor `ratio` is given");
    assert!(problem["errors"][0]["help"].as_str().unwrap().contains("`short_pastry`"));
}

#[actix_web::test]
async fn nonsense_is_told_all_at_once() {
    let body = json!({"product": "hamburger_bum", "formula": {"ingredients": [
        {"ingredient": "bread_flour", "amount": -5, "unit": "kg"},
        {"ingredient": "watter", "amount": 3, "unit": "kg"}]}, "pieces": 0, "bake_loss": {"value": 12, "unit": "kg"}});
    let problem = ask("batches", &body).await.json();
    let told: Vec<(&str, &str)> = problem["errors"]
        .as_array()
        .unwrap()
        .iter()
        .map(|error| (error["pointer"].as_str().unwrap(), error["code"].as_str().unwrap()))
        .collect();
    assert_eq!(
        told,
        [
            ("/product", "unknown-name"),
            ("/formula/ingredients/0/amount", "out-of-range"),
            ("/formula/ingredients/1/ingredient", "unknown-name"),
            ("/pieces", "out-of-range"),
            ("", "missing"),
            ("/bake_loss/unit", "wrong-kind-of-unit"),
        ]
    );
}

#[actix_web::test]
async fn an_empty_formula_and_a_mountain_of_salt_are_faults() {
    let told = |answer: Answer| {
        let problem = answer.json();
        (problem["errors"][0]["pointer"].clone(), problem["errors"][0]["detail"].as_str().unwrap().to_owned())
    };
    let empty = told(ask("figures", &json!({"formula": {"ingredients": []}})).await);
    assert_eq!(empty, (json!("/formula/ingredients"), "the formula has no ingredients".to_owned()));
    let salty = json!({"formula": {"ingredients": [{"ingredient": "bread_flour", "amount": 100, "unit": "%"},
        {"ingredient": "water", "amount": 60, "unit": "%"}, {"ingredient": "salt", "amount": 300, "unit": "%"}]}});
    let (pointer, detail) = told(ask("figures", &salty).await);
    assert_eq!(pointer, "/formula");
    assert!(detail.contains("65 % salt"), "{detail}");
    let nothing = json!({"formula": {"ingredients": [{"ingredient": "water", "amount": 0, "unit": "kg"}]}});
    assert!(told(ask("figures", &nothing).await).1.contains("no mass"));
}

#[actix_web::test]
async fn a_batch_that_cannot_be_meant_is_a_fault() {
    let lost = json!({"formula": bun(), "pieces": 10, "piece_mass": {"value": 60, "unit": "g"},
        "bake_loss": {"value": 100, "unit": "%"}});
    assert_eq!(ask("batches", &lost).await.json()["errors"][0]["pointer"], "/bake_loss");
    let detail = async |size: Value| {
        let mut batch = json!({"formula": bun(), "piece_mass": {"value": 60, "unit": "g"}});
        batch.as_object_mut().unwrap().extend(size.as_object().unwrap().clone());
        ask("batches", &batch).await.json()["errors"][0]["detail"].as_str().unwrap().to_owned()
    };
    assert_eq!(detail(json!({"pieces": 10.5})).await, "10.5 is not a whole number");
    assert_eq!(detail(json!({"pieces": 10, "bake_loss": {"value": -1, "unit": "%"}})).await, "-1 is not at least 0");
    let icing = "the number of pieces counts pieces of dough; the icing is scaled to a mass";
    assert_eq!(detail(json!({"pieces": 10, "part": "icing"})).await, icing);
    let both = json!({"formula": bun(), "mass": {"value": 1, "unit": "kg"}, "pieces": 3});
    assert_eq!(ask("batches", &both).await.json()["errors"][0]["code"], "contradiction");
    let filling = json!({"formula": bun(), "part": "filling", "mass": {"value": 1, "unit": "kg"}});
    assert_eq!(ask("batches", &filling).await.status, 422);
    let none = json!({"formula": bun(), "mass": {"value": 0, "unit": "kg"}});
    assert_eq!(ask("batches", &none).await.json()["errors"][0]["pointer"], "/mass");
}

#[actix_web::test]
async fn a_body_that_is_no_json_is_a_problem() {
    let request = TestRequest::post().uri("/v1/formulas/figures").insert_header(("content-type", "application/json"));
    let answer = send(request.set_payload("{")).await;
    assert_eq!((answer.status, &answer.json()["type"]), (400, &json!("/v1/problems/malformed-json")));
}

#[test]
fn the_examples_are_what_the_service_answers() {
    let examples = [
        (include_str!("../../src/http/openapi/examples/batch_request.json"), "batches"),
        (include_str!("../../src/http/openapi/examples/ratio_request.json"), "ratios"),
    ];
    let answers = [
        include_str!("../../src/http/openapi/examples/batch.json"),
        include_str!("../../src/http/openapi/examples/ratio.json"),
    ];
    actix_web::rt::System::new().block_on(async {
        for ((request, path), answer) in examples.into_iter().zip(answers) {
            let request: Value = serde_json::from_str(request).unwrap();
            let answer: Value = serde_json::from_str(answer).unwrap();
            assert_eq!(ask(path, &request).await.success(), answer, "{path}");
        }
    });
}

/// Amounts far outside a bakery once came back as `null`, as factors and percentages that are no numbers.
#[actix_web::test]
async fn an_amount_that_no_bakery_has_is_refused_at_its_place() {
    let of = |amount: f64, unit: &str| {
        json!({"ingredients": [
            {"ingredient": "bread_flour", "amount": amount, "unit": unit},
            {"ingredient": "water", "amount": 1, "unit": "kg"}]})
    };
    for (amount, unit) in [(1e-310, "kg"), (1e-300, "kg"), (1e306, "t"), (1e10, "kg"), (0.9e-9, "kg")] {
        let problem = ask("figures", &json!({"formula": of(amount, unit)})).await.json();
        let fault = &problem["errors"][0];
        assert_eq!(
            (&fault["pointer"], &fault["code"]),
            (&json!("/formula/ingredients/0/amount"), &json!("out-of-range"))
        );
        assert_eq!(fault["detail"], "the amount is not 0 or between 1e-9 and 1e9 kg");
        assert_eq!(problem["errors"].as_array().unwrap().len(), 1, "{problem}");
    }
    let figures = ask("figures", &json!({"formula": of(1e-6, "g")})).await.success();
    assert!(!figures.to_string().contains("null"), "{figures}");
    let shares = json!({"ingredients": [{"ingredient": "water", "amount": 1e10, "unit": "%"}]});
    let problem = ask("figures", &json!({"formula": shares})).await.json();
    assert_eq!(problem["errors"][0]["detail"], "the amount is not 0 or between 1e-9 and 1e9 % on flour");
}

#[actix_web::test]
async fn a_batch_that_cannot_be_meant_is_refused() {
    for mass in [0.0, 1e-10, 1e10, 1e303] {
        let request = json!({"formula": bun(), "mass": {"value": mass, "unit": "kg"}});
        let problem = ask("batches", &request).await.json();
        assert_eq!(problem["errors"][0]["pointer"], "/mass");
        let detail = problem["errors"][0]["detail"].as_str().unwrap();
        assert!(detail.ends_with(" kg is not between 1e-9 and 1e9 kg"), "{detail}");
    }
    let request = json!({"formula": bun(), "mass": {"value": 1e307, "unit": "t"}});
    let fault = &ask("batches", &request).await.json()["errors"][0];
    assert_eq!((&fault["pointer"], &fault["code"]), (&json!("/mass/value"), &json!("out-of-range")));
}

#[actix_web::test]
async fn flour_that_is_not_there_is_zero_and_not_minus_zero() {
    let water = json!({"ingredients": [{"ingredient": "water", "amount": 1, "unit": "kg"}], "complete": true});
    let figures = ask("figures", &json!({"formula": water})).await;
    assert_eq!(figure(&figures.success()["parts"][0]["totals"], "flour")["value"], 0.0);
    let batch = ask("batches", &json!({"formula": water, "mass": {"value": 1, "unit": "kg"}})).await;
    for answer in [figures, batch] {
        let text = String::from_utf8(answer.body.to_vec()).unwrap();
        assert!(!text.contains("-0.0") && text.contains("0.0"), "{text}");
    }
}
