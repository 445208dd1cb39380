//! Replay of stored diagnoses: the same bytes, or what has changed.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test fails by panicking")]

use serde_json::{Value, json};
use whybake::diagnosis::Diagnostician;
use whybake::json::DocumentFaults;
use whybake::replay::{PROGRAM_VERSION, Record, Replay, text, write_record};
use whybake::rules::{RuleFiles, load};

fn rules(files: &RuleFiles) -> Diagnostician {
    Diagnostician::new(load(files).unwrap_or_else(|faults| panic!("{faults:#?}")).knowledge).unwrap()
}

/// Two causes of a hollow bun, with their priors, the strength of the first, and what its action sets; all invented.
fn pack(warm: f64, lean: f64, water: f64, more: &str) -> Diagnostician {
    let causes = format!(
        "cause(\"too_warm\").title(\"Too warm\").mechanism(\"M.\").products(rolls).prior({warm:?}).shows(hollow, 0.9)\n\
         .action(colder.set(\"water_temperature\", {water:?}, \"Cel\"), 0.8).source(practice);\n\
         cause(\"lean\").title(\"Lean\").mechanism(\"M.\").products(rolls).prior({lean:?}).shows(hollow, 0.1)\
         .source(practice);\n{more}"
    );
    let files = [
        ("pack.rhai", "pack(\"small\").title(\"Small\").version(\"1.0.0\");"),
        ("sources.rhai", "source(\"practice\").citation(\"invented\").common_practice();"),
        ("products.rhai", "family(\"rolls\").title(\"R\");\nproduct(\"bun\").title(\"B\").family(rolls);"),
        ("symptoms.rhai", "symptom(\"hollow\").title(\"H\").description(\"A gap.\").products(rolls);"),
        ("cautions.rhai", "caution(\"hot\").text(\"It is hot.\");"),
        ("actions.rhai", "action(\"colder\").title(\"Colder\").text(\"T.\").effort(5).source(practice);"),
        ("causes.rhai", causes.as_str()),
    ];
    let mut all = RuleFiles::default();
    files.iter().for_each(|(path, text)| all.insert(path, text));
    rules(&all)
}

fn old() -> Diagnostician {
    pack(0.2, 0.1, 7.0, "")
}

const CASE: &[u8] = br#"{ "product": "bun",
    "symptoms": [ {"symptom": "hollow"} ], "reference": {"lot":  "A 1"} }"#;

fn record(rules: &Diagnostician) -> Vec<u8> {
    write_record(CASE, rules).unwrap()
}

fn replay(record: &[u8], rules: &Diagnostician) -> Replay {
    Record::parse(record).unwrap().replay(rules).unwrap()
}

/// A record with another text at one place.
fn tampered(record: &[u8], from: &str, to: &str) -> Vec<u8> {
    let text = std::str::from_utf8(record).unwrap();
    assert_eq!(text.matches(from).count(), 1, "{from} in {text}");
    text.replace(from, to).into_bytes()
}

#[test]
fn every_case_of_the_pack_gives_the_same_bytes_again() {
    let files = RuleFiles::embedded();
    let (rules, again) = (rules(&files), rules(&files));
    let mut count = 0;
    for (path, text) in files.cases() {
        let case: Value = serde_json::from_str::<Value>(text).unwrap()["case"].take();
        let pretty = serde_json::to_string_pretty(&case).unwrap();
        let record = write_record(pretty.as_bytes(), &rules).unwrap();
        assert_eq!(record.iter().filter(|byte| **byte == b'\n').count(), 1, "{path}: a record a line");
        let replay = replay(&record, &again);
        assert!(replay.same && replay.same_content && replay.same_rules, "{path}: {replay:?}");
        assert_eq!((replay.same_program, replay.ranking, replay.places.len()), (Some(true), None, 0));
        count += 1;
    }
    assert!(count > 500, "{count}");
}

#[test]
fn a_record_is_the_case_and_the_answer_as_callers_can_store_them() {
    let rules = old();
    let stored: Value = serde_json::from_slice(&record(&rules)).unwrap();
    assert_eq!(stored["program_version"], PROGRAM_VERSION);
    assert_eq!(stored["case"], serde_json::from_slice::<Value>(CASE).unwrap());
    let case = whybake::case::Case::parse(CASE, rules.knowledge()).unwrap();
    let answer = String::from_utf8(rules.diagnose(case).unwrap().to_json().unwrap()).unwrap();
    let case = std::str::from_utf8(CASE).unwrap();
    let own = format!("{{\"lot\": 7, \"case\": {case}, \"diagnosis\": {answer}, \"outcome\": \"mended\"}}");
    let replay = replay(own.as_bytes(), &rules);
    assert!(replay.same, "{replay:?}");
    assert_eq!((replay.then.program_version, replay.same_program), (None, None));
}

/// Other white space and another order of members say the same, but not byte for byte.
#[test]
fn a_record_that_was_written_anew_says_the_same() {
    let rules = old();
    let value: Value = serde_json::from_slice(&record(&rules)).unwrap();
    let replay = replay(serde_json::to_string_pretty(&value).unwrap().as_bytes(), &rules);
    assert!(!replay.same && replay.same_content, "{replay:?}");
    assert!(replay.verdict.starts_with("the same answer, stored with other white space"), "{}", replay.verdict);
}

#[test]
fn a_tampered_answer_is_told_though_the_digest_is_the_same() {
    let rules = old();
    let replay = replay(&tampered(&record(&rules), "\"value\":7.0", "\"value\":9.0"), &rules);
    assert!(!replay.same && !replay.same_content && replay.same_rules && replay.same_program == Some(true));
    assert!(replay.verdict.ends_with("the record has been changed"), "{}", replay.verdict);
    assert_eq!(replay.places, ["/causes/0/actions/0/quantities/0/value"]);
    assert_eq!(replay.ranking, None);
    let action = &replay.actions[0];
    assert_eq!((action.cause.as_str(), action.action.as_str()), ("too_warm", "colder"));
    assert_eq!((action.quantities[0].before, action.quantities[0].after), (Some(9.0), Some(7.0)));
    assert!(text(&replay).contains("water_temperature: 9 Cel -> 7 Cel"), "{}", text(&replay));
}

#[test]
fn another_digest_alone_is_told_as_such() {
    let rules = old();
    let replay = replay(&tampered(&record(&rules), "\"digest\":\"sha256:", "\"digest\":\"sha256:0"), &rules);
    assert!(!replay.same_content && !replay.same_rules);
    assert_eq!(replay.places, ["/rules/digest"]);
    assert_eq!(replay.verdict, "other rules, and the same answer but for their version and digest");
}

/// One letter of a text that no list of differences knows.
#[test]
fn a_tampered_word_is_told_with_its_place() {
    let rules = old();
    let replay = replay(&tampered(&record(&rules), "\"text\":\"T.\"", "\"text\":\"U.\""), &rules);
    assert!(!replay.same_content && replay.actions.is_empty());
    assert_eq!(replay.places, ["/causes/0/actions/0/text"]);
}

/// By hand. Of a hollow that is seen, with the leak `l` and the priors p, q of causes that show it in 0.9 and 0.1 of cases:
/// P(too_warm | hollow) = p (1 − (1 − l)(1 − 0.9)(1 − 0.1 q)) / (1 − (1 − l)(1 − 0.9 p)(1 − 0.1 q)).
fn posterior_of_too_warm(warm: f64, lean: f64, leak: f64) -> f64 {
    let absent = |present: f64| (1.0 - leak) * (1.0 - 0.9 * present) * (1.0 - 0.1 * lean);
    warm * (1.0 - absent(1.0)) / (1.0 - absent(warm))
}

#[test]
fn changed_rules_give_a_report_with_the_numbers_of_both() {
    let then = old();
    let more = "cause(\"old\").title(\"Old\").mechanism(\"M.\").products(rolls).prior(0.3).shows(hollow, 0.9)\
                .caution(hot).source(practice);";
    let now = pack(0.4, 0.1, 5.0, "");
    let replayed = replay(&record(&then), &now);
    assert!(!replayed.same && !replayed.same_rules && replayed.same_program == Some(true));
    assert_eq!(replayed.verdict, "other rules, another answer");
    assert_ne!(replayed.then.rules_digest, replayed.now.rules_digest);
    let leak = then.knowledge().declared.symptoms.iter().next().unwrap().1.leak;
    let ranking = replayed.ranking.unwrap();
    let change = ranking.largest_change.unwrap();
    assert_eq!((change.cause.as_str(), ranking.leader_changed), ("too_warm", false));
    assert!((change.before - posterior_of_too_warm(0.2, 0.1, leak)).abs() < 1e-12, "{change:?}");
    assert!((change.after - posterior_of_too_warm(0.4, 0.1, leak)).abs() < 1e-12, "{change:?}");
    assert!(ranking.appeared.is_empty() && ranking.vanished.is_empty());
    let quantity = &replayed.actions[0].quantities[0];
    assert_eq!((quantity.before, quantity.after), (Some(7.0), Some(5.0)));

    let with_another = replay(&record(&then), &pack(0.2, 0.1, 7.0, more));
    let ranking = with_another.ranking.unwrap();
    assert_eq!((ranking.leader_changed, ranking.after[0].cause.as_str()), (true, "old"));
    assert_eq!(ranking.appeared.iter().map(|own| own.cause.as_str()).collect::<Vec<_>>(), ["old"]);
    assert_eq!(with_another.cautions.appeared, ["hot"]);
    let back = replay(&record(&pack(0.2, 0.1, 7.0, more)), &then);
    assert_eq!(back.ranking.unwrap().vanished[0].cause, "old");
    assert_eq!(back.cautions.vanished, ["hot"]);
}

#[test]
fn a_case_that_the_rules_of_now_refuse_is_told() {
    let record = tampered(&record(&old()), "[{\"symptom\":\"hollow\"}]", "[{\"symptom\":\"gone\"}]");
    let replay = replay(&record, &pack(0.4, 0.1, 7.0, ""));
    assert_eq!(replay.verdict, "the rules of now refuse the case");
    assert_eq!((replay.refused.len(), replay.refused[0].pointer.as_str()), (1, "/symptoms/0/symptom"));
}

#[test]
fn another_program_version_is_told() {
    let rules = old();
    let was = format!("\"program_version\":\"{PROGRAM_VERSION}\"");
    let other = tampered(&record(&rules), &was, "\"program_version\":\"0.0.1\"");
    let same = replay(&other, &rules);
    assert_eq!((same.same, same.same_program), (true, Some(false)));
    let other = tampered(&other, "\"value\":7.0", "\"value\":9.0");
    assert_eq!(replay(&other, &rules).verdict, "the same rules, another version of the program, another answer");
}

#[track_caller]
fn told(record: &Value) -> Vec<String> {
    match Record::parse(record.to_string().as_bytes()) {
        Err(DocumentFaults::Faulty(faults)) => {
            faults.iter().map(|fault| format!("{}: {}", fault.pointer, fault.detail)).collect()
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn every_fault_of_a_record_is_told() {
    assert_eq!(told(&json!({"diagnose": {}})), [": `case` is missing", ": `diagnosis` is missing"]);
    assert_eq!(told(&json!([1])), [": an object is wanted, this is an array"]);
    let record = json!({"case": 1, "program_version": 1, "diagnosis": {
        "rules": {"version": 1}, "causes": [{"cause": "x", "probability": 2, "actions": [{"quantities": [{"name": "n"}]}]}],
        "other_causes": {}}});
    assert_eq!(
        told(&record),
        [
            "/case: an object is wanted, this is a number",
            "/diagnosis/rules/version: a string is wanted, this is a number",
            "/diagnosis/rules: `digest` is missing",
            "/diagnosis/causes/0/probability: 2 is not between 0 and 1",
            "/diagnosis/causes/0/actions/0/quantities/0: `unit` is missing",
            "/diagnosis/causes/0/actions/0/quantities/0: `value` is missing",
            "/diagnosis/causes/0/actions/0: `action` is missing",
            "/diagnosis/other_causes: an array is wanted, this is an object",
            "/diagnosis: `cautions` is missing",
            "/program_version: a string is wanted, this is a number",
        ]
    );
    assert!(matches!(Record::parse(b"{"), Err(DocumentFaults::Malformed(_))));
    let double = br#"{"case": {}, "case": {}, "diagnosis": {}}"#;
    let Err(DocumentFaults::Faulty(faults)) = Record::parse(double) else { panic!("no fault") };
    assert_eq!((faults[0].pointer.as_str(), faults[0].detail.as_str()), ("/case", "`case` stands twice"));
}
