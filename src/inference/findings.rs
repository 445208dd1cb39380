//! What is known about one case: symptoms looked for, and readings as weights of evidence.

use super::faults::FindingsFault;
use super::network::Network;

/// What was seen of a symptom that somebody looked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Observation {
    /// The symptom is there.
    Present,
    /// The symptom is not there.
    Absent,
    /// Virtual evidence (Pearl 1988): the likelihood is t · P(present | causes) + (1 − t) ·
    /// P(absent | causes). t = 1 is [`Observation::Present`], t = 0 is [`Observation::Absent`], t
    /// = 0.5 says nothing.
    Likely(f64),
}

/// The findings of one case.
///
/// The order in which findings are given does not change a bit of the answer.
#[derive(Debug, Clone, Default)]
pub struct Findings {
    /// Sorted by symptom.
    observations: Vec<(usize, Observation)>,
    weights: Vec<(usize, f64)>,
    /// Where the weights of each reading end.
    ends: Vec<usize>,
}

impl Findings {
    /// Nothing known yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds what was seen of a symptom. A symptom given twice is refused by the inference.
    pub fn observe(&mut self, symptom: usize, observation: Observation) {
        let place = self.observations.partition_point(|&(other, _)| other <= symptom);
        self.observations.insert(place, (symptom, observation));
    }

    /// Adds one reading (or fact): for each cause it bears on, log10 of the likelihood ratio
    /// P(reading | cause) / P(reading | no cause). Returns its place among the readings.
    pub fn weigh(&mut self, log10_ratios: &[(usize, f64)]) -> usize {
        let start = self.weights.len();
        for &(cause, ratio) in log10_ratios {
            self.add_weight(start, cause, ratio);
        }
        self.ends.push(self.weights.len());
        self.ends.len() - 1
    }

    /// One weight a cause and reading: a cause named twice in one reading has its weights added.
    fn add_weight(&mut self, start: usize, cause: usize, ratio: f64) {
        let same = |weight: &&mut (usize, f64)| weight.0 == cause;
        match self.weights.iter_mut().skip(start).find(same) {
            Some(weight) => weight.1 += ratio,
            None => self.weights.push((cause, ratio)),
        }
    }

    /// The symptoms looked for, ascending by symptom.
    #[must_use]
    pub fn observations(&self) -> &[(usize, Observation)] {
        &self.observations
    }

    /// Number of readings.
    #[must_use]
    pub fn readings(&self) -> usize {
        self.ends.len()
    }

    /// The weights of one reading, as (cause, log10 of the likelihood ratio).
    #[must_use]
    pub fn reading(&self, reading: usize) -> &[(usize, f64)] {
        let start = match reading.checked_sub(1) {
            Some(before) => self.ends.get(before).copied().unwrap_or(0),
            None => 0,
        };
        let end = self.ends.get(reading).copied().unwrap_or(start);
        self.weights.get(start..end).unwrap_or_default()
    }

    /// The first reason why these findings do not fit the network.
    pub(super) fn check(&self, network: &Network) -> Result<(), FindingsFault> {
        let mut previous = None;
        for &(symptom, observation) in &self.observations {
            if symptom >= network.symptoms() {
                return Err(FindingsFault::UnknownSymptom { symptom });
            }
            if previous == Some(symptom) {
                return Err(FindingsFault::ObservedTwice { symptom });
            }
            check_certainty(symptom, observation)?;
            previous = Some(symptom);
        }
        let bad = self.weights.iter().find(|(cause, ratio)| *cause >= network.causes() || !ratio.is_finite());
        match bad {
            Some(&(cause, _)) if cause >= network.causes() => Err(FindingsFault::UnknownCause { cause }),
            Some(&(cause, _)) => Err(FindingsFault::Weight { cause }),
            None => Ok(()),
        }
    }
}

fn check_certainty(symptom: usize, observation: Observation) -> Result<(), FindingsFault> {
    match observation {
        Observation::Likely(certainty) if !(0.0..=1.0).contains(&certainty) => {
            Err(FindingsFault::Certainty { symptom, certainty })
        }
        _ => Ok(()),
    }
}
