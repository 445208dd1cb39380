//! The same case as it would be.

use serde_json::{Value, json};
use whybake::case::{Fault, WhatIfRequest};
use whybake::json::DocumentFaults;
use whybake::what_if::what_if;

use crate::support::{answer, probability, rules};

/// An invented bun: hollow, from a hot dough, with a formula in kg.
fn case() -> Value {
    json!({
        "product": "hamburger_bun",
        "symptoms": [{ "symptom": "hollow_under_crust" }],
        "readings": {
            "dough_temperature": { "value": 31.5, "unit": "Cel", "low": 24, "high": 27 },
            "water_temperature": { "value": 15, "unit": "Cel" }
        },
        "formula": { "ingredients": [
            { "ingredient": "bread_flour", "amount": 50, "unit": "kg" }, { "ingredient": "water", "amount": 29, "unit": "kg" },
            { "ingredient": "instant_yeast", "amount": 0.5, "unit": "kg" }, { "ingredient": "salt", "amount": 1.8, "unit": "kg" },
            { "ingredient": "sugar", "amount": 5, "unit": "kg" }
        ] }
    })
}

fn request(case: &Value, changes: &Value) -> Result<WhatIfRequest, DocumentFaults> {
    let text = json!({ "case": case, "changes": changes, "reference": { "lot": "A17" } }).to_string();
    WhatIfRequest::parse(text.as_bytes(), rules().knowledge())
}

fn tried(case: &Value, changes: &Value) -> Value {
    serde_json::to_value(what_if(request(case, changes).unwrap(), rules()).unwrap()).unwrap()
}

fn faults(changes: &Value) -> Vec<Fault> {
    match request(&case(), changes) {
        Err(DocumentFaults::Faulty(faults)) => faults,
        other => panic!("{other:?}"),
    }
}

/// Before and after of a reading, ingredient, role, fact or symptom that was changed.
fn applied(answer: &Value, id: &str) -> (Option<f64>, f64) {
    let named = |one: &&Value| {
        let changes = &one["changes"];
        [&one["finding"], &changes["ingredient"], &changes["role"], &changes["reading"]]
            .into_iter()
            .any(|own| own == id)
    };
    let one = answer["applied"].as_array().unwrap().iter().find(named).unwrap_or_else(|| panic!("{id}: {answer:#}"));
    (one["before"].as_f64(), one["after"].as_f64().unwrap())
}

#[test]
fn a_reading_gives_the_diagnosis_that_it_would_give() {
    let answer_now =
        tried(&case(), &json!({ "readings": { "dough_temperature": { "value": 78.8, "unit": "[degF]" } } }));
    let mut changed = case();
    changed["readings"]["dough_temperature"]["value"] = json!(26);
    let (before, after) = (answer(&case()), answer(&changed));
    for cause in answer_now["causes"].as_array().unwrap() {
        let id = cause["cause"].as_str().unwrap();
        assert!((cause["before"].as_f64().unwrap() - probability(&before, id)).abs() < 1e-12);
        assert!((cause["after"].as_f64().unwrap() - probability(&after, id)).abs() < 1e-9);
    }
    assert_eq!(answer_now["leader"]["before"]["cause"], "dough_too_warm");
    assert_eq!(answer_now["leader"]["changed"], true);
    let moved = answer_now["causes"].as_array().unwrap().iter().map(|cause| cause["change"].as_f64().unwrap().abs());
    let moved: Vec<f64> = moved.collect();
    assert!(moved.windows(2).all(|pair| pair[0] >= pair[1]));
    assert_eq!(answer_now["reference"], json!({ "lot": "A17" }));
}

#[test]
fn facts_symptoms_and_amounts_change_what_stands_there() {
    let answer = tried(
        &case(),
        &json!({
            "facts": { "dough_waits_before_divider": true },
            "symptoms": [{ "symptom": "hollow_under_crust", "present": false }, { "symptom": "pale_crust" }],
            "ingredients": [
                { "ingredient": "water", "amount": 62, "unit": "%" },
                { "ingredient": "salt", "amount": 0.85, "unit": "kg", "how": "takes_out" },
                { "ingredient": "dextrose", "amount": 2, "unit": "%", "how": "adds" },
                { "ingredient": "sugar", "how": "takes_out" }
            ]
        }),
    );
    assert_eq!(applied(&answer, "dough_waits_before_divider"), (None, 1.0));
    assert_eq!(applied(&answer, "hollow_under_crust"), (Some(1.0), 0.0));
    assert_eq!(applied(&answer, "pale_crust"), (None, 1.0));
    assert_eq!(applied(&answer, "water"), (Some(29.0), 31.0));
    let (before, after) = applied(&answer, "salt");
    assert!(before == Some(1.8) && (after - 0.95).abs() < 1e-12);
    assert_eq!(applied(&answer, "dextrose"), (Some(0.0), 1.0));
    assert_eq!(applied(&answer, "sugar"), (Some(5.0), 0.0));
    let water = answer["computed"].as_array().unwrap().iter().find(|one| one["quantity"] == "water_on_flour").unwrap();
    // The water of the other ingredients is the same, so it grows by 2 kg on 50 kg of flour, but for that of dextrose.
    let grown = water["after"].as_f64().unwrap() - water["before"].as_f64().unwrap();
    assert!((4.0..4.25).contains(&grown), "{grown}");
}

#[test]
fn an_action_does_what_it_sets() {
    let answer = tried(&case(), &json!({ "actions": ["colder_mixing_water", "cut_yeast", "set_salt"] }));
    let (before, after) = applied(&answer, "dough_temperature");
    assert_eq!((before, after), (Some(31.5), 25.5)); // the middle of the plant's own limits
    // Ice and tap water are the water that was there.
    assert!((applied(&answer, "ice").1 + applied(&answer, "water").1 - 29.0).abs() < 1e-9);
    // The yeast is counted as fresh, whatever the plant has: a tenth less of the instant yeast.
    assert!((applied(&answer, "yeast").1 - 0.45).abs() < 1e-9);
    let salt = answer["computed"].as_array().unwrap().iter().find(|one| one["quantity"] == "salt_on_flour").unwrap();
    let target = answer["applied"].as_array().unwrap().iter().find(|one| one["quantity"] == "salt_on_flour").unwrap();
    assert_eq!(target["changes"], json!({ "reading": "salt_on_flour", "ingredient": "salt", "how": "doses" }));
    assert!((1.7..2.2).contains(&salt["after"].as_f64().unwrap()));
    let refused = answer["not_applied"].as_array().unwrap();
    let change = refused.iter().find(|one| one["quantity"] == "water_temperature_change").unwrap();
    assert_eq!(change["text"], "the rules do not say what it changes");
}

#[test]
fn a_reading_that_was_dosed_reads_what_the_action_wants() {
    let mut lean = case();
    lean["formula"]["ingredients"][4] = json!({ "ingredient": "shortening", "amount": 1, "unit": "kg" });
    let answer = tried(&lean, &json!({ "actions": ["set_fat"] }));
    let fat = answer["applied"].as_array().unwrap().iter().find(|one| one["changes"]["role"] == "fat").unwrap();
    let factor = fat["after"].as_f64().unwrap() / fat["before"].as_f64().unwrap();
    assert!(factor > 1.0);
    // With that amount the formula reads it: doing it again changes nothing.
    lean["formula"]["ingredients"][4]["amount"] = fat["after"].clone();
    let again = tried(&lean, &json!({ "actions": ["set_fat"] }));
    let fat = again["applied"].as_array().unwrap().iter().find(|one| one["changes"]["role"] == "fat").unwrap();
    assert!((fat["after"].as_f64().unwrap() - fat["before"].as_f64().unwrap()).abs() < 1e-6);
}

#[test]
fn without_a_formula_the_reading_is_set_and_what_has_no_place_is_told() {
    let bare = json!({ "product": "hamburger_bun", "readings": { "salt_on_flour": { "value": 3, "unit": "%" } } });
    let answer = tried(&bare, &json!({ "actions": ["set_salt", "check_weighing", "bind_with_starch"] }));
    assert_eq!(applied(&answer, "salt_on_flour").0, Some(3.0));
    let texts: Vec<(&str, &str)> = answer["not_applied"]
        .as_array()
        .unwrap()
        .iter()
        .map(|one| (one["action"].as_str().unwrap(), one["text"].as_str().unwrap()))
        .collect();
    assert!(texts.contains(&("check_weighing", "nothing that it sets can be put into this case")), "{texts:?}");
    assert!(texts.contains(&("bind_with_starch", "no cause of this product prescribes it")), "{texts:?}");
    let water = tried(&bare, &json!({ "ingredients": [{ "ingredient": "water", "amount": 60, "unit": "%" }] }));
    assert_eq!(water["not_applied"], json!([{ "quantity": "water", "text": "the case gives no formula" }]));
}

#[test]
fn what_requirements_exclude_is_not_done() {
    let mut avoiding = case();
    avoiding["requirements"] = json!({ "avoid": ["skimmed_milk_powder"] });
    let answer = tried(&avoiding, &json!({ "actions": ["add_milk_solids"] }));
    let text = answer["not_applied"][0]["text"].as_str().unwrap();
    assert!(text.starts_with("the requirements exclude it: "), "{text}");
    assert_eq!(answer["applied"], json!([]));
}

#[test]
fn an_implausible_reading_and_too_much_taken_out_change_nothing() {
    let answer = tried(
        &case(),
        &json!({
            "readings": { "oven_temperature": { "value": 999, "unit": "Cel" } },
            "ingredients": [
                { "ingredient": "salt", "amount": 5, "unit": "kg", "how": "takes_out" },
                { "ingredient": "butter", "how": "takes_out" }
            ]
        }),
    );
    assert_eq!(answer["applied"], json!([]));
    assert_eq!(
        answer["not_applied"],
        json!([
            { "quantity": "oven_temperature", "text": "the value is outside the plausible range of the reading" },
            { "quantity": "salt", "text": "it would take out more than stands there" },
            { "quantity": "butter", "text": "there is none of it to take out" }
        ])
    );
    let still =
        answer["causes"].as_array().unwrap().iter().all(|cause| cause["change"].as_f64().unwrap().abs() < 1e-12);
    assert!(still && answer["leader"]["changed"] == false);
}

#[test]
fn every_fault_is_told_with_its_place() {
    let told: Vec<(String, String)> = faults(&json!({
        "readings": { "dough_temprature": { "value": 26, "unit": "Cel" } },
        "symptoms": [{ "symptom": "pale_crust", "certainty": 2 }],
        "ingredients": [
            { "ingredient": "watr", "amount": 2, "unit": "Cel" },
            { "ingredient": "water", "amount": -1, "unit": "kg", "how": "pours" },
            { "ingredient": "water", "unit": "kg" }
        ],
        "actions": ["colder_water", "cut_yeast", "cut_yeast"]
    }))
    .into_iter()
    .map(|fault| (fault.pointer, fault.detail))
    .collect();
    let told: Vec<(&str, &str)> = told.iter().map(|(pointer, detail)| (pointer.as_str(), detail.as_str())).collect();
    assert_eq!(
        told,
        [
            ("/changes/readings/dough_temprature", "unknown reading `dough_temprature`"),
            ("/changes/symptoms/0/certainty", "2 is not between 0 and 1"),
            ("/changes/ingredients/0/ingredient", "unknown ingredient `watr`"),
            ("/changes/ingredients/0/unit", "`Cel` is neither a mass nor a share of the flour"),
            ("/changes/ingredients/1/how", "unknown way `pours`"),
            ("/changes/ingredients/1/amount", "-1 is not at least 0"),
            ("/changes/ingredients/2", "`amount` is missing"),
            ("/changes/actions/0", "unknown action `colder_water`"),
            ("/changes/actions/2", "the action stands twice"),
        ]
    );
    let nothing = faults(&json!({}));
    assert_eq!((nothing[0].pointer.as_str(), nothing[0].detail.as_str()), ("/changes", "nothing is changed"));
}

#[test]
fn faults_of_the_case_are_told_at_their_places_in_the_request() {
    let mut faulty = case();
    faulty["product"] = json!("hamburger_bum");
    let Err(DocumentFaults::Faulty(told)) = request(&faulty, &json!({ "actions": ["nothing"] })) else {
        panic!("no fault")
    };
    let pointers: Vec<&str> = told.iter().map(|fault| fault.pointer.as_str()).collect();
    assert_eq!(pointers, ["/case/product", "/changes/actions/0"]);
}

#[test]
fn a_limit_that_is_not_stated_anew_stays() {
    let case = json!({ "product": "hamburger_bun", "symptoms": [{ "symptom": "hollow_under_crust" }],
        "readings": { "dough_temperature": { "value": 30, "unit": "Cel", "low": 10, "high": 28 } } });
    let read = |limits: Value| {
        let mut reading = json!({ "value": 22, "unit": "Cel" });
        reading.as_object_mut().unwrap().extend(limits.as_object().unwrap().clone());
        tried(&case, &json!({ "readings": { "dough_temperature": reading } }))["leader"]["after"].clone()
    };
    let both = read(json!({ "low": 10, "high": 28 }));
    assert_eq!(read(json!({})), both);
    assert_eq!(read(json!({ "high": 28 })), both);
    // A limit that contradicts the new one does not stay.
    assert_eq!(read(json!({ "low": 29 })), read(json!({ "low": 29, "high": 1000 })));
}

#[test]
fn a_changed_formula_is_read_anew() {
    let mut case = case();
    case["readings"]["water_on_flour"] = json!({ "value": 58, "unit": "%", "low": 55, "high": 64 });
    let drier =
        tried(&case, &json!({ "ingredients": [{ "ingredient": "water", "how": "doses", "amount": 50, "unit": "%" }] }));
    let (before, after) = applied(&drier, "water_on_flour");
    // The yeast brings some water, too.
    assert!(before == Some(58.0) && (after - 50.0).abs() < 0.1, "{after}");
    let salted =
        tried(&case, &json!({ "ingredients": [{ "ingredient": "salt", "how": "doses", "amount": 2, "unit": "%" }] }));
    let read = salted["applied"].as_array().unwrap().iter().any(|one| one["changes"]["reading"] == "water_on_flour");
    assert!(!read, "{salted:#}");
}
