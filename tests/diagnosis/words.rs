//! How answers read: the words that the program makes, on a small pack.

use std::sync::LazyLock;

use serde_json::{Value, json};
use whybake::case::Case;
use whybake::diagnosis::{Diagnosis, Diagnostician, render};
use whybake::rules::{RuleFiles, load};

const FILES: [(&str, &str); 10] = [
    ("pack.rhai", r#"pack("words").title("Words").version("1.0.0");"#),
    (
        "scales.rhai",
        r#"prior_word("COMMON", 0.1); prior_word("RARE", 0.02); strength_word("OFTEN", 0.6); weight_word("STRONG", 10); weight_word("HUGE", 30);"#,
    ),
    ("sources.rhai", r#"source("trade").citation("rule of thumb of the trade").common_practice();"#),
    (
        "products.rhai",
        r#"family("buns").title("Buns"); family("jams").title("Jams").main_stage("filling");
product("bun").title("Bun").family(buns); product("jam").title("Jam").family(jams);"#,
    ),
    (
        "ingredients.rhai",
        r#"ingredient("flour").title("Flour").flour().composition(#{ water: 14, starch: 86 }).source(trade);
ingredient("butter").title("Butter, unsalted").role("fat").composition(#{ water: 16, fat: 84 }).source(trade);
ingredient("margarine").title("Margarine, 80 % fat").role("fat").composition(#{ water: 20, fat: 80 }).source(trade);"#,
    ),
    (
        "symptoms.rhai",
        r#"symptom("blistered").title("Blisters on the crust").description("Small bubbles.").products(buns);
symptom("not_flaky").title("Not flaky").description("It does not flake.").products(buns);
symptom("flat").title("Flat").description("It is flat.").products(buns);
symptom("runny").title("Runny").description("It runs.").products(jams);"#,
    ),
    (
        "readings.rhai",
        r#"reading("core").title("core temperature").unit("Cel").plausible(0, 130).method("probe").products(buns).window(buns, 92, 98).high_shows(blistered).effort(1);
reading("shelf").title("shelf temperature").unit("Cel").plausible(-30, 60).method("thermometer").products(buns).effort(1);
reading("filling_ph").title("pH of the filling").unit("[pH]").plausible(2, 9).method("electrode").products(buns).effort(1);"#,
    ),
    (
        "facts.rhai",
        r#"fact("dent_stays").title("finger dent stays").question("Does a finger dent stay?").products(buns).effort(1);
fact("with_filling").title("baked with the filling in it").question("Is it baked with the filling in it?").products(buns).effort(1);"#,
    ),
    (
        "actions.rhai",
        r#"action("bake").title("Bake longer").text("Bake longer.").may_show(blistered).may_show(flat).may_show(runny);
action("cool").title("Cool it").text("Cool it.");"#,
    ),
    (
        "causes.rhai",
        r#"cause("cold_shelf").title("Cold shelf").mechanism("Cold.").products(buns).prior(COMMON).shows(blistered, OFTEN)
    .evidence(core > low_limit(core) - 1, STRONG, against(STRONG))
    .evidence((filling_ph > 4.6 | filling_ph > 5 | with_filling), STRONG, against(STRONG))
    .evidence(formula_has(butter, margarine), STRONG, against(STRONG))
    .action(bake.set("filling_ph", filling_ph - 1, "[pH]").set("butter_on_flour", baker_percent(butter) + 1, "%"))
    .action(cool)
    .confirm(dent_stays, excluded(!dent_stays)).source(trade);
cause("fat_wrong").title("Fat wrong").mechanism("Fat.").products(buns).prior(RARE).shows(flat, OFTEN)
    .evidence(dent_stays & either(shelf, 20) < 85, STRONG).evidence(filling_ph < 3, STRONG).action(cool).confirm(filling_ph < 3).source(trade);
cause("sure").title("Sure").mechanism("Sure.").products(buns).prior(COMMON).shows(not_flaky, OFTEN)
    .evidence(with_filling, HUGE).action(cool).confirm(with_filling, excluded(!with_filling)).source(trade);
cause("too_thin").title("Too thin").mechanism("Jam.").products(jams).prior(COMMON).shows(runny, OFTEN).action(cool).source(trade);"#,
    ),
];

static RULES: LazyLock<Diagnostician> = LazyLock::new(|| {
    let mut files = RuleFiles::default();
    for (path, text) in FILES {
        files.insert(path, text);
    }
    Diagnostician::new(load(&files).unwrap_or_else(|faults| panic!("{faults:?}")).knowledge).unwrap()
});

fn diagnosis(symptoms: &Value, readings: &Value, facts: &Value) -> Diagnosis<'static> {
    let case = json!({"product": "bun", "symptoms": symptoms, "readings": readings, "facts": facts});
    diagnosis_of(&case)
}

fn diagnosis_of(case: &Value) -> Diagnosis<'static> {
    RULES.diagnose(Case::parse(case.to_string().as_bytes(), RULES.knowledge()).unwrap()).unwrap()
}

/// The arguments of a cause, each with its finding.
fn arguments(diagnosis: &Diagnosis<'_>, cause: &str, finding: &str) -> String {
    let cause = diagnosis.causes.iter().find(|own| own.cause == cause).unwrap();
    cause.evidence.iter().find(|own| own.finding == finding).map_or_else(String::new, |own| own.text.to_string())
}

/// The text for people with its lines joined.
fn page(diagnosis: &Diagnosis<'_>) -> String {
    let page = render(diagnosis, &RULES.knowledge().declared, 110);
    page.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn blisters() -> Value {
    json!([{"symptom": "blistered"}])
}

#[test]
fn a_number_that_stands_in_for_a_reading_is_called_after_it() {
    let flat = json!([{"symptom": "flat"}]);
    let assumed = diagnosis(&flat, &json!({}), &json!({"dent_stays": true}));
    let text = "finger dent stays: yes; shelf temperature, taken as 20 °C, is below 85 °C";
    assert_eq!(arguments(&assumed, "fat_wrong", "dent_stays"), text);
    let known = diagnosis(&flat, &json!({"shelf": {"value": 5, "unit": "Cel"}}), &json!({"dent_stays": true}));
    let text = "finger dent stays: yes; shelf temperature 5 °C is below 85 °C";
    assert_eq!(arguments(&known, "fat_wrong", "dent_stays"), text);
}

#[test]
fn a_derived_limit_is_a_figure_and_no_formula() {
    let said = diagnosis(&blisters(), &json!({"core": {"value": 91.04, "unit": "Cel"}}), &json!({}));
    assert_eq!(arguments(&said, "cold_shelf", "core"), "core temperature 91.04 °C is above 91 °C");
    let at = diagnosis(&blisters(), &json!({"core": {"value": 91, "unit": "Cel"}}), &json!({}));
    assert_eq!(arguments(&at, "cold_shelf", "core"), "core temperature 91 °C is at 91 °C, not above");
}

#[test]
fn of_alternatives_only_what_decides_is_told() {
    let ph = |value: f64| json!({"filling_ph": {"value": value, "unit": "[pH]"}});
    let some = diagnosis(&blisters(), &ph(4.8), &json!({}));
    assert_eq!(arguments(&some, "cold_shelf", "filling_ph"), "pH of the filling 4.8 is above 4.6");
    let none = diagnosis(&blisters(), &ph(4.0), &json!({"with_filling": false}));
    let told =
        "pH of the filling 4 is not above 4.6; pH of the filling 4 is not above 5; baked with the filling in it: no";
    assert_eq!(arguments(&none, "cold_shelf", "filling_ph"), told);
}

#[test]
fn what_the_formula_lacks_is_called_by_the_first_words() {
    let formula = json!({"ingredients": [{"ingredient": "flour", "amount": 10, "unit": "kg"}], "complete": true});
    let said = diagnosis_of(&json!({"product": "bun", "symptoms": blisters(), "formula": formula}));
    assert_eq!(arguments(&said, "cold_shelf", "formula"), "the formula has no butter or margarine");
}

#[test]
fn actions_are_alternatives_with_needs_by_their_titles() {
    let page = page(&diagnosis(&blisters(), &json!({}), &json!({})));
    assert!(page.contains("do: Bake longer."), "{page}");
    assert!(page.contains("or: Cool it."), "{page}");
    assert!(page.contains("for the quantity, find out: pH of the filling; the whole formula"), "{page}");
    // What only a jam can show is no side effect of a bun.
    assert!(page.contains("mind: overdone it can bring blisters on the crust, flat"), "{page}");
    assert!(!page.contains("runny"), "{page}");
}

#[test]
fn quantities_are_called_after_their_reading_or_ingredient() {
    let formula = json!({"ingredients": [{"ingredient": "flour", "amount": 10, "unit": "kg"}], "complete": true});
    let readings = json!({"filling_ph": {"value": 4.15, "unit": "[pH]"}});
    let case = json!({"product": "bun", "symptoms": blisters(), "readings": readings, "formula": formula});
    let page = page(&diagnosis_of(&case));
    assert!(page.contains("pH of the filling = 3.15"), "{page}");
    assert!(page.contains("butter on flour = 1 %"), "{page}");
}

#[test]
fn the_mark_of_a_check_stands_before_what_confirms() {
    let open = page(&diagnosis(&blisters(), &json!({}), &json!({})));
    assert!(open.contains("check: finger dent stays; excluded if not (Does a finger dent stay?)"), "{open}");
    let told = page(&diagnosis(&blisters(), &json!({}), &json!({"dent_stays": true})));
    assert!(told.contains("check [confirmed]: finger dent stays; excluded if not (Does"), "{told}");
}

#[test]
fn a_symptom_is_asked_for_in_a_question() {
    let said = diagnosis(&blisters(), &json!({}), &json!({}));
    let page = page(&diagnosis(&json!([]), &json!({}), &json!({})));
    assert!(page.contains("Is this seen: not flaky? It does not flake."), "{page}");
    assert!(said.next_questions.iter().all(|own| own.text.contains('?')));
}

#[test]
fn a_reading_past_its_limit_counts_as_the_symptom() {
    let said = diagnosis(&json!([]), &json!({"core": {"value": 98.04, "unit": "Cel"}}), &json!({}));
    let text = "core temperature 98.04 °C is past its high limit of 98 °C: counts as blisters on the crust";
    assert_eq!(said.raised[0].text, text);
    assert!(page(&said).contains(&format!("Taken from readings - {text}")));
}

#[test]
fn a_confirmed_leader_asks_for_no_measurement() {
    let not_flaky = json!([{"symptom": "not_flaky"}]);
    let settled = diagnosis(&not_flaky, &json!({}), &json!({"with_filling": true}));
    assert_eq!(settled.summary, "Most likely: Sure (over 99 %), confirmed: baked with the filling in it.");
    let unsettled = diagnosis(&blisters(), &json!({}), &json!({}));
    assert!(unsettled.summary.contains("Measure next: "), "{}", unsettled.summary);
}

#[test]
fn what_tells_hardly_anything_is_not_written() {
    let said = diagnosis(&blisters(), &json!({}), &json!({}));
    let page = page(&said);
    for next in said.next_readings.iter().filter(|next| next.information_bits < 0.01) {
        assert!(!page.contains(&format!("- {} (", next.title)), "{page}");
    }
}
