//! Faults of inputs: all at once, each with its place and what to do about it.

use whybake::calculations::find;
use whybake::json::DocumentFaults;

/// `pointer code: detail -- help` of every fault.
fn told(name: &str, inputs: &str) -> Vec<String> {
    match find(name).unwrap().answer(inputs.as_bytes()) {
        Err(DocumentFaults::Faulty(faults)) => faults
            .iter()
            .map(|fault| {
                let help = fault.help.as_ref().map_or_else(String::new, |help| format!(" -- {help}"));
                format!("{} {:?}: {}{help}", fault.pointer, fault.code, fault.detail)
            })
            .collect(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn all_faults_are_told_at_once() {
    let inputs = r#"{"water": {"value": 30, "unit": "Cel"}, "tap_temprature": 18, "wanted_temperature": "4",
        "ice_temperature": {"value": -4, "unit": "celsius"}, "way": "on_top", "tap_temperature": 500}"#;
    assert_eq!(
        told("ice_for_mixing_water", inputs),
        [
            "/tap_temprature UnknownMember: unknown member `tap_temprature` -- did you mean `tap_temperature`?",
            "/water/unit WrongKindOfUnit: `Cel` measures temperature, but mass (`kg`) is wanted -- give it in `kg` or a unit of that kind",
            "/tap_temperature OutOfRange: 500 Cel is not between 0 and 60 Cel",
            "/wanted_temperature WrongType: a number in `Cel`, or an object with `value` and `unit`, is wanted, this is a string",
            "/ice_temperature/unit UnknownUnit: unknown unit `celsius` -- write `Cel`",
            "/way UnknownName: unknown word `on_top` -- the words are `in_place_of_water`, `on_top_of_water`",
        ]
    );
}

#[test]
fn a_missing_input_tells_what_it_is() {
    assert_eq!(
        told("dew_point", "{}"),
        [
            " Missing: `dry_bulb` is missing -- air temperature, in `Cel`",
            " Missing: `relative_humidity` is missing -- relative humidity, in `%`",
        ]
    );
}

#[test]
fn what_cannot_be_computed_points_to_the_input_of_the_caller() {
    assert_eq!(
        told("bake_loss", r#"{"dough": 400, "baked": 450}"#),
        ["/baked Impossible: must not be heavier than its dough (400), is 450"]
    );
    assert_eq!(
        told(
            "flour_blend_for_protein",
            r#"{"lots": [{"name": "a", "protein": 12, "moisture": 14, "parts": 1}, {"name": "b", "protein": 9, "moisture": 14, "parts": 0}], "target_protein": 11}"#
        ),
        ["/lots/1/parts Impossible: `0` is not above zero"]
    );
    assert_eq!(
        told("relative_humidity", r#"{"dry_bulb": 30, "wet_bulb": 31}"#),
        ["/wet_bulb Impossible: `31` Cel is above the dry bulb of `30` Cel"]
    );
    assert_eq!(
        told("water_activity", r#"{"composition": {"sucrose": 90, "fat": 50}}"#),
        [
            "/composition/water Impossible: `0` is not above zero",
            "/composition Impossible: the parts of 100 g add up to `140.0` g",
        ]
    );
    assert_eq!(
        told("iodine_value", r#"{"fatty_acids": [{"acid": "18:1", "share": 40}, {"acid": "oleic", "share": 4}]}"#),
        ["/fatty_acids/1/acid Impossible: `oleic` is not a shorthand such as `18:1`"]
    );
    assert_eq!(
        told("acid_for_soda", r#"{"soda": 1}"#),
        ["/acid Impossible: neither the acid nor its neutralising value is given"]
    );
}

#[test]
fn rows_are_counted_and_read_one_by_one() {
    let rows = vec![r#"{"parts": 1, "falling_number": 300}"#; 31].join(",");
    assert_eq!(
        told("falling_number_of_blend", &format!(r#"{{"lots": [{rows}]}}"#)),
        ["/lots OutOfRange: 31 rows are given, 1 to 30 are taken"]
    );
    assert_eq!(
        told("falling_number_of_blend", r#"{"lots": [{"parts": 1, "falling_number": 20}, 7]}"#),
        [
            "/lots/0/falling_number OutOfRange: 20 s is not between 60 and 900 s",
            "/lots/1 WrongType: an object is wanted, this is a number",
        ]
    );
    assert_eq!(
        told("falling_number_of_blend", r#"{"lots": 7}"#),
        ["/lots WrongType: an array is wanted, this is a number"]
    );
}

#[test]
fn text_that_is_no_json_is_malformed() {
    let faults = find("dew_point").unwrap().answer(b"{").unwrap_err();
    assert_eq!(faults.to_string(), "this is not JSON: the text ends before the document does, at line 1 column 1");
}

#[test]
fn a_hostile_object_is_told_in_bounds() {
    let members: Vec<String> = (0..50_000).map(|number| format!("\"member_{number}\": 1")).collect();
    assert_eq!(told("dew_point", &format!("{{{}}}", members.join(","))).len(), 1_000);
}
