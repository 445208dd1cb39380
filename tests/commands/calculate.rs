//! `whybake calculate`

use serde_json::Value;
use whybake::calculations::all;

use crate::program::{run, run_with_input};

const WATER: [&str; 6] = [
    "calculate",
    "mixing_water_temperature",
    "dough_temperature=78.8[degF]",
    "flour_temperature=22Cel",
    "room_temperature=24",
    "friction_factor=12K",
];

#[test]
fn all_are_listed() {
    let list = run(&["calculate"]).success();
    for calculation in all() {
        assert!(list.contains(calculation.name), "{list}");
    }
    let json: Value = serde_json::from_str(&run(&["calculate", "--json"]).success()).unwrap();
    assert_eq!(json["calculations"].as_array().unwrap().len(), all().count());
}

#[test]
fn one_is_described_with_inputs_and_an_example() {
    let text = run(&["calculate", "ice_for_mixing_water"]).success();
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for part in [
        "tap_temperature (Cel): temperature of the tap water; 0 to 60",
        "default 0 (melting ice, as the trade's ice tables take it)",
        "- on_top_of_water: the ice comes on top",
        "Example, for --input {",
        "ice = 4.286 kg",
        "source: ice temperature table for bakers",
    ] {
        assert!(text.contains(part), "{part} is not in\n{text}");
    }
}

#[test]
fn inputs_on_the_command_line_carry_units() {
    let text = run(&WATER).success();
    assert!(
        text.starts_with("Mixing water temperature by the additive rule\n\n  water temperature = 20 °C\n"),
        "{text}"
    );
}

#[test]
fn json_is_what_the_service_answers() {
    let mut arguments = WATER.to_vec();
    arguments.push("--json");
    let given = run(&arguments).success();
    let inputs = r#"{"dough_temperature": {"value": 78.8, "unit": "[degF]"}, "flour_temperature": 22,
        "room_temperature": 24, "friction_factor": 12}"#;
    let read = run_with_input(&["calculate", "mixing_water_temperature", "--input", "-", "--json"], inputs).success();
    assert_eq!(given, read);
    let answer = whybake::calculations::find("mixing_water_temperature").unwrap().answer(inputs.as_bytes()).unwrap();
    assert_eq!(given, serde_json::to_string(&answer).unwrap());
}

#[test]
fn compositions_and_lists_are_json() {
    let composition = r#"composition={"water": 25, "sucrose": 25, "starch": 30, "protein": 5, "fat": 15}"#;
    let text = run(&["calculate", "water_activity", composition]).success();
    assert!(text.contains("water activity = 0."), "{text}");
    let broken = run(&["calculate", "water_activity", "composition={"]);
    assert_eq!(broken.code, Some(2));
    assert!(broken.complaints.starts_with("`composition` is not JSON: EOF"), "{}", broken.complaints);
}

#[test]
fn every_fault_of_the_inputs_stands_on_a_line() {
    let run = run(&["calculate", "bake_loss", "dough=450mL", "baked=heavy", "bake=2", "baked=3"]);
    assert_eq!((run.code, run.output.as_str()), (Some(1), ""));
    let expected = "\
/baked: `baked` stands twice
/bake: unknown member `bake` (help: did you mean `baked`?)
/dough/unit: `mL` measures volume, but mass (`g`) is wanted (help: give it in `g` or a unit of that kind)
/baked: a number in `g`, or an object with `value` and `unit`, is wanted, this is a string
";
    let sorted = |text: &str| {
        let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
        lines.sort();
        lines
    };
    assert_eq!(sorted(&run.complaints), sorted(expected));
}

#[test]
fn unknown_names_and_what_is_no_input_are_usage_errors() {
    let unknown = run(&["calculate", "dew_poimt"]);
    assert_eq!(unknown.code, Some(2));
    assert_eq!(unknown.complaints, "unknown calculation `dew_poimt` (help: did you mean `dew_point`?)\n");
    let no_input = run(&["calculate", "dew_point", "28", "70"]);
    assert_eq!(no_input.code, Some(2));
    assert_eq!(
        no_input.complaints,
        "`28` is no input (help: write `name=value`)\n`70` is no input (help: write `name=value`)\n"
    );
    assert_eq!(run(&["calculate", "dew_point", "dry_bulb=2", "--input", "-"]).code, Some(2));
}

#[test]
fn a_file_that_is_not_there_is_a_failure() {
    let run = run(&["calculate", "dew_point", "--input", "no/such/inputs.json"]);
    assert_eq!((run.code, run.output.as_str()), (Some(4), ""));
    assert!(run.complaints.starts_with("no/such/inputs.json: cannot be read: "), "{}", run.complaints);
}
