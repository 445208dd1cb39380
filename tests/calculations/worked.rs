//! Worked examples: by hand, or published where the science has them.

use serde_json::{Value, json};
use whybake::calculations::find;

fn figures(name: &str, inputs: &Value) -> Value {
    let answer = find(name).unwrap().answer(inputs.to_string().as_bytes());
    serde_json::to_value(answer.unwrap()).unwrap()
}

/// The value of a figure, the first of its name.
#[track_caller]
fn assert_figure(answer: &Value, name: &str, expected: f64, tolerance: f64) {
    let figures = answer["figures"].as_array().unwrap();
    let found = figures.iter().find(|figure| figure["name"] == name).unwrap_or_else(|| panic!("{answer}"));
    let value = found["value"].as_f64().unwrap();
    assert!((value - expected).abs() <= tolerance, "{name} is {value}, not {expected}");
}

#[test]
fn water_by_the_additive_rule() {
    // By hand: 3 × 26 − 22 − 24 − 12 = 20; with a sponge of 25 °C it is 4 × 26 − 22 − 24 − 25 − 12 = 21.
    let mut inputs =
        json!({"dough_temperature": 26, "flour_temperature": 22, "room_temperature": 24, "friction_factor": 12});
    assert_figure(&figures("mixing_water_temperature", &inputs), "water_temperature", 20.0, 1e-9);
    inputs["preferment_temperature"] = json!(25);
    assert_figure(&figures("mixing_water_temperature", &inputs), "water_temperature", 21.0, 1e-9);
}

#[test]
fn units_are_converted_and_differences_are_no_points_on_a_scale() {
    // 78.8 °F is 26 °C, 71.6 °F is 22 °C, 75.2 °F is 24 °C, a friction factor of 21.6 °F is 12 K.
    let fahrenheit = |value: f64| json!({"value": value, "unit": "[degF]"});
    let inputs = json!({
        "dough_temperature": fahrenheit(78.8), "flour_temperature": fahrenheit(71.6),
        "room_temperature": fahrenheit(75.2), "friction_factor": fahrenheit(21.6)
    });
    assert_figure(&figures("mixing_water_temperature", &inputs), "water_temperature", 20.0, 1e-9);
}

#[test]
fn a_figure_outside_its_domain_says_so() {
    let inputs =
        json!({"dough_temperature": 22, "flour_temperature": 28, "room_temperature": 30, "friction_factor": 12});
    let answer = figures("mixing_water_temperature", &inputs);
    assert_figure(&answer, "water_temperature", -4.0, 1e-9);
    let remark = answer["figures"][0]["outside_domain"][0].as_str().unwrap();
    assert!(remark.contains("use ice"), "{remark}");
}

#[test]
fn ice_in_place_of_water() {
    // By hand: 30 × (18 − 4) / (18 + 80) = 4.2857 kg of ice.
    let inputs = json!({"water": 30, "tap_temperature": 18, "wanted_temperature": 4});
    let answer = figures("ice_for_mixing_water", &inputs);
    assert_figure(&answer, "ice", 30.0 * 14.0 / 98.0, 1e-9);
    assert_figure(&answer, "tap_water", 30.0 - 30.0 * 14.0 / 98.0, 1e-9);
    let warm = figures("ice_for_mixing_water", &json!({"water": 30, "tap_temperature": 18, "wanted_temperature": 20}));
    assert_figure(&warm, "ice", 0.0, 0.0);
    assert!(warm["remarks"][0].as_str().unwrap().contains("without ice"));
}

#[test]
fn leavening_in_balance() {
    // 10 g of soda take 10 / 0.72 = 13.89 g of SAPP (neutralising value 72); half of it leaves 5 g of soda.
    let whole = json!({"soda": {"value": 10, "unit": "g"}, "acid": "sapp"});
    assert_figure(&figures("acid_for_soda", &whole), "acid", 0.01 / 0.72, 1e-12);
    let half = json!({"soda": 10, "acids": [{"mass": 6.944_444_444_444_445, "acid": "sapp"}], "product": 1000});
    let answer = figures("leavening_balance", &half);
    assert_figure(&answer, "residual_soda", 5.0, 1e-9);
    assert_figure(&answer, "residual_soda_share", 0.5, 1e-9);
    assert!(answer["remarks"].to_string().contains("soapy"));
}

#[test]
fn the_food_code_is_quoted_and_nothing_is_called_safe() {
    let inputs = json!({"ph": 5.2, "water_activity": 0.93, "treatment": "not_heat_treated"});
    let answer = figures("food_code_category", &inputs);
    assert_eq!(answer["figures"], json!([]));
    let first = answer["remarks"][0].as_str().unwrap();
    assert_eq!(first, "Table B, water activity above 0.92, pH above 5.0: product assessment required");
    assert!(answer["remarks"].to_string().contains("not a finding that a product is safe"));
}

#[test]
fn a_fat_blend_keeps_its_limits() {
    // The target is 55 % palm stearin by construction: 0.55 × (70, 50, 32) = (38.5, 27.5, 17.6).
    let mut inputs: Value = serde_json::from_str(find("fat_blend_for_curve").unwrap().example).unwrap();
    for (place, solids) in [38.5, 27.5, 17.6].into_iter().enumerate() {
        inputs["target"][place]["solids"] = json!(solids);
    }
    let answer = figures("fat_blend_for_curve", &inputs);
    assert_figure(&answer, "share", 55.0, 1e-3);
    assert_figure(&answer, "root_mean_square_error", 0.0, 1e-3);
    inputs["fats"][0]["trans"] = Value::Null;
    inputs["fats"][0].as_object_mut().unwrap().remove("trans");
    let answer = figures("fat_blend_for_curve", &inputs);
    assert!(answer["remarks"].to_string().contains("palm stearin is left out"), "{answer}");
}

#[test]
fn pieces_for_a_trial() {
    // Cohen 1992, table 2: half a standard deviation takes 64 pieces of each, at 5 % and 80 %.
    let answer = figures("sample_size_for_difference", &json!({"difference": 0.1, "standard_deviation": 0.2}));
    assert_figure(&answer, "pieces", 64.0, 0.0);
    assert_figure(&answer, "effect_size", 0.5, 1e-12);
    // By hand: t of 126 degrees of freedom at 2.5 % is 1.979; 1.979 × 0.2 × √(2/64) = 0.06997.
    assert_figure(&answer, "significant_difference", 0.06997, 5e-5);
    // By hand: h = 2 asin √0.5 − 2 asin √0.25 = π/2 − π/3 = π/6; 2 (1.95996 + 0.84162)² / h² = 57.26.
    let answer = figures("sample_size_for_proportions", &json!({"now": 50, "wanted": 25}));
    assert_figure(&answer, "pieces", 58.0, 0.0);
    assert_figure(&answer, "effect_size", std::f64::consts::FRAC_PI_6, 1e-12);
    // By hand: π/2 − 1.95996 √(2/58) = 1.20684; sin² (1.20684 / 2) = 0.32207.
    assert_figure(&answer, "significant_share", 32.207, 0.01);
    let answer = figures("detectable_difference", &json!({"pieces": 64, "standard_deviation": 2}));
    assert_figure(&answer, "difference", 1.0, 0.01);
    let answer = figures("detectable_proportion", &json!({"now": 50, "pieces": 57.26}));
    assert_figure(&answer, "wanted", 25.0, 0.01);
}

#[test]
fn runs_of_a_factorial_design() {
    let answer = figures("factorial_design", &json!({"factors": 4, "fraction": "half", "seed": 3}));
    assert_figure(&answer, "runs", 8.0, 0.0);
    let labels: Vec<&str> = answer["figures"].as_array().unwrap().iter().filter_map(|own| own["of"].as_str()).collect();
    assert_eq!(labels, ["(1)", "ad", "bd", "ab", "cd", "ac", "bc", "abcd"]);
    assert_eq!(answer["remarks"][0], "2^(4-1), resolution IV, D = ABC, I = ABCD");
}
