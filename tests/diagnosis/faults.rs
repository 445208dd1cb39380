//! Faulty cases: every fault at once, each with its place and advice.

use whybake::case::FaultCode;

use crate::support::faults;

/// Pointer and kind of every fault.
fn places(case: &str) -> Vec<(String, FaultCode)> {
    faults(case).into_iter().map(|fault| (fault.pointer, fault.code)).collect()
}

fn expect(case: &str, wanted: &[(&str, FaultCode)]) {
    let wanted: Vec<(String, FaultCode)> =
        wanted.iter().map(|(pointer, code)| ((*pointer).to_owned(), *code)).collect();
    assert_eq!(places(case), wanted);
}

#[test]
fn every_part_is_read_though_others_are_faulty() {
    expect(
        r#"{"product": "hamburger_bum", "symptom": [], "symptoms": [{"symptom": "holow_under_crust"}, {"present": true}, 7],
            "readings": {"dough_temperature": {"value": "hot", "unit": "C"}, "dough_temprature": {"value": 1, "unit": "Cel"}},
            "facts": {"dough_waits_before_divider": "yes"}, "requirements": {"diets": ["halaal"], "market": "us", "avoid": ["lardd"]}}"#,
        &[
            ("/symptom", FaultCode::UnknownMember),
            ("/product", FaultCode::UnknownName),
            ("/symptoms/0/symptom", FaultCode::UnknownName),
            ("/symptoms/1", FaultCode::Missing),
            ("/symptoms/2", FaultCode::WrongType),
            ("/readings/dough_temperature/value", FaultCode::WrongType),
            ("/readings/dough_temperature/unit", FaultCode::UnknownUnit),
            ("/readings/dough_temprature", FaultCode::UnknownName),
            ("/facts/dough_waits_before_divider", FaultCode::WrongType),
            ("/requirements/diets/0", FaultCode::UnknownName),
            ("/requirements/market", FaultCode::UnknownName),
            ("/requirements/avoid/0", FaultCode::UnknownName),
        ],
    );
}

#[test]
fn contradictions_and_duplicates_are_faults() {
    expect(
        r#"{"product": "hamburger_bun", "product": "hot_dog_bun",
            "symptoms": [{"symptom": "open_grain"}, {"symptom": "open_grain", "present": false}, {"symptom": "pale_crust"}, {"symptom": "pale_crust"}],
            "readings": {"dough_temperature": {"value": 26, "unit": "Cel", "low": 28, "high": 24}}}"#,
        &[
            ("/product", FaultCode::Duplicate),
            ("/symptoms/1", FaultCode::Contradiction),
            ("/symptoms/3", FaultCode::Duplicate),
            ("/readings/dough_temperature", FaultCode::Contradiction),
        ],
    );
}

#[test]
fn units_of_another_kind_name_both_kinds() {
    let faults =
        faults(r#"{"product": "hamburger_bun", "readings": {"dough_temperature": {"value": 26, "unit": "min"}}}"#);
    assert_eq!(faults[0].code, FaultCode::WrongKindOfUnit);
    assert!(faults[0].detail.contains("time") && faults[0].detail.contains("temperature"), "{}", faults[0].detail);
}

#[test]
fn a_formula_is_checked_line_by_line() {
    expect(
        r#"{"product": "hamburger_bun", "formula": {"ingredients": [
            {"ingredient": "bread_flour", "amount": -1, "unit": "kg"}, {"ingredient": "watr", "amount": 1, "unit": "Cel"},
            {"name": "jam", "composition": {"water": 70, "sucrose": 60}, "amount": 1, "unit": "kg"}, {"amount": 1, "unit": "kg"}]}}"#,
        &[
            ("/formula/ingredients/0/amount", FaultCode::OutOfRange),
            ("/formula/ingredients/1/ingredient", FaultCode::UnknownName),
            ("/formula/ingredients/1/unit", FaultCode::WrongKindOfUnit),
            ("/formula/ingredients/2/composition", FaultCode::OutOfRange),
            ("/formula/ingredients/3", FaultCode::Missing),
        ],
    );
}

#[test]
fn more_symptoms_than_can_be_weighed_are_a_clear_fault() {
    let rules = whybake::rules::load(&whybake::rules::RuleFiles::embedded()).unwrap().knowledge;
    let symptoms: Vec<String> = rules
        .declared
        .symptoms
        .ids()
        .map(|id| format!(r#"{{"symptom": "{id}", "certainty": 0.4}}"#))
        .take(20)
        .collect();
    let case = format!(r#"{{"product": "hamburger_bun", "symptoms": [{}]}}"#, symptoms.join(","));
    expect(&case, &[("/symptoms", FaultCode::OutOfRange)]);
}

#[test]
fn what_is_no_case_at_all_is_a_fault() {
    expect("[]", &[("", FaultCode::WrongType)]);
    expect("{}", &[("", FaultCode::Missing)]);
}

/// Each of these names is compared with all that are declared, for its suggestion.
#[test]
fn a_hostile_case_is_told_in_bounds() {
    let members = |value: &str| {
        let members: Vec<String> = (0..20_000).map(|number| format!(r#""reading_{number}": {value}"#)).collect();
        members.join(",")
    };
    let (facts, readings) = (members("true"), members(r#"{"value": 1, "unit": "celsius"}"#));
    let case = format!(r#"{{"product": "hamburger_bun", "facts": {{{facts}}}, "readings": {{{readings}}}}}"#);
    assert_eq!(faults(&case).len(), 1_000);
}

#[test]
fn an_unknown_name_is_suggested_by_what_people_call_it() {
    let help = |case: &str| faults(case)[0].help.clone().unwrap_or_default();
    let symptom = |id: &str| help(&format!(r#"{{"product": "jam", "symptoms": [{{"symptom": "{id}"}}]}}"#));
    assert_eq!(symptom("syneresis"), "did you mean `weeping`?");
    assert!(symptom("hollow").contains("`hollow_under_crust`"), "{}", symptom("hollow"));
    let yeast = r#"{"product": "jam", "formula": {"ingredients": [{"ingredient": "compressed_yeast", "amount": 2, "unit": "%"}]}}"#;
    assert_eq!(help(yeast), "did you mean `fresh_yeast`?");
}

/// Cookies have a symptom of that name, too; the case is of a bun.
#[test]
fn of_an_unknown_symptom_those_of_the_product_are_suggested_first() {
    let help = |product: &str, symptom: &str| {
        let case = format!(r#"{{"product": "{product}", "symptoms": [{{"symptom": "{symptom}"}}]}}"#);
        faults(&case).remove(0).help
    };
    assert_eq!(help("hamburger_bun", "hollow").as_deref(), Some("did you mean `hollow_under_crust`?"));
    // A hollow underside is a rough one.
    assert_eq!(
        help("wire_cut_cookie", "hollow").as_deref(),
        Some("did you mean `hollow_cookie` or `rough_underside`?")
    );
    // What no symptom of the product comes near may be one of another product.
    assert_eq!(help("hamburger_bun", "filling_lumpi").as_deref(), Some("did you mean `filling_lumpy`?"));
}

/// Such a reading once stood neither among the readings nor among those set aside, and its limits were passed over.
#[test]
fn a_reading_too_large_for_its_own_unit_is_a_fault() {
    let reading = r#"{"value": 1e308, "unit": "[degF]", "low": -1.5e308, "target": 70, "high": 1.5e308}"#;
    let case = format!(r#"{{"product": "hamburger_bun", "readings": {{"dough_temperature": {reading}}}}}"#);
    let at = |name: &str| (format!("/readings/dough_temperature/{name}"), FaultCode::OutOfRange);
    assert_eq!(places(&case), [at("value"), at("low"), at("high")]);
    assert_eq!(faults(&case)[0].detail, "1e308 `[degF]` is not a finite number in `Cel`");
}

#[test]
fn a_number_of_hundreds_of_digits_is_told_with_an_exponent() {
    let case = r#"{"product": "hamburger_bun", "symptoms": [{"symptom": "open_grain", "certainty": -1e300}],
        "readings": {"dough_temperature": {"value": 26, "unit": "Cel", "low": 1e200, "high": 24}}}"#;
    let told: Vec<String> = faults(case).into_iter().map(|fault| fault.detail).collect();
    assert_eq!(told, ["-1e300 is not between 0 and 1", "`low` 1e200 is above `high` 24"]);
}
