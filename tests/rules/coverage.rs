//! Coverage of rules by rule tests: what counts as reached, and what is listed.

use whybake::diagnosis::Diagnostician;
use whybake::rule_tests::{Coverage, Observed, RuleTests, Tally};
use whybake::rules::{RuleFiles, load};

use crate::support::{Changed, pack};

/// The small pack with evidence in regions, a fact, and an action that needs a reading.
fn wider() -> RuleFiles {
    pack()
        .property(".evidence(dough_waits, STRONG, against(MODERATE))")
        .property(".evidence_in_regions(room_temperature, [18, 30], [-8, -2, 4.7], [0.2, 0.6, 0.2])")
        .property(".shows(low_volume, 0.2)")
        .property(".action(colder_water.set(\"water\", room_temperature - 5, \"Cel\"))")
}

fn with_cases(cases: &[&str]) -> RuleFiles {
    let mut files = wider();
    for (number, case) in cases.iter().enumerate() {
        let text = format!("{{ \"title\": \"x\", {case} }}");
        files.insert(&format!("rolls/cases/{number}.json"), &text);
    }
    files
}

fn coverage(cases: &[&str]) -> Coverage {
    let files = with_cases(cases);
    let loaded = load(&files).unwrap_or_else(|faults| panic!("{faults:?}"));
    let diagnostician = Diagnostician::new(loaded.knowledge).unwrap();
    let tests = RuleTests::read(&files, diagnostician.knowledge());
    assert!(!tests.has_faults(), "{:?}", tests.diagnostics);
    let mut observed = Observed::new(diagnostician.knowledge());
    let failures = tests.run_and_watch(&diagnostician, |test, answer| observed.watch(test, answer, &diagnostician));
    assert_eq!(failures, []);
    observed.coverage(diagnostician.knowledge())
}

fn unreached(coverage: &Coverage) -> Vec<String> {
    let line = |item: &whybake::rule_tests::Unreached| {
        format!("{}:{}:{} {}: {} {}", item.file, item.line, item.column, item.cause, item.item, item.never)
    };
    coverage.unreached.iter().map(line).collect()
}

const HOT: &str = r#""case": { "product": "hamburger_bun", "symptoms": [{ "symptom": "hollow_under_crust" }],
    "facts": { "dough_waits": true },
    "readings": { "dough_temperature": { "value": 31, "unit": "Cel" }, "room_temperature": { "value": 34, "unit": "Cel" } } },
    "expect": { "leader": "dough_too_warm" }"#;

const COLD: &str = r#""case": { "product": "hamburger_bun",
    "symptoms": [{ "symptom": "hollow_under_crust", "present": false }, { "symptom": "low_volume" }], "facts": { "dough_waits": false },
    "readings": { "dough_temperature": { "value": 24, "unit": "Cel" }, "room_temperature": { "value": 12, "unit": "Cel" } } },
    "expect": { "below": { "dough_too_warm": 0.1 } }"#;

const BETWEEN: &str = r#""case": { "product": "hamburger_bun", "symptoms": [{ "symptom": "low_volume", "present": false }],
    "readings": { "dough_temperature": { "value": 29, "unit": "Cel" }, "room_temperature": { "value": 22, "unit": "Cel" } } },
    "expect": { "below": { "dough_too_warm": 0.6 } }"#;

#[test]
fn without_a_test_everything_is_listed_with_its_place() {
    let coverage = coverage(&[]);
    assert_eq!(
        unreached(&coverage),
        [
            "mixing.rhai:1:1 dough_too_warm: the cause never expected",
            "mixing.rhai:6:6 dough_too_warm: `hollow_under_crust` never looked at",
            "mixing.rhai:7:6 dough_too_warm: dough temperature above 30 °C never known",
            "mixing.rhai:8:6 dough_too_warm: `colder_water` never advised",
            "mixing.rhai:10:6 dough_too_warm: dough waits never known",
            "mixing.rhai:11:6 dough_too_warm: room temperature below 18 °C never met",
            "mixing.rhai:11:6 dough_too_warm: room temperature from 18 °C to below 30 °C never met",
            "mixing.rhai:11:6 dough_too_warm: room temperature at or above 30 °C never met",
            "mixing.rhai:12:6 dough_too_warm: `low_volume` never looked at",
            "mixing.rhai:13:6 dough_too_warm: `colder_water` never advised",
        ]
    );
    assert_eq!(coverage.total.all(), Tally { reached: 0, of: 14 });
    assert_eq!(coverage.families[0].tests, 0);
}

#[test]
fn one_test_reaches_one_side_of_each() {
    let coverage = coverage(&[HOT]);
    assert_eq!(
        unreached(&coverage),
        [
            "mixing.rhai:6:6 dough_too_warm: `hollow_under_crust` never absent",
            "mixing.rhai:7:6 dough_too_warm: dough temperature above 30 °C never false",
            "mixing.rhai:10:6 dough_too_warm: dough waits never false",
            "mixing.rhai:11:6 dough_too_warm: room temperature below 18 °C never met",
            "mixing.rhai:11:6 dough_too_warm: room temperature from 18 °C to below 30 °C never met",
            "mixing.rhai:12:6 dough_too_warm: `low_volume` never looked at",
        ]
    );
    let total = coverage.total;
    assert_eq!(total.causes, Tally { reached: 1, of: 1 });
    assert_eq!(total.evidence, Tally { reached: 2, of: 4 });
    assert_eq!(total.regions, Tally { reached: 1, of: 3 });
    assert_eq!(total.links, Tally { reached: 1, of: 4 });
    assert_eq!(total.prescriptions, Tally { reached: 2, of: 2 });
    assert_eq!(coverage.families[0].tests, 1);
    assert_eq!(coverage.families[0].reached, total);
}

#[test]
fn a_value_on_a_ramp_is_neither_true_nor_false() {
    let coverage = coverage(&[BETWEEN]);
    assert!(
        unreached(&coverage)
            .contains(&"mixing.rhai:7:6 dough_too_warm: dough temperature above 30 °C only partly true".to_owned()),
        "{:?}",
        unreached(&coverage)
    );
    assert_eq!(coverage.total.evidence, Tally { reached: 0, of: 4 });
}

#[test]
fn all_sides_together_are_everything() {
    let coverage = coverage(&[HOT, COLD, BETWEEN]);
    assert_eq!(unreached(&coverage), [""; 0]);
    assert_eq!(coverage.total.all().permille(), Some(1000));
}

#[test]
fn a_test_of_another_family_reaches_a_shared_cause_and_counts_in_its_own() {
    let files = with_cases(&[HOT]).and(
        "products.rhai",
        "family(\"cakes\").title(\"Cakes\");\nproduct(\"sponge\").title(\"Sponge\").family(cakes);",
    );
    let diagnostician = Diagnostician::new(load(&files).unwrap().knowledge).unwrap();
    let tests = RuleTests::read(&files, diagnostician.knowledge());
    let mut observed = Observed::new(diagnostician.knowledge());
    tests.run_and_watch(&diagnostician, |test, answer| observed.watch(test, answer, &diagnostician));
    let coverage = observed.coverage(diagnostician.knowledge());
    let of = |id: &str| coverage.families.iter().find(|family| family.family == id).unwrap();
    assert_eq!((of("soft_rolls").tests, of("cakes").tests), (1, 0));
    assert_eq!(of("cakes").reached.all().permille(), None);
    assert_eq!(of("cakes").reached.all().to_string(), "–");
}
