//! Generated networks and cases, the extremes included.

use proptest::collection::vec;
use proptest::prelude::*;
use whybake::inference::{Findings, Link, Observation};

use crate::generate::Numbers;

/// A network with at most `causes` causes and eight symptoms, and the findings of a case.
pub(crate) fn cases(causes: usize) -> impl Strategy<Value = (Numbers, Findings)> {
    (1..=causes, 1..=8usize)
        .prop_flat_map(|(causes, symptoms)| (networks(causes, symptoms), findings(causes, symptoms)))
}

pub(crate) fn networks(causes: usize, symptoms: usize) -> impl Strategy<Value = Numbers> {
    let priors = vec(prop_oneof![4 => 0.01..0.3, 1 => 1e-6..1e-3, 1 => 0.9..0.9999], causes);
    let leaks = vec(prop_oneof![2 => 0.001..0.1, 1 => 1e-6..1e-4, 1 => Just(1e-6)], symptoms);
    let strengths = vec(option(prop_oneof![3 => 0.05..0.95, 1 => 1e-3..0.01, 1 => 0.99..0.999]), causes * symptoms);
    (priors, leaks, strengths).prop_map(move |(priors, leaks, strengths)| {
        let strengths = strengths.into_iter().enumerate();
        let link = |(place, strength): (usize, Option<f64>)| {
            strength.map(|strength| Link { cause: place / symptoms, symptom: place % symptoms, strength })
        };
        Numbers { priors, leaks, links: strengths.filter_map(link).collect() }
    })
}

pub(crate) fn findings(causes: usize, symptoms: usize) -> impl Strategy<Value = Findings> {
    let weights = prop_oneof![3 => -1.5..1.5, 1 => -5.0..5.0];
    let readings = vec(vec((0..causes, weights), 1..4), 0..5);
    (vec(option(observations()), symptoms), readings).prop_map(|(observations, readings)| {
        let mut findings = Findings::new();
        for (symptom, observation) in observations.into_iter().enumerate() {
            observation.into_iter().for_each(|observation| findings.observe(symptom, observation));
        }
        for weights in readings {
            findings.weigh(&weights);
        }
        findings
    })
}

fn observations() -> impl Strategy<Value = Observation> {
    prop_oneof![
        3 => Just(Observation::Present),
        1 => Just(Observation::Absent),
        2 => (0.0..=1.0).prop_map(Observation::Likely),
        1 => prop_oneof![Just(0.0), Just(1e-9), Just(0.5), Just(1.0 - 1e-9), Just(1.0)].prop_map(Observation::Likely),
    ]
}

fn option<T: std::fmt::Debug>(strategy: impl Strategy<Value = T>) -> impl Strategy<Value = Option<T>> {
    proptest::option::weighted(0.5, strategy)
}

/// Regions and weights of a reading on up to three of the causes.
pub(crate) fn readings(causes: usize) -> impl Strategy<Value = (Vec<f64>, Vec<(usize, Vec<f64>)>)> {
    let touched = proptest::sample::subsequence((0..causes).collect::<Vec<_>>(), 1..=causes.min(3));
    (2..=4usize, touched).prop_flat_map(|(regions, causes)| {
        let shares = vec(0.05..1.0, regions).prop_map(|shares: Vec<f64>| {
            let sum: f64 = shares.iter().sum();
            shares.into_iter().map(|share| share / sum).collect::<Vec<f64>>()
        });
        let weights = vec(vec(-2.0..2.0, regions), causes.len());
        (shares, weights).prop_map(move |(shares, weights)| (shares, causes.iter().copied().zip(weights).collect()))
    })
}

/// Failing cases are shown in the test's output, not kept in a file.
pub(crate) fn config(cases: u32) -> ProptestConfig {
    ProptestConfig { cases, failure_persistence: None, ..ProptestConfig::default() }
}
