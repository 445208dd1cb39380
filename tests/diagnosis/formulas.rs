//! What the formula of a case comes to, by hand and by published figures.

use proptest::prelude::*;
use serde_json::{Value, json};
use whybake::case::FaultCode;
use whybake::science::formula::Part;

use crate::formula_pack::{answer, faults, figure, kilograms};
use crate::support::ids;

/// 100 kg of flour with everything that a pound cake has, and soda.
fn cake() -> Value {
    kilograms(&[
        ("flour", 100.0),
        ("sugar", 60.0),
        ("glucose", 20.0),
        ("butter", 50.0),
        ("water", 40.0),
        ("salt", 1.5),
        ("soda", 1.0),
        ("sapp", 1.0),
    ])
}

/// Mass of the cake, kg.
const CAKE: f64 = 273.5;

#[track_caller]
fn assert_figure(formula: &Value, quantity: &str, expected: f64) {
    let found = figure("cake", formula, quantity, Part::Dough);
    let value = found.estimate.as_ref().unwrap_or_else(|| panic!("{quantity} is unknown: {found:?}")).value;
    assert!((value - expected).abs() < 1e-6 * expected.abs().max(1.0), "{quantity} is {value}, not {expected}");
}

#[test]
fn shares_on_flour_leave_out_what_the_flour_itself_holds() {
    for (quantity, expected) in [
        ("water_on_flour", 40.0 + 50.0 * 0.16),
        ("salt_on_flour", 1.5),
        ("sugars_on_flour", 80.0 + 0.5),
        ("fat_on_flour", 41.0),
        ("reducing_sugars_on_flour", 20.0 + 0.5),
        ("reducing_share_of_sugars", 100.0 * 20.5 / 80.5),
        ("flour_protein", 10.0),
    ] {
        assert_figure(&cake(), quantity, expected);
    }
}

#[test]
fn shares_in_mass_count_everything() {
    for (quantity, kilograms) in [
        ("water_in_mass", 14.0 + 40.0 + 8.0),
        ("salt_in_mass", 1.5),
        ("sugars_in_mass", 2.0 + 80.0 + 0.5),
        ("fat_in_mass", 1.0 + 41.0),
        ("starch_in_mass", 72.0),
        ("protein_in_mass", 10.5),
        ("soluble_solids", 2.0 + 80.5 + 1.5),
    ] {
        assert_figure(&cake(), quantity, 100.0 * kilograms / CAKE);
    }
    assert_figure(&cake(), "dough_mass", CAKE);
    assert_figure(&cake(), "flour_mass", 100.0);
    assert_figure(&cake(), "syrup_strength", 100.0 * (80.5 + 1.5) / (80.5 + 1.5 + 48.0));
}

/// Neutralising value of sodium acid pyrophosphate 72 (Miller D.D., Food Chemistry, Table 2.1).
#[test]
fn soda_and_acid_are_balanced_by_neutralising_value() {
    assert_figure(&cake(), "soda_surplus_on_flour", 1.0 - 0.72);
    let gas = 44.009 / 84.007 * (0.72 + 0.28 / 2.0);
    assert_figure(&cake(), "leavening_carbon_dioxide", 1000.0 * gas / CAKE);
    let powder = kilograms(&[("flour", 100.0), ("water", 50.0), ("powder", 5.0)]);
    assert_figure(&powder, "soda_surplus_on_flour", 5.0 * (0.3 - 0.4167 * 0.72));
    let hartshorn = kilograms(&[("flour", 100.0), ("hartshorn", 1.0)]);
    assert_figure(&hartshorn, "leavening_carbon_dioxide", 1000.0 * 44.009 / 79.055 / 101.0);
    let none = kilograms(&[("flour", 100.0), ("water", 60.0)]);
    assert_figure(&none, "leavening_carbon_dioxide", 0.0);
}

/// 50 g of sucrose in 50 g of water: aw 0.93 (New York State Agriculture & Markets, water activity page); 10 g in 90 g freeze
/// at -0.63 °C (from memory: CRC Handbook of Chemistry and Physics, concentrative properties of sucrose solutions).
#[test]
fn water_activity_and_freezing_point_follow_from_the_composition() {
    let of = |sugar: f64, quantity: &str| {
        let syrup = kilograms(&[("sugar", sugar), ("water", 100.0 - sugar)]);
        figure("jam", &syrup, quantity, Part::Filling).estimate.unwrap().value
    };
    assert!((of(50.0, "water_activity") - 0.93).abs() <= 0.005, "{}", of(50.0, "water_activity"));
    assert!((of(10.0, "freezing_point") + 0.63).abs() <= 0.03, "{}", of(10.0, "freezing_point"));
    assert!((of(60.0, "soluble_solids") - 60.0).abs() < 1e-9);
    let water = kilograms(&[("water", 1.0), ("lard", 1.0)]);
    let point = figure("jam", &water, "freezing_point", Part::Filling).estimate.unwrap();
    assert!(point.value.abs() < 0.01, "{point:?}");
}

#[test]
fn starch_sets_later_in_a_sweeter_batter_and_reducing_sugars_are_remarked_on() {
    let of = |formula: &Value| figure("cake", formula, "starch_setting_temperature", Part::Dough).estimate.unwrap();
    let lean = kilograms(&[("flour", 100.0), ("water", 60.0)]);
    assert!((of(&lean).value - 59.0).abs() < 1e-9 && of(&lean).outside_domain.is_empty(), "{:?}", of(&lean));
    let half = kilograms(&[("flour", 100.0), ("water", 60.0), ("sugar", 60.0)]);
    assert!((of(&half).value - 79.5).abs() < 1e-9, "{:?}", of(&half));
    assert!(of(&cake()).outside_domain.iter().any(|text| text.contains("not sucrose")), "{:?}", of(&cake()));
}

#[test]
fn what_nobody_states_is_unknown_and_says_who_leaves_it_open() {
    let mut formula = cake();
    let lines = formula["ingredients"].as_array_mut().unwrap();
    lines.push(json!({"name": "Secret paste", "amount": 10, "unit": "kg"}));
    for quantity in ["water_on_flour", "soluble_solids", "water_activity", "soda_surplus_on_flour"] {
        let found = figure("cake", &formula, quantity, Part::Dough);
        assert!(found.estimate.is_none(), "{found:?}");
        assert_eq!(found.unknown_in, ["Secret paste"], "{quantity}");
    }
    let told = answer("cake", &formula);
    let missing = told["missing"].to_string();
    assert!(missing.contains("soda surplus on flour: not known of Secret paste"), "{missing}");
}

#[test]
fn tight_bounds_are_one_figure() {
    let mut formula = cake();
    let lines = formula["ingredients"].as_array_mut().unwrap();
    // 0.2 kg of something on 100 kg of flour: whatever it is, it changes the water by at most 0.2 %.
    lines.push(json!({"name": "Flavour", "amount": 0.2, "unit": "kg"}));
    let found = figure("cake", &formula, "water_on_flour", Part::Dough);
    assert!((found.estimate.unwrap().value - 48.1).abs() < 1e-9);
    assert_eq!(found.bounds.map(|(least, most)| (least.round(), most.round())), Some((48.0, 48.0)));
    assert_eq!(found.unknown_in, ["Flavour"]);
}

#[test]
fn parts_are_reckoned_apart() {
    let filled = kilograms(&[
        ("flour", 100.0),
        ("water", 60.0),
        ("salt", 2.0),
        ("filling:sugar", 60.0),
        ("filling:water", 40.0),
    ]);
    let solids = figure("cake", &filled, "soluble_solids", Part::Filling).estimate.unwrap();
    assert!((solids.value - 60.0).abs() < 1e-9);
    assert_figure(&filled, "dough_mass", 162.0);
    let told = answer("cake", &filled);
    let of_filling: Vec<&Value> =
        told["computed"].as_array().unwrap().iter().filter(|item| item["basis"] == "of the filling").collect();
    assert_eq!(of_filling.len(), 1, "{}", told["computed"]);
    assert_eq!(of_filling[0]["quantity"], "soluble_solids");
    let cause = &told["causes"][0];
    let text = cause["evidence"].to_string();
    assert!(text.contains("sugar in the filling 60 % is above 55 %"), "{text}");
}

#[test]
fn lines_without_a_stage_belong_to_the_main_stage_of_the_family() {
    let syrup = kilograms(&[("sugar", 68.0), ("water", 32.0)]);
    let told = answer("jam", &syrup);
    let text = told["causes"][0]["evidence"].to_string();
    assert!(
        text.contains("soluble solids 68 % is above 65 %") && text.contains("sugar in the whole mass 68 %"),
        "{text}"
    );
}

#[test]
fn a_method_outside_its_domain_says_so_in_the_answer() {
    let told = answer("jam", &kilograms(&[("sugar", 40.0), ("glucose", 40.0), ("water", 20.0)]));
    let computed = told["computed"].as_array().unwrap();
    let activity = computed.iter().find(|item| item["quantity"] == "water_activity").unwrap();
    assert!(activity["remarks"][0].as_str().unwrap().contains("below 0.85"), "{activity}");
    assert!(activity["method"]["source"].as_str().is_some_and(|source| !source.is_empty()), "{activity}");
    let mass = computed.iter().find(|item| item["quantity"] == "dough_mass").unwrap();
    assert_eq!(mass["remarks"], json!([]));
}

#[test]
fn only_what_the_rules_use_is_listed_with_proper_titles() {
    let told = answer("cake", &cake());
    let listed = ids(&told, "computed", "quantity");
    for name in ["water_on_flour", "flour_mass", "dough_mass", "soda_surplus_on_flour"] {
        assert!(listed.contains(&name), "{listed:?}");
    }
    assert!(!listed.contains(&"freezing_point") && !listed.contains(&"syrup_strength"), "{listed:?}");
    assert!(ids(&told, "computed", "title").contains(&"soda surplus on flour"));
}

#[test]
fn roles_are_summed_and_found() {
    let told = answer("cake", &cake());
    let text = told["causes"][0]["evidence"].to_string();
    assert!(
        text.contains("fat on flour 50 % is above 40 %") && text.contains("the formula has no emulsifier"),
        "{text}"
    );
    assert!(text.contains("butter + lard on flour 50 % is above 45 %"), "{text}");
    // An ingredient of the caller's own says what it does, or leaves it open.
    let mut formula = cake();
    formula["ingredients"].as_array_mut().unwrap().push(
        json!({"name": "House fat", "amount": 10, "unit": "kg", "roles": ["fat", "emulsifier"], "composition": {"fat": 100}}),
    );
    let text = answer("cake", &formula)["causes"][0]["evidence"].to_string();
    assert!(text.contains("fat on flour 60 %") && text.contains("the formula has emulsifier"), "{text}");
    formula["ingredients"].as_array_mut().unwrap().push(json!({"name": "Secret", "amount": 5, "unit": "kg"}));
    let text = answer("cake", &formula)["causes"][0]["evidence"].to_string();
    assert!(!text.contains("\"fat on flour"), "{text}");
}

#[test]
fn a_formula_that_cannot_be_meant_is_set_aside() {
    let told = answer("cake", &kilograms(&[("flour", 10.0), ("water", 5.0), ("salt", 30.0)]));
    let aside = told["set_aside"].to_string();
    assert!(aside.contains("67 % salt") && aside.contains("formula"), "{aside}");
    assert_eq!(told["computed"], json!([]));
}

#[test]
fn stages_and_roles_are_checked_with_a_suggestion() {
    let formula = json!({"ingredients": [
        {"ingredient": "flour", "amount": 1, "unit": "kg", "stage": "fillling"},
        {"name": "x", "amount": 1, "unit": "kg", "roles": ["emulsifer"], "soda": 101, "neutralising_value": -1}]});
    let told: Vec<_> = faults(&formula).into_iter().map(|fault| (fault.pointer, fault.code, fault.help)).collect();
    let help = |text: &str| Some(text.to_owned());
    assert_eq!(
        told,
        [
            ("/formula/ingredients/0/stage".to_owned(), FaultCode::UnknownName, help("did you mean `filling`?")),
            ("/formula/ingredients/1/roles/0".to_owned(), FaultCode::UnknownName, help("did you mean `emulsifier`?")),
            ("/formula/ingredients/1/soda".to_owned(), FaultCode::OutOfRange, None),
            ("/formula/ingredients/1/neutralising_value".to_owned(), FaultCode::OutOfRange, None),
        ]
    );
}

#[test]
fn a_formula_without_end_is_a_fault() {
    let line = |n: usize| json!({"name": format!("x{n}"), "amount": 1, "unit": "kg"});
    let told = faults(&json!({"ingredients": (0..201).map(line).collect::<Vec<_>>()}));
    assert_eq!(told.len(), 1, "{told:?}");
    assert_eq!((told[0].pointer.as_str(), told[0].code), ("/formula/ingredients", FaultCode::OutOfRange));
    assert_eq!(told[0].detail, "the formula has 201 lines, at most 200 are read");
}

#[test]
fn of_a_fragment_only_what_it_names_is_known() {
    let mut fragment = kilograms(&[("flour", 50.0), ("water", 29.0)]);
    fragment.as_object_mut().unwrap().remove("complete");
    let of = |quantity: &str| figure("cake", &fragment, quantity, Part::Dough);
    assert!((of("water_on_flour").estimate.unwrap().value - 58.0).abs() < 1e-9);
    for quantity in ["salt_on_flour", "water_activity", "soluble_solids", "soda_surplus_on_flour"] {
        let found = of(quantity);
        assert!(found.estimate.is_none() && found.why_not.is_some_and(|why| why.contains("fragment")), "{quantity}");
    }
    // Percentages without flour are on flour that is not listed.
    let percent = json!({"ingredients": [{"ingredient": "water", "amount": 58, "unit": "%"},
        {"ingredient": "salt", "amount": 2, "unit": "%"}]});
    let water = figure("cake", &percent, "water_on_flour", Part::Dough).estimate.unwrap();
    assert!((water.value - 58.0).abs() < 1e-9);
}

/// Everything that is reckoned in percent or per kilogram.
const INTENSIVE: [&str; 19] = [
    "water_on_flour",
    "salt_on_flour",
    "sugars_on_flour",
    "fat_on_flour",
    "sugars_in_mass",
    "fat_in_mass",
    "salt_in_mass",
    "water_in_mass",
    "starch_in_mass",
    "protein_in_mass",
    "reducing_sugars_on_flour",
    "reducing_share_of_sugars",
    "flour_protein",
    "soluble_solids",
    "syrup_strength",
    "water_activity",
    "freezing_point",
    "soda_surplus_on_flour",
    "leavening_carbon_dioxide",
];

fn value(formula: &Value, quantity: &str) -> Option<f64> {
    figure("cake", formula, quantity, Part::Dough).estimate.map(|estimate| estimate.value)
}

fn same(left: Option<f64>, right: Option<f64>) -> bool {
    match (left, right) {
        (Some(left), Some(right)) => (left - right).abs() < 1e-6 * left.abs().max(1.0),
        (left, right) => left == right,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// A larger batch is the same dough, in whatever order it is written down.
    #[test]
    fn figures_hang_neither_on_the_size_of_the_batch_nor_on_the_order_of_lines(
        amounts in prop::collection::vec(0.1_f64..100.0, 8),
        factor in 0.01_f64..100.0,
        turn in 0_usize..8,
    ) {
        let names = ["flour", "water", "sugar", "glucose", "butter", "soda", "sapp", "lard"];
        let lines: Vec<(&str, f64)> = names.into_iter().zip(amounts).collect();
        let mut scaled: Vec<(&str, f64)> = lines.iter().map(|(name, amount)| (*name, amount * factor)).collect();
        scaled.rotate_left(turn);
        let (given, scaled) = (kilograms(&lines), kilograms(&scaled));
        for quantity in INTENSIVE {
            prop_assert!(same(value(&given, quantity), value(&scaled, quantity)), "{quantity}");
        }
    }

    /// What nobody states never turns into a figure: known bounds hold it whatever the secret is.
    #[test]
    fn a_known_figure_holds_whatever_an_undescribed_ingredient_turns_out_to_be(
        amount in 0.01_f64..20.0,
        water in 0.0_f64..100.0,
    ) {
        let with = |extra: Value| {
            let mut formula = cake();
            formula["ingredients"].as_array_mut().unwrap().push(extra);
            formula
        };
        let secret = with(json!({"name": "secret", "amount": amount, "unit": "kg", "roles": []}));
        let told = with(json!({"name": "secret", "amount": amount, "unit": "kg", "roles": [],
            "composition": {"water": water, "fat": 100.0 - water}}));
        for quantity in ["water_on_flour", "fat_on_flour", "water_in_mass"] {
            let truth = value(&told, quantity).unwrap();
            let found = figure("cake", &secret, quantity, Part::Dough);
            let (least, most) = found.bounds.unwrap();
            prop_assert!(least - 1e-9 <= truth && truth <= most + 1e-9, "{quantity}: {truth} in {found:?}");
            if let Some(estimate) = found.estimate {
                prop_assert!((estimate.value - truth).abs() <= 0.15_f64.max(0.02 * truth), "{quantity}: {truth}, {estimate:?}");
            }
        }
    }
}

#[test]
fn a_computed_reading_carries_the_remarks_of_its_figure() {
    let told = answer("jam", &kilograms(&[("sugar", 40.0), ("glucose", 40.0), ("water", 20.0)]));
    let reading = &told["computed"][0];
    assert_eq!((&reading["quantity"], &reading["from"]), (&json!("water_activity"), &json!("formula")));
    assert!(!reading["remarks"].as_array().unwrap().is_empty(), "{reading}");
    let listed = ids(&told, "computed", "quantity");
    assert_eq!(listed.iter().filter(|name| **name == "water_activity").count(), 1, "{listed:?}");
}
