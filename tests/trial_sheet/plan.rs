//! What is tried, how it is laid out, what is held, written down and counted.

use std::collections::BTreeSet;

use serde_json::{Value, json};

use whybake::case::Case;

use crate::small_pack::{RULES, plan, request, run, texts, with};

/// One order in the program: that of the diagnosis, less what sets nothing.
#[test]
fn changes_come_in_the_order_of_the_diagnosis() {
    let sheet = plan(&request());
    assert_eq!(texts(&sheet["changes"], "action"), ["set_salt", "more_water", "less_fat", "proof_longer"]);
    let case = Case::parse(request()["case"].to_string().as_bytes(), RULES.knowledge()).unwrap();
    let diagnosis: Value = serde_json::from_slice(&RULES.diagnose(case).unwrap().to_json().unwrap()).unwrap();
    let order = &diagnosis["action_order"]["actions"];
    let place = |id: &str| order.as_array().unwrap().iter().position(|own| own["action"] == id).unwrap();
    let places: Vec<usize> = texts(&sheet["changes"], "action").into_iter().map(place).collect();
    assert!(places.is_sorted(), "{places:?}");
    for change in sheet["changes"].as_array().unwrap() {
        assert_eq!(change["promise"], order[place(change["action"].as_str().unwrap())]["mends"]);
    }
    assert_eq!(texts(&sheet["runs"], "label"), ["control", "A", "B", "C", "D"]);
    assert_eq!(texts(&sheet["do_first"], "action"), ["weigh_again"]);
    assert_eq!(sheet["not_tried"], json!([]));
}

#[test]
fn a_run_that_yields_too_few_pieces_is_told() {
    let measure = json!({"symptom": "flat", "faulty_now": {"value": 50, "unit": "%"}, "faulty_wanted": {"value": 25, "unit": "%"}});
    let remarks = |batch: Value| {
        let sheet = plan(&with(&json!({"batch": batch, "measure": measure})));
        texts(&sheet["sample"]["remarks"], "").join("\n")
    };
    let pieces = |count: u32| remarks(json!({"pieces": count, "piece_mass": {"value": 60, "unit": "g"}}));
    assert!(pieces(57).contains("A run of 57 pieces yields fewer than the 58 to measure"), "{}", pieces(57));
    assert!(!pieces(58).contains("yields"), "{}", pieces(58));
    let mass = remarks(json!({"mass": {"value": 20, "unit": "kg"}}));
    assert!(mass.contains("Check that a run of this mass yields 58 pieces"), "{mass}");
}

#[test]
fn named_actions_come_in_the_order_of_the_caller() {
    let sheet = plan(&with(&json!({"actions": ["proof_longer", "weigh_again"]})));
    assert_eq!(texts(&sheet["changes"], "action"), ["proof_longer", "weigh_again"]);
    assert_eq!(texts(&sheet["changes"][1]["by_hand"], ""), ["no quantity is known: write down what was set"]);
}

/// See `science::trial_design::randomised_order`: SHA-256 of `1/1/1` … sorts the runs.
#[test]
fn the_order_is_drawn_from_the_seed() {
    let order = |sheet: &Value| -> Vec<u64> {
        sheet["runs"].as_array().unwrap().iter().map(|run| run["order"][0].as_u64().unwrap()).collect()
    };
    let sheet = plan(&request());
    let drawn = whybake::science::trial_design::randomised_order(1, 1, 5).unwrap();
    for (place, run) in drawn.iter().enumerate() {
        assert_eq!(order(&sheet)[*run as usize - 1], place as u64 + 1);
    }
    let orders: BTreeSet<Vec<u64>> = (0..20).map(|seed| order(&plan(&with(&json!({"seed": seed}))))).collect();
    assert!(orders.len() > 15, "{}", orders.len());
}

#[test]
fn without_a_seed_the_order_hangs_on_the_case() {
    let mut request = request();
    request.as_object_mut().unwrap().remove("seed");
    let (one, again) = (plan(&request), plan(&request));
    assert_eq!(one, again);
    request["case"]["reference"] = json!("another lot");
    assert_ne!(plan(&request)["design"]["seed"], one["design"]["seed"]);
}

#[test]
fn repeats_are_drawn_one_by_one() {
    let sheet = plan(&with(&json!({"repeats": 3, "actions": ["more_water"]})));
    let mut places: Vec<u64> = Vec::new();
    for run in sheet["runs"].as_array().unwrap() {
        let order: Vec<u64> = run["order"].as_array().unwrap().iter().map(|own| own.as_u64().unwrap()).collect();
        assert!(order.iter().zip([1..=2, 3..=4, 5..=6]).all(|(place, repeat)| repeat.contains(place)), "{order:?}");
        places.extend(order);
    }
    places.sort_unstable();
    assert_eq!(places, [1, 2, 3, 4, 5, 6]);
    assert!(texts(&sheet["decide"], "").contains(&"What shows in one repeat only has not been shown."));
}

/// The other runs keep the order of their lot.
#[test]
fn a_control_can_be_baked_first_and_last() {
    let request = json!({"repeats": 2, "actions": ["more_water", "set_salt", "less_fat"], "control": "first_and_last"});
    let sheet = plan(&with(&request));
    let order = |label: &str| run(&sheet, label)["order"].clone();
    assert_eq!(order("control"), json!([1, 5, 6, 10]));
    let drawn = whybake::science::trial_design::randomised_order(1, 2, 4).unwrap();
    let labels = ["control", "A", "B", "C"];
    for (run, place) in drawn.into_iter().filter(|run| *run != 1).zip(7..) {
        assert_eq!(order(labels[run as usize - 1])[1], place);
    }
    assert!(texts(&sheet["decide"], "").iter().any(|rule| rule.starts_with("First and last control differ")));
    assert!(
        texts(&sheet["design"]["text"], "").iter().any(|text| text.starts_with("The control is baked first and last"))
    );
}

#[test]
fn factorial_designs_are_the_published_ones() {
    let named = |count: usize| json!(["set_salt", "more_water", "less_fat", "proof_longer"][..count]);
    let design = |kind: &str, count: usize| plan(&with(&json!({"design": kind, "actions": named(count)})));
    let two = design("factorial", 2);
    assert_eq!(
        (&two["design"]["name"], texts(&two["runs"], "label")),
        (&json!("2^2"), vec!["control", "A", "B", "A+B"])
    );
    let three = design("factorial", 3);
    let labels = ["control", "A", "B", "A+B", "C", "A+C", "B+C", "A+B+C"];
    assert_eq!((&three["design"]["name"], texts(&three["runs"], "label")), (&json!("2^3"), labels.to_vec()));
    let half = design("half_factorial", 3);
    assert_eq!(texts(&half["runs"], "label"), ["control", "A+C", "B+C", "A+B"]);
    assert_eq!((&half["design"]["generator"], &half["design"]["resolution"]), (&json!("C = -AB"), &json!("III")));
    let told = texts(&half["design"]["text"], "");
    let alias = "What A alone does cannot be told from what B and C do together, the other way round.";
    assert!(told.contains(&alias), "{told:?}");
    for kind in ["factorial", "half_factorial"] {
        let four = design(kind, 4);
        assert_eq!(four["runs"].as_array().unwrap().len(), 8);
        assert_eq!((&four["design"]["generator"], &four["design"]["resolution"]), (&json!("D = ABC"), &json!("IV")));
        let told = texts(&four["design"]["text"], "");
        assert!(told.contains(&"What the pair A and B does cannot be told from what C and D do together."), "{told:?}");
    }
}

#[test]
fn what_the_runs_set_is_not_held_in_them() {
    let sheet = plan(&with(&json!({"actions": ["more_water", "proof_longer"]})));
    assert_eq!(
        run(&sheet, "B")["settings"],
        json!([{"letter": "B", "reading": "proof_time", "name": "proof time", "value": "65 min", "text": "proof time 65 min"}])
    );
    assert_eq!(run(&sheet, "A")["settings"], json!([]));
    let held = &sheet["hold"][0];
    assert_eq!((&held["reading"], &held["except_in"]), (&json!("proof_time"), &json!(["B"])));
    assert_eq!(held["text"], "proof time 45 min, as measured");
}

#[test]
fn what_to_write_down_and_what_counts_follow_from_the_case() {
    let sheet = plan(&with(&json!({"actions": ["set_salt", "proof_longer"]})));
    assert_eq!(texts(&sheet["record"], "id"), ["flat", "salt_on_flour", "proof_time"]);
    let fixed = texts(&sheet["fixed_when"], "text");
    assert_eq!(
        fixed,
        ["not seen: flat", "salt on flour below 2 %", "proof time above 55 min", "proof time from 50 min to 70 min"]
    );
    assert_eq!(
        texts(&sheet["fixed_when"], "from"),
        ["the complaint", "excludes “Salt wrong”", "excludes “Short proof”", "the plant's limits"]
    );
}

/// Cohen 1992, table 2: half a standard deviation takes 64 pieces of each setting. A control and a change: 64 of each run.
/// In 2^2 each change is in two runs: 32 of each; with two repeats 16.
#[test]
fn pieces_are_spread_over_the_runs() {
    let length = |value: f64| json!({"value": value, "unit": "mm"});
    let measure =
        json!({"reading": "height", "difference": length(2.0), "standard_deviation": {"value": 0.4, "unit": "cm"}});
    let one = plan(&with(&json!({"measure": measure, "actions": ["more_water"]})));
    assert_eq!((&one["sample"]["pieces_each_setting"], &one["sample"]["pieces_each_run"]), (&json!(64), &json!(64)));
    assert!(one["sample"]["text"].as_str().unwrap().starts_with("64 pieces of every run: "), "{}", one["sample"]);
    let two = json!({"measure": measure, "actions": ["more_water", "set_salt"], "design": "factorial"});
    assert_eq!(plan(&with(&two))["sample"]["pieces_each_run"], 32);
    let mut twice = two;
    twice["repeats"] = json!(2);
    assert_eq!(plan(&with(&twice))["sample"]["pieces_each_run"], 16);
    // By hand: t of 126 degrees of freedom at 2.5 % is 1.979; 1.979 × 4 mm × √(2/64) = 1.40 mm.
    let rule = &texts(&one["decide"], "")[0];
    assert!(rule.contains("the means of height with and without it differ by 1.4 mm or more"), "{rule}");
    assert_eq!(texts(&one["record"], "id"), ["flat", "height", "proof_time"]);
}

#[test]
fn shares_of_faulty_pieces_count_too() {
    let share = |value: f64| json!({"value": value, "unit": "%"});
    let measure = json!({"symptom": "flat", "faulty_now": share(50.0), "faulty_wanted": share(25.0)});
    let sheet = plan(&with(&json!({"measure": measure, "actions": ["more_water"]})));
    // See `pieces_for_a_trial` in tests/calculations: 57.26, and 32.2 % from which on it counts.
    assert_eq!(sheet["sample"]["pieces_each_run"], 58);
    assert_eq!(texts(&sheet["fixed_when"], "text")[0], "Flat in 25 % of the pieces at most");
    assert!(texts(&sheet["decide"], "")[0].contains("at most 32.2 % of the pieces (with “Flat”) are faulty with it"));
}

#[test]
fn nothing_is_invented_where_nobody_says_what_shall_be_seen() {
    let sheet = plan(&request());
    assert_eq!((&sheet["sample"]["kind"], sheet["sample"].get("pieces_each_run")), (&json!("open"), None));
    assert!(sheet["sample"]["text"].as_str().unwrap().contains("An example with invented figures"));
}

#[test]
fn cautions_are_those_of_what_is_tried_and_of_every_trial() {
    let told = |actions: &Value| {
        let sheet = plan(&with(&json!({"actions": actions})));
        texts(&sheet["cautions"], "text").into_iter().map(str::to_owned).collect::<Vec<String>>()
    };
    let salt = told(&json!(["set_salt"]));
    assert!(salt.contains(&"Check the label.".to_owned()) && !salt.contains(&"The floor is slippery.".to_owned()));
    assert!(salt.iter().any(|text| text.contains("is not sold, given away or reworked before")), "{salt:?}");
    assert!(!salt.iter().any(|text| text.contains("may bring in")));
}

#[test]
fn an_allergen_that_a_change_brings_in_is_told_unless_it_is_there() {
    let allergens = |request: &Value| {
        let sheet = plan(request);
        texts(&sheet["cautions"], "text")
            .into_iter()
            .filter(|text| text.contains("may bring in"))
            .map(str::to_owned)
            .collect()
    };
    let mut request = with(&json!({"actions": ["add_milk"]}));
    let told: Vec<String> = allergens(&request);
    assert!(told.is_empty(), "the butter has it: {told:?}");
    request["case"]["formula"]["ingredients"].as_array_mut().unwrap().remove(4);
    let told: Vec<String> = allergens(&request);
    assert_eq!(told, ["Change A may bring in Milk powder (allergen milk): label, and clean the line after it."]);
}

#[test]
fn the_reference_comes_back_as_it_was() {
    let sheet = plan(&request());
    assert_eq!(sheet["reference"], json!({"lot": "A1"}));
    assert_eq!(texts(&sheet["blanks"], "name")[..3], ["date", "line", "lot"]);
}
