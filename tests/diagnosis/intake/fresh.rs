//! Complaints of consumers, shops and lines of every product, long and short, with what a technologist would file of each.
//!
//! 120 were written before the words of the rules or the reading of complaints were looked at, and parted by the seed 20261128,
//! four of each product to each side. `fresh_tuned.csv` holds the 60 that were used to improve both, and 110 written on the
//! way and used likewise. `fresh_held_back.csv` holds the other 60: they were measured before and after, never looked at in
//! between, and give the figure to expect. One person wrote the complaints and the new words of the rules, so that a
//! stranger's words may do worse: `untouched.csv` is by someone else. Do not look at the misses of what is held back.

use std::collections::{BTreeMap, BTreeSet};

use serde::Deserialize;
use whybake::intake::{Interpretation, Saying};

use super::{FIRST, check_draft, product, read, table};
use crate::intake::RULES;

#[derive(Debug, Deserialize)]
struct Fresh {
    product: String,
    /// Whether the product is told beside the text.
    told: String,
    text: String,
    symptom: String,
    absent: String,
    reading: String,
    value: Option<f64>,
    unit: String,
    provenance: String,
}

/// What a technologist would file of one text.
#[derive(Debug, Default)]
struct Filed {
    product: String,
    told: bool,
    symptoms: BTreeSet<(String, bool)>,
    readings: BTreeMap<String, (f64, String)>,
}

/// Counts over a table: found and all.
#[derive(Debug, Default)]
struct Figures {
    /// Symptoms that are there, and those among the first.
    pairs: (u32, u32),
    /// Symptoms that are denied, and those told as such.
    denied: (u32, u32),
    sure_and_right: u32,
    wrongly_sure: u32,
    readings: (u32, u32),
    wrong_readings: u32,
    /// Products that only the text tells.
    products: (u32, u32),
    missed: Vec<String>,
}

impl Figures {
    fn of(file: &str) -> Self {
        let mut filed: BTreeMap<String, Filed> = BTreeMap::new();
        for row in table::<Fresh>(file) {
            assert_eq!(row.provenance, "own wording, invented");
            let listed = &RULES.diagnostician.knowledge().view(product(&row.product).unwrap()).listed_symptoms;
            let symptom = RULES.diagnostician.knowledge().declared.symptoms.find(&row.symptom);
            assert!(symptom.is_some_and(|key| listed.contains(&key)), "{} has no {}", row.product, row.symptom);
            let one = filed.entry(row.text).or_default();
            (one.product, one.told) = (row.product, row.told == "yes");
            one.symptoms.insert((row.symptom, row.absent == "yes"));
            one.readings.extend(row.value.map(|value| (row.reading, (value, row.unit))));
        }
        let mut figures = Self::default();
        for (text, expected) in &filed {
            figures.count(text, expected);
        }
        println!("{file}: {} texts", filed.len());
        figures.tell();
        figures
    }

    fn count(&mut self, text: &str, expected: &Filed) {
        let answer = read(text, if expected.told { &expected.product } else { "" });
        check_draft(&answer, text);
        if !expected.told {
            self.products.1 += 1;
            self.products.0 += u32::from(answer.product == Some(expected.product.as_str()));
        }
        self.count_symptoms(text, expected, &answer);
        for (id, (value, unit)) in &expected.readings {
            let told = answer.readings.iter().find(|one| one.reading == id);
            let right = told.is_some_and(|one| (one.value - value).abs() < 1e-9 && one.unit == unit);
            self.readings.1 += 1;
            self.readings.0 += u32::from(right);
            if !right {
                self.missed.push(format!("“{text}”: {id} is {told:?}"));
            }
        }
        let others = answer.readings.iter().filter(|one| !expected.readings.contains_key(one.reading));
        self.wrong_readings += u32::try_from(others.count()).unwrap();
    }

    fn count_symptoms(&mut self, text: &str, expected: &Filed, answer: &Interpretation<'_>) {
        for (symptom, absent) in &expected.symptoms {
            let said = if *absent { Saying::Absent } else { Saying::Present };
            let of = |one: &&whybake::intake::PossibleSymptom<'_>| one.symptom == symptom && one.said == said;
            if *absent {
                self.denied.1 += 1;
                self.denied.0 += u32::from(answer.symptoms.iter().any(|one| of(&one)));
                continue;
            }
            let first = answer.symptoms.iter().take(FIRST).any(|one| of(&one));
            self.pairs.1 += 1;
            self.pairs.0 += u32::from(first);
            self.sure_and_right += u32::from(answer.symptoms.iter().any(|one| of(&one) && one.sure));
            if !first {
                self.missed.push(format!("“{text}” is not {symptom}"));
            }
        }
        for one in answer.symptoms.iter().filter(|one| one.sure) {
            let filed = |absent: bool| expected.symptoms.contains(&(one.symptom.to_owned(), absent));
            let wrong = if one.said == Saying::Present { !filed(false) } else { filed(false) };
            self.wrongly_sure += u32::from(wrong);
        }
    }

    fn tell(&self) {
        let share = |(found, all): (u32, u32)| format!("{found} of {all} ({:.3})", f64::from(found) / f64::from(all));
        println!("symptoms among the first three: {}", share(self.pairs));
        println!("sure and right: {}, wrongly sure: {}", share((self.sure_and_right, self.pairs.1)), self.wrongly_sure);
        println!("denied: {}", share(self.denied));
        println!("readings: {}, others: {}", share(self.readings), self.wrong_readings);
        println!("products: {}", share(self.products));
    }
}

/// What a table must come to: least pairs found, sure and right, readings and products found; most that may be wrongly sure.
struct Limits {
    pairs: u32,
    sure_and_right: u32,
    readings: u32,
    products: u32,
    wrongly_sure: u32,
}

/// Measured: 182 of 184 pairs among the first three, 161 sure and right, 10 wrongly sure, 57 of 62 readings, 9 of 9 products.
const TUNED: Limits = Limits { pairs: 180, sure_and_right: 154, readings: 55, products: 8, wrongly_sure: 14 };

/// Measured: 69 of 71 pairs (0.972; 61 before the reading was improved), 56 sure and right (44), 5 wrongly sure (3), 24 of 34
/// readings (13), 5 of 7 products (1), 6 of 8 denied (6).
const HELD_BACK: Limits = Limits { pairs: 68, sure_and_right: 53, readings: 23, products: 4, wrongly_sure: 7 };

fn check(figures: &Figures, limits: &Limits) {
    assert!(figures.pairs.0 >= limits.pairs, "{} among the first", figures.pairs.0);
    assert!(figures.sure_and_right >= limits.sure_and_right, "{} sure and right", figures.sure_and_right);
    assert!(figures.wrongly_sure <= limits.wrongly_sure, "{} wrongly sure", figures.wrongly_sure);
    assert!(figures.readings.0 >= limits.readings, "{} readings", figures.readings.0);
    assert!(figures.products.0 >= limits.products, "{} products", figures.products.0);
}

#[test]
fn fresh_complaints_that_were_used_to_improve_are_understood() {
    let figures = Figures::of("complaints/fresh_tuned.csv");
    println!("{}", figures.missed.join("\n"));
    check(&figures, &TUNED);
}

#[test]
fn fresh_complaints_that_were_held_back_are_understood() {
    // Its misses are not told: who reads them will write words for them.
    check(&Figures::of("complaints/fresh_held_back.csv"), &HELD_BACK);
}

#[test]
fn the_fresh_tables_share_no_text() {
    let texts = |file: &str| table::<Fresh>(file).into_iter().map(|row| row.text).collect::<BTreeSet<_>>();
    let (tuned, held_back) = (texts("complaints/fresh_tuned.csv"), texts("complaints/fresh_held_back.csv"));
    assert_eq!((tuned.len(), held_back.len()), (170, 60));
    assert!(tuned.is_disjoint(&held_back));
}
