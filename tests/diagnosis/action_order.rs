//! In which order to act.

use std::collections::BTreeSet;

use serde_json::{Value, json};

use whybake::case::Case;
use whybake::diagnosis::Diagnostician;
use whybake::rules::{RuleFiles, load};

use crate::support::{answer, probability};

/// An invented bun: hollow, from a hot dough.
fn hot_dough(requirements: Value) -> Value {
    answer(&json!({
        "product": "hamburger_bun",
        "symptoms": [{ "symptom": "hollow_under_crust" }, { "symptom": "open_grain" }],
        "readings": { "dough_temperature": { "value": 31.5, "unit": "Cel" } },
        "requirements": requirements
    }))
}

fn actions(answer: &Value) -> &Vec<Value> {
    answer["action_order"]["actions"].as_array().unwrap()
}

fn named(answer: &Value) -> Vec<&str> {
    actions(answer).iter().map(|one| one["action"].as_str().unwrap()).collect()
}

fn number(item: &Value, member: &str) -> f64 {
    item[member].as_f64().unwrap()
}

#[test]
fn each_action_stands_once_with_the_causes_that_it_mends() {
    let answer = hot_dough(json!({}));
    let order = actions(&answer);
    assert!((3..=8).contains(&order.len()));
    assert_eq!(named(&answer).into_iter().collect::<BTreeSet<_>>().len(), order.len());
    for action in order {
        let causes = action["causes"].as_array().unwrap();
        assert!(!causes.is_empty());
        for cause in causes {
            let id = cause["cause"].as_str().unwrap();
            assert!((number(cause, "probability") - probability(&answer, id)).abs() < 1e-12);
            // One cause alone is mended with its probability times that of the action; several together at least so.
            assert!(number(action, "mends") >= number(cause, "probability") * number(cause, "works") - 1e-12);
        }
        let bound: f64 = causes.iter().map(|cause| number(cause, "probability") * number(cause, "works")).sum();
        assert!(number(action, "mends") <= bound + 1e-12);
    }
    assert_eq!(order[0]["action"], "colder_mixing_water");
    assert_eq!(order[0]["quantities_under"], "dough_too_warm");
}

#[test]
fn the_benefit_falls_from_place_to_place_and_follows_its_formula() {
    let answer = hot_dough(json!({}));
    let order = actions(&answer);
    let benefits: Vec<f64> = order.iter().map(|one| number(one, "benefit_per_hour")).collect();
    assert!(benefits.windows(2).all(|pair| pair[1] <= pair[0] + 1e-12), "{benefits:?}");
    for action in order {
        let seen = action["may_bring"].as_array().unwrap().iter().any(|one| one["already_seen"] == true);
        let half = if seen { 0.5 } else { 1.0 };
        let expected = 60.0 * number(action, "adds") / number(action, "expense_minutes") * half;
        assert!((number(action, "benefit_per_hour") - expected).abs() < 1e-9);
        assert!(number(action, "adds") <= number(action, "mends") + 1e-12);
    }
}

#[test]
fn what_is_expected_grows_with_every_action_and_some_is_sooner_than_all() {
    let answer = hot_dough(json!({}));
    let after = answer["action_order"]["after"].as_array().unwrap();
    assert_eq!(after.iter().map(|one| one["actions"].as_u64().unwrap()).collect::<Vec<_>>(), [1, 2, 3]);
    let first = &actions(&answer)[0];
    assert!((number(&after[0], "one_cause_gone") - number(first, "mends")).abs() < 1e-12);
    for pair in after.windows(2) {
        assert!(number(&pair[1], "one_cause_gone") >= number(&pair[0], "one_cause_gone"));
        assert!(number(&pair[1], "all_causes_gone") >= number(&pair[0], "all_causes_gone"));
    }
    for one in after {
        assert!(number(one, "all_causes_gone") <= number(one, "one_cause_gone") + 1e-12);
    }
}

/// Two causes of one symptom; what mends the likelier one brings in butter, and has a replacement. All numbers are simple.
const SMALL: [(&str, &str); 8] = [
    ("pack.rhai", "pack(\"small\").title(\"Small\").version(\"1\");"),
    ("scales.rhai", "cost_word(\"PURCHASE\", 200); waste_word(\"ONE_BATCH\", 1);"),
    ("requirements.rhai", "allergen(\"milk\").title(\"Milk\");"),
    ("products.rhai", "family(\"buns\").title(\"Buns\"); product(\"bun\").title(\"Bun\").family(buns);"),
    ("ingredients.rhai", "ingredient(\"butter\").title(\"Butter\").role(\"fat\").brings(milk);"),
    (
        "symptoms.rhai",
        "symptom(\"hole\").title(\"Hole\").description(\"A hole.\").products(buns).leak(0.01);
         symptom(\"pale\").title(\"Pale\").description(\"Pale.\").products(buns).leak(0.01);",
    ),
    (
        "actions.rhai",
        "action(\"butter_in\").title(\"Butter\").text(\"Put butter in.\").effort(40).cost(PURCHASE).waste(ONE_BATCH).uses(butter).instead(oil_in);
         action(\"oil_in\").title(\"Oil\").text(\"Put oil in.\").effort(50);
         action(\"slow_down\").title(\"Slow\").text(\"Run slower.\").effort(30).waste(0).may_show(pale);",
    ),
    (
        "buns.rhai",
        "cause(\"dry\").title(\"Dry\").mechanism(\"Too dry.\").products(buns).prior(0.3).shows(hole, 0.5).shows(pale, 0.1).action(butter_in, 0.5);
         cause(\"fast\").title(\"Fast\").mechanism(\"Too fast.\").products(buns).prior(0.1).shows(hole, 0.5).shows(pale, 0.1).action(slow_down, 0.8);",
    ),
];

fn small(symptoms: &Value, avoid: &Value) -> Value {
    answer_by(&SMALL, &json!({ "product": "bun", "symptoms": symptoms, "requirements": { "avoid": avoid } }))
}

/// The answer to a case by the rules of some files.
fn answer_by(files: &[(&str, &str)], case: &Value) -> Value {
    let mut pack = RuleFiles::default();
    files.iter().for_each(|(path, text)| pack.insert(path, text));
    let diagnostician = Diagnostician::new(load(&pack).unwrap().knowledge).unwrap();
    let case = Case::parse(case.to_string().as_bytes(), diagnostician.knowledge()).unwrap();
    serde_json::to_value(diagnostician.diagnose(case).unwrap()).unwrap()
}

#[test]
fn effort_cost_and_waste_count_and_an_excluded_action_gives_its_place_to_its_replacement() {
    let hole = json!([{ "symptom": "hole" }]);
    let free = small(&hole, &json!([]));
    // 330 minutes for 0.5 of the likelier cause, 60 minutes for 0.8 of the other.
    assert_eq!(named(&free), ["slow_down", "butter_in"]);
    let butter = &actions(&free)[1];
    assert_eq!((number(butter, "expense_minutes"), &butter["cost"]), (330.0, &json!("PURCHASE")));
    assert!((number(butter, "mends") - 0.5 * probability(&free, "dry")).abs() < 1e-12);

    let without_milk = small(&hole, &json!(["milk"]));
    assert_eq!(named(&without_milk), ["oil_in", "slow_down"]);
    let oil = &actions(&without_milk)[0];
    assert_eq!(
        (&oil["instead_of"], &oil["cost"], &oil["waste_batches"]),
        (&json!("butter_in"), &json!(null), &json!(null))
    );
    assert_eq!((number(oil, "expense_minutes"), number(oil, "mends")), (80.0, number(butter, "mends")));
}

#[test]
fn an_action_that_can_bring_what_is_seen_says_so_and_counts_half() {
    let slow = |symptoms: &Value| {
        let answer = small(symptoms, &json!([]));
        actions(&answer).iter().find(|one| one["action"] == "slow_down").unwrap().clone()
    };
    let unseen = slow(&json!([{ "symptom": "hole" }]));
    assert_eq!(unseen["may_bring"], json!([{ "symptom": "pale", "already_seen": false }]));
    assert!((number(&unseen, "benefit_per_hour") - number(&unseen, "adds")).abs() < 1e-12);
    let seen = slow(&json!([{ "symptom": "hole" }, { "symptom": "pale" }]));
    assert_eq!(seen["may_bring"], json!([{ "symptom": "pale", "already_seen": true }]));
    assert!((number(&seen, "benefit_per_hour") - 0.5 * number(&seen, "adds")).abs() < 1e-12);
}

#[test]
fn where_nothing_is_known_the_common_causes_are_acted_on() {
    let answer = answer(&json!({ "product": "hamburger_bun" }));
    assert!(!actions(&answer).is_empty());
    assert!(answer["action_order"]["causes_left_out"].as_u64().unwrap() > 0);
}

/// Four causes of one symptom; each action but the last undoes another one.
const OPPOSED: [(&str, &str); 7] = [
    ("pack.rhai", "pack(\"opposed\").title(\"Opposed\").version(\"1\");"),
    ("products.rhai", "family(\"buns\").title(\"Buns\"); product(\"bun\").title(\"Bun\").family(buns);"),
    ("ingredients.rhai", "ingredient(\"wet\").title(\"Water\").role(\"water\");"),
    (
        "readings.rhai",
        "reading(\"bake_time\").title(\"bake time\").unit(\"min\").plausible(1, 90).window(buns, 10, 14).method(\"clock\").effort(1);",
    ),
    ("symptoms.rhai", "symptom(\"flat\").title(\"Flat\").description(\"Flat.\").products(buns).leak(0.01);"),
    (
        "actions.rhai",
        "action(\"bake_longer\").title(\"Longer\").text(\"Bake longer.\").effort(10);
         action(\"bake_shorter\").title(\"Shorter\").text(\"Bake shorter.\").effort(10);
         action(\"add_water\").title(\"More water\").text(\"Add water.\").effort(10);
         action(\"cut_water\").title(\"Less water\").text(\"Cut water.\").effort(10);",
    ),
    (
        "buns.rhai",
        "cause(\"raw\").title(\"Raw\").mechanism(\"Raw.\").products(buns).prior(0.3).shows(flat, 0.5)
             .action(bake_longer.set(\"bake_time\", 14, \"min\"), 0.8);
         cause(\"dried\").title(\"Dried\").mechanism(\"Dried.\").products(buns).prior(0.2).shows(flat, 0.5)
             .action(bake_shorter.set(\"bake_time\", 11, \"min\"), 0.8);
         cause(\"stiff\").title(\"Stiff\").mechanism(\"Stiff.\").products(buns).prior(0.25).shows(flat, 0.5)
             .action(add_water.set(\"water_to_add\", 2, \"%\", adds(wet)), 0.8);
         cause(\"slack\").title(\"Slack\").mechanism(\"Slack.\").products(buns).prior(0.15).shows(flat, 0.5)
             .action(cut_water.set(\"water_to_take_out\", 3, \"%\", takes_out(wet)), 0.8);",
    ),
];

#[test]
fn an_action_that_undoes_an_earlier_one_says_in_whose_place_it_comes_and_what_stands_already_says_so() {
    let case = json!({
        "product": "bun", "symptoms": [{ "symptom": "flat" }], "readings": { "bake_time": { "value": 14, "unit": "min" } }
    });
    let answer = answer_by(&OPPOSED, &case);
    assert_eq!(named(&answer), ["bake_longer", "add_water", "bake_shorter", "cut_water"]);
    let displaced: Vec<&Value> = actions(&answer).iter().map(|action| &action["in_place_of"]).collect();
    assert_eq!(displaced[..2], [&Value::Null, &Value::Null]);
    assert_eq!(displaced[2], &json!([{ "action": "bake_longer", "both_change": "bake_time" }]));
    assert_eq!(displaced[3], &json!([{ "action": "add_water", "both_change": "wet" }]));
    let quantity = |cause: &str| {
        let causes = answer["causes"].as_array().unwrap();
        causes.iter().find(|own| own["cause"] == cause).unwrap()["actions"][0]["quantities"][0].clone()
    };
    assert_eq!(quantity("raw")["as_now"], true);
    assert_eq!(quantity("dried")["as_now"], Value::Null);
}

/// What keeps harm from people, at a high price, for a cause that is not the most probable one.
const HARMFUL: (&str, &str) = (
    "harm.rhai",
    "cause(\"spoilt\").title(\"Spoilt\").mechanism(\"Spoilt.\").products(buns).prior(0.2).shows(hole, 0.4).action(hold, 0.1);",
);
const HOLD: &str = "action(\"hold\").title(\"Hold\").text(\"Hold the lot.\").effort(600).at_once();";

#[test]
fn what_keeps_harm_from_people_comes_first_where_its_cause_is_probable() {
    let case = json!({ "product": "bun", "symptoms": [{ "symptom": "hole" }] });
    let with_prior = |prior: &str| {
        let (path, text) = HARMFUL;
        let harm = text.replace("0.2", prior);
        let files = [&SMALL[..], &[("holding/actions.rhai", HOLD), (path, harm.as_str())]].concat();
        answer_by(&files, &case)
    };
    let answer = with_prior("0.2");
    assert_ne!(answer["causes"][0]["cause"], "spoilt");
    assert_eq!((&actions(&answer)[0]["action"], &actions(&answer)[0]["at_once"]), (&json!("hold"), &json!(true)));
    // Hardly probable, it has its place by its benefit, or none.
    let answer = with_prior("0.02");
    assert_ne!(actions(&answer)[0]["action"], "hold");
}

#[test]
fn a_cause_that_a_reading_excludes_is_not_acted_on() {
    let case = |temperature: f64| {
        answer(&json!({
            "product": "hamburger_bun",
            "symptoms": [{ "symptom": "hollow_under_crust" }],
            "readings": { "dough_temperature": { "value": temperature, "unit": "Cel" } }
        }))
    };
    assert!(named(&case(31.0)).contains(&"colder_mixing_water"));
    let excluded = case(26.5);
    let mends =
        |action: &Value| action["causes"].as_array().unwrap().iter().any(|cause| cause["cause"] == "dough_too_warm");
    assert!(!actions(&excluded).iter().any(mends));
}

#[test]
fn a_symptom_that_a_reading_raises_is_something_known() {
    let case =
        json!({ "product": "white_pan_bread", "readings": { "specific_volume": { "value": 3, "unit": "mL/g" } } });
    let answer = answer(&case);
    assert_eq!(answer["raised"][0]["symptom"], "low_volume");
    assert!(!answer["summary"].as_str().unwrap().contains("Nothing is known"));
}
