//! The next readings and questions of a diagnosis: the best few by expected information per minute of effort.

use super::super::answer::{NextQuestion, NextReading, QuestionKind};
use super::super::said::Said;
use super::super::sentence::in_sentence;
use super::answer::{BriefOutcome, CauseAfter};
use super::open::{Open, Promise, Subject};
use super::standing::leaders;
use super::told::{Counted, Told};
use crate::inference::{Standing, Workspace};
use crate::knowledge::{Circumstances, Input, Symptom};

/// Most readings, and most questions, in an answer.
const MOST: usize = 5;

/// Most symptoms that are tried: each needs an inference of its own.
const MOST_LOOKS: usize = 2;

/// Causes that are counted: the work doubles with each.
const COUNTED: Counted = Counted { of_input: 6, of_symptom: 4 };

/// Least information that is worth a line, bits.
pub(super) const LEAST_BITS: f64 = 1e-3;

/// Most causes named for a reading, and after an outcome.
pub(super) const MOST_TOLD_APART: usize = 3;

/// What a case leaves open, ranked.
pub(in crate::diagnosis) struct Next<'k> {
    pub(in crate::diagnosis) readings: Vec<NextReading<'k>>,
    pub(in crate::diagnosis) questions: Vec<NextQuestion<'k>>,
}

/// What to find out next in an open case.
pub(in crate::diagnosis) fn next<'k>(open: &Open<'_, 'k>, case: &mut Circumstances, spare: &mut Workspace) -> Next<'k> {
    let (mut readings, mut questions) = (Ranking::of(MOST), Ranking::of(MOST));
    for promise in open.inputs(case) {
        let Subject::Input(candidate) = promise.subject else { continue };
        let ranking = if matches!(candidate.input, Input::Reading(_)) { &mut readings } else { &mut questions };
        ranking.consider(open, &promise, case, spare, COUNTED);
    }
    for promise in open.looks() {
        questions.consider(open, &promise, case, spare, COUNTED);
    }
    Next {
        readings: readings.items.iter().filter_map(|told| open.next_reading(told, spare)).collect(),
        questions: questions.items.iter().filter_map(|told| open.next_question(told, spare)).collect(),
    }
}

impl<'k> Open<'_, 'k> {
    fn next_reading(&self, told: &Told<'k>, spare: &mut Workspace) -> Option<NextReading<'k>> {
        let Subject::Input(candidate) = told.subject else { return None };
        let Input::Reading(key) = candidate.input else { return None };
        let reading = &self.knowledge.declared.readings[key];
        Some(NextReading {
            reading: &reading.id,
            title: &reading.title,
            unit: reading.unit.code(),
            method: &reading.method,
            information_bits: told.bits,
            effort_minutes: candidate.minutes,
            tells_apart: self.tells_apart(told, MOST_TOLD_APART),
            outcomes: self.in_brief(told, spare),
        })
    }

    fn next_question(&self, told: &Told<'k>, spare: &mut Workspace) -> Option<NextQuestion<'k>> {
        let declared = &self.knowledge.declared;
        let (kind, finding, text) = match told.subject {
            Subject::Symptom(symptom) => {
                let symptom = &declared.symptoms[*self.view.symptoms.get(symptom)?];
                (QuestionKind::Symptom, symptom.id.as_str(), is_it_seen(symptom))
            }
            Subject::Input(candidate) => {
                let Input::Fact(key) = candidate.input else { return None };
                (QuestionKind::Fact, declared.facts[key].id.as_str(), Said::Always(&declared.facts[key].question))
            }
        };
        Some(NextQuestion {
            finding,
            kind,
            text,
            information_bits: told.bits,
            effort_minutes: told.subject.minutes(),
            tells_apart: self.tells_apart(told, MOST_TOLD_APART),
            outcomes: self.in_brief(told, spare),
        })
    }

    /// The outcomes with the causes that would then lead or have changed.
    fn in_brief(&self, told: &Told<'k>, spare: &mut Workspace) -> Vec<BriefOutcome<'k>> {
        let prospects = self.prospects(told);
        let brief = prospects.into_iter().filter_map(|prospect| {
            let causes = self.after(&prospect, spare, |after| self.causes_in_brief(after))?;
            Some(BriefOutcome { outcome: prospect.text, probability: prospect.probability, causes })
        });
        brief.collect()
    }

    /// The cause that leads, and those that have changed most.
    fn causes_in_brief(&self, after: Standing<'_>) -> Vec<CauseAfter<'k>> {
        let mut told = leaders(self.view, after, 1);
        for (position, _, probability) in self.most_changed(after, MOST_TOLD_APART) {
            if told.len() < MOST_TOLD_APART && told.iter().all(|(own, _)| *own != position) {
                told.push((position, probability));
            }
        }
        let cause = |(position, probability)| CauseAfter { cause: self.cause_id(position), probability };
        told.into_iter().map(cause).collect()
    }

    /// Symptoms worth looking at: those that the uncertain causes show most.
    fn looks(&self) -> Vec<Promise<'k>> {
        let mut promise: Vec<f64> = vec![0.0; self.view.symptoms.len()];
        for link in self.view.links.iter().filter(|link| self.asked_about(link.cause)) {
            if let Some(sum) = promise.get_mut(link.symptom) {
                *sum += self.variance(link.cause) * link.strength * link.strength;
            }
        }
        let promised = |symptom: usize| promise.get(symptom).copied().unwrap_or(0.0);
        let mut order: Vec<usize> = self.unseen().collect();
        order.sort_by(|a, b| promised(*b).total_cmp(&promised(*a)));
        let subjects = order.into_iter().take(MOST_LOOKS).map(Subject::Symptom);
        subjects.map(|subject| Promise { subject, in_case: false, rate: f64::INFINITY }).collect()
    }
}

/// The question whether a symptom is seen, with how to recognise it.
fn is_it_seen<'k>(symptom: &Symptom) -> Said<'k> {
    Said::Now(format!("Is this seen: {}? {}", in_sentence(&symptom.title), symptom.description))
}

/// The best candidates so far by bits a minute.
pub(super) struct Ranking<'k> {
    most: usize,
    pub(super) items: Vec<Told<'k>>,
}

impl<'k> Ranking<'k> {
    pub(super) fn of(most: usize) -> Self {
        Self { most, items: Vec::with_capacity(most + 1) }
    }

    /// Computes a candidate that could be among the best, and takes it in if it is.
    pub(super) fn consider(
        &mut self,
        open: &Open<'_, 'k>,
        promise: &Promise<'k>,
        case: &mut Circumstances,
        spare: &mut Workspace,
        most: Counted,
    ) {
        let is_full = self.items.len() == self.most;
        if is_full && self.items.last().is_some_and(|worst| promise.rate <= worst.rate()) {
            return;
        }
        let Some(told) = open.tell(promise, case, spare, most).filter(|told| told.bits >= LEAST_BITS) else { return };
        let place = self.items.partition_point(|other| other.rate() >= told.rate());
        self.items.insert(place, told);
        self.items.truncate(self.most);
    }
}
