//! The outcomes of a candidate: in the trade's words, how probable each is, and the case after it.

use super::super::regions::{Candidate, assume, region_in_words};
use super::open::{Open, Subject};
use super::told::Told;
use crate::inference::{Findings, Observation, Standing, Workspace, posterior};
use crate::knowledge::{Circumstances, Input};

/// Weights that differ by less, log10, are the same.
const SAME_WEIGHT: f64 = 1e-9;

/// One outcome of a candidate.
pub(super) struct Prospect {
    /// "above 29 °C", "yes", "not seen".
    pub(super) text: String,
    /// P(outcome | findings).
    pub(super) probability: f64,
    /// What would be known.
    finding: Finding,
}

enum Finding {
    /// A value of a reading or fact, and its weights, log10.
    Value(Input, f64, Vec<(usize, f64)>),
    /// What was seen of the symptom at a position.
    Sight(usize, Observation),
}

/// Regions of a reading between which the weights do not change.
struct Span {
    first: usize,
    last: usize,
    probability: f64,
}

impl Open<'_, '_> {
    /// The outcomes of a candidate, in ascending order; their probabilities add up to 1.
    pub(super) fn prospects(&self, told: &Told<'_>) -> Vec<Prospect> {
        match told.subject {
            Subject::Symptom(symptom) => told.seen.map(|seen| sights(symptom, seen)).unwrap_or_default(),
            Subject::Input(candidate) => {
                let Some(probabilities) = told.outcomes().and_then(|all| all.probabilities(self.posterior).ok()) else {
                    return Vec::new();
                };
                let spans = spans(&probabilities, told.weights(), |cause| self.asked_about(cause));
                spans.iter().filter_map(|span| self.in_region(candidate, told.weights(), span)).collect()
            }
        }
    }

    fn in_region(&self, candidate: &Candidate, weights: &[(usize, Vec<f64>)], span: &Span) -> Option<Prospect> {
        let middle = usize::midpoint(span.first, span.last);
        // The outermost regions stand for values that are clearly past the edge.
        let region = match (span.first, span.last + 1 == candidate.samples.len()) {
            (0, _) => 0,
            (_, true) => span.last,
            _ => middle,
        };
        let sample = *candidate.samples.get(region)?;
        let weights = weights.iter().filter_map(|(cause, by_region)| Some((*cause, *by_region.get(region)?)));
        Some(Prospect {
            text: self.in_words(candidate, span),
            probability: span.probability,
            finding: Finding::Value(candidate.input, sample, weights.collect()),
        })
    }

    fn in_words(&self, candidate: &Candidate, span: &Span) -> String {
        match candidate.input {
            Input::Reading(key) => {
                let unit = &self.knowledge.declared.readings[key].unit;
                let low = span.first.checked_sub(1).and_then(|edge| candidate.edges.get(edge)).copied();
                region_in_words(low, candidate.edges.get(span.last).copied(), unit)
            }
            _ => (if span.first == 0 { "no" } else { "yes" }).to_owned(),
        }
    }

    /// What holds of the causes after an outcome; `None` where the inference takes one symptom more than it can.
    pub(super) fn after<T>(
        &self,
        prospect: &Prospect,
        spare: &mut Workspace,
        tell: impl FnOnce(Standing<'_>) -> T,
    ) -> Option<T> {
        if let Finding::Value(_, _, weights) = &prospect.finding {
            return Some(tell(self.posterior.after_reading(weights, spare).ok()?));
        }
        let findings = self.findings_after(prospect);
        Some(tell(posterior(&self.model.network, &findings, spare).ok()?.standing()))
    }

    /// The findings of the case with an outcome.
    pub(super) fn findings_after(&self, prospect: &Prospect) -> Findings {
        let mut findings = self.findings.clone();
        match &prospect.finding {
            Finding::Value(_, _, weights) => {
                findings.weigh(weights);
            }
            Finding::Sight(symptom, observation) => findings.observe(*symptom, *observation),
        }
        findings
    }
}

impl Prospect {
    /// The circumstances of a case with the outcome.
    pub(super) fn circumstances(&self, case: &Circumstances) -> Circumstances {
        let mut after = case.clone();
        if let Finding::Value(input, sample, _) = self.finding {
            assume(&mut after, input, Some(sample));
        }
        after
    }
}

/// The outcomes of looking at the symptom at a position.
fn sights(symptom: usize, seen: f64) -> Vec<Prospect> {
    let sight = |text: &str, probability, observation| Prospect {
        text: text.to_owned(),
        probability,
        finding: Finding::Sight(symptom, observation),
    };
    vec![sight("not seen", 1.0 - seen, Observation::Absent), sight("seen", seen, Observation::Present)]
}

/// Neighbouring regions in which no cause asked about weighs differently are one outcome.
fn spans(probabilities: &[f64], weights: &[(usize, Vec<f64>)], asked: impl Fn(usize) -> bool) -> Vec<Span> {
    let weights: Vec<&[f64]> =
        weights.iter().filter(|(cause, _)| asked(*cause)).map(|(_, by_region)| by_region.as_slice()).collect();
    let same = |a: usize, b: usize| {
        let differs = |by_region: &&[f64]| match (by_region.get(a), by_region.get(b)) {
            (Some(a), Some(b)) => (a - b).abs() > SAME_WEIGHT,
            _ => false,
        };
        !weights.iter().any(differs)
    };
    let mut spans: Vec<Span> = Vec::with_capacity(probabilities.len());
    for (region, &probability) in probabilities.iter().enumerate() {
        match spans.last_mut() {
            Some(span) if same(span.last, region) => {
                span.last = region;
                span.probability += probability;
            }
            _ => spans.push(Span { first: region, last: region, probability }),
        }
    }
    spans
}
