//! The plan: the best inquiry, and after each of its outcomes the next one, until there is a reason to stop.

use super::super::model::Model;
use super::super::remarks::percent;
use super::answer::{Plan, PlanStep, PlannedOutcome, Stop, StopReason};
use super::next::Ranking;
use super::open::{Open, Promise};
use super::standing::{leaders, lifted, probability};
use super::told::{Counted, Told};
use crate::case::InquiryOptions;
use crate::inference::{Findings, FindingsFault, Posterior, Standing, Workspace, posterior};
use crate::knowledge::{Circumstances, Knowledge, ProductView};

/// Probability from which a cause is more probable than not.
const EVEN: f64 = 0.5;

/// What plans are made from.
#[derive(Clone, Copy)]
pub(super) struct Planner<'a, 'k> {
    pub(super) knowledge: &'k Knowledge,
    pub(super) view: &'k ProductView,
    pub(super) model: &'k Model,
    pub(super) options: &'a InquiryOptions,
}

/// A point that a plan has come to.
struct Point {
    circumstances: Circumstances,
    findings: Findings,
    minutes: f64,
    inquiries: u8,
}

/// A step with what it leads to, on the average.
struct Branch<'k> {
    step: PlanStep<'k>,
    expected_minutes: f64,
    probability_certain: f64,
}

/// What to do at a point.
enum Choice<'k> {
    Stop(StopReason),
    FindOut(Told<'k>),
}

impl<'k> Planner<'_, 'k> {
    /// The plan of a case.
    pub(super) fn plan(&self, circumstances: Circumstances, findings: Findings) -> Result<Plan<'k>, FindingsFault> {
        let start = self.branch(Point { circumstances, findings, minutes: 0.0, inquiries: 0 })?;
        let Branch { step, expected_minutes, probability_certain } = start;
        Ok(Plan { expected_minutes, probability_certain, start: step })
    }

    fn branch(&self, mut point: Point) -> Result<Branch<'k>, FindingsFault> {
        let (mut workspace, mut spare) = (Workspace::new(), Workspace::new());
        let posterior = posterior(&self.model.network, &point.findings, &mut workspace)?;
        let open = Open::new(self.knowledge, self.view, self.model, &posterior, &point.findings);
        let leader = open.probable_causes(1).into_iter().next();
        match self.choose(&open, &posterior, &mut point.circumstances, (point.minutes, point.inquiries), &mut spare) {
            Choice::Stop(reason) => {
                let told = leader.as_ref().map(|leader| format!("{}, {} %", leader.title, percent(leader.probability)));
                let stop = Some(Stop { reason, text: in_words(reason, told.as_deref()) });
                let probability_certain = if reason == StopReason::Certain { 1.0 } else { 0.0 };
                let step = PlanStep { leader, stop, find_out: None, outcomes: Vec::new() };
                Ok(Branch { step, expected_minutes: 0.0, probability_certain })
            }
            Choice::FindOut(told) => {
                let minutes = told.subject.minutes();
                let (mut expected_minutes, mut probability_certain) = (minutes, 0.0);
                let mut outcomes = Vec::new();
                for prospect in open.prospects(&told) {
                    let then = self.branch(Point {
                        circumstances: prospect.circumstances(&point.circumstances),
                        findings: open.findings_after(&prospect),
                        minutes: point.minutes + minutes,
                        inquiries: point.inquiries + 1,
                    })?;
                    expected_minutes += prospect.probability * then.expected_minutes;
                    probability_certain += prospect.probability * then.probability_certain;
                    let (outcome, probability) = (prospect.text, prospect.probability);
                    outcomes.push(PlannedOutcome { outcome, probability, then: then.step });
                }
                let step = PlanStep { leader, stop: None, find_out: open.sought(&told), outcomes };
                Ok(Branch { step, expected_minutes, probability_certain })
            }
        }
    }

    fn choose(
        &self,
        open: &Open<'_, 'k>,
        posterior: &Posterior<'_>,
        case: &mut Circumstances,
        (minutes, inquiries): (f64, u8),
        spare: &mut Workspace,
    ) -> Choice<'k> {
        if let Some(reason) = self.settled(posterior.standing()) {
            return Choice::Stop(reason);
        }
        if inquiries >= self.options.depth {
            return Choice::Stop(StopReason::DepthReached);
        }
        let left = self.options.most_minutes.map_or(f64::INFINITY, |most| most - minutes);
        let least = self.options.least_bits_per_minute;
        let promises: Vec<Promise<'k>> = open.inputs(case).into_iter().chain(open.symptoms()).collect();
        let most = Counted::thorough(open.findings);
        let mut best = |fits: &dyn Fn(f64) -> bool| {
            let mut ranking = Ranking::of(1);
            for promise in promises.iter().filter(|promise| promise.rate >= least && fits(promise.subject.minutes())) {
                ranking.consider(open, promise, case, spare, most);
            }
            ranking.items.pop().filter(|told| told.rate() >= least)
        };
        if let Some(told) = best(&|minutes| minutes <= left) {
            return Choice::FindOut(told);
        }
        let too_long = best(&|minutes| minutes > left);
        Choice::Stop(if too_long.is_some() { StopReason::MinutesUsedUp } else { StopReason::NotWorthTheEffort })
    }

    /// Whether the causes are told apart.
    fn settled(&self, standing: Standing<'_>) -> Option<StopReason> {
        let (leader, probable) = leaders(self.view, standing, 1).into_iter().next()?;
        if probable >= self.options.certain_enough {
            return Some(StopReason::Certain);
        }
        let rivals = (0..self.view.causes.len()).filter(|cause| *cause != leader);
        let doubt: f64 =
            rivals.filter(|rival| lifted(self.view, standing, *rival)).map(|rival| probability(standing, rival)).sum();
        (probable > EVEN && doubt <= 1.0 - self.options.certain_enough).then_some(StopReason::RivalsExcluded)
    }
}

fn in_words(reason: StopReason, leader: Option<&str>) -> String {
    let leader = leader.unwrap_or("no cause");
    match reason {
        StopReason::Certain => format!("certain enough: {leader}"),
        StopReason::RivalsExcluded => format!("the rivals are excluded; what is left is {leader}"),
        StopReason::NotWorthTheEffort => format!("nothing that is left is worth its effort; the leader is {leader}"),
        StopReason::MinutesUsedUp => {
            format!("what is left takes more minutes than there are; the leader is {leader}")
        }
        StopReason::DepthReached => format!("ask again with what was found; the leader is {leader}"),
    }
}
