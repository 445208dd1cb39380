//! What to find out next: expected information per minute of effort.

use super::answer::{NextQuestion, NextReading, QuestionKind};
use super::model::Model;
use super::regions::Candidate;
use crate::inference::{Findings, Posterior, Reading as Outcomes, Workspace, look_for};
use crate::knowledge::{Circumstances, Input, Knowledge, ProductView};

/// Most readings, and most questions, in an answer.
const MOST: usize = 5;

/// Most symptoms that are tried: each needs an inference of its own.
const MOST_LOOKS: usize = 2;

/// Most causes of a reading whose outcomes are made in the case: the joint posterior doubles with each.
const MOST_CAUSES: usize = 4;

/// Most causes of a symptom.
const MOST_LOOK_CAUSES: usize = 3;

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
    knowledge: &'k Knowledge,
    view: &'k ProductView,
    model: &'k Model,
    posterior: &'a Posterior<'a>,
    findings: &'a Findings,
    /// Whether any symptom that was seen has a cause.
    anything_to_explain: bool,
}

impl<'a, 'k> Open<'a, 'k> {
    pub(super) fn new(
        knowledge: &'k Knowledge,
        view: &'k ProductView,
        model: &'k Model,
        posterior: &'a Posterior<'a>,
        findings: &'a Findings,
    ) -> Self {
        let anything_to_explain = (0..view.causes.len()).any(|cause| posterior.explains(cause));
        Self { knowledge, view, model, posterior, findings, anything_to_explain }
    }

    /// Whether a cause is asked about: one that explains what was seen, if anything was. Whether a fault is at work that
    /// shows nothing of the complaint is no question of this case.
    fn asked_about(&self, cause: usize) -> bool {
        !self.anything_to_explain || self.posterior.explains(cause)
    }

    pub(super) fn next(&self, case: &mut Circumstances, spare: &mut Workspace) -> Next<'k> {
        let mut readings: Ranking<NextReading<'k>> = Ranking::default();
        let mut questions: Ranking<NextQuestion<'k>> = Ranking::default();
        for promise in self.promising(case) {
            let minutes = promise.candidate.minutes;
            match promise.candidate.input {
                Input::Reading(key) if readings.may_enter(promise.rate) => {
                    let Some((information_bits, tells_apart)) = self.weigh(&promise, case) else { continue };
                    let reading = &self.knowledge.declared.readings[key];
                    let next = NextReading {
                        reading: &reading.id,
                        title: &reading.title,
                        unit: reading.unit.code(),
                        method: &reading.method,
                        information_bits,
                        effort_minutes: minutes,
                        tells_apart,
                    };
                    readings.enter(information_bits, minutes, next);
                }
                Input::Fact(key) if questions.may_enter(promise.rate) => {
                    let Some((information_bits, tells_apart)) = self.weigh(&promise, case) else { continue };
                    let fact = &self.knowledge.declared.facts[key];
                    let next = NextQuestion {
                        finding: &fact.id,
                        kind: QuestionKind::Fact,
                        text: &fact.question,
                        information_bits,
                        effort_minutes: minutes,
                        tells_apart,
                    };
                    questions.enter(information_bits, minutes, next);
                }
                _ => {}
            }
        }
        for look in self.looks(spare) {
            questions.enter(look.information_bits, look.effort_minutes, look);
        }
        Next { readings: readings.into_items(), questions: questions.into_items() }
    }

    /// What the case leaves open, with a bound on its information. Best bound a minute first, so that the poor ones need
    /// not be computed.
    fn promising(&self, case: &Circumstances) -> Vec<Promise<'k>> {
        let open = self.model.candidates.iter().filter(|candidate| !case.knows(candidate.input));
        let mut promising: Vec<Promise<'k>> = open
            .map(|candidate| {
                let in_case = candidate.partners.iter().any(|partner| case.knows(*partner));
                let outcomes = candidate.outcomes.as_ref().filter(|_| !in_case);
                let bits = match outcomes {
                    Some((_, bound)) => bound.bits_about(self.posterior, |cause| self.asked_about(cause)),
                    None => self.entropies(&candidate.causes),
                };
                Promise { candidate, in_case, rate: rate(bits, candidate.minutes) }
            })
            .collect();
        promising.sort_by(|a, b| b.rate.total_cmp(&a.rate));
        promising
    }

    /// No reading tells more of some causes than their entropies come to.
    fn entropies(&self, causes: &[usize]) -> f64 {
        let asked = causes.iter().filter(|cause| self.asked_about(**cause));
        asked.filter_map(|cause| self.posterior.odds().get(*cause)).map(|odds| odds.entropy()).sum()
    }

    /// Information of a candidate in bits, and the causes that it moves most.
    fn weigh(&self, promise: &Promise<'k>, case: &mut Circumstances) -> Option<(f64, Vec<&'k str>)> {
        let candidate = promise.candidate;
        if promise.in_case {
            let weights = candidate.weights_in(self.knowledge, self.view, case);
            return self.tell(self.information(&candidate.usual, &weights)?, &weights);
        }
        let bits = match &candidate.outcomes {
            Some((outcomes, _)) => self.information_of(outcomes)?,
            None => self.information(&candidate.usual, &candidate.weights)?,
        };
        self.tell(bits, &candidate.weights)
    }

    /// Information about the causes that an input can move most: of many causes this is a lower bound.
    fn information(&self, usual: &[f64], weights: &[(usize, Vec<f64>)]) -> Option<f64> {
        let most: Vec<(usize, Vec<f64>)> = self.most_moved(weights, MOST_CAUSES).into_iter().cloned().collect();
        self.information_of(&Outcomes::new(usual, &most).ok()?)
    }

    /// Information about those causes of a reading that are asked about.
    fn information_of(&self, outcomes: &Outcomes) -> Option<f64> {
        let asked: Vec<usize> = outcomes.causes().iter().copied().filter(|cause| self.asked_about(*cause)).collect();
        if asked.len() == outcomes.causes().len() {
            return outcomes.information(self.posterior).ok();
        }
        if asked.is_empty() { None } else { outcomes.information_about(self.posterior, &asked).ok() }
    }

    fn tell(&self, bits: f64, weights: &[(usize, Vec<f64>)]) -> Option<(f64, Vec<&'k str>)> {
        (bits >= LEAST_BITS).then(|| {
            let moved = self.most_moved(weights, MOST_TOLD_APART);
            (bits, moved.into_iter().map(|(position, _)| self.cause_id(*position)).collect())
        })
    }

    fn most_moved<'w>(&self, weights: &'w [(usize, Vec<f64>)], most: usize) -> Vec<&'w (usize, Vec<f64>)> {
        let asked = weights.iter().filter(|(cause, _)| self.asked_about(*cause));
        let mut moved: Vec<_> = asked.map(|weight| (self.leverage(weight), weight)).collect();
        moved.sort_by(|(a, _), (b, _)| b.total_cmp(a));
        moved.into_iter().take(most).map(|(_, weight)| weight).collect()
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
        for link in self.view.links.iter().filter(|link| self.asked_about(link.cause)) {
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
        let mut causes: Vec<usize> =
            self.model.network.causes_of(symptom).filter(|cause| self.asked_about(*cause)).collect();
        causes.sort_by(|a, b| self.variance(*b).total_cmp(&self.variance(*a)));
        causes.truncate(MOST_LOOK_CAUSES);
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

/// An open candidate and the most that it can tell.
struct Promise<'k> {
    candidate: &'k Candidate,
    /// Whether the case knows something on which the weights depend.
    in_case: bool,
    /// Bound on the information, bits a minute.
    rate: f64,
}

/// The best items so far by bits a minute.
struct Ranking<T> {
    items: Vec<(f64, T)>,
}

impl<T> Default for Ranking<T> {
    fn default() -> Self {
        Self { items: Vec::new() }
    }
}

impl<T> Ranking<T> {
    /// Whether an item with at most this rate could be among the best.
    fn may_enter(&self, rate: f64) -> bool {
        self.items.len() < MOST || self.items.last().is_some_and(|(worst, _)| rate > *worst)
    }

    fn enter(&mut self, bits: f64, minutes: f64, item: T) {
        let rate = rate(bits, minutes);
        let place = self.items.partition_point(|(other, _)| *other >= rate);
        self.items.insert(place, (rate, item));
        self.items.truncate(MOST);
    }

    fn into_items(self) -> Vec<T> {
        self.items.into_iter().map(|(_, item)| item).collect()
    }
}

/// Bits a minute; a minute is the least effort that counts.
fn rate(bits: f64, minutes: f64) -> f64 {
    bits / minutes.max(1.0)
}
