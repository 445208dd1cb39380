//! Faults of requests: all at once, each with its place.

use serde_json::{Value, json};
use whybake::json::DocumentFaults;
use whybake::trial_sheet::TrialRequest;

use crate::small_pack::{RULES, try_plan, with};

/// `pointer: detail -- help` of every fault.
#[track_caller]
fn told(request: &Value) -> Vec<String> {
    let faults = try_plan(request).unwrap_err();
    let line = |fault: &whybake::case::Fault| {
        let help = fault.help.as_ref().map_or_else(String::new, |help| format!(" -- {help}"));
        format!("{}: {}{help}", fault.pointer, fault.detail)
    };
    faults.iter().map(line).collect()
}

#[test]
fn all_faults_of_a_request_are_told_at_once() {
    let request = json!({
        "case": {"product": "bum", "symptoms": [{"symptom": "flatt"}]},
        "batch": {"mass": {"value": 20, "unit": "L"}, "piece_mass": {"value": 1, "unit": "kg"}},
        "actions": ["set_slat", "more_water", "more_water"],
        "design": "factorail", "control": "first", "repeats": 2.5, "seed": -1,
        "measure": {"difference": {"value": 1, "unit": "mm"}, "alpha": 0.9, "faulty_now": {"value": 120, "unit": "%"}},
        "sede": 1,
    });
    assert_eq!(
        told(&request),
        [
            "/sede: unknown member `sede` -- did you mean `seed`?",
            "/case/product: unknown product `bum` -- did you mean `bun`?",
            "/case/symptoms/0/symptom: unknown symptom `flatt` -- did you mean `flat`?",
            "/batch/piece_mass: `piece_mass` stands beside `mass` -- it belongs to `pieces`",
            "/batch/mass/unit: `L` measures volume, but mass (`kg`) is wanted -- for example `kg`",
            "/design: unknown design `factorail` -- did you mean `factorial`?",
            "/control: unknown place `first` -- the places are `by_lot`, `first_and_last`",
            "/actions/0: unknown action `set_slat` -- did you mean `set_salt`?",
            "/actions/2: `more_water` stands twice",
            "/repeats: 2.5 is not a whole number",
            "/seed: -1 is not between 0 and 4294967295",
            "/measure/alpha: 0.9 is not between 0.001 and 0.5",
            "/measure: two things to see are mixed -- either a difference of a reading, or shares of faulty pieces",
        ]
    );
}

#[test]
fn what_is_missing_is_told_with_what_it_is() {
    assert_eq!(
        told(&json!({"measure": {"difference": {"value": 1, "unit": "mm"}}})),
        [
            ": `case` is missing -- a case as `/v1/diagnoses` takes it",
            ": `batch` is missing -- `mass`, or `pieces` with `piece_mass` and `bake_loss`",
            "/measure: `standard_deviation` is missing -- a value with its unit; a difference is reckoned against the spread of the pieces",
        ]
    );
    assert_eq!(
        told(&with(&json!({"batch": {}, "actions": []}))),
        [
            "/batch: the size of the batch is missing -- give `mass`, or `pieces` with `piece_mass` and `bake_loss`",
            "/actions: 0 actions are named, 1 to 4 are tried -- left out, the first actions of the order are tried",
        ]
    );
}

#[test]
fn units_must_fit() {
    let measure = json!({"reading": "height", "difference": {"value": 2, "unit": "kg"}, "standard_deviation": {"value": 1, "unit": "mm"}});
    assert_eq!(
        told(&with(&json!({"measure": measure}))),
        ["/measure/difference: `kg` measures mass, but length (`mm`) is wanted -- height is given in `mm`"]
    );
    let measure = json!({"difference": {"value": 2, "unit": "mm"}, "standard_deviation": {"value": 1, "unit": "kg"}});
    assert_eq!(
        told(&with(&json!({"measure": measure}))),
        [
            "/measure/standard_deviation: `kg` measures mass, but length (`mm`) is wanted -- the difference is given in `mm`"
        ]
    );
}

#[test]
fn what_cannot_be_reckoned_points_to_its_member() {
    let share = |value: f64| json!({"value": value, "unit": "%"});
    let same = json!({"faulty_now": share(5.0), "faulty_wanted": share(5.0)});
    assert_eq!(told(&with(&json!({"measure": same}))), ["/measure/faulty_wanted: `5` % is too near to the 5 % of now"]);
    let more = json!({"faulty_now": share(10.0), "faulty_wanted": share(40.0)});
    assert_eq!(
        told(&with(&json!({"measure": more}))),
        ["/measure: `faulty_wanted`, 40 %, is above `faulty_now`, 10 % -- a trial is to show fewer faulty pieces"]
    );
    let zero = json!({"difference": {"value": 0, "unit": "mm"}, "standard_deviation": {"value": 0, "unit": "mm"}});
    assert_eq!(
        told(&with(&json!({"measure": zero}))),
        ["/measure/difference: `0` is not above zero", "/measure/standard_deviation: `0` is not above zero"]
    );
    let batch = json!({"mass": {"value": 0, "unit": "kg"}});
    assert_eq!(told(&with(&json!({"batch": batch}))), ["/batch/mass: 0 kg is not between 1e-9 and 1e9 kg"]);
}

#[test]
fn actions_must_suit_the_case() {
    let mut request = with(&json!({"actions": ["add_milk", "set_salt"]}));
    request["case"]["requirements"] = json!({"avoid": ["milk"]});
    assert_eq!(
        told(&request),
        [
            "/actions/0: the requirements of the case exclude `add_milk`: brings in Milk powder with the allergen Milk, to be avoided"
        ]
    );
}

#[test]
fn a_design_takes_its_number_of_changes_and_no_two_of_the_same_thing() {
    assert_eq!(
        told(&with(&json!({"design": "half_factorial", "actions": ["set_salt", "more_water"]}))),
        ["/design: the design takes 3 to 4 changes, there are 2 -- take `one_change_at_a_time`, or name other actions"]
    );
    assert_eq!(
        told(&with(&json!({"design": "factorial", "actions": ["set_salt"]}))),
        ["/design: the design takes 2 to 4 changes, there are 1 -- take `one_change_at_a_time`, or name other actions"]
    );
}

/// Lard is one of the fats: what each of the two does could not be told.
#[test]
fn changes_of_the_same_thing_are_not_made_together() {
    let request = with(&json!({"design": "factorial", "actions": ["set_salt", "less_fat", "no_lard"]}));
    assert_eq!(
        told(&request),
        ["/actions/2: `no_lard` changes `lard`, and so does `less_fat`: in this design both are made at once -- take \
          `one_change_at_a_time`, or leave one of them out"]
    );
    let mut alone = request;
    alone["design"] = json!("one_change_at_a_time");
    assert!(try_plan(&alone).is_ok());
}

#[test]
fn text_that_is_no_json_is_malformed() {
    let fault = TrialRequest::parse(b"{", RULES.knowledge()).unwrap_err();
    assert!(matches!(fault, DocumentFaults::Malformed(_)));
}
