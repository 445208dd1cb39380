//! What to find out next: expected information per minute of effort.

use super::answer::{NextQuestion, NextReading, QuestionKind};
use super::model::Model;
use super::regions::Candidate;
use crate::inference::{Findings, MAX_READING_CAUSES, Posterior, Reading as Outcomes, Workspace, look_for};
use crate::knowledge::{Circumstances, Input, Knowledge, ProductView};

/// Most readings, and most questions, in an answer.
const MOST: usize = 8;

/// Most symptoms that are tried: each needs an inference of its own.
const MOST_LOOKS: usize = 3;

/// Least information that is worth a line, bits.
const LEAST_BITS: f64 = 1e-3;

/// Minutes to look at a symptom (common practice).
const LOOK_MINUTES: f64 = 2.0;

/// Most causes named for a reading.
const MOST_TOLD_APART: usize = 3;

/// What a case leaves open, ranked.
pub(super) struct Next<'k> {
    pub(super) readings: Vec<NextReading<'k>>,
    pub(super) questions: Vec<NextQuestion<'k>>,
}

/// The open case.
pub(super) struct Open<'a, 'k> {
    pub(super) knowledge: &'k Knowledge,
    pub(super) view: &'k ProductView,
    pub(super) model: &'k Model,
    pub(super) posterior: &'a Posterior<'a>,
    pub(super) findings: &'a Findings,
}

impl<'k> Open<'_, 'k> {
    pub(super) fn next(&self, case: &mut Circumstances, spare: &mut Workspace) -> Next<'k> {
        let (mut readings, mut questions) = (Vec::new(), Vec::new());
        for candidate in &self.model.candidates {
            if case.knows(candidate.input) {
                continue;
            }
            let Some((information_bits, tells_apart)) = self.weigh(candidate, case) else { continue };
            let declared = &self.knowledge.declared;
            match candidate.input {
                Input::Reading(key) => {
                    let reading = &declared.readings[key];
                    readings.push(NextReading {
                        reading: &reading.id,
                        title: &reading.title,
                        unit: reading.unit.code(),
                        method: &reading.method,
                        information_bits,
                        effort_minutes: reading.effort_minutes,
                        tells_apart,
                    });
                }
                Input::Fact(key) => {
                    let fact = &declared.facts[key];
                    questions.push(NextQuestion {
                        finding: &fact.id,
                        kind: QuestionKind::Fact,
                        text: &fact.question,
                        information_bits,
                        effort_minutes: fact.effort_minutes,
                        tells_apart,
                    });
                }
                Input::Share(_) | Input::Formula => {}
            }
        }
        questions.extend(self.looks(spare));
        rank(&mut readings, |reading| (reading.information_bits, reading.effort_minutes));
        rank(&mut questions, |question| (question.information_bits, question.effort_minutes));
        Next { readings, questions }
    }

    /// Information of a candidate in bits, and the causes that it moves most.
    fn weigh(&self, candidate: &Candidate, case: &mut Circumstances) -> Option<(f64, Vec<&'k str>)> {
        let mut weights = if candidate.depends_on_case {
            candidate.weights_in(self.knowledge, self.view, case)
        } else {
            candidate.weights.clone()
        };
        weights.retain(|(_, regions)| regions.iter().any(|weight| weight.abs() > 1e-9));
        weights.sort_by(|a, b| self.leverage(b).total_cmp(&self.leverage(a)));
        // The joint posterior of more causes would be too large; what the others add is left out, so this is a lower bound.
        weights.truncate(MAX_READING_CAUSES);
        let outcomes = Outcomes::new(&candidate.usual, &weights).ok()?;
        let bits = outcomes.information(self.posterior).ok()?;
        (bits >= LEAST_BITS).then(|| {
            let causes = weights.iter().take(MOST_TOLD_APART).map(|(position, _)| self.cause_id(*position));
            (bits, causes.collect())
        })
    }

    /// How far a cause can be moved: its variance times the spread of the weights.
    fn leverage(&self, (position, regions): &(usize, Vec<f64>)) -> f64 {
        let spread = regions.iter().copied().fold(f64::NEG_INFINITY, f64::max)
            - regions.iter().copied().fold(f64::INFINITY, f64::min);
        self.variance(*position) * spread
    }

    fn variance(&self, position: usize) -> f64 {
        self.posterior.odds().get(position).map_or(0.0, |odds| odds.probability() * odds.complement())
    }

    fn cause_id(&self, position: usize) -> &'k str {
        self.view.causes.get(position).map_or("", |key| &self.knowledge.declared.causes[*key].id)
    }

    /// Symptoms worth looking at: those that the uncertain causes show most.
    fn looks(&self, spare: &mut Workspace) -> Vec<NextQuestion<'k>> {
        let observed = self.findings.observations();
        let mut promise: Vec<f64> = vec![0.0; self.view.symptoms.len()];
        for link in &self.view.links {
            if let Some(sum) = promise.get_mut(link.symptom) {
                *sum += self.variance(link.cause) * link.strength * link.strength;
            }
        }
        let mut order: Vec<usize> =
            (0..promise.len()).filter(|symptom| observed.iter().all(|(own, _)| own != symptom)).collect();
        let promised = |symptom: usize| promise.get(symptom).copied().unwrap_or(0.0);
        order.sort_by(|a, b| promised(*b).total_cmp(&promised(*a)));
        order.into_iter().take(MOST_LOOKS).filter_map(|symptom| self.look(symptom, spare)).collect()
    }

    fn look(&self, symptom: usize, spare: &mut Workspace) -> Option<NextQuestion<'k>> {
        let mut causes: Vec<usize> = self.model.network.causes_of(symptom).collect();
        causes.sort_by(|a, b| self.variance(*b).total_cmp(&self.variance(*a)));
        causes.truncate(MAX_READING_CAUSES);
        let look = look_for(&self.model.network, self.findings, symptom, spare).ok()?;
        let information_bits = look.information(&causes).ok()?;
        let key = self.view.symptoms.get(symptom)?;
        let symptom = &self.knowledge.declared.symptoms[*key];
        (information_bits >= LEAST_BITS).then(|| NextQuestion {
            finding: &symptom.id,
            kind: QuestionKind::Symptom,
            text: &symptom.description,
            information_bits,
            effort_minutes: LOOK_MINUTES,
            tells_apart: causes.iter().take(MOST_TOLD_APART).map(|cause| self.cause_id(*cause)).collect(),
        })
    }
}

/// Most bits a minute first; a minute is the least effort that counts.
fn rank<T>(items: &mut Vec<T>, key: impl Fn(&T) -> (f64, f64)) {
    let rate = |item: &T| {
        let (bits, minutes) = key(item);
        bits / minutes.max(1.0)
    };
    items.sort_by(|a, b| rate(b).total_cmp(&rate(a)));
    items.truncate(MOST);
}
