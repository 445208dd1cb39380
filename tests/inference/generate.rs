//! Synthetic networks and cases from a seed, for tests, benchmarks and the comparison with a
//! reference library. Nothing in them means anything; they are as sparse as knowledge of a trade
//! is.
#![allow(dead_code)] // Each of the programs that include this file uses a part of it.

use whybake::inference::{Findings, Link, Network, Observation};

/// SplitMix64 (Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators").
pub(crate) struct Random(pub(crate) u64);

impl Random {
    pub(crate) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    pub(crate) fn uniform(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }

    pub(crate) fn below(&mut self, bound: usize) -> usize {
        (self.next() % bound as u64) as usize
    }

    /// Some distinct numbers below a bound.
    pub(crate) fn distinct(&mut self, count: usize, bound: usize) -> Vec<usize> {
        let mut all: Vec<usize> = (0..bound).collect();
        for place in 0..count.min(bound) {
            let other = place + self.below(bound - place);
            all.swap(place, other);
        }
        all.truncate(count);
        all
    }
}

/// The numbers of a network, before it is checked.
#[derive(Debug, Clone)]
pub(crate) struct Numbers {
    pub(crate) priors: Vec<f64>,
    pub(crate) leaks: Vec<f64>,
    pub(crate) links: Vec<Link>,
}

impl Numbers {
    pub(crate) fn network(&self) -> Network {
        Network::new(self.priors.clone(), self.leaks.clone(), self.links.clone()).unwrap()
    }
}

/// Common priors, leaks and strengths; one to four links a cause.
pub(crate) fn numbers(random: &mut Random, causes: usize, symptoms: usize) -> Numbers {
    let priors = (0..causes).map(|_| random.uniform(0.01, 0.2)).collect();
    let leaks = (0..symptoms).map(|_| random.uniform(0.002, 0.05)).collect();
    let mut links = Vec::new();
    for cause in 0..causes {
        let count = 1 + random.below(4);
        for symptom in random.distinct(count, symptoms) {
            links.push(Link { cause, symptom, strength: random.uniform(0.1, 0.9) });
        }
    }
    Numbers { priors, leaks, links }
}

/// Different symptoms, some present and some absent.
pub(crate) fn symptoms_seen(random: &mut Random, symptoms: usize, present: usize, absent: usize) -> Findings {
    let mut findings = Findings::new();
    for (place, symptom) in random.distinct(present + absent, symptoms).into_iter().enumerate() {
        let seen = if place < present { Observation::Present } else { Observation::Absent };
        findings.observe(symptom, seen);
    }
    findings
}

/// Adds readings that bear on one to three causes each.
pub(crate) fn add_readings(random: &mut Random, findings: &mut Findings, causes: usize, readings: usize) {
    for _ in 0..readings {
        let count = 1 + random.below(3);
        let touched = random.distinct(count, causes);
        let weights: Vec<_> = touched.into_iter().map(|cause| (cause, random.uniform(-1.0, 1.0))).collect();
        findings.weigh(&weights);
    }
}
