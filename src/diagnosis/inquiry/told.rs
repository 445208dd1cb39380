//! What an open candidate tells: its expected information.

use super::open::{Open, Promise, Subject, rate};
use crate::inference::{
    Findings, MAX_JOINT_CAUSES, MAX_READING_CAUSES, Observation, Reading as Outcomes, Workspace, look_for,
};
use crate::knowledge::Circumstances;

/// Most causes of which the joint posterior is taken; it doubles with each.
#[derive(Clone, Copy)]
pub(super) struct Counted {
    /// For a reading or fact whose outcomes are made in the case.
    pub(super) of_input: usize,
    /// For a symptom.
    pub(super) of_symptom: usize,
}

/// Causes and present symptoms that are counted together at most: the work doubles with each. Chosen so that the widest
/// question takes about a million steps.
const MOST_DOUBLINGS: usize = 20;

/// Fewest causes that are counted.
const FEWEST: usize = 4;

impl Counted {
    /// As exact as the inference is, up to seven present or uncertain symptoms; beyond, fewer causes are counted.
    pub(super) fn thorough(findings: &Findings) -> Self {
        let seen = findings.observations().iter().filter(|(_, seen)| *seen != Observation::Absent).count();
        let most = MOST_DOUBLINGS.saturating_sub(seen).max(FEWEST);
        Self { of_input: most.min(MAX_READING_CAUSES), of_symptom: most.min(MAX_JOINT_CAUSES) }
    }
}

/// Weights, log10, a region, for each cause.
pub(super) type Weights = Vec<(usize, Vec<f64>)>;

/// A candidate with its information in a case.
pub(super) struct Told<'k> {
    pub(super) subject: Subject<'k>,
    /// Mutual information with the causes asked about, bits.
    pub(super) bits: f64,
    /// Whether every cause that it bears on was counted.
    pub(super) exact: bool,
    /// What holds in this case, where it is not what the candidate has in store.
    in_case: Option<Weights>,
    outcomes: Option<Outcomes>,
    /// P(seen | findings) of a symptom.
    pub(super) seen: Option<f64>,
}

impl<'k> Told<'k> {
    pub(super) fn rate(&self) -> f64 {
        rate(self.bits, self.subject.minutes())
    }

    /// Weights of a reading or fact; none of a symptom.
    pub(super) fn weights(&self) -> &[(usize, Vec<f64>)] {
        match (&self.in_case, self.subject) {
            (Some(weights), _) => weights,
            (None, Subject::Input(candidate)) => &candidate.weights,
            (None, Subject::Symptom(_)) => &[],
        }
    }

    /// Its outcomes as the inference takes them; none of a symptom.
    pub(super) fn outcomes(&self) -> Option<&Outcomes> {
        match (&self.outcomes, self.subject) {
            (Some(outcomes), _) => Some(outcomes),
            (None, Subject::Input(candidate)) => candidate.outcomes.as_ref().map(|(outcomes, _)| outcomes),
            (None, Subject::Symptom(_)) => None,
        }
    }
}

impl<'k> Open<'_, 'k> {
    /// What a candidate tells; `None` where the inference takes one symptom more than it can.
    pub(super) fn tell(
        &self,
        promise: &Promise<'k>,
        case: &mut Circumstances,
        spare: &mut Workspace,
        most: Counted,
    ) -> Option<Told<'k>> {
        match promise.subject {
            Subject::Symptom(symptom) => self.tell_symptom(symptom, spare, most),
            Subject::Input(candidate) => {
                let in_case = promise.in_case.then(|| candidate.weights_in(self.knowledge, self.view, case));
                let mut told =
                    Told { subject: promise.subject, bits: 0.0, exact: true, in_case, outcomes: None, seen: None };
                if told.in_case.is_some() || candidate.outcomes.is_none() || candidate.weights.len() > most.of_input {
                    let counted = self.most_moved(told.weights(), most.of_input);
                    told.exact = counted.len() == told.weights().len();
                    told.outcomes = Some(Outcomes::new(&candidate.usual, &counted).ok()?);
                }
                told.bits = self.information(told.outcomes()?)?;
                Some(told)
            }
        }
    }

    fn tell_symptom(&self, symptom: usize, spare: &mut Workspace, most: Counted) -> Option<Told<'k>> {
        let mut causes = self.shown_by(symptom);
        let exact = causes.len() <= most.of_symptom;
        causes.truncate(most.of_symptom);
        let look = look_for(&self.model.network, self.findings, symptom, spare).ok()?;
        let bits = look.information(&causes).ok()?;
        let seen = Some(look.probability());
        Some(Told { subject: Subject::Symptom(symptom), bits, exact, in_case: None, outcomes: None, seen })
    }

    /// Causes asked about that show a symptom, the least certain first.
    pub(super) fn shown_by(&self, symptom: usize) -> Vec<usize> {
        let mut causes: Vec<usize> =
            self.model.network.causes_of(symptom).filter(|cause| self.asked_about(*cause)).collect();
        causes.sort_by(|a, b| self.variance(*b).total_cmp(&self.variance(*a)));
        causes
    }

    /// Information about those causes of a reading that are asked about.
    fn information(&self, outcomes: &Outcomes) -> Option<f64> {
        let asked: Vec<usize> = outcomes.causes().iter().copied().filter(|cause| self.asked_about(*cause)).collect();
        if asked.len() == outcomes.causes().len() {
            return outcomes.information(self.posterior).ok();
        }
        // What is not asked about only blurs the reading: its joint state with the others is averaged over.
        if asked.is_empty() { Some(0.0) } else { outcomes.information_about(self.posterior, &asked).ok() }
    }

    /// The causes that an input can move most, those asked about before the others.
    fn most_moved(&self, weights: &[(usize, Vec<f64>)], most: usize) -> Weights {
        if weights.len() <= most {
            return weights.to_vec();
        }
        let rank = |weight: &(usize, Vec<f64>)| (self.asked_about(weight.0), self.leverage(weight));
        let mut order: Vec<_> = weights.iter().map(|weight| (rank(weight), weight)).collect();
        order.sort_by(|(a, _), (b, _)| b.0.cmp(&a.0).then(b.1.total_cmp(&a.1)));
        order.into_iter().take(most).map(|(_, weight)| weight.clone()).collect()
    }

    /// The causes asked about that a candidate moves most.
    pub(super) fn tells_apart(&self, told: &Told<'_>, most: usize) -> Vec<&'k str> {
        let mut moved: Vec<(f64, usize)> = match told.subject {
            Subject::Symptom(symptom) => {
                self.shown_by(symptom).into_iter().map(|cause| (self.variance(cause), cause)).collect()
            }
            Subject::Input(_) => {
                let asked = told.weights().iter().filter(|(cause, _)| self.asked_about(*cause));
                asked.map(|weight| (self.leverage(weight), weight.0)).collect()
            }
        };
        moved.sort_by(|(a, _), (b, _)| b.total_cmp(a));
        moved.into_iter().take(most).map(|(_, cause)| self.cause_id(cause)).collect()
    }

    /// How far a cause can be moved: its variance times the spread of the weights.
    fn leverage(&self, (position, regions): &(usize, Vec<f64>)) -> f64 {
        let spread = regions.iter().copied().fold(f64::NEG_INFINITY, f64::max)
            - regions.iter().copied().fold(f64::INFINITY, f64::min);
        self.variance(*position) * spread
    }
}
