//! 200 synthetic cases with posteriors and information on which five methods agree:
//! `tests/reference/noisy-or-check.json`.

use serde_json::Value;
use whybake::inference::{Findings, Link, Network, Observation, Reading, Workspace, posterior, total_under_cause};

/// The data are printed with fifteen digits.
const TOLERANCE: f64 = 1e-12;

struct CheckData(Value);

impl CheckData {
    fn read() -> Self {
        Self(serde_json::from_str(include_str!("../reference/noisy-or-check.json")).unwrap())
    }

    fn network(&self) -> Network {
        let column = |list: &str, key: &str| items(&self.0["kb"][list]).iter().map(|item| number(&item[key])).collect();
        let link = |link: &Value| Link {
            cause: index(&link["cause"]),
            symptom: index(&link["symptom"]),
            strength: number(&link["strength"]),
        };
        let links = items(&self.0["kb"]["links"]).iter().map(link).collect();
        Network::new(column("causes", "prior"), column("symptoms", "leak"), links).unwrap()
    }

    fn readings(&self) -> Vec<Reading> {
        let reading = |reading: &Value| Reading::new(&numbers(&reading["usual"]), &weights(reading)).unwrap();
        items(&self.0["kb"]["readings"]).iter().map(reading).collect()
    }

    fn findings(&self, case: &Value) -> Findings {
        let mut findings = Findings::new();
        items(&case["positive"]).iter().for_each(|symptom| findings.observe(index(symptom), Observation::Present));
        items(&case["negative"]).iter().for_each(|symptom| findings.observe(index(symptom), Observation::Absent));
        for taken in items(&case["readings"]) {
            let reading = &self.0["kb"]["readings"][index(&taken[0])];
            // A value equal to an edge belongs to the upper region.
            let region = numbers(&reading["edges"]).iter().filter(|&&edge| number(&taken[1]) >= edge).count();
            let in_region = |(cause, by_region): (usize, Vec<f64>)| (cause, by_region[region]);
            findings.weigh(&weights(reading).into_iter().map(in_region).collect::<Vec<_>>());
        }
        findings
    }

    fn cases(&self) -> &[Value] {
        items(&self.0["cases"])
    }
}

fn items(value: &Value) -> &[Value] {
    value.as_array().unwrap()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn numbers(value: &Value) -> Vec<f64> {
    items(value).iter().map(number).collect()
}

fn index(value: &Value) -> usize {
    value.as_u64().unwrap() as usize
}

fn weights(reading: &Value) -> Vec<(usize, Vec<f64>)> {
    items(&reading["weights"]).iter().map(|weight| (index(&weight["cause"]), numbers(&weight["log10lr"]))).collect()
}

fn assert_close(found: f64, expected: f64, case: usize) {
    assert!((found - expected).abs() <= TOLERANCE, "case {case}: {found:e} for {expected:e}");
}

#[test]
fn posteriors_of_200_cases() {
    let data = CheckData::read();
    let (network, mut workspace) = (data.network(), Workspace::new());
    assert_eq!(data.cases().len(), 200);
    for (place, case) in data.cases().iter().enumerate() {
        let findings = data.findings(case);
        let found = posterior(&network, &findings, &mut workspace).unwrap();
        let expected = numbers(&case["expected"]);
        assert_eq!(found.odds().len(), expected.len());
        for (odds, expected) in found.odds().iter().zip(expected) {
            assert_close(odds.probability(), expected, place);
            assert_close(odds.complement(), 1.0 - expected, place);
        }
    }
}

#[test]
fn information_of_eight_readings_in_200_cases() {
    let data = CheckData::read();
    let (network, readings, mut workspace) = (data.network(), data.readings(), Workspace::new());
    for (place, case) in data.cases().iter().enumerate() {
        let findings = data.findings(case);
        let found = posterior(&network, &findings, &mut workspace).unwrap();
        let expected = numbers(&case["eig_bits"]);
        assert_eq!(readings.len(), expected.len());
        for (reading, expected) in readings.iter().zip(expected) {
            assert_close(reading.information(&found).unwrap(), expected, place);
        }
    }
}

#[test]
fn weights_of_the_check_data_are_consistent_with_the_usual_shares() {
    let data = CheckData::read();
    for reading in items(&data.0["kb"]["readings"]) {
        for (cause, by_region) in weights(reading) {
            assert_close(total_under_cause(&numbers(&reading["usual"]), &by_region), 1.0, cause);
        }
    }
}
