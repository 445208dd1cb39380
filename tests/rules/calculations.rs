//! Calculations of rules on cases: the figure with its method, what is lacking, and what cannot be computed.

use serde_json::{Value, json};
use whybake::calculations::{InputKind, all};
use whybake::case::Case;
use whybake::diagnosis::Diagnostician;
use whybake::rules::{RuleFiles, load};

use crate::support::{Changed, pack};

const WATER: &str = "mixing_water_temperature(#{ dough_temperature: target(dough_temperature), \
    flour_temperature: flour_temperature, room_temperature: room_temperature, friction_factor: 12 })";

/// The small pack with a flour temperature in degrees Fahrenheit, and a quantity of its action on line 8 of `mixing.rhai`.
fn with_setting(quantity: &str, unit: &str) -> RuleFiles {
    let flour = "reading(\"flour_temperature\").title(\"flour temperature\").method(\"probe\").unit(\"[degF]\").plausible(-20, 200);";
    let action = format!(".action(colder_water.set(\"wanted\", {quantity}, \"{unit}\"))");
    pack().and("readings.rhai", flour).but("mixing.rhai", ".action(colder_water)", &action)
}

fn action(files: &RuleFiles, readings: &Value) -> (Value, Value) {
    let diagnostician = Diagnostician::new(load(files).unwrap().knowledge).unwrap();
    let case = json!({"product": "hamburger_bun", "readings": readings, "facts": {"dough_waits": true}});
    let case = Case::parse(case.to_string().as_bytes(), diagnostician.knowledge()).unwrap();
    let answer = serde_json::to_value(diagnostician.diagnose(case).unwrap()).unwrap();
    (answer["causes"][0]["actions"][0].clone(), answer["rule_faults"].clone())
}

fn celsius(value: f64) -> Value {
    json!({"value": value, "unit": "Cel"})
}

#[test]
fn a_quantity_comes_with_its_method_and_readings_are_converted() {
    // The target is the middle of 25 to 28 °C; by hand 3 × 26.5 − 22 − 24 − 12 = 21.5.
    let readings = json!({"room_temperature": celsius(24.0), "flour_temperature": celsius(22.0)});
    let (action, faults) = action(&with_setting(WATER, "Cel"), &readings);
    assert_eq!(action["quantities"][0]["value"], 21.5);
    let method = &action["quantities"][0]["method"];
    assert!(method["name"].as_str().unwrap().starts_with("additive rule"), "{method}");
    assert!(method["source"].as_str().unwrap().starts_with("Lehmann"), "{method}");
    assert_eq!(action["quantities"][0]["remarks"], json!([]));
    assert_eq!((&action["needs"], &faults), (&json!([]), &json!([])));
}

#[test]
fn a_quantity_is_given_in_the_unit_that_the_rule_asks_for() {
    let readings = json!({"room_temperature": celsius(24.0), "flour_temperature": celsius(22.0)});
    let (action, _) = action(&with_setting(WATER, "[degF]"), &readings);
    assert_eq!(action["quantities"][0]["value"], 70.7);
    assert!(action["quantities"][0]["method"]["name"].is_string());
}

#[test]
fn a_quantity_outside_the_domain_of_its_method_says_so() {
    let readings = json!({"room_temperature": celsius(45.0), "flour_temperature": celsius(35.0)});
    let (action, _) = action(&with_setting(WATER, "Cel"), &readings);
    assert_eq!(action["quantities"][0]["value"], -12.5);
    let remark = action["quantities"][0]["remarks"][0].as_str().unwrap();
    assert!(remark.contains("the water cannot be that cold, use ice"), "{remark}");
}

#[test]
fn the_action_names_the_readings_that_are_lacking() {
    let (action, faults) = action(&with_setting(WATER, "Cel"), &json!({"room_temperature": celsius(24.0)}));
    assert_eq!(action["quantities"], json!([]));
    assert_eq!(action["needs"], json!(["flour_temperature"]));
    assert_eq!(faults, json!([]));
}

#[test]
fn calculations_take_figures_of_others_and_facts() {
    let ice = format!(
        "calculate(\"ice_for_mixing_water\", \"tap_water\", #{{ water: 30, tap_temperature: room_temperature, wanted_temperature: {WATER} }})"
    );
    let readings = json!({"room_temperature": celsius(24.0), "flour_temperature": celsius(22.0)});
    let (action, _) = action(&with_setting(&ice, "kg"), &readings);
    // 30 kg less 30 × (24 − 21.5) / (24 + 80) kg of ice.
    let value = action["quantities"][0]["value"].as_f64().unwrap();
    assert!((value - (30.0 - 30.0 * 2.5 / 104.0)).abs() < 0.01, "{value}");
    let gas = "leavening_gas_volume(#{ carbonate: \"sodium_bicarbonate\", release: \"acid\", mass: 10, temperature: 25, with_steam: dough_waits })";
    let (action, _) = self::action(&with_setting(gas, "mL"), &readings);
    // 10 / 84.007 mol of carbon dioxide and as much vapour, R T / p each: 5.824 L.
    let value = action["quantities"][0]["value"].as_f64().unwrap();
    assert!((value - 5824.0).abs() < 5.0, "{value}");
    assert!(action["quantities"][0]["remarks"][0].as_str().unwrap().contains("below 100 °C"), "{action}");
}

#[test]
fn what_cannot_be_computed_is_told_beside_the_answer() {
    let loss = "bake_loss(#{ dough: room_temperature * 1, baked: 30 })";
    let (action, faults) = action(&with_setting(loss, "%"), &json!({"room_temperature": celsius(24.0)}));
    assert_eq!(action["quantities"], json!([]));
    assert_eq!(
        faults,
        json!([{
            "file": "mixing.rhai",
            "line": 8,
            "message": "`bake_loss` gives no figure: `baked`: must not be heavier than its dough (24), is 30"
        }])
    );
    let erh = "equilibrium_relative_humidity(#{ water_activity: room_temperature * 1 })";
    let (_, faults) = self::action(&with_setting(erh, "%"), &json!({"room_temperature": celsius(24.0)}));
    assert_eq!(
        faults[0]["message"],
        "`equilibrium_relative_humidity` gives no figure: `water_activity`: 24 is not between 0 and 1"
    );
}

#[test]
fn a_condition_on_a_calculation_is_told_in_words() {
    let files = pack().property(&format!(
        ".evidence({} < 5, STRONG)",
        WATER.replace("flour_temperature: flour_temperature", "flour_temperature: 20")
    ));
    let diagnostician = Diagnostician::new(load(&files).unwrap().knowledge).unwrap();
    let case = json!({"product": "hamburger_bun", "readings": {"room_temperature": celsius(48.0)}});
    let case = Case::parse(case.to_string().as_bytes(), diagnostician.knowledge()).unwrap();
    let answer = serde_json::to_value(diagnostician.diagnose(case).unwrap()).unwrap();
    let text = answer["causes"][0]["evidence"][0]["text"].as_str().unwrap();
    assert_eq!(text, "mixing water temperature −0.5 °C is below 5 °C");
}

#[test]
fn the_guide_lists_every_word_with_its_inputs_and_figures() {
    let guide = include_str!("../../rules/README.md");
    for calculation in all().filter(|calculation| calculation.is_word_of_rules()) {
        let start = format!("| `{}` | ", calculation.name);
        let row = guide.lines().find(|line| line.starts_with(&start)).unwrap_or_else(|| panic!("{start} is not there"));
        for input in calculation.inputs.iter().filter(|input| input.is_plain()) {
            let unit = match input.kind {
                InputKind::Number(kind) if kind.unit != "1" => format!(" (`{}`)", kind.unit),
                _ => String::new(),
            };
            let name = format!("`{}`{unit}", input.name);
            let shown = if input.is_required() { name } else { format!("[{name}") };
            assert!(row.contains(&shown), "{row} does not tell {shown}");
        }
        for figure in calculation.figures {
            assert!(row.contains(&format!("`{}`", figure.name)), "{row} does not tell {}", figure.name);
        }
    }
}

#[test]
fn a_computed_reading_tells_its_method_and_why_it_failed() {
    let reading = "reading(\"bake_loss\").title(\"bake loss\").method(\"scales\").unit(\"%\").plausible(0, 90).products(soft_rolls)\n    .computed(bake_loss(#{ dough: dough_mass, baked: 400 }));";
    let mass = "reading(\"dough_mass\").title(\"dough mass\").method(\"scales\").unit(\"kg\").plausible(0, 9);";
    let files = pack().and("readings.rhai", mass).and("readings.rhai", reading);
    let diagnostician = Diagnostician::new(load(&files).unwrap().knowledge).unwrap();
    let answer = |kilograms: f64| {
        let readings = json!({"dough_mass": {"value": kilograms, "unit": "kg"}});
        let case = json!({"product": "hamburger_bun", "readings": readings}).to_string();
        let case = Case::parse(case.as_bytes(), diagnostician.knowledge()).unwrap();
        serde_json::to_value(diagnostician.diagnose(case).unwrap()).unwrap()
    };
    let answered = answer(0.5);
    let computed = &answered["computed"][0];
    assert_eq!((&computed["quantity"], &computed["value"]), (&json!("bake_loss"), &json!(20.0)));
    assert_eq!(computed["method"]["source"], "common practice");
    let failed = answer(0.3);
    assert_eq!(failed["computed"], json!([]));
    let aside = &failed["set_aside"][0];
    assert_eq!(aside["finding"], "bake_loss");
    assert!(aside["text"].as_str().unwrap().starts_with("cannot be computed: `bake_loss` gives no figure"), "{aside}");
    assert_eq!(failed["rule_faults"], json!([]));
}
