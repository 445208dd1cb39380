//! Which values of a text were measured, and what they are of.

use super::{check_draft, read};

fn told(text: &str, product: &str) -> Vec<(&'static str, f64)> {
    let answer = read(text, product);
    check_draft(&answer, text);
    answer.readings.into_iter().map(|one| (one.reading, one.value)).collect()
}

#[test]
fn a_wanted_value_is_not_the_measured_one_beside_it() {
    for text in [
        "the dough temperature target is 26 °C, we had 31 °C",
        "dough temperature target 26 °C, actual 31 °C",
        "dough temperature: target 26 °C, actual 31 °C",
        "dough temperature was 31 °C, target 26 °C",
        "dough temperature 31 °C (26 °C is the target)",
        "dough temperature should be 26 °C but it was 31 °C",
        "dough temperature 31 °C against 26 °C",
        "dough temperature was not 26 °C but 31 °C",
        "the dough temperature was 31 °C, not 26 °C",
    ] {
        assert_eq!(told(text, "hamburger_bun"), [("dough_temperature", 31.0)], "{text}");
    }
}

#[test]
fn wanted_denied_and_limiting_values_are_not_taken_as_measured() {
    for text in [
        "dough temperature should be 26 °C",
        "dough temperature must be 26 °C",
        "26 °C is the target for the dough temperature",
        "dough temperature was not 31 °C",
        "the dough temperature never reached 26 °C",
        "dough temperature of 26 °C was not reached",
        "dough temperature under 30 °C",
        "dough temperature < 30 °C",
        "dough temperature higher than 30 °C",
        "dough temperature at least 24 °C",
        "dough temperature 31 °C or more",
        "dough temperature 28 °C at most",
        "dough temperature ± 2 °C",
        "dough temperature 20 °C to 32 °C",
        "dough temperature between 30 and 32 °C",
        "dough temperature 5 °C too high",
        "dough temperature rose 5 °C",
        "oven temperature not above 240 °C",
        "proof time 10 min longer",
        "proof time 1/2 h",
    ] {
        assert_eq!(told(text, "hamburger_bun"), [], "{text}");
        let values = read(text, "hamburger_bun").values;
        assert!(!values.is_empty(), "{text}");
    }
}

#[test]
fn a_tolerance_leaves_its_value_as_it_is() {
    for text in [
        "dough temperature was 31 ± 1 °C",
        "dough temperature was 31 °C ± 1 °C",
        "dough temperature 31 °C +/- 1",
        "dough temperature 31±1 °C",
    ] {
        let answer = read(text, "hamburger_bun");
        assert_eq!(told(text, "hamburger_bun"), [("dough_temperature", 31.0)], "{text}");
        assert!(answer.values.is_empty(), "{text}: {:?}", answer.values);
    }
}

#[test]
fn a_label_before_a_colon_names_the_value_behind_it() {
    assert_eq!(told("dough temperature: 31 °C", "hamburger_bun"), [("dough_temperature", 31.0)]);
    assert_eq!(told("dough temperature (31 °C), pale", "hamburger_bun"), [("dough_temperature", 31.0)]);
    assert_eq!(told("dough ph: 5.4", "hamburger_bun"), [("dough_ph", 5.4)]);
    // The label of a list is none of a value that has words of its own.
    assert_eq!(told("proofer: dough 31 °C", "hamburger_bun"), [("dough_temperature", 31.0)]);
}

#[test]
fn a_decimal_point_without_a_zero_before_it_is_read() {
    assert_eq!(told("water activity .85", "wire_cut_cookie"), [("water_activity", 0.85)]);
    assert_eq!(told("aw ,85", "wire_cut_cookie"), [("water_activity", 0.85)]);
    let values = read("bake loss .5 %", "hamburger_bun").values;
    assert!(values.iter().all(|value| (value.value - 0.5).abs() < 1e-12), "{values:?}");
    assert_eq!(told("the loss was bad.5 buns", "hamburger_bun"), []);
}

#[test]
fn hours_and_minutes_are_one_value() {
    for text in ["proof time 1 h 30 min", "proof time 1h 30min", "proof time 1 hour and 30 minutes"] {
        assert_eq!(told(text, "hamburger_bun"), [("proof_time", 90.0)], "{text}");
    }
    assert_eq!(told("proof 1 h and 20 min bake", "hamburger_bun"), [("proof_time", 60.0), ("bake_time", 20.0)]);
}

#[test]
fn a_clock_time_is_no_duration() {
    assert!(read("at 02:40 h the proofer stopped", "hamburger_bun").values.is_empty());
}

#[test]
fn what_flour_analyses_call_protein_is_the_protein_of_the_flour() {
    for product in ["hamburger_bun", "pie_crust", "wire_cut_cookie"] {
        assert_eq!(told("protein is 15 %", product), [("flour_protein", 15.0)], "{product}");
    }
    let stronger = told("protein of the stronger flour 15 %", "hamburger_bun");
    assert_eq!(stronger, [("strong_flour_protein", 15.0)]);
}
