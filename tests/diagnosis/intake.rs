//! Complaints in plain words: the published phrases of faults, complaints in our own words, and texts about something else.

mod fresh;
mod most;
mod safety;
mod sayings;
mod shares;
mod subjects;
mod units;
mod values;

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

use serde::Deserialize;
use serde::de::DeserializeOwned;
use whybake::case::Case;
use whybake::intake::{Complaint, Interpretation, Saying};
use whybake::knowledge::{Key, Product};
use whybake::rule_set::RuleSet;
use whybake::rules::RuleFiles;
use whybake::settings::TestsPolicy;

/// Share of the published phrases of a family whose symptom must be among the first.
const LEAST_SHARE: f64 = 0.9;

/// How many are the first.
const FIRST: usize = 3;

/// A product of each family of published phrases.
const PRODUCTS: [(&str, &[&str]); 5] = [
    ("bread", &["white_pan_bread"]),
    ("cookies", &["wire_cut_cookie"]),
    ("fillings", &["fruit_filling"]),
    ("gluten_free_cookies", &["gluten_free_cookie"]),
    ("short_pastry", &["pie_crust"]),
];

static RULES: LazyLock<RuleSet> = LazyLock::new(|| RuleSet::load(RuleFiles::embedded(), TestsPolicy::Ignored).unwrap());

fn table<T: DeserializeOwned>(file: &str) -> Vec<T> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference").join(file);
    let text = fs::read_to_string(path).unwrap();
    csv::Reader::from_reader(text.as_bytes()).into_deserialize().map(|row| row.unwrap()).collect()
}

fn product(id: &str) -> Option<Key<Product>> {
    let key = RULES.diagnostician.knowledge().declared.products.find(id);
    assert!(id.is_empty() || key.is_some(), "no product {id}");
    key
}

fn read(text: &str, id: &str) -> Interpretation<'static> {
    read_at_most(text, id, 10)
}

fn read_at_most(text: &str, id: &str, most: usize) -> Interpretation<'static> {
    let complaint = Complaint { text: text.to_owned(), product: product(id), most };
    RULES.intake.interpret(RULES.diagnostician.knowledge(), &complaint)
}

/// The draft of a text must be a case that can be diagnosed.
fn check_draft(answer: &Interpretation<'_>, text: &str) {
    let Some(draft) = &answer.draft else { return };
    let json = serde_json::to_vec(draft).unwrap();
    let case = Case::parse(&json, RULES.diagnostician.knowledge()).unwrap_or_else(|fault| panic!("{text}: {fault}"));
    RULES.diagnostician.diagnose(case).unwrap();
}

#[derive(Debug, Deserialize)]
struct Published {
    published_symptom: String,
    symptom: String,
}

/// Phrases of a family with the symptoms that stand for them.
fn phrases(family: &str) -> BTreeMap<String, BTreeSet<String>> {
    let mut phrases: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for row in table::<Published>(&format!("published_faults/{family}.csv")) {
        if !row.symptom.is_empty() {
            phrases.entry(row.published_symptom).or_default().insert(row.symptom);
        }
    }
    phrases
}

/// Every pair of phrase and symptom counts, so that a phrase of three faults wants all three.
#[test]
fn symptoms_of_published_phrases_are_among_the_first() {
    let mut shares = Vec::new();
    let mut missed = Vec::new();
    for (family, products) in PRODUCTS {
        let (mut pairs, mut found) = (0_u32, 0_u32);
        for (phrase, expected) in phrases(family) {
            let answer = read(&phrase, products[0]);
            let first: Vec<&str> = answer.symptoms.iter().take(FIRST).map(|one| one.symptom).collect();
            for symptom in expected {
                pairs += 1;
                if first.contains(&symptom.as_str()) {
                    found += 1;
                } else {
                    missed.push(format!("{family}: “{phrase}” is not {symptom} but {}", first.join(", ")));
                }
            }
        }
        shares.push((family, f64::from(found) / f64::from(pairs), found, pairs));
    }
    let told: Vec<String> = shares
        .iter()
        .map(|(family, share, found, pairs)| format!("{family}: {found} of {pairs} ({share:.3})"))
        .collect();
    println!("{}\n{}", told.join("\n"), missed.join("\n"));
    let short = shares.iter().any(|(_, share, ..)| *share < LEAST_SHARE);
    assert!(!short, "{}\n{}", told.join("\n"), missed.join("\n"));
}

#[derive(Debug, Deserialize)]
struct Colloquial {
    product: String,
    text: String,
    symptom: String,
    absent: String,
    reading: String,
    value: Option<f64>,
    unit: String,
    provenance: String,
}

#[test]
fn complaints_in_plain_words_are_understood() {
    let rows: Vec<Colloquial> = table("complaints/colloquial.csv");
    assert!(rows.len() >= 60, "{}", rows.len());
    let mut missed = Vec::new();
    for row in &rows {
        assert_eq!(row.provenance, "own wording, invented");
        let answer = read(&row.text, &row.product);
        check_draft(&answer, &row.text);
        let expected = if row.absent == "yes" { Saying::Absent } else { Saying::Present };
        let first: Vec<(&str, Saying, bool)> =
            answer.symptoms.iter().take(FIRST).map(|one| (one.symptom, one.said, one.sure)).collect();
        if !first.iter().any(|(symptom, said, _)| *symptom == row.symptom && *said == expected) {
            missed.push(format!("{}: “{}” is not {} {expected:?} but {first:?}", row.product, row.text, row.symptom));
        }
        if let Some(value) = row.value {
            let told = answer.readings.iter().find(|one| one.reading == row.reading);
            let right = told.is_some_and(|one| (one.value - value).abs() < 1e-9 && one.unit == row.unit);
            if !right {
                missed.push(format!("“{}”: {} is {told:?}; {:?}", row.text, row.reading, answer.values));
            }
        }
    }
    assert!(missed.is_empty(), "{} of {}:\n{}", missed.len(), rows.len(), missed.join("\n"));
}

/// What is sure goes into the draft unasked: nearly all of it must be what the row expects.
#[test]
fn what_is_sure_of_complaints_in_plain_words_is_right() {
    let mut expected: BTreeMap<(String, String), BTreeSet<(String, bool)>> = BTreeMap::new();
    for row in table::<Colloquial>("complaints/colloquial.csv") {
        expected.entry((row.product, row.text)).or_default().insert((row.symptom, row.absent == "yes"));
    }
    let (mut sure, mut missing, mut wrong) = (0_u32, Vec::new(), Vec::new());
    for ((product, text), symptoms) in &expected {
        let answer = read(text, product);
        let told: BTreeSet<(String, bool)> = answer
            .symptoms
            .iter()
            .filter(|one| one.sure)
            .map(|one| (one.symptom.to_owned(), one.said == Saying::Absent))
            .collect();
        sure += u32::try_from(told.intersection(symptoms).count()).unwrap();
        wrong.extend(told.difference(symptoms).map(|one| format!("“{text}”: {one:?}")));
        missing.extend(symptoms.difference(&told).map(|one| format!("“{text}”: {one:?}")));
    }
    println!("{sure} sure and right, {} left to choose, {} others sure", missing.len(), wrong.len());
    println!("others sure:\n{}\nleft to choose:\n{}", wrong.join("\n"), missing.join("\n"));
    let share = f64::from(sure) / (f64::from(sure) + f64::from(u32::try_from(wrong.len()).unwrap()));
    assert!(share >= LEAST_SHARE, "{share:.3}:\n{}", wrong.join("\n"));
}

/// Places of the text, in characters, that an answer quotes.
fn quoted(answer: &Interpretation<'_>) -> Vec<(usize, usize)> {
    let symptoms = answer.symptoms.iter().flat_map(|one| &one.quotes);
    let facts = answer.facts.iter().flat_map(|one| &one.quotes);
    let products = answer.products.iter().flat_map(|one| &one.quotes);
    let readings = answer.readings.iter().flat_map(|one| &one.quotes);
    let values = answer.values.iter().map(|one| &one.quote);
    let cautions = answer.cautions.iter().flat_map(|one| &one.quotes);
    let found = symptoms.chain(facts).chain(products).chain(readings).chain(values).chain(cautions);
    let all = found.chain(&answer.not_understood);
    all.map(|quote| (quote.start, quote.end)).collect()
}

/// Complaints of several clauses, joined from those of one product.
#[test]
fn no_clause_is_dropped() {
    let mut texts: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for row in table::<Colloquial>("complaints/colloquial.csv") {
        texts.entry(row.product).or_default().push(row.text);
    }
    for row in table::<Unrelated>("complaints/unrelated.csv") {
        texts.entry(row.product).or_default().push(row.text);
    }
    for (product, parts) in texts {
        let text = parts.join("; ");
        // A shorter listing names fewer than the draft holds.
        let answer = read_at_most(&text, &product, 50);
        check_draft(&answer, &text);
        let quoted = quoted(&answer);
        let mut start = 0;
        for clause in text.split([',', ';', '?']) {
            let end = start + clause.chars().count();
            let told = quoted.iter().any(|(from, to)| *from < end && *to > start);
            // The decimal comma of a value ends no clause; what is left behind it is part of the value.
            assert!(told || clause.trim().is_empty(), "{product}: “{clause}” is dropped");
            start = end + 1;
        }
        for (from, to) in quoted {
            assert!(from < to && to <= text.chars().count(), "{from}..{to}");
        }
    }
}

#[derive(Debug, Deserialize)]
struct Unrelated {
    product: String,
    text: String,
}

#[test]
fn texts_about_something_else_yield_nothing_sure() {
    let rows: Vec<Unrelated> = table("complaints/unrelated.csv");
    assert!(rows.len() >= 20, "{}", rows.len());
    let mut wrong = Vec::new();
    for row in &rows {
        for product in [row.product.as_str(), ""] {
            let answer = read(&row.text, product);
            let symptoms = answer.symptoms.iter().filter(|one| one.sure).map(|one| one.symptom);
            let facts = answer.facts.iter().filter(|one| one.sure).map(|one| one.fact);
            let sure: Vec<&str> = symptoms.chain(facts).chain(answer.readings.iter().map(|one| one.reading)).collect();
            if !sure.is_empty() || (product.is_empty() && answer.draft.is_some()) {
                wrong.push(format!("{}: {sure:?}", row.text));
            }
            assert!(!answer.not_understood.is_empty(), "{} is dropped", row.text);
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
