//! Prints generated networks, cases and our answers as JSON, for `bayesian_network.py` to check.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test program fails by panicking")]

#[path = "../inference/generate.rs"]
mod generate;

use generate::{Numbers, Random, add_readings, numbers, symptoms_seen};
use serde_json::{Value, json};
use whybake::inference::{Findings, Observation, Reading, Workspace, look_for, posterior};

fn main() {
    let random = &mut Random(2024);
    let small: Vec<Value> = (0..120).map(|_| small_case(random)).collect();
    let big: Vec<Value> = [8, 11, 14].map(|present| big_case(random, present)).to_vec();
    println!("{}", json!({ "small": small, "big": big }));
}

/// A case a general Bayesian-network library can solve, virtual evidence and extremes included.
fn small_case(random: &mut Random) -> Value {
    let (causes, symptoms) = (4 + random.below(9), 3 + random.below(6));
    let mut numbers = numbers(random, causes, symptoms);
    if random.below(3) == 0 {
        numbers.leaks[0] = 1e-6;
        numbers.links[0].strength = 0.999;
    }
    let mut findings = Findings::new();
    // The last symptom stays unobserved: it is the one to look for.
    for symptom in 0..symptoms - 1 {
        let seen = match random.below(5) {
            0 | 1 => Observation::Present,
            2 => Observation::Absent,
            3 => Observation::Likely(random.uniform(0.0, 1.0)),
            _ => continue,
        };
        findings.observe(symptom, seen);
    }
    let readings = random.below(5);
    add_readings(random, &mut findings, causes, readings);
    let reading = reading(random, causes);
    answered(&numbers, &findings, &reading)
}

/// Regions and weights of a reading on two causes.
fn reading(random: &mut Random, causes: usize) -> (Vec<f64>, Vec<(usize, Vec<f64>)>) {
    let mut weights = |cause| (cause, (0..3).map(|_| random.uniform(-1.5, 1.5)).collect());
    (vec![0.2, 0.5, 0.3], vec![weights(0), weights(causes - 1)])
}

fn answered(numbers: &Numbers, findings: &Findings, reading: &(Vec<f64>, Vec<(usize, Vec<f64>)>)) -> Value {
    let (network, mut workspace, mut other) = (numbers.network(), Workspace::new(), Workspace::new());
    let case = posterior(&network, findings, &mut workspace).unwrap();
    let asked = Reading::new(&reading.0, &reading.1).unwrap();
    let symptom = numbers.leaks.len() - 1;
    let look = look_for(&network, findings, symptom, &mut other).unwrap();
    let mut value = stated(numbers, findings);
    value["reading"] = json!({ "usual": reading.0, "weights": reading.1 });
    value["look_for"] = json!(symptom);
    value["answer"] = json!({
        "present": case.odds().iter().map(|odds| odds.present).collect::<Vec<_>>(),
        "log_probability": case.log_probability(),
        "joint_of_first_three": case.joint(&[0, 1, 2]).unwrap(),
        "reading_bits": asked.information(&case).unwrap(),
        "symptom_probability": look.probability(),
        "symptom_bits_about_first_two": look.information(&[0, 1]).unwrap(),
    });
    value
}

/// A case that only high-precision Quickscore can check.
fn big_case(random: &mut Random, present: usize) -> Value {
    let numbers = numbers(random, 400, 80);
    let mut findings = symptoms_seen(random, 80, present, 5);
    add_readings(random, &mut findings, 400, 12);
    let (network, mut workspace) = (numbers.network(), Workspace::new());
    let case = posterior(&network, &findings, &mut workspace).unwrap();
    let mut value = stated(&numbers, &findings);
    value["answer"] = json!({ "present": case.odds().iter().map(|odds| odds.present).collect::<Vec<_>>() });
    value
}

/// The numbers of the question. An observation is its certainty: 1 is present, 0 is absent.
fn stated(numbers: &Numbers, findings: &Findings) -> Value {
    let certainty = |&(symptom, seen): &(usize, Observation)| {
        let certainty = match seen {
            Observation::Present => 1.0,
            Observation::Absent => 0.0,
            Observation::Likely(certainty) => certainty,
        };
        (symptom, certainty)
    };
    let links = numbers.links.iter().map(|link| (link.cause, link.symptom, link.strength));
    let weights = (0..findings.readings()).flat_map(|place| findings.reading(place));
    json!({
        "priors": numbers.priors,
        "leaks": numbers.leaks,
        "links": links.collect::<Vec<_>>(),
        "observations": findings.observations().iter().map(certainty).collect::<Vec<_>>(),
        "weights": weights.collect::<Vec<_>>(),
    })
}
