//! What holds for every case.

use proptest::prelude::*;
use serde_json::json;

use crate::support::{answer, answer_text, probability};

#[test]
fn the_order_of_members_does_not_matter() {
    let one = r#"{"product":"hamburger_bun","facts":{"dough_waits_before_divider":true},"symptoms":[{"symptom":"low_volume"},{"symptom":"pale_crust"}]}"#;
    let other = r#"{"symptoms":[{"symptom":"pale_crust"},{"symptom":"low_volume"}],"facts":{"dough_waits_before_divider":true},"product":"hamburger_bun"}"#;
    assert_eq!(answer_text(one), answer_text(other));
}

#[test]
fn a_certainty_of_one_half_tells_nothing_of_the_causes() {
    let nothing = answer(&json!({"product": "hamburger_bun"}));
    let even = answer(&json!({"product": "hamburger_bun", "symptoms": [{"symptom": "low_volume", "certainty": 0.5}]}));
    let difference = probability(&nothing, "dough_too_warm") - probability(&even, "dough_too_warm");
    assert!(difference.abs() < 1e-12);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_hotter_dough_never_makes_the_hot_dough_less_probable(low in 20.0_f64..35.0, step in 0.0_f64..5.0) {
        let at = |value: f64| {
            let case = json!({"product": "hamburger_bun", "symptoms": [{"symptom": "hollow_under_crust"}],
                "readings": {"dough_temperature": {"value": value, "unit": "Cel"}}});
            probability(&answer(&case), "dough_too_warm")
        };
        prop_assert!(at(low + step) >= at(low) - 1e-12);
    }

    #[test]
    fn probabilities_are_probabilities(certainty in 0.0_f64..=1.0, humidity in 0.0_f64..=100.0) {
        let case = json!({"product": "white_pan_bread", "symptoms": [{"symptom": "low_volume", "certainty": certainty}],
            "readings": {"proof_humidity": {"value": humidity, "unit": "%"}}});
        let answer = answer(&case);
        for list in ["causes", "other_causes"] {
            for item in answer[list].as_array().unwrap() {
                let probability = item["probability"].as_f64().unwrap();
                prop_assert!(probability > 0.0 && probability < 1.0);
            }
        }
    }
}
