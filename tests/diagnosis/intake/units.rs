//! Units that are made of two.

use super::read;

fn told(text: &str, product: &str) -> Vec<(&'static str, f64, &'static str)> {
    read(text, product).readings.into_iter().map(|one| (one.reading, one.value, one.unit)).collect()
}

#[test]
fn a_unit_is_not_cut_to_its_first_half() {
    for text in ["specific volume was 4200 ml/kg", "specific volume 4200 mL per kg", "specific volume: 4.2 l / kg"] {
        let told = told(text, "white_pan_bread");
        let [("specific_volume", value, "mL/g")] = told.as_slice() else { panic!("{text}: {told:?}") };
        assert!((value - 4.2).abs() < 1e-9, "{text}: {value}");
    }
    assert_eq!(told("water hardness 300 mg/l", "white_pan_bread"), [("water_hardness", 300.0, "mg/L")]);
    assert_eq!(told("gluten 24 mg/kg in the product", "gluten_free_cookie"), [("gluten_content", 24.0, "mg/kg")]);
    assert_eq!(told("24 ppm gluten", "gluten_free_cookie"), [("gluten_content", 24.0, "mg/kg")]);
}

#[test]
fn a_value_whose_unit_goes_on_unknown_is_no_value() {
    for text in [
        "dough temperature rose 2 °C/min",
        "dough temperature 2 °C per minute",
        "water hardness 30 mg/dl",
        "mixing 1400 min-1",
        "piece weight 60 g/m²",
    ] {
        let answer = read(text, "white_pan_bread");
        assert!(answer.readings.is_empty() && answer.values.is_empty(), "{text}: {:?}", answer.readings);
        assert!(!answer.not_understood.is_empty(), "{text}");
    }
}

#[test]
fn a_slash_between_two_values_is_no_part_of_a_unit() {
    let mut both = told("25 min / 200 °C in the oven", "white_pan_bread");
    both.sort_by_key(|(reading, ..)| *reading);
    assert_eq!(both, [("bake_time", 25.0, "min"), ("oven_temperature", 200.0, "Cel")]);
    assert_eq!(told("piece weight 60 g per bun", "hamburger_bun"), [("piece_weight", 60.0, "g")]);
}
