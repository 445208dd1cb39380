//! `GET /openapi.json`

use std::collections::BTreeSet;

use serde_json::{Value, json};
use whybake::calculations::find;
use whybake::case::Case;
use whybake::http::routes::ROUTES;
use whybake::rules::{RuleFiles, load};

use crate::schema::{document, faults_by};
use crate::service::{diagnose, get};

const COMMITTED: &str = include_str!("../../openapi/openapi.json");

/// `(path, method)` of every declared operation.
fn declared(document: &Value) -> BTreeSet<(String, String)> {
    let paths = document["paths"].as_object().unwrap();
    let operations = paths.iter().flat_map(|(path, item)| {
        item.as_object().unwrap().keys().map(move |method| (path.clone(), method.to_uppercase()))
    });
    operations.collect()
}

#[actix_web::test]
async fn the_document_is_served() {
    let served = get("/openapi.json").await.success();
    assert_eq!(served["openapi"], "3.1.0");
    assert_eq!(served, document());
}

#[test]
fn the_committed_document_is_fresh() {
    let fresh = whybake::http::openapi::text().unwrap();
    assert!(fresh == COMMITTED, "stale: run `cargo run -- openapi > openapi/openapi.json`");
}

#[test]
fn every_route_is_declared_and_every_declared_route_is_there() {
    let routes: BTreeSet<(String, String)> = ROUTES
        .iter()
        // The page is for people.
        .filter(|route| route.path != "/" && !route.path.starts_with("/docs"))
        .map(|route| (route.path.to_owned(), route.method.to_string()))
        .collect();
    // Every calculation has an operation of its own, behind one route.
    let of_one_route = |(path, method): (String, String)| {
        let name = path.strip_prefix("/v1/calculations/");
        let path =
            if name.is_some_and(|name| find(name).is_some()) { "/v1/calculations/{name}".to_owned() } else { path };
        (path, method)
    };
    assert_eq!(routes, declared(&document()).into_iter().map(of_one_route).collect());
}

#[actix_web::test]
async fn every_declared_route_is_reachable() {
    for (path, _) in declared(&document()) {
        let answer = get(&path.replace("{id}", "x").replace("{name}", "x").replace("{product}", "x")).await;
        let problem = serde_json::from_slice(&answer.body).unwrap_or(Value::Null);
        assert_ne!(problem["type"], "/v1/problems/unknown-route", "{path}");
    }
}

#[test]
fn path_and_method_are_unique() {
    let rows: BTreeSet<_> = ROUTES.iter().map(|route| (route.path, route.method.to_string())).collect();
    assert_eq!(rows.len(), ROUTES.len());
}

#[test]
fn cases_take_no_undeclared_members() {
    let document = document();
    for name in ["Case", "Symptom", "Reading", "Formula", "FormulaLine", "Composition", "Requirements"] {
        assert_eq!(document["components"]["schemas"][name]["additionalProperties"], false, "{name}");
    }
}

#[test]
fn every_example_fits_its_schema() {
    let document = document();
    let mut seen = 0;
    visit(&document, "", &mut |place, holder| {
        // A media type or parameter has its schema beside the example, a schema is its own.
        let schema = holder.get("schema").unwrap_or(holder);
        for example in examples(holder) {
            seen += 1;
            assert_eq!(faults_by(&document, schema.clone(), example), Vec::<String>::new(), "{place}");
        }
    });
    assert!(seen > 50, "{seen} examples were found");
}

fn examples(holder: &Value) -> Vec<&Value> {
    let named = holder.get("examples").and_then(Value::as_object);
    let named = named.into_iter().flat_map(|examples| examples.values().filter_map(|example| example.get("value")));
    // A property that is called `example` has a schema, which is no example.
    holder.get("example").into_iter().chain(named).collect()
}

/// Calls `check` for every object of the document outside of examples.
fn visit(value: &Value, place: &str, check: &mut impl FnMut(&str, &Value)) {
    match value {
        Value::Object(members) => {
            check(place, value);
            for (name, member) in members.iter().filter(|(name, _)| !name.starts_with("example")) {
                visit(member, &format!("{place}/{name}"), check);
            }
        }
        Value::Array(items) => items.iter().for_each(|item| visit(item, place, check)),
        _ => {}
    }
}

#[test]
fn the_example_case_is_a_case_of_the_embedded_rules() {
    let knowledge = load(&RuleFiles::embedded()).unwrap().knowledge;
    let example =
        &document()["paths"]["/v1/diagnoses"]["post"]["requestBody"]["content"]["application/json"]["example"];
    Case::parse(example.to_string().as_bytes(), &knowledge).unwrap();
}

#[test]
fn the_example_diagnosis_speaks_of_what_the_embedded_rules_declare() {
    let declared = load(&RuleFiles::embedded()).unwrap().knowledge.declared;
    let document = document();
    let responses = &document["paths"]["/v1/diagnoses"]["post"]["responses"];
    let example = &responses["200"]["content"]["application/json"]["example"];
    let id = |value: &Value| value.as_str().unwrap().to_owned();
    assert!(!example["causes"].as_array().unwrap().is_empty());
    for cause in example["causes"].as_array().unwrap() {
        assert!(declared.causes.find(&id(&cause["cause"])).is_some(), "{}", cause["cause"]);
        for action in cause["actions"].as_array().unwrap() {
            assert!(declared.actions.find(&id(&action["action"])).is_some(), "{}", action["action"]);
        }
    }
    for reading in example["next_readings"].as_array().unwrap() {
        assert!(declared.readings.find(&id(&reading["reading"])).is_some(), "{}", reading["reading"]);
    }
}

#[actix_web::test]
async fn the_example_problem_is_what_the_service_answers() {
    let document = document();
    let content =
        &document["paths"]["/v1/diagnoses"]["post"]["responses"]["422"]["content"]["application/problem+json"];
    let answer = diagnose(json!({"product": "hamburger_bum"}).to_string()).await;
    assert_eq!(answer.json(), content["examples"]["faulty-case"]["value"]);
}
