//! Warnings, legal limits, markets, and what takes the place of excluded actions.

use serde_json::{Value, json};

use crate::formula_pack::{answer_to, kilograms};
use crate::support::ids;

/// A cake with so much sorbate on 100 kg of flour.
fn cake(sorbate: f64, requirements: &Value) -> Value {
    let formula = kilograms(&[("flour", 100.0), ("water", 60.0), ("salt", 1.0), ("sorbate", sorbate)]);
    answer_to(&json!({"product": "cake", "formula": formula, "requirements": requirements}))
}

fn jam(sugar: f64, water: f64, market: &str) -> Value {
    let formula = kilograms(&[("sugar", sugar), ("water", water)]);
    answer_to(&json!({"product": "jam", "formula": formula, "requirements": {"market": market}}))
}

fn caution<'a>(answer: &'a Value, id: &str) -> Option<&'a Value> {
    answer["cautions"].as_array().unwrap().iter().find(|item| item["caution"] == id)
}

fn action<'a>(answer: &'a Value, id: &str) -> &'a Value {
    let causes = answer["causes"].as_array().unwrap();
    let mut actions = causes.iter().flat_map(|cause| cause["actions"].as_array().unwrap());
    actions.find(|item| item["action"] == id).unwrap()
}

#[test]
fn a_formula_over_a_legal_limit_is_told_with_limit_market_and_value() {
    let answer = cake(0.25, &json!({"market": "EU"}));
    let found = caution(&answer, "sorbate_eu").unwrap();
    assert_eq!(found["why"], "potassium sorbate on flour 0.25 % is above the limit of 0.2 % (European Union)");
    assert_eq!(found["text"], "Sorbate in fine bakery wares.");
    assert_eq!(found["jurisdiction"], json!(["EU"]));
    assert_eq!(answer["cautions"][0]["caution"], "sorbate_eu", "what the case raises stands first");
    assert!(caution(&cake(0.25, &json!({"market": "US"})), "sorbate_eu").is_none());
    assert!(caution(&cake(0.25, &json!({})), "sorbate_eu").is_some(), "without a market every law is told");
    assert!(caution(&cake(0.2, &json!({})), "sorbate_eu").is_none(), "the limit itself is allowed");
}

#[test]
fn limits_concern_their_products() {
    assert!(caution(&jam(60.0, 40.0, "EU"), "solids_eu").is_some());
    assert!(caution(&cake(0.4, &json!({})), "solids_eu").is_none());
}

#[test]
fn a_prescription_never_exceeds_the_limit_of_the_market() {
    let dose = |requirements: Value| action(&cake(0.0, &requirements), "add_sorbate")["quantities"][0].clone();
    let eu = dose(json!({"market": "EU"}));
    assert_eq!(eu["value"], 2000.0);
    assert_eq!(eu["capped"], "kept at the limit of 2000 mg/kg (European Union); the rule would set 5000 mg/kg");
    assert_eq!(dose(json!({"market": "US"}))["value"], 3000.0);
    let strictest = dose(json!({}));
    assert_eq!(strictest["value"], 2000.0);
    assert!(strictest["capped"].as_str().unwrap().contains("the strictest, since no market is given"), "{strictest}");
}

#[test]
fn an_ingredient_that_the_market_does_not_permit_excludes_its_actions() {
    let eu = cake(0.0, &json!({"market": "EU"}));
    let excluded = &eu["excluded_actions"][0];
    assert_eq!(excluded["action"], "bleach");
    assert_eq!(excluded["text"], "brings in Bleaching agent, which is not permitted in European Union");
    assert_eq!(ids(excluded, "instead", "action"), ["weigh"]);
    let us = cake(0.0, &json!({"market": "US"}));
    assert!(ids(&us, "excluded_actions", "action").is_empty() && caution(&us, "bleaching_agent").is_none());
    let nowhere = cake(0.0, &json!({}));
    assert_eq!(caution(&nowhere, "bleaching_agent").unwrap()["why"], "an action brings it in");
    let formula = kilograms(&[("flour", 100.0), ("water", 60.0), ("bleaching_agent", 0.1)]);
    let bleached = answer_to(&json!({"product": "cake", "formula": formula, "requirements": {"market": "EU"}}));
    assert_eq!(caution(&bleached, "bleaching_agent").unwrap()["why"], "the formula has it");
}

#[test]
fn a_replacement_must_respect_the_requirements_too() {
    let vegan = cake(0.0, &json!({"diets": ["vegan"], "market": "US"}));
    let excluded = &vegan["excluded_actions"][0];
    assert_eq!(excluded["action"], "add_butter");
    assert_eq!(ids(excluded, "instead", "action"), ["add_oil"], "lard is not vegan either");
    assert_eq!(excluded["instead"][0]["text"], "Add oil.");
}

#[test]
fn a_warning_stands_when_its_condition_holds_and_says_why() {
    let strong = jam(75.0, 25.0, "US");
    assert_eq!(caution(&strong, "hot_sugar").unwrap()["why"], "syrup strength 75 % is above 70 %");
    assert!(caution(&jam(60.0, 40.0, "US"), "hot_sugar").is_none());
    assert!(caution(&answer_to(&json!({"product": "jam"})), "hot_sugar").is_none(), "unknown is not true");
}

#[test]
fn a_warning_may_stand_when_its_condition_is_unknown() {
    let unknown = answer_to(&json!({"product": "jam"}));
    let why = caution(&unknown, "mould").unwrap()["why"].as_str().unwrap().to_owned();
    assert_eq!(why, "cannot be excluded: water activity above 0.85; not known: water activity");
    assert!(
        caution(&jam(60.0, 40.0, "US"), "mould").unwrap()["why"].as_str().unwrap().starts_with("water activity 0.89")
    );
    assert!(caution(&jam(75.0, 25.0, "US"), "mould").is_none());
}

#[test]
fn a_caution_of_a_jurisdiction_is_told_there_and_when_no_market_is_given() {
    assert!(caution(&jam(60.0, 40.0, "US"), "us_label").is_some());
    assert!(caution(&jam(60.0, 40.0, "EU"), "us_label").is_none());
    let nowhere = answer_to(&json!({"product": "jam"}));
    assert_eq!(caution(&nowhere, "us_label").unwrap()["jurisdiction"], json!(["US"]));
}

#[test]
fn what_a_warning_needs_is_no_stray_reading() {
    let measured = json!({"product": "jam", "readings": {"water_activity": {"value": 0.9, "unit": "1"}}});
    assert!(ids(&answer_to(&measured), "set_aside", "finding").is_empty());
}
