//! The network given one case: everything linear is folded into the odds of the causes, and the
//! symptoms that need a dimension of the cover table are listed.
#![allow(
    clippy::indexing_slicing,
    reason = "every index comes from a checked network or from findings checked against it; a bounds-checked accessor with an invented default would hide a wrong index instead of showing it"
)]

use super::dimension::{Dimension, LEAST_CERTAINTY};
use super::faults::FindingsFault;
use super::findings::{Findings, Observation};
use super::log_product::LogProduct;
use super::network::Network;
use super::odds::Odds;

/// The most symptoms that may be present or uncertain in one case: the cover table has two to the
/// power of this many entries, 512 KiB.
pub const MAX_SYMPTOMS: usize = 16;

/// Decimal logarithm at which the sum of a cause's weights of evidence is cut off. Odds of 10^100
/// leave double precision room for everything else that is multiplied in.
pub const MAX_WEIGHT: f64 = 100.0;

/// Odds below this are raised to it, so that no product of strengths can underflow to certainty.
const LEAST_ODDS: f64 = 1e-250;

/// A finding to leave out, or a symptom to look at, compared with the findings as they are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Change {
    Nothing,
    OmitObservation(usize),
    OmitReading(usize),
    /// Gives this unobserved symptom a dimension as if it were present. With another credit for
    /// that dimension, the absent symptom can be read off the same table.
    LookAt(usize),
}

/// A network given a case; reused from case to case so that nothing is allocated.
#[derive(Debug, Default)]
pub(super) struct Conditioned {
    /// Odds of each cause from its prior, its weights and the absent symptoms; the sides add up
    /// to 1.
    odds: Vec<Odds>,
    /// Sum of the log10 weights of each cause.
    shifts: Vec<f64>,
    /// For each cause, the dimensions it is linked to, as bits.
    patterns: Vec<u32>,
    /// Strengths of a cause for the bits of its pattern, ascending, `MAX_SYMPTOMS` apart.
    strengths: Vec<f64>,
    /// The causes with a pattern.
    linked: Vec<usize>,
    dimensions: Vec<Dimension>,
    /// Bits of the dimensions where an unexplained symptom counts.
    tolerant: u32,
    scale: LogProduct,
    weights: Vec<(usize, f64)>,
}

impl Conditioned {
    /// Conditions `network` on `findings`, changed by `change`. The findings have been checked.
    pub(super) fn condition(
        &mut self,
        network: &Network,
        findings: &Findings,
        change: Change,
    ) -> Result<(), FindingsFault> {
        self.reset(network);
        self.weigh(findings, change);
        self.observe(network, findings, change);
        if self.dimensions.len() > MAX_SYMPTOMS {
            let count = self.dimensions.len();
            return Err(FindingsFault::TooManySymptoms { count, limit: MAX_SYMPTOMS });
        }
        self.link(network);
        Ok(())
    }

    fn reset(&mut self, network: &Network) {
        self.odds.clear();
        self.odds.extend_from_slice(network.priors());
        self.shifts.clear();
        self.shifts.resize(network.causes(), 0.0);
        self.patterns.clear();
        self.patterns.resize(network.causes(), 0);
        self.strengths.resize(network.causes() * MAX_SYMPTOMS, 0.0);
        self.linked.clear();
        self.dimensions.clear();
        self.weights.clear();
        self.scale = LogProduct::default();
    }

    fn weigh(&mut self, findings: &Findings, change: Change) {
        for reading in 0..findings.readings() {
            if change != Change::OmitReading(reading) {
                self.weights.extend_from_slice(findings.reading(reading));
            }
        }
        // Floating-point sums depend on their order; the answer must not depend on that of the
        // findings.
        let mut weights = std::mem::take(&mut self.weights);
        weights.sort_unstable_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
        for of_one_cause in weights.chunk_by(|a, b| a.0 == b.0) {
            let cause = of_one_cause[0].0;
            let shift = of_one_cause.iter().map(|&(_, weight)| weight).sum();
            self.shifts[cause] = shift;
            self.multiply(cause, power_of_ten(cut_off(shift)));
        }
        self.weights = weights;
    }

    fn observe(&mut self, network: &Network, findings: &Findings, change: Change) {
        for (place, &(symptom, observation)) in findings.observations().iter().enumerate() {
            if change != Change::OmitObservation(place) {
                self.observe_one(network, symptom, observation);
            }
        }
        if let Change::LookAt(symptom) = change {
            self.dimensions.push(Dimension::present(symptom, network.leak(symptom)));
        }
        // Symptoms with many causes first: their patterns are then folded in while the table is
        // small.
        self.dimensions.sort_unstable_by_key(|dimension| {
            let parents = network.parents(dimension.symptom).len();
            (usize::MAX - parents, dimension.symptom)
        });
    }

    fn observe_one(&mut self, network: &Network, symptom: usize, observation: Observation) {
        let leak = network.leak(symptom);
        match observation {
            Observation::Present | Observation::Likely(1.0) => {
                self.dimensions.push(Dimension::present(symptom, leak));
            }
            Observation::Absent | Observation::Likely(..LEAST_CERTAINTY) => self.observe_absent(network, symptom),
            Observation::Likely(0.5) => self.scale.multiply(0.5),
            Observation::Likely(certainty) => {
                let (dimension, factor) = Dimension::uncertain(symptom, leak, certainty);
                self.scale.multiply(factor);
                self.dimensions.push(dimension);
            }
        }
    }

    /// An absent symptom is a product over causes, so each cause takes its own factor.
    fn observe_absent(&mut self, network: &Network, symptom: usize) {
        self.scale.multiply(1.0 - network.leak(symptom));
        for parent in network.parents(symptom) {
            self.multiply(parent.cause, 1.0 - parent.strength);
        }
    }

    fn multiply(&mut self, cause: usize, likelihood_ratio: f64) {
        let weighted = self.odds[cause].weighted(likelihood_ratio);
        self.scale.multiply(weighted.total());
        let Odds { present, absent } = weighted.normalised();
        self.odds[cause] = Odds { present: present.max(LEAST_ODDS), absent: absent.max(LEAST_ODDS) };
    }

    fn link(&mut self, network: &Network) {
        self.tolerant = 0;
        for (bit, dimension) in self.dimensions.iter().enumerate() {
            self.tolerant |= u32::from(dimension.is_tolerant()) << bit;
            for parent in network.parents(dimension.symptom) {
                let pattern = self.patterns[parent.cause];
                if pattern == 0 {
                    self.linked.push(parent.cause);
                }
                let place = parent.cause * MAX_SYMPTOMS + pattern.count_ones() as usize;
                self.strengths[place] = parent.strength;
                self.patterns[parent.cause] = pattern | 1 << bit;
            }
        }
    }

    pub(super) fn odds(&self) -> &[Odds] {
        &self.odds
    }

    pub(super) fn pattern(&self, cause: usize) -> u32 {
        self.patterns[cause]
    }

    /// Strengths of the cause for the bits of its pattern, ascending.
    pub(super) fn strengths(&self, cause: usize) -> &[f64] {
        let start = cause * MAX_SYMPTOMS;
        &self.strengths[start..start + self.patterns[cause].count_ones() as usize]
    }

    pub(super) fn linked(&self) -> &[usize] {
        &self.linked
    }

    pub(super) fn dimensions(&self) -> &[Dimension] {
        &self.dimensions
    }

    pub(super) fn dimension_of(&self, symptom: usize) -> Option<usize> {
        self.dimensions.iter().position(|dimension| dimension.symptom == symptom)
    }

    pub(super) fn tolerant(&self) -> u32 {
        self.tolerant
    }

    /// Natural logarithm of everything that was normalised away.
    pub(super) fn log_scale(&self) -> f64 {
        self.scale.ln()
    }

    /// The odds of a cause if `weight` (log10) of its evidence were taken back.
    pub(super) fn odds_without(&self, cause: usize, weight: f64) -> Odds {
        self.odds_with(cause, -weight)
    }

    /// The odds of a cause if `weight` (log10) were added to its evidence.
    pub(super) fn odds_with(&self, cause: usize, weight: f64) -> Odds {
        let shift = self.shifts[cause];
        let change = cut_off(shift + weight) - cut_off(shift);
        self.odds[cause].weighted(power_of_ten(change)).normalised()
    }
}

/// A sum of weights of evidence, within what double precision can carry.
pub(super) fn cut_off(log10_ratio: f64) -> f64 {
    log10_ratio.clamp(-MAX_WEIGHT, MAX_WEIGHT)
}

/// 10^exponent, four times as fast as the general power.
pub(super) fn power_of_ten(exponent: f64) -> f64 {
    (exponent * std::f64::consts::LN_10).exp()
}
