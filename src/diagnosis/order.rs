//! In which order to act: what takes a cause away soonest for its effort, cost and waste.

use super::advice::Advising;
use super::answer::{ActionOrder, AfterActions, BroughtSymptom, MendedCause, OrderedAction, RankedCause};
use super::displaced::tell_displaced;
use super::inquiry::lifted;
use crate::case::Seen;
use crate::inference::{MAX_JOINT_CAUSES, Posterior, Repair, Step, order_repairs, takes_away_some};
use crate::knowledge::{Action, Key, Prescription, Symptom};

/// Most actions in the order.
const MOST_ACTIONS: usize = 8;

/// Most places whose outcome is told.
const MOST_TOLD: usize = 3;

/// A less probable cause is not acted on.
const LEAST_PROBABILITY: f64 = 0.02;

/// An action that takes no cause away more probably than this is no first thing to try (common practice)...
const LEAST_MENDED: f64 = 0.1;

/// ...unless all are as doubtful: then those count that mend this share of what the best one does.
const SHARE_OF_BEST: f64 = 0.5;

/// A harmful cause that is so probable is acted on before all others (common practice).
const LEAST_HARMFUL: f64 = 0.1;

/// The joint posterior takes 2^(causes + symptoms seen) steps; no more than 2 to this power are spent on it.
const MOST_WORK: usize = 11;

/// Fewest causes that are ordered by, however many symptoms are seen.
const FEWEST_CAUSES: usize = 3;

/// An action that can bring a symptom that is seen already counts as if it took so many times as long (common practice).
const BRINGS_WHAT_IS_SEEN: f64 = 2.0;

/// Least minutes that an action takes.
const LEAST_MINUTES: f64 = 1.0;

/// What the order is made from.
pub(super) struct Ordering<'a, 'k> {
    pub(super) advising: Advising<'a, 'k>,
    pub(super) posterior: &'a Posterior<'a>,
    pub(super) symptoms: &'a [Seen],
}

/// An action that could be done.
struct Candidate<'k> {
    action: Key<Action>,
    instead_of: Option<&'k str>,
    repair: Repair,
}

impl<'k> Ordering<'_, 'k> {
    /// The order, with the causes most probable first in `ranking`.
    pub(super) fn order(&self, ranking: &[usize], causes: &[RankedCause<'k>]) -> ActionOrder<'k> {
        let at_issue = self.at_issue(ranking);
        let seen = self.symptoms.iter().filter(|seen| seen.certainty > 0.0).count();
        let most = MOST_WORK.saturating_sub(seen).clamp(FEWEST_CAUSES, MAX_JOINT_CAUSES);
        let weighed = at_issue.get(..most).unwrap_or(&at_issue);
        // The causes are known, distinct and few: the joint posterior cannot fail.
        let Ok(joint) = self.posterior.joint(weighed) else { return ActionOrder::default() };
        let (mut candidates, others): (Vec<_>, Vec<_>) =
            self.candidates(weighed).into_iter().partition(|candidate| self.is_at_once(candidate, weighed));
        let at_once = candidates.len();
        candidates.extend(worth_trying(others, weighed.len(), &joint));
        let repairs: Vec<Repair> = candidates.iter().map(|candidate| candidate.repair.clone()).collect();
        let steps = order_repairs(&joint, &repairs, at_once, MOST_ACTIONS);
        let ordered = steps.iter().filter_map(|step| {
            let candidate = candidates.get(step.repair)?;
            Some(self.ordered(candidate, step, weighed, &joint, causes))
        });
        let mut actions: Vec<OrderedAction<'k>> = ordered.collect();
        tell_displaced(&mut actions, causes, self.advising.declared());
        let after = steps.iter().take(MOST_TOLD).enumerate().map(|(place, step)| AfterActions {
            actions: place + 1,
            one_cause_gone: step.some,
            all_causes_gone: step.all,
        });
        ActionOrder { actions, after: after.collect(), causes_left_out: at_issue.len() - weighed.len() }
    }

    /// Causes that explain what was seen; where nothing was, those that the findings speak for, or all.
    fn at_issue(&self, ranking: &[usize]) -> Vec<usize> {
        let explains = |cause: usize| self.posterior.explains(cause);
        let is_lifted = |cause: usize| lifted(self.advising.view, self.posterior.standing(), cause);
        let (anything_seen, anything_found) =
            (ranking.iter().any(|cause| explains(*cause)), ranking.iter().any(|cause| is_lifted(*cause)));
        let counts = |cause: usize| match (anything_seen, anything_found) {
            (true, _) => explains(cause),
            (false, true) => is_lifted(cause),
            (false, false) => true,
        };
        let probable = ranking.iter().copied().take_while(|cause| self.probability(*cause) >= LEAST_PROBABILITY);
        probable.filter(|cause| counts(*cause) && !self.is_excluded(*cause)).collect()
    }

    /// Whether what was read excludes a cause: to act on it is to act against the reading.
    fn is_excluded(&self, position: usize) -> bool {
        self.advising.view.causes.get(position).is_some_and(|key| self.advising.is_excluded(*key))
    }

    /// Whether an action keeps harm from people and a cause that it is for is probable.
    fn is_at_once(&self, candidate: &Candidate<'_>, weighed: &[usize]) -> bool {
        let causes = candidate.repair.mends.iter().filter_map(|(place, _)| weighed.get(*place));
        let mut probable = causes.map(|position| self.probability(*position));
        self.advising.declared().actions[candidate.action].at_once && probable.any(|own| own >= LEAST_HARMFUL)
    }

    fn probability(&self, cause: usize) -> f64 {
        self.posterior.odds().get(cause).map_or(0.0, |odds| odds.probability())
    }

    /// Everything that the requirements allow against these causes, each action once.
    fn candidates(&self, causes: &[usize]) -> Vec<Candidate<'k>> {
        let mut candidates = Vec::new();
        for (place, position) in causes.iter().enumerate() {
            let Some(key) = self.advising.view.causes.get(*position) else { continue };
            let declared = self.advising.declared();
            for prescription in &declared.causes[*key].prescriptions {
                let action = &declared.actions[prescription.action];
                if self.advising.reason_against(action).is_none() {
                    self.enter(&mut candidates, prescription.action, None, place, prescription);
                    continue;
                }
                for other in &action.instead {
                    if self.advising.reason_against(&declared.actions[*other]).is_none() {
                        self.enter(&mut candidates, *other, Some(&action.id), place, prescription);
                    }
                }
            }
        }
        candidates
    }

    /// Enters what a prescription does, itself or by a replacement, which is taken to work as often.
    fn enter(
        &self,
        candidates: &mut Vec<Candidate<'k>>,
        action: Key<Action>,
        instead_of: Option<&'k str>,
        place: usize,
        prescription: &Prescription,
    ) {
        let works = prescription.works;
        let Some(known) = candidates.iter_mut().find(|candidate| candidate.action == action) else {
            let repair = Repair { mends: vec![(place, works)], cost: self.cost(action) };
            return candidates.push(Candidate { action, instead_of, repair });
        };
        if instead_of.is_none() {
            known.instead_of = None;
        }
        match known.repair.mends.iter_mut().find(|(own, _)| *own == place) {
            Some((_, own)) => *own = own.max(works),
            None => known.repair.mends.push((place, works)),
        }
    }

    fn cost(&self, action: Key<Action>) -> f64 {
        let action = &self.advising.declared().actions[action];
        let brings = action.may_show.iter().any(|key| self.is_seen(*key));
        action.expense_minutes().max(LEAST_MINUTES) * if brings { BRINGS_WHAT_IS_SEEN } else { 1.0 }
    }

    fn is_seen(&self, symptom: Key<Symptom>) -> bool {
        self.symptoms.iter().any(|seen| seen.symptom == symptom && seen.certainty > 0.5)
    }

    fn ordered(
        &self,
        candidate: &Candidate<'k>,
        step: &Step,
        weighed: &[usize],
        joint: &[f64],
        causes: &[RankedCause<'k>],
    ) -> OrderedAction<'k> {
        let declared = self.advising.declared();
        let action = &declared.actions[candidate.action];
        let mut mended = Vec::with_capacity(candidate.repair.mends.len());
        for (place, works) in &candidate.repair.mends {
            if let Some(position) = weighed.get(*place)
                && let Some(key) = self.advising.view.causes.get(*position)
            {
                let cause = &declared.causes[*key].id;
                mended.push(MendedCause { cause, probability: self.probability(*position), works: *works });
            }
        }
        let told = |cause: &&RankedCause<'k>| {
            cause.actions.iter().any(|advice| advice.action == action.id && !advice.quantities.is_empty())
        };
        let may_bring = self.advising.may_bring(action);
        let may_bring = may_bring
            .map(|key| BroughtSymptom { symptom: &declared.symptoms[key].id, already_seen: self.is_seen(key) });
        OrderedAction {
            action: &action.id,
            title: &action.title,
            instead_of: candidate.instead_of,
            mends: candidate.mends(weighed.len(), joint),
            adds: step.adds,
            causes: mended,
            quantities_under: causes.iter().find(told).map(|cause| cause.cause),
            effort_minutes: action.effort_minutes,
            cost: action.cost.as_ref().map(|cost| cost.word.as_str()),
            waste_batches: action.waste_batches,
            expense_minutes: action.expense_minutes(),
            benefit_per_hour: step.adds / candidate.repair.cost * 60.0,
            may_bring: may_bring.collect(),
            at_once: action.at_once,
            in_place_of: Vec::new(),
        }
    }
}

impl Candidate<'_> {
    /// Probability that it takes away at least one of so many causes.
    fn mends(&self, causes: usize, joint: &[f64]) -> f64 {
        let mut left = vec![1.0; causes];
        for (place, works) in &self.repair.mends {
            if let Some(left) = left.get_mut(*place) {
                *left = 1.0 - works;
            }
        }
        takes_away_some(joint, &left)
    }
}

/// The candidates that are probable enough to be tried at all.
fn worth_trying<'k>(candidates: Vec<Candidate<'k>>, causes: usize, joint: &[f64]) -> Vec<Candidate<'k>> {
    let mends: Vec<f64> = candidates.iter().map(|candidate| candidate.mends(causes, joint)).collect();
    let best = mends.iter().copied().fold(0.0, f64::max);
    let least = LEAST_MENDED.min(SHARE_OF_BEST * best);
    candidates.into_iter().zip(mends).filter(|(_, mends)| *mends >= least).map(|(candidate, _)| candidate).collect()
}
