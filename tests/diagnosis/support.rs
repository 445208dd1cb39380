//! The embedded rules, and answers as JSON.

use std::sync::LazyLock;

use serde_json::Value;
use whybake::case::{Case, Fault};
use whybake::diagnosis::Diagnostician;
use whybake::json::DocumentFaults;
use whybake::rules::{RuleFiles, load};

static RULES: LazyLock<Diagnostician> =
    LazyLock::new(|| Diagnostician::new(load(&RuleFiles::embedded()).unwrap().knowledge).unwrap());

/// The embedded rules.
pub(crate) fn rules() -> &'static Diagnostician {
    &RULES
}

/// The answer to a case.
pub(crate) fn answer(case: &Value) -> Value {
    serde_json::from_str(&answer_text(&case.to_string())).unwrap()
}

/// The answer to a case, as text.
pub(crate) fn answer_text(case: &str) -> String {
    let case = Case::parse(case.as_bytes(), RULES.knowledge()).unwrap();
    serde_json::to_string(&RULES.diagnose(case).unwrap()).unwrap()
}

/// The faults of a case.
pub(crate) fn faults(case: &str) -> Vec<Fault> {
    match Case::parse(case.as_bytes(), RULES.knowledge()) {
        Err(DocumentFaults::Faulty(faults)) => faults,
        other => panic!("{other:?}"),
    }
}

/// Probability of a cause in an answer.
pub(crate) fn probability(answer: &Value, cause: &str) -> f64 {
    let lists = ["causes", "other_causes"].map(|list| answer[list].as_array().unwrap());
    let found = lists.into_iter().flatten().find(|item| item["cause"] == cause);
    found.unwrap()["probability"].as_f64().unwrap()
}

/// Ids of the items of a list.
pub(crate) fn ids<'a>(answer: &'a Value, list: &str, id: &str) -> Vec<&'a str> {
    answer[list].as_array().unwrap().iter().map(|item| item[id].as_str().unwrap()).collect()
}
