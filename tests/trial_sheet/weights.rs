//! Masses of the runs, worked by hand. The batch is 17.9 kg of a formula of 89.5 kg: a fifth of it. Flour 10 kg, water
//! 6 kg, yeast 0.2 kg, salt 0.3 kg, salted butter 0.8 kg, lard 0.6 kg.

use serde_json::json;

use crate::small_pack::{mass, plan, run, texts, with};

#[track_caller]
fn near(own: f64, expected: f64) {
    assert!((own - expected).abs() < 1e-6, "{own} is not {expected}");
}

#[test]
fn the_control_is_the_formula_scaled_to_the_batch() {
    let sheet = plan(&with(&json!({"actions": ["more_water"]})));
    for (ingredient, kilograms) in
        [("flour", 10.0), ("water", 6.0), ("yeast", 0.2), ("salt", 0.3), ("salted_butter", 0.8), ("lard", 0.6)]
    {
        near(mass(&sheet, "control", ingredient), kilograms);
    }
    near(sheet["batch"]["factor"].as_f64().unwrap(), 0.2);
    near(sheet["batch"]["flour_kg"].as_f64().unwrap(), 10.0);
    near(run(&sheet, "control")["mass_kg"].as_f64().unwrap(), 17.9);
}

/// 3 % of 50 kg flour are 1.5 kg water in the case and 0.3 kg in the batch. The action says it twice, as a mass and as a
/// share: it counts once.
#[test]
fn a_mass_in_the_case_is_scaled_and_counts_once() {
    let sheet = plan(&with(&json!({"actions": ["more_water"]})));
    near(mass(&sheet, "A", "water"), 6.3);
    near(run(&sheet, "A")["mass_kg"].as_f64().unwrap(), 18.2);
    let changed: Vec<bool> =
        run(&sheet, "A")["weights"].as_array().unwrap().iter().map(|line| line["is_changed"] == true).collect();
    assert_eq!(changed, [false, true, false, false, false, false]);
    let settings = &sheet["changes"][0]["settings"];
    near(settings[0]["value"].as_f64().unwrap(), 0.3);
    assert_eq!(texts(settings, "text"), ["water to add 0.3 kg", "more water on flour 3 %"]);
    assert_eq!(sheet["changes"][0]["by_hand"], json!([]));
}

/// The reading counts all salt: the butter brings 2 % of 0.8 kg, 0.016 kg. For 1.8 % of 10 kg flour, 0.18 kg, the salt
/// line is 0.164 kg; taking 1.8 % of the line's own share would leave 0.016 kg too much.
#[test]
fn a_dose_that_a_reading_tells_counts_what_other_lines_bring() {
    let sheet = plan(&with(&json!({"actions": ["set_salt"]})));
    near(mass(&sheet, "A", "salt"), 0.164);
    near(mass(&sheet, "A", "salted_butter"), 0.8);
}

/// A measured reading of the same name does not stand in the way.
#[test]
fn a_dose_by_a_reading_is_reckoned_from_the_formula_though_it_was_measured() {
    let mut request = with(&json!({"actions": ["set_salt"]}));
    request["case"]["readings"]["salt_on_flour"] = json!({"value": 3.5, "unit": "%"});
    near(mass(&plan(&request), "A", "salt"), 0.164);
}

/// 2 % of 10 kg flour are 0.2 kg of fat, taken from butter and lard as 8 to 6: 0.8 × 1.2/1.4 and 0.6 × 1.2/1.4.
#[test]
fn a_role_is_changed_in_proportion() {
    let sheet = plan(&with(&json!({"actions": ["less_fat"]})));
    near(mass(&sheet, "A", "salted_butter"), 0.8 * 1.2 / 1.4);
    near(mass(&sheet, "A", "lard"), 0.6 * 1.2 / 1.4);
}

/// 4 % of 10 kg flour; the formula has none of it.
#[test]
fn what_the_formula_lacks_comes_in_as_a_line() {
    let sheet = plan(&with(&json!({"actions": ["add_milk"]})));
    near(mass(&sheet, "A", "milk_powder"), 0.4);
    let lines = run(&sheet, "A")["weights"].as_array().unwrap();
    let last = lines.last().unwrap();
    assert_eq!(
        (&last["control_kg"], &last["is_changed"], &last["stage"]),
        (&json!(0.0), &json!(true), &json!("dough"))
    );
    assert_eq!(run(&sheet, "control")["weights"].as_array().unwrap().len(), 6);
}

#[test]
fn more_than_there_is_cannot_be_taken_out() {
    let mut request = with(&json!({"actions": ["less_fat"]}));
    let lines = request["case"]["formula"]["ingredients"].as_array_mut().unwrap();
    lines.truncate(4);
    lines.push(json!({"ingredient": "lard", "amount": 0.5, "unit": "kg"}));
    let sheet = plan(&request);
    let by_hand = texts(&sheet["changes"][0]["by_hand"], "");
    assert_eq!(by_hand, ["less fat on flour 2 %: it would take out more than stands there"]);
    assert_eq!(run(&sheet, "A")["weights"], run(&sheet, "control")["weights"]);
}

/// Percentages give no mass to scale; a share on flour does: 3 % of 10 kg.
#[test]
fn percentages_take_shares() {
    let mut request = with(&json!({"actions": ["more_water"]}));
    for line in request["case"]["formula"]["ingredients"].as_array_mut().unwrap() {
        line["amount"] = json!(2.0 * line["amount"].as_f64().unwrap());
        line["unit"] = json!("%");
    }
    let sheet = plan(&request);
    near(mass(&sheet, "control", "flour"), 10.0);
    near(mass(&sheet, "A", "water"), 6.3);
}

/// 100 pieces of 160.2 g at a bake loss of 10.5 % are 17.9 kg of dough.
#[test]
fn a_batch_in_pieces() {
    let batch = json!({"pieces": 100, "piece_mass": {"value": 160.205, "unit": "g"}, "bake_loss": {"value": 10.5, "unit": "%"}});
    near(mass(&plan(&with(&json!({"batch": batch}))), "control", "flour"), 10.0);
}

/// A and B together: both lines, each counted on the flour of the control.
#[test]
fn changes_together_are_both_in_the_weights() {
    let sheet = plan(&with(&json!({"actions": ["more_water", "set_salt"], "design": "factorial"})));
    near(mass(&sheet, "A+B", "water"), 6.3);
    near(mass(&sheet, "A+B", "salt"), 0.164);
    near(mass(&sheet, "A", "salt"), 0.3);
    near(run(&sheet, "A+B")["mass_kg"].as_f64().unwrap(), 17.9 + 0.3 - 0.136);
}

#[test]
fn without_a_formula_there_is_nothing_to_weigh() {
    let mut request = with(&json!({"actions": ["more_water", "proof_longer"]}));
    request["case"].as_object_mut().unwrap().remove("formula");
    let sheet = plan(&request);
    assert!(sheet.get("batch").is_none());
    assert_eq!(run(&sheet, "A")["weights"], json!([]));
    let by_hand = texts(&sheet["changes"][0]["by_hand"], "");
    assert_eq!(by_hand, ["more water on flour 3 %: the case has no formula to work it into"]);
    assert_eq!(run(&sheet, "B")["settings"][0]["text"], "proof time 65 min");
}
