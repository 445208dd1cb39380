//! Rule tests: what is said of a faulty case file, and of an answer that does not meet its expectations.

use whybake::diagnosis::Diagnostician;
use whybake::rule_tests::{Failure, RuleTests};
use whybake::rules::{RuleFiles, load};

use crate::support::{Changed, line, pack};

const HOT: &str = r#"{ "product": "hamburger_bun", "symptoms": [{ "symptom": "hollow_under_crust" }],
            "readings": { "dough_temperature": { "value": 31, "unit": "Cel" } } }"#;

const PATH: &str = "rolls/cases/hot.json";

/// The small pack with one case file.
fn with_case(text: &str) -> RuleFiles {
    pack().with(PATH, text)
}

/// The small pack with a hot-dough case that expects something.
fn expecting(expect: &str) -> RuleFiles {
    with_case(&format!("{{ \"title\": \"hot dough\",\n  \"case\": {HOT},\n  \"expect\": {expect} }}"))
}

fn run(files: &RuleFiles) -> (Vec<String>, Vec<Failure>) {
    let diagnostician = Diagnostician::new(load(files).unwrap().knowledge).unwrap();
    let tests = RuleTests::read(files, diagnostician.knowledge());
    (tests.diagnostics.iter().map(line).collect(), tests.run(&diagnostician))
}

/// Asserts what is said of the files themselves.
#[track_caller]
fn assert_faults(files: &RuleFiles, expected: &[&str]) {
    let (told, failures) = run(files);
    assert!(told == expected, "told\n  {}\nexpected\n  {}", told.join("\n  "), expected.join("\n  "));
    assert_eq!(failures, []);
}

/// Asserts what is said of the answers.
#[track_caller]
fn assert_failures(files: &RuleFiles, expected: &[&str]) {
    let (told, failures) = run(files);
    assert_eq!(told, [""; 0]);
    let failures: Vec<String> = failures.iter().map(|failure| line(&failure.diagnostic())).collect();
    assert!(failures == expected, "told\n  {}\nexpected\n  {}", failures.join("\n  "), expected.join("\n  "));
}

#[test]
fn a_met_expectation_says_nothing() {
    assert_failures(
        &expecting(
            r#"{ "leader": "dough_too_warm", "among_first_three": ["dough_too_warm"], "above": { "dough_too_warm": 0.5 } }"#,
        ),
        &[],
    );
}

#[test]
fn tests_are_no_part_of_the_digest() {
    assert_eq!(pack().digest(), expecting("{}").digest());
    assert_ne!(pack(), expecting("{}"));
}

#[test]
fn text_that_is_no_json_is_told_with_its_place() {
    assert_faults(
        &with_case("{ \"title\": \"é\",\n  \"case\": {é}\n}"),
        &["syntax rolls/cases/hot.json:2:12 [é] the file is not JSON: key must be a string"],
    );
    assert_faults(
        &with_case("{ \"title\": \"x\""),
        &["syntax rolls/cases/hot.json:1:14 [\"] the file is not JSON: eof while parsing an object"],
    );
}

#[test]
fn a_text_nested_without_end_is_told_and_not_followed() {
    for open in ["[", "{\"a\":"] {
        let (told, _) = run(&with_case(&open.repeat(30_000)));
        assert_eq!(told.len(), 1);
        assert!(told[0].contains("the file is not JSON: recursion limit exceeded"), "{}", &told[0][..80]);
    }
}

#[test]
fn unknown_members_are_told_with_a_suggestion() {
    assert_faults(
        &expecting(r#"{ "leeder": "dough_too_warm" }"#).with(
            "rolls/cases/more.json",
            &format!(
                "{{ \"title\": \"x\", \"expects\": {{}}, \"case\": {HOT},\n\"expect\": {{ \"hue\": 1, \"leader\": \"dough_too_warm\" }} }}"
            ),
        ),
        &[
            "unknown-word rolls/cases/hot.json:4:15 [\"leeder\"] unknown member `leeder` -- did you mean `leader`?",
            "unknown-word rolls/cases/more.json:1:17 [\"expects\"] unknown member `expects` -- did you mean `expect`?",
            "unknown-word rolls/cases/more.json:3:13 [\"hue\"] unknown member `hue` -- the members are `leader`, `among_first_three`, `above`, `below`, `next_reading_among_first_three`, `caution`, `no_caution`, `needs`, `quantity`, `excluded_action`, `unexplained`, `set_aside`, `raised`",
        ],
    );
}

#[test]
fn unknown_names_are_told_where_they_stand() {
    assert_faults(
        &expecting(
            "{ \"leader\": \"dough_to_warm\",\n\"above\": { \"dough_too_worm\": 0.5 },\n\"set_aside\": [\"dough_temprature\"], \"unexplained\": [\"low_volum\"] }",
        ),
        &[
            "unknown-name rolls/cases/hot.json:4:25 [\"dough_to_warm\"] unknown cause `dough_to_warm` -- did you mean `dough_too_warm`?",
            "unknown-name rolls/cases/hot.json:5:12 [\"dough_too_worm\"] unknown cause `dough_too_worm` -- did you mean `dough_too_warm`?",
            "unknown-name rolls/cases/hot.json:6:15 [\"dough_temprature\"] unknown reading `dough_temprature` -- did you mean `dough_temperature`?",
            "unknown-name rolls/cases/hot.json:6:52 [\"low_volum\"] unknown symptom `low_volum` -- did you mean `low_volume`?",
        ],
    );
}

#[test]
fn faults_of_the_case_are_told_as_callers_hear_them() {
    let case =
        r#"{ "product": "hamburger_bum", "readings": { "dough_temperature": { "value": "hot", "unit": "celsius" } } }"#;
    assert_faults(
        &with_case(&format!("{{ \"title\": \"x\", \"case\":\n{case}, \"expect\": {{}} }}")),
        &[
            "unknown-name rolls/cases/hot.json:2:14 [\"hamburger_bum\"] unknown product `hamburger_bum` -- did you mean `hamburger_bun`?",
            "wrong-arguments rolls/cases/hot.json:2:77 [\"hot\"] a number is wanted, this is a string",
            "unit rolls/cases/hot.json:2:92 [\"celsius\"] unknown unit `celsius` -- write `Cel`",
        ],
    );
}

#[test]
fn what_is_missing_or_of_another_type_is_told() {
    assert_faults(
        &with_case("{ \"title\": 3, \"expect\": { \"caution\": 1, \"quantity\": {} } }"),
        &[
            "incomplete rolls/cases/hot.json:1:1 [{] `case` is missing",
            "wrong-arguments rolls/cases/hot.json:1:12 [3] a string is wanted, this is a number",
            "wrong-arguments rolls/cases/hot.json:1:38 [1] an array is wanted, this is a number",
            "incomplete rolls/cases/hot.json:1:53 [{] `action` is missing",
            "incomplete rolls/cases/hot.json:1:53 [{] `name` is missing",
            "incomplete rolls/cases/hot.json:1:53 [{] `value` is missing",
            "incomplete rolls/cases/hot.json:1:53 [{] `within` is missing",
        ],
    );
    assert_faults(
        &with_case("[]"),
        &["wrong-arguments rolls/cases/hot.json:1:1 [[] an object is wanted, this is an array"],
    );
}

#[test]
fn a_case_that_expects_nothing_is_doubtful() {
    let help = "add `\"expect\": { \"leader\": \"…\" }`";
    assert_faults(
        &expecting("{}"),
        &[&format!("expects-nothing rolls/cases/hot.json:4:3 [\"expect\"] the case expects nothing -- {help}")],
    );
    assert_faults(
        &with_case(&format!("{{ \"title\": \"x\", \"case\": {HOT} }}")),
        &[&format!("expects-nothing rolls/cases/hot.json:1:1 [{{] the case expects nothing -- {help}")],
    );
}

/// A second cause with another symptom, a reading that raises one, and a requirement.
fn wider() -> RuleFiles {
    expecting("{}")
        .with("requirements.rhai", "diet(\"vegan\").title(\"Vegan\");\n")
        .with("cautions.rhai", "caution(\"hot_oven\").text(\"Ovens burn.\");\n")
        .and("actions.rhai", "action(\"add_butter\").title(\"Add butter\").text(\"Add it.\").not_for(vegan);")
        .and(
            "readings.rhai",
            "reading(\"volume\").title(\"volume\").method(\"seeds\").unit(\"mL\").plausible(1, 900)\n\
             .window(soft_rolls, 300, 400).low_shows(low_volume);",
        )
        .with(
            "lean.rhai",
            "cause(\"lean_dough\").title(\"Lean dough\").mechanism(\"Little fat.\").products(soft_rolls).prior(0.02)\n\
             .shows(low_volume, OFTEN).action(add_butter.set(\"butter\", dough_temperature / 10, \"%\"))\n\
             .confirm(room_temperature > 30).source(common_practice);\n",
        )
}

#[test]
fn every_kind_of_expectation_can_be_met() {
    let case = r#"{ "product": "hamburger_bun", "requirements": { "diets": ["vegan"] },
        "symptoms": [{ "symptom": "hollow_under_crust", "present": false }],
        "readings": { "volume": { "value": 250, "unit": "mL" }, "room_temperature": { "value": 300, "unit": "Cel" } } }"#;
    let expect = r#"{ "leader": "lean_dough", "below": { "dough_too_warm": 0.2 }, "excluded_action": ["add_butter"],
        "set_aside": ["room_temperature"], "raised": ["low_volume"] }"#;
    assert_failures(
        &wider().with(PATH, &format!("{{ \"title\": \"x\", \"case\": {case}, \"expect\": {expect} }}")),
        &[],
    );
    let case = r#"{ "product": "hamburger_bun", "symptoms": [{ "symptom": "hollow_under_crust" }] }"#;
    let expect = r#"{ "next_reading_among_first_three": ["dough_temperature"] }"#;
    assert_failures(
        &wider().with(PATH, &format!("{{ \"title\": \"x\", \"case\": {case}, \"expect\": {expect} }}")),
        &[],
    );
    let case = r#"{ "product": "hamburger_bun", "symptoms": [{ "symptom": "low_volume", "certainty": 0.8 }],
        "readings": { "dough_temperature": { "value": 20, "unit": "Cel" } } }"#;
    let quantity = r#""action": "add_butter", "name": "butter", "value": 2.1, "within": 0.11"#;
    let expect =
        format!(r#"{{ "quantity": [{{ {quantity} }}, {{ "cause": "lean_dough", {quantity} }}], "unexplained": [] }}"#);
    assert_failures(
        &wider().with(PATH, &format!("{{ \"title\": \"x\", \"case\": {case}, \"expect\": {expect} }}")),
        &[],
    );
    let case = r#"{ "product": "hamburger_bun", "symptoms": [{ "symptom": "low_volume" }] }"#;
    let expect = r#"{ "unexplained": ["low_volume"] }"#;
    assert_failures(&with_case(&format!("{{ \"title\": \"x\", \"case\": {case}, \"expect\": {expect} }}")), &[]);
}

#[test]
fn a_failure_names_what_was_wanted_what_came_and_the_first_causes() {
    let expect = "{\n\"leader\": \"lean_dough\",\n\"above\": { \"dough_too_warm\": 0.999 },\n\"below\": { \"dough_too_warm\": 0.1 },\n\
                  \"caution\": [\"hot_oven\"],\n\"raised\": [\"low_volume\"],\n\"next_reading_among_first_three\": [\"volume\"],\n\
                  \"quantity\": { \"action\": \"add_butter\", \"name\": \"butter\", \"value\": 1, \"within\": 0.1 },\n\
                  \"set_aside\": [\"dough_waits\"], \"excluded_action\": [\"add_butter\"], \"unexplained\": [\"low_volume\"] }";
    let files =
        wider().with(PATH, &format!("{{ \"title\": \"hot dough\",\n  \"case\": {HOT},\n  \"expect\": {expect} }}"));
    let first = "the first causes are `dough_too_warm` 0.971, `lean_dough` 0.020";
    let said = |what: &str| format!("failed-test rolls/cases/hot.json:{what} -- {first}");
    assert_failures(
        &files,
        &[
            &said("5:11 [\"lean_dough\"] `leader`: wanted `lean_dough`, came `dough_too_warm`"),
            &said("6:12 [\"dough_too_warm\"] `above`: wanted `dough_too_warm` above 0.999, came 0.971"),
            &said("7:12 [\"dough_too_warm\"] `below`: wanted `dough_too_warm` below 0.1, came 0.971"),
            &said("8:13 [\"hot_oven\"] `caution`: wanted `hot_oven`, came nothing"),
            &said("9:12 [\"low_volume\"] `raised`: wanted `low_volume`, came nothing"),
            &said("10:36 [\"volume\"] `next_reading_among_first_three`: wanted `volume`, came nothing"),
            &said(
                "11:13 [{] `quantity`: wanted `butter` 1 ± 0.1 by `add_butter`, came only `colder_water` for `dough_too_warm`",
            ),
            &said("12:15 [\"dough_waits\"] `set_aside`: wanted `dough_waits`, came nothing"),
            &said("12:51 [\"add_butter\"] `excluded_action`: wanted `add_butter`, came nothing"),
            &said("12:82 [\"low_volume\"] `unexplained`: wanted `low_volume`, came nothing"),
        ],
    );
    let (_, failures) = run(&files);
    assert_eq!((failures[0].title.as_str(), failures[0].leading.len()), ("hot dough", 2));
}

#[test]
fn what_an_action_needs_and_which_caution_must_not_stand_can_be_wanted() {
    let case = r#"{ "product": "hamburger_bun", "symptoms": [{ "symptom": "low_volume" }] }"#;
    let test = |expect: &str| {
        let (_, failures) =
            run(&wider().with(PATH, &format!("{{ \"title\": \"x\", \"case\": {case}, \"expect\": {expect} }}")));
        failures.into_iter().map(|failure| format!("{}, came {}", failure.wanted, failure.found)).collect::<Vec<_>>()
    };
    let met = r#"{ "needs": { "add_butter": ["dough_temperature"] }, "no_caution": ["hot_oven"] }"#;
    assert_eq!(test(met), [""; 0]);
    assert_eq!(
        test(r#"{ "needs": { "add_butter": ["volume", "formula"] } }"#),
        ["`volume` for `add_butter`, came `dough_temperature`", "`formula` for `add_butter`, came `dough_temperature`",]
    );
}

#[test]
fn a_quantity_that_is_off_or_has_no_value_says_so() {
    let expect = |value: &str| {
        format!(
            "{{ \"quantity\": {{ \"cause\": \"lean_dough\", \"action\": \"add_butter\", \"name\": \"{value}\", \"value\": 1, \"within\": 0.1 }} }}"
        )
    };
    let failure = |case: &str, name: &str| {
        let text = format!("{{ \"title\": \"x\", \"case\": {case}, \"expect\": {} }}", expect(name));
        let (_, failures) = run(&wider().with(PATH, &text));
        failures[0].found.clone()
    };
    let small = r#"{ "product": "hamburger_bun", "symptoms": [{ "symptom": "low_volume" }],
        "readings": { "dough_temperature": { "value": 31, "unit": "Cel" } } }"#;
    assert_eq!(failure(small, "butter"), "3.1 %");
    assert_eq!(failure(small, "lard"), "no such quantity");
    assert_eq!(failure(HOT, "butter"), "no such cause among those that lead");
    let blank = r#"{ "product": "hamburger_bun", "symptoms": [{ "symptom": "low_volume", "certainty": 0.8 }] }"#;
    assert_eq!(failure(blank, "butter"), "no value, for it needs `dough_temperature`");
}

#[test]
fn a_cause_of_other_products_cannot_be_probable() {
    let files = expecting("{ \"below\": { \"elsewhere\": 0.5 } }")
        .and(
            "products.rhai",
            "family(\"cakes\").title(\"Cakes\");\nproduct(\"sponge\").title(\"Sponge\").family(cakes);",
        )
        .with(
            "cake.rhai",
            "cause(\"elsewhere\").title(\"E\").mechanism(\"M.\").products(cakes).prior(0.1).shows(low_volume, 0.5);\n",
        );
    let (_, failures) = run(&files);
    assert_eq!(failures[0].found, "nothing: it is no cause of `hamburger_bun`");
}
