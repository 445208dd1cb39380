//! The open case: what it leaves to find out, and how much that can tell at most.

use super::super::model::Model;
use super::super::regions::Candidate;
use super::standing::anything_to_explain;
use crate::inference::{Findings, Posterior, Standing};
use crate::knowledge::{Circumstances, Knowledge, ProductView};

/// The open case.
#[derive(Clone, Copy)]
pub(in crate::diagnosis) struct Open<'a, 'k> {
    pub(super) knowledge: &'k Knowledge,
    pub(super) view: &'k ProductView,
    pub(super) model: &'k Model,
    pub(super) posterior: &'a Posterior<'a>,
    pub(super) findings: &'a Findings,
    /// Whether any symptom that was seen has a cause.
    anything_to_explain: bool,
}

/// What could be found out.
#[derive(Clone, Copy)]
pub(super) enum Subject<'k> {
    /// A reading or a fact.
    Input(&'k Candidate),
    /// A symptom, by its position in the view.
    Symptom(usize),
}

/// An open candidate and the most that it can tell.
pub(super) struct Promise<'k> {
    pub(super) subject: Subject<'k>,
    /// Whether the case knows something on which the weights depend.
    pub(super) in_case: bool,
    /// Bound on the information, bits a minute.
    pub(super) rate: f64,
}

/// A smaller change of a probability is rounding.
const LEAST_CHANGE: f64 = 1e-9;

/// Minutes to look at a symptom (common practice).
const LOOK_MINUTES: f64 = 2.0;

impl Subject<'_> {
    /// Minutes to find it out.
    pub(super) fn minutes(self) -> f64 {
        match self {
            Self::Input(candidate) => candidate.minutes,
            Self::Symptom(_) => LOOK_MINUTES,
        }
    }
}

impl<'a, 'k> Open<'a, 'k> {
    pub(in crate::diagnosis) fn new(
        knowledge: &'k Knowledge,
        view: &'k ProductView,
        model: &'k Model,
        posterior: &'a Posterior<'a>,
        findings: &'a Findings,
    ) -> Self {
        let anything_to_explain = anything_to_explain(view, posterior.standing());
        Self { knowledge, view, model, posterior, findings, anything_to_explain }
    }

    /// Whether a cause is asked about: one that explains what was seen, if anything was. Whether a fault is at work that
    /// shows nothing of the complaint is no question of this case.
    pub(super) fn asked_about(&self, cause: usize) -> bool {
        !self.anything_to_explain || self.posterior.explains(cause)
    }

    /// Readings and facts that the case leaves open, each with a bound on its information; best bound a minute first.
    pub(super) fn inputs(&self, case: &Circumstances) -> Vec<Promise<'k>> {
        let open = self.model.candidates.iter().filter(|candidate| !case.knows(candidate.input));
        ranked(open.map(|candidate| self.promise(candidate, case)).collect())
    }

    fn promise(&self, candidate: &'k Candidate, case: &Circumstances) -> Promise<'k> {
        let in_case = candidate.partners.iter().any(|partner| case.knows(*partner));
        let bits = match candidate.outcomes.as_ref().filter(|_| !in_case) {
            Some((_, bound)) => bound.bits_about(self.posterior, |cause| self.asked_about(cause)),
            None => self.entropies(candidate.causes.iter().copied()),
        };
        Promise { subject: Subject::Input(candidate), in_case, rate: rate(bits, candidate.minutes) }
    }

    /// Symptoms that nobody looked at, the same way.
    pub(super) fn symptoms(&self) -> Vec<Promise<'k>> {
        let promise = |symptom: usize| {
            let entropies = self.entropies(self.model.network.causes_of(symptom));
            let bits = entropies.min(self.most_of_symptom(symptom));
            Promise { subject: Subject::Symptom(symptom), in_case: false, rate: rate(bits, LOOK_MINUTES) }
        };
        ranked(self.unseen().map(promise).collect())
    }

    /// Positions of the symptoms that nobody looked at.
    pub(super) fn unseen(&self) -> impl Iterator<Item = usize> {
        let observed = self.findings.observations();
        (0..self.view.symptoms.len()).filter(move |symptom| observed.iter().all(|(own, _)| own != symptom))
    }

    /// A bound on the entropy of a symptom: it is no more probable than its leak and all its causes together (union
    /// bound).
    fn most_of_symptom(&self, symptom: usize) -> f64 {
        let leak = self.view.symptoms.get(symptom).map_or(1.0, |key| self.knowledge.declared.symptoms[*key].leak);
        let links = self.view.links.iter().filter(|link| link.symptom == symptom);
        let shown = |cause: usize| self.posterior.odds().get(cause).map_or(1.0, |odds| odds.probability());
        let most = leak + links.map(|link| link.strength * shown(link.cause)).sum::<f64>();
        if most >= 0.5 { 1.0 } else { -(most * most.log2() + (1.0 - most) * (1.0 - most).log2()) }
    }

    /// Nothing tells more of some causes than their entropies come to.
    fn entropies(&self, causes: impl Iterator<Item = usize>) -> f64 {
        let asked = causes.filter(|cause| self.asked_about(*cause));
        asked.filter_map(|cause| self.posterior.odds().get(cause)).map(|odds| odds.entropy()).sum()
    }

    pub(super) fn variance(&self, position: usize) -> f64 {
        self.posterior.odds().get(position).map_or(0.0, |odds| odds.probability() * odds.complement())
    }

    /// The causes asked about that change most: position, probability before and after.
    pub(super) fn most_changed(&self, after: Standing<'_>, most: usize) -> Vec<(usize, f64, f64)> {
        let mut changed: Vec<(usize, f64, f64)> = Vec::with_capacity(most + 1);
        let change = |(_, before, after): &(usize, f64, f64)| (after - before).abs();
        for (cause, (before, after)) in self.posterior.odds().iter().zip(after.odds()).enumerate() {
            let own = (cause, before.probability(), after.probability());
            let enters = changed.len() < most || changed.last().is_some_and(|least| change(&own) > change(least));
            if enters && change(&own) > LEAST_CHANGE && self.asked_about(cause) {
                let place = changed.partition_point(|other| change(other) >= change(&own));
                changed.insert(place, own);
                changed.truncate(most);
            }
        }
        changed
    }

    pub(super) fn cause_id(&self, position: usize) -> &'k str {
        self.view.causes.get(position).map_or("", |key| &self.knowledge.declared.causes[*key].id)
    }
}

/// Best bound first: the poor ones need not be computed.
fn ranked(mut promises: Vec<Promise<'_>>) -> Vec<Promise<'_>> {
    promises.sort_by(|a, b| b.rate.total_cmp(&a.rate));
    promises
}

/// Bits a minute; a minute is the least effort that counts.
pub(super) fn rate(bits: f64, minutes: f64) -> f64 {
    bits / minutes.max(1.0)
}
