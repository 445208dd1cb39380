//! A whole diagnosis, from JSON text to serialised answer, and its parts.
#![allow(
    clippy::unwrap_used,
    missing_docs,
    reason = "a bench fails by panicking, and criterion's macros make undocumented items"
)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use whybake::case::{Case, InquiryOptions, InquiryRequest};
use whybake::diagnosis::Diagnostician;
use whybake::rules::{RuleFiles, load};

#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// An invented case: four symptoms and six readings of a family with more than 60 causes.
const CASE: &str = r#"{"product": "hamburger_bun",
  "symptoms": [{"symptom": "hollow_under_crust"}, {"symptom": "open_grain"}, {"symptom": "pale_crust"}, {"symptom": "low_volume", "present": false}],
  "readings": {
    "dough_temperature": {"value": 31.5, "unit": "Cel"}, "proof_temperature": {"value": 38, "unit": "Cel"},
    "proof_humidity": {"value": 82, "unit": "%"}, "proof_time": {"value": 55, "unit": "min"},
    "oven_temperature": {"value": 225, "unit": "Cel"}, "flour_protein": {"value": 12.4, "unit": "%"}}}"#;

/// An invented family of 60 causes, 24 symptoms, 30 readings and 30 facts, with texts as long as those of the pack: rule text by file.
fn family_of_60() -> RuleFiles {
    let mut files = vec![
        ("pack.rhai", r#"pack("bench").title("Invented").version("1");"#.to_owned()),
        ("sources.rhai", r#"source("rule").citation("rule of thumb of the trade, no publication").common_practice();"#.to_owned()),
        ("cautions.rhai", r#"caution("hot").text("Ovens and tins burn: wear gloves, and keep to the instructions of the plant.").always();"#.to_owned()),
        ("products.rhai", r#"family("buns").title("Buns"); product("bun").title("Bun").description("Invented.").family(buns);"#.to_owned()),
    ];
    let (mut symptoms, mut readings, mut facts, mut actions, mut causes) =
        <(String, String, String, String, String)>::default();
    for n in 0..24 {
        let leak = 0.01 + 0.002 * f64::from(n % 5);
        symptoms += &format!(
            "symptom(\"symptom_{n}\").title(\"Invented symptom {n}\").description(\"{}\").part(\"crumb\").products(buns).leak({leak});\n",
            "What somebody sees who cuts the piece upright and looks at it in good light."
        );
    }
    for n in 0..30 {
        readings += &format!(
            "reading(\"reading_{n}\").title(\"invented reading {n}\").description(\"Invented.\").unit(\"Cel\").plausible(-50, 150).window(buns, 20, 30)\
             .method(\"probe thermometer in the middle of the piece, three places, the mean\").effort({}).products(buns).source(rule);\n",
            1 + n % 6
        );
        facts += &format!(
            "fact(\"fact_{n}\").title(\"invented fact {n}\").question(\"Was the line changed in any way since the last good batch was made?\").products(buns).effort({});\n",
            1 + n % 4
        );
    }
    for n in 0..60 {
        actions += &format!(
            "action(\"action_{n}\").title(\"Do the invented thing {n}\").text(\"{}\").effort(30).side_effect(\"slower proof; allow a few minutes more\")\
             .may_show(symptom_{}).caution(hot).source(rule);\n",
            "Set the machine so that the dough leaves it at its target, and look at the next batch before the rest is changed.",
            (n + 7) % 24
        );
        causes += &format!(
            "cause(\"cause_{n}\").title(\"Invented cause {n}\").mechanism(\"{}\").products(buns).prior({prior})\
             .shows(symptom_{}, 0.6).shows(symptom_{}, 0.4).shows(symptom_{}, 0.25).shows(symptom_{}, 0.1)\
             .evidence(reading_{}.rises(26, 32), 8, against(4)).evidence(reading_{}.falls(24, 20), 6, against(2)).evidence(fact_{}, 7, against(2))\
             .action(action_{n}.set(\"temperature\", target(reading_{}) - 2, \"Cel\"), 0.7).confirm(reading_{} > 31, excluded(reading_{} < 26)).source(rule);\n",
            "The dough gasses before it has strength; cells near the skin merge and lift the crust, and the crumb under it stays open.",
            n % 24,
            (n + 3 + n / 24 * 2) % 24,
            (n + 9 + n / 24) % 24,
            (n + 16) % 24,
            n % 30,
            (n * 7 + 5) % 30,
            n % 30,
            n % 30,
            n % 30,
            n % 30,
            prior = 0.01 + 0.005 * f64::from(n % 9),
        );
    }
    files.extend([
        ("symptoms.rhai", symptoms),
        ("readings.rhai", readings),
        ("facts.rhai", facts),
        ("actions.rhai", actions),
        ("causes.rhai", causes),
    ]);
    let mut rules = RuleFiles::default();
    files.iter().for_each(|(path, text)| rules.insert(path, text));
    rules
}

/// Four symptoms and six readings of the invented family.
const CASE_OF_60: &str = r#"{"product": "bun",
  "symptoms": [{"symptom": "symptom_0"}, {"symptom": "symptom_3"}, {"symptom": "symptom_8"}, {"symptom": "symptom_12"}],
  "readings": {
    "reading_0": {"value": 31.5, "unit": "Cel"}, "reading_4": {"value": 25, "unit": "Cel"}, "reading_9": {"value": 22, "unit": "Cel"},
    "reading_13": {"value": 29, "unit": "Cel"}, "reading_20": {"value": 25, "unit": "Cel"}, "reading_27": {"value": 27, "unit": "Cel"}}}"#;

fn family(criterion: &mut Criterion) {
    let diagnostician = Diagnostician::new(load(&family_of_60()).unwrap().knowledge).unwrap();
    let parse = || Case::parse(CASE_OF_60.as_bytes(), diagnostician.knowledge()).unwrap();
    let bytes = diagnostician.diagnose(parse()).unwrap().to_json().unwrap().len();
    let mut group = criterion.benchmark_group(format!("60 causes, 4 symptoms, 6 readings, answer of {bytes} bytes"));
    group.bench_function("from parsed JSON to serialised answer", |bench| {
        bench.iter_with_setup(parse, |case| diagnostician.diagnose(case).unwrap().to_json().unwrap());
    });
    group.bench_function("from JSON text to serialised answer", |bench| {
        bench.iter(|| diagnostician.diagnose(parse()).unwrap().to_json().unwrap());
    });
    parts(&mut group, &diagnostician, &parse);
    inquiries(&mut group, &diagnostician, &parse);
    group.finish();
}

/// The first part of a diagnosis, its ranking; then the whole answer; then its bytes.
fn parts(
    group: &mut criterion::BenchmarkGroup<'_, criterion::measurement::WallTime>,
    diagnostician: &Diagnostician,
    parse: &impl Fn() -> Case,
) {
    let case = parse();
    group.bench_function("part: findings weighed, causes ranked", |bench| {
        bench.iter(|| black_box(diagnostician.leading_causes(&case, 6).unwrap()));
    });
    group.bench_function("part: the answer of a parsed case", |bench| {
        bench.iter_with_setup(parse, |case| black_box(diagnostician.diagnose(case).unwrap()));
    });
    let answer = diagnostician.diagnose(parse()).unwrap();
    group.bench_function("part: an answer serialised", |bench| bench.iter(|| black_box(answer.to_json().unwrap())));
}

/// Everything to find out, alone (a plan of one inquiry) and with a plan three deep.
fn inquiries(
    group: &mut criterion::BenchmarkGroup<'_, criterion::measurement::WallTime>,
    diagnostician: &Diagnostician,
    parse: &impl Fn() -> Case,
) {
    for depth in [1, 3] {
        let options = InquiryOptions { depth, ..InquiryOptions::default() };
        let request = || InquiryRequest { case: parse(), options };
        group.bench_function(format!("inquiries with a plan of depth {depth}"), |bench| {
            bench.iter_with_setup(request, |request| diagnostician.inquire(request).unwrap().to_json().unwrap());
        });
    }
}

fn diagnosis(criterion: &mut Criterion) {
    let files = RuleFiles::embedded();
    criterion.bench_function("load the embedded rules", |bench| bench.iter(|| load(black_box(&files)).unwrap()));
    let diagnostician = Diagnostician::new(load(&files).unwrap().knowledge).unwrap();
    let parse = || Case::parse(CASE.as_bytes(), diagnostician.knowledge()).unwrap();
    criterion.bench_function("parse a case", |bench| bench.iter(|| black_box(parse())));
    criterion.bench_function("from JSON text to serialised answer", |bench| {
        bench.iter(|| diagnostician.diagnose(parse()).unwrap().to_json().unwrap());
    });
    let mut group = criterion.benchmark_group("embedded rules, 3 symptoms, 6 readings");
    parts(&mut group, &diagnostician, &parse);
    inquiries(&mut group, &diagnostician, &parse);
    group.finish();
}

criterion_group!(benches, family, diagnosis);
criterion_main!(benches);
