//! A whole diagnosis, from JSON text to serialised answer, and its parts.
#![allow(
    clippy::unwrap_used,
    missing_docs,
    reason = "a bench fails by panicking, and criterion's macros make undocumented items"
)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use whybake::case::Case;
use whybake::diagnosis::Diagnostician;
use whybake::rules::{RuleFiles, load};

/// An invented case: four symptoms and six readings of a family with more than 60 causes.
const CASE: &str = r#"{"product": "hamburger_bun",
  "symptoms": [{"symptom": "hollow_under_crust"}, {"symptom": "open_grain"}, {"symptom": "pale_crust"}, {"symptom": "low_volume", "present": false}],
  "readings": {
    "dough_temperature": {"value": 31.5, "unit": "Cel"}, "proof_temperature": {"value": 38, "unit": "Cel"},
    "proof_humidity": {"value": 82, "unit": "%"}, "proof_time": {"value": 55, "unit": "min"},
    "oven_temperature": {"value": 225, "unit": "Cel"}, "flour_protein": {"value": 12.4, "unit": "%"}}}"#;

fn diagnosis(criterion: &mut Criterion) {
    let files = RuleFiles::embedded();
    criterion.bench_function("load the embedded rules", |bench| bench.iter(|| load(black_box(&files)).unwrap()));
    let diagnostician = Diagnostician::new(load(&files).unwrap().knowledge).unwrap();
    let parse = || Case::parse(CASE.as_bytes(), diagnostician.knowledge()).unwrap();
    criterion.bench_function("parse a case", |bench| bench.iter(|| black_box(parse())));
    criterion.bench_function("diagnose a parsed case", |bench| {
        bench.iter_with_setup(parse, |case| black_box(diagnostician.diagnose(case).unwrap()));
    });
    criterion.bench_function("from JSON text to serialised answer", |bench| {
        bench.iter(|| serde_json::to_vec(&diagnostician.diagnose(parse()).unwrap()).unwrap());
    });
}

criterion_group!(benches, diagnosis);
criterion_main!(benches);
