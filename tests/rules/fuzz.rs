//! Random and spoilt texts: whatever comes in, diagnostics or an answer come out, and never a panic.
//!
//! Each test runs for some seconds, from a fixed seed. `WHYBAKE_FUZZ_SEED` takes another one, `WHYBAKE_FUZZ_SECONDS`
//! another time; a failing text is printed.

use std::env;
use std::fmt::Debug;
use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::sync::LazyLock;
use std::time::{Duration, Instant};

use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use serde::Serialize;
use serde_json::Value;
use whybake::case::{Case, InquiryRequest, WhatIfRequest};
use whybake::comparison::case_text;
use whybake::diagnosis::{Diagnostician, render_inquiries};
use whybake::intake::{Complaint, Intake};
use whybake::json::DocumentFaults;
use whybake::replay::{Record, write_record};
use whybake::rule_tests::RuleTests;
use whybake::rule_trial::Trial;
use whybake::rules::{RuleFiles, load};
use whybake::trial_sheet::{self, TrialRequest, TrialSheet};
use whybake::what_if::what_if;

use crate::support::pack;

/// Texts that every run must have tried, however slow the machine is.
const FEWEST: usize = 3;

/// The embedded pack, loaded once.
static EMBEDDED: LazyLock<Diagnostician> =
    LazyLock::new(|| Diagnostician::new(load(&RuleFiles::embedded()).unwrap().knowledge).unwrap());

fn variable(name: &str, usual: u64) -> u64 {
    env::var(name).ok().map_or(usual, |text| text.parse().unwrap())
}

/// Tries values until time is up.
fn fuzz<T: Debug>(name: &str, strategy: &impl Strategy<Value = T>, check: impl Fn(&T)) {
    let seed = variable("WHYBAKE_FUZZ_SEED", 1);
    let time = Duration::from_secs(variable("WHYBAKE_FUZZ_SECONDS", 3));
    let mut bytes = [0; 32];
    bytes[..8].copy_from_slice(&seed.to_le_bytes());
    let rng = TestRng::from_seed(RngAlgorithm::ChaCha, &bytes);
    let mut runner = TestRunner::new_with_rng(Config::default(), rng);
    let (started, mut count) = (Instant::now(), 0);
    while count < FEWEST || started.elapsed() < time {
        let value = strategy.new_tree(&mut runner).unwrap().current();
        if let Err(panic) = catch_unwind(AssertUnwindSafe(|| check(&value))) {
            eprintln!("{name}: text {count} of seed {seed} fails:\n{value:?}");
            resume_unwind(panic);
        }
        count += 1;
    }
    println!("{name}: {count} texts of seed {seed} in {:?}", started.elapsed());
}

/// What rule files and cases are spoilt with.
const SPLINTERS: [&str; 44] = [
    "(",
    ")",
    "{",
    "}",
    "[",
    "]",
    "\"",
    "'",
    "`${",
    "\\",
    ",",
    ";",
    ".",
    "..",
    ":",
    "|",
    "&",
    "!",
    "-",
    "//",
    "/*",
    "*/",
    "\0",
    "\r",
    "é",
    "\u{202e}",
    "\u{feff}",
    "0",
    "-1",
    "1e308",
    "1e999",
    "9223372036854775807",
    "0.0",
    "null",
    "true",
    "#{}",
    "|t| t",
    "fn f(n) { f(n) }",
    "throw 1",
    "import \"lib/x\" as x;",
    ".prior(0.5)",
    ".rises(30, 20)",
    "formula(\"x\")",
    "judged([], \"x\", |t| t)",
];

#[derive(Debug, Clone)]
enum Spoil {
    Remove(Index, usize),
    Insert(Index, &'static str),
    Repeat(Index, usize),
    Exchange(Index, Index),
    Cut(Index),
}

fn spoil() -> impl Strategy<Value = Spoil> {
    prop_oneof![
        3 => (any::<Index>(), 1_usize..12).prop_map(|(at, count)| Spoil::Remove(at, count)),
        4 => (any::<Index>(), select(&SPLINTERS[..])).prop_map(|(at, text)| Spoil::Insert(at, text)),
        2 => (any::<Index>(), 1_usize..80).prop_map(|(at, count)| Spoil::Repeat(at, count)),
        2 => (any::<Index>(), any::<Index>()).prop_map(|(one, other)| Spoil::Exchange(one, other)),
        1 => any::<Index>().prop_map(Spoil::Cut),
    ]
}

fn spoilt(text: &str, spoils: &[Spoil]) -> String {
    let mut characters: Vec<char> = text.chars().collect();
    for spoil in spoils {
        let length = characters.len();
        let place = |index: &Index| index.index(length + 1);
        match spoil {
            Spoil::Remove(at, count) => {
                let at = place(at);
                characters.drain(at..(at + count).min(length));
            }
            Spoil::Insert(at, text) => {
                let at = place(at);
                characters.splice(at..at, text.chars());
            }
            Spoil::Repeat(at, count) => {
                let at = place(at);
                let again: Vec<char> = characters[at..(at + count).min(length)].to_vec();
                characters.splice(at..at, again);
            }
            Spoil::Exchange(one, other) if length > 0 => characters.swap(one.index(length), other.index(length)),
            Spoil::Exchange(..) => {}
            Spoil::Cut(at) => characters.truncate(place(at)),
        }
    }
    characters.into_iter().collect()
}

/// One of some files, spoilt in some places.
fn spoilt_file(files: Vec<(String, String)>) -> impl Strategy<Value = (String, String)> {
    (select(files), vec(spoil(), 1..8)).prop_map(|((path, text), spoils)| (path, spoilt(&text, &spoils)))
}

fn owned<'f>(files: impl Iterator<Item = (&'f str, &'f str)>) -> Vec<(String, String)> {
    files.map(|(path, text)| (path.to_owned(), text.to_owned())).collect()
}

/// Loads a pack; of one that loads, the first product is diagnosed.
fn ends_well(files: &RuleFiles) {
    match load(files) {
        Err(diagnostics) => {
            assert!(!diagnostics.is_empty(), "refused without a reason");
            assert!(diagnostics.iter().all(|diagnostic| !diagnostic.to_string().is_empty()));
        }
        Ok(loaded) => {
            let Ok(diagnostician) = Diagnostician::new(loaded.knowledge) else { return };
            let product = diagnostician.knowledge().declared.products.ids().next().map(str::to_owned);
            if let Some(product) = product {
                answers_well(&diagnostician, format!("{{\"product\": \"{product}\"}}").as_bytes());
            }
        }
    }
}

/// Diagnoses the text of a case, if it is one.
fn answers_well(diagnostician: &Diagnostician, text: &[u8]) {
    match Case::parse(text, diagnostician.knowledge()) {
        Err(DocumentFaults::Malformed(message)) => assert!(!message.is_empty()),
        Err(DocumentFaults::Faulty(faults)) => assert!(!faults.is_empty(), "refused without a reason"),
        Ok(case) => {
            let Ok(answer) = diagnostician.diagnose(case) else { return };
            let answer: Value = serde_json::from_slice(&answer.to_json().unwrap()).unwrap();
            for cause in answer["causes"].as_array().unwrap() {
                let probability = cause["probability"].as_f64().unwrap();
                assert!((0.0..=1.0).contains(&probability), "{probability}");
            }
        }
    }
}

#[test]
fn a_file_of_the_pack_that_is_spoilt() {
    let embedded = RuleFiles::embedded();
    fuzz("a spoilt file in its pack", &spoilt_file(owned(embedded.iter())), |(path, text)| {
        let mut files = embedded.clone();
        files.insert(path, text);
        ends_well(&files);
    });
}

#[test]
fn a_spoilt_file_in_a_strange_pack() {
    let embedded = RuleFiles::embedded();
    fuzz("a spoilt file in a small pack", &spoilt_file(owned(embedded.iter().chain(pack().iter()))), |(path, text)| {
        let mut files = pack();
        files.insert(path, text);
        ends_well(&files);
    });
}

#[test]
fn a_text_of_splinters() {
    let words = whybake::rules::words().into_iter().flat_map(|section| section.words).map(|word| word.name.to_owned());
    let pieces: Vec<String> = words.chain(SPLINTERS.map(str::to_owned)).chain([" ".to_owned()]).collect();
    let text = vec(select(pieces), 0..60).prop_map(|pieces| pieces.concat());
    fuzz(
        "a text of splinters",
        &(text, select(vec!["x.rhai", "readings.rhai", "lib/x.rhai", "actions.rhai"])),
        |(text, path)| {
            let mut files = pack();
            files.insert(path, text);
            ends_well(&files);
        },
    );
}

#[test]
fn a_case_that_is_spoilt() {
    let files = RuleFiles::embedded();
    let cases: Vec<(String, String)> = files
        .cases()
        .map(|(path, text)| (path.to_owned(), String::from_utf8(case_text(text.as_bytes()).to_vec()).unwrap()))
        .collect();
    fuzz("a spoilt case", &spoilt_file(cases), |(_, text)| answers_well(&EMBEDDED, text.as_bytes()));
}

/// JSON of any shape with the names of cases.
fn any_json() -> impl Strategy<Value = Value> {
    let names = [
        "product",
        "symptoms",
        "symptom",
        "present",
        "certainty",
        "readings",
        "dough_temperature",
        "value",
        "unit",
        "low",
        "high",
        "facts",
        "formula",
        "ingredients",
        "ingredient",
        "amount",
        "requirements",
        "diets",
        "market",
        "avoid",
        "reference",
        "",
    ];
    let texts =
        ["hamburger_bun", "hollow_under_crust", "Cel", "%", "kg", "bread_flour", "water", "halal", "US", "\u{0}", ""];
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        select(texts.to_vec()).prop_map(Value::from),
    ];
    leaf.prop_recursive(5, 60, 6, move |inner| {
        prop_oneof![
            vec(inner.clone(), 0..6).prop_map(Value::from),
            vec((select(names.to_vec()), inner), 0..6)
                .prop_map(|members| members.into_iter().map(|(name, value)| (name.to_owned(), value)).collect()),
        ]
    })
}

#[test]
fn a_case_of_any_shape() {
    let with_product = any_json().prop_map(|mut json| {
        if let Some(members) = json.as_object_mut() {
            members.insert("product".to_owned(), "hamburger_bun".into());
        }
        json
    });
    fuzz("a case of any shape", &with_product, |json| answers_well(&EMBEDDED, json.to_string().as_bytes()));
}

#[test]
fn a_rule_test_that_is_spoilt() {
    let files = RuleFiles::embedded();
    fuzz("a spoilt rule test", &spoilt_file(owned(files.cases())), |(path, text)| {
        let mut files = RuleFiles::default();
        files.insert(path, text);
        let tests = RuleTests::read(&files, EMBEDDED.knowledge());
        assert!(!tests.tests.is_empty() || tests.has_faults(), "neither a test nor a fault");
        let _ = tests.run(&EMBEDDED);
    });
}

#[test]
fn a_trial_that_is_spoilt() {
    let trial = include_str!("../../src/http/openapi/examples/trial_request.json");
    let files = pack();
    fuzz("a spoilt trial", &spoilt_file(vec![(String::new(), trial.to_owned())]), |(_, text)| {
        match Trial::read(text.as_bytes(), &files) {
            Err(DocumentFaults::Malformed(message)) => assert!(!message.is_empty()),
            Err(DocumentFaults::Faulty(faults)) => assert!(!faults.is_empty()),
            Ok(trial) => {
                let rules = Diagnostician::new(load(&files).unwrap().knowledge).unwrap();
                trial.run(&rules, Instant::now() + Duration::from_secs(60)).unwrap();
            }
        }
    });
}

/// A request document of the service, and what it must not do whatever is wrong with it.
type Answers = fn(&[u8]) -> Result<Vec<u8>, DocumentFaults>;

/// Answers stay below so many bytes, whatever is asked: what is listed is bounded.
const LONGEST_ANSWER: usize = 2_000_000;

fn json_of(answer: &impl Serialize) -> Vec<u8> {
    serde_json::to_vec(answer).unwrap()
}

/// What cannot be diagnosed, as a fault.
fn refused(reason: &impl ToString) -> DocumentFaults {
    DocumentFaults::Malformed(reason.to_string())
}

fn complaint(text: &[u8]) -> Result<Vec<u8>, DocumentFaults> {
    static INTAKE: LazyLock<Intake> = LazyLock::new(|| Intake::new(EMBEDDED.knowledge()));
    let complaint = Complaint::parse(text, EMBEDDED.knowledge()).map_err(|faults| match faults {
        DocumentFaults::Malformed(detail) => DocumentFaults::Malformed(detail),
        DocumentFaults::Faulty(faults) => DocumentFaults::Faulty(faults),
    })?;
    Ok(json_of(&INTAKE.interpret(EMBEDDED.knowledge(), &complaint)))
}

fn inquiries(text: &[u8]) -> Result<Vec<u8>, DocumentFaults> {
    let mut request = InquiryRequest::parse(text, EMBEDDED.knowledge())?;
    // Plans of three inquiries take a second each in a test build.
    request.options.depth = request.options.depth.min(1);
    let inquiries = EMBEDDED.inquire(request).map_err(|fault| refused(&fault))?;
    assert!(!render_inquiries(&inquiries, 80).is_empty());
    Ok(inquiries.to_json().unwrap())
}

fn hypothesis(text: &[u8]) -> Result<Vec<u8>, DocumentFaults> {
    let request = WhatIfRequest::parse(text, EMBEDDED.knowledge())?;
    let answer = what_if(request, &EMBEDDED).map_err(|fault| refused(&fault))?;
    assert!(!whybake::what_if::render(&answer, 80).is_empty());
    Ok(json_of(&answer))
}

fn sheet(request: &[u8]) -> Result<Vec<u8>, DocumentFaults> {
    let request = TrialRequest::parse(request, EMBEDDED.knowledge())?;
    let sheet = TrialSheet::plan(&EMBEDDED, &request)?;
    for run in &sheet.runs {
        assert!(run.weights.iter().all(|line| line.mass_kg >= 0.0), "a negative mass in run {}", run.label);
    }
    for paper in [trial_sheet::text(&sheet, 80), trial_sheet::markdown(&sheet), trial_sheet::page(&sheet)] {
        assert!(paper.len() < LONGEST_ANSWER);
    }
    Ok(json_of(&sheet))
}

fn replayed(record: &[u8]) -> Result<Vec<u8>, DocumentFaults> {
    let replay = Record::parse(record)?.replay(&EMBEDDED).unwrap();
    assert!(!whybake::replay::text(&replay).is_empty());
    Ok(json_of(&replay))
}

/// The documents as callers send them.
fn requests() -> Vec<(String, String)> {
    let record = write_record(include_bytes!("../cases/hollow_bun.json"), &EMBEDDED).unwrap();
    [
        ("complaint", include_str!("../../src/http/openapi/examples/complaint_request.json").to_owned()),
        ("inquiries", include_str!("../../src/http/openapi/examples/inquiry_request.json").to_owned()),
        ("what if", include_str!("../../src/http/openapi/examples/what_if_request.json").to_owned()),
        ("trial sheet", include_str!("../../src/http/openapi/examples/trial_sheet_request.json").to_owned()),
        ("record", String::from_utf8(record).unwrap()),
    ]
    .map(|(name, text)| (name.to_owned(), text))
    .to_vec()
}

const READERS: [(&str, Answers); 5] = [
    ("complaint", complaint),
    ("inquiries", inquiries),
    ("what if", hypothesis),
    ("trial sheet", sheet),
    ("record", replayed),
];

fn reader(name: &str) -> Answers {
    READERS.into_iter().find(|(own, _)| *own == name).unwrap().1
}

#[test]
fn requests_as_they_are_sent_are_answered() {
    for (name, text) in requests() {
        let answer = reader(&name)(text.as_bytes());
        assert!(answer.is_ok(), "{name}: {answer:?}");
    }
}

#[test]
fn a_request_that_is_spoilt() {
    fuzz("a spoilt request", &spoilt_file(requests()), |(name, text)| match reader(name)(text.as_bytes()) {
        Err(DocumentFaults::Malformed(message)) => assert!(!message.is_empty()),
        Err(DocumentFaults::Faulty(faults)) => assert!(!faults.is_empty(), "refused without a reason"),
        Ok(answer) => assert!(answer.len() < LONGEST_ANSWER, "{} bytes of answer", answer.len()),
    });
}
