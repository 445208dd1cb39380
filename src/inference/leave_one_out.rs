//! What each finding does to each cause: log-odds with it minus log-odds without it.

use super::conditioned::Change;
use super::dimension::Credit;
use super::faults::FindingsFault;
use super::marginal::{Buffer, Marginal};
use super::odds::Odds;
use super::posterior::{Posterior, Workspace, check_known};
use super::solution::{Cancelled, LEAST_SHARE, expand_one, take_out};

/// Up to this many table dimensions, one marginal table serves all causes asked for.
const SHARED_DIMENSIONS: usize = 6;

/// The change of log-odds, in decibans, that each finding makes to each of some causes.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct LeaveOneOut {
    /// For each observation, in the order of
    /// [`Findings::observations`](super::Findings::observations): what it adds to each cause asked
    /// for; negative when it speaks against the cause.
    pub observations: Vec<Vec<f64>>,
    /// The same for each reading, in the order of [`Findings::weigh`](super::Findings::weigh).
    pub readings: Vec<Vec<f64>>,
}

impl Posterior<'_> {
    /// Leaves out every finding in turn and compares the log-odds of `causes`. Exact: what the
    /// table of the case cannot tell is inferred anew in `spare`.
    ///
    /// # Errors
    /// A cause that the network does not have.
    pub fn leave_one_out(&self, causes: &[usize], spare: &mut Workspace) -> Result<LeaveOneOut, FindingsFault> {
        check_known(self.network, causes)?;
        let with: Vec<f64> =
            causes.iter().filter_map(|&cause| self.odds().get(cause)).map(|odds| odds.decibans()).collect();
        let changes = |without: &[Odds]| -> Vec<f64> {
            let pairs = with.iter().zip(without);
            pairs.map(|(with, odds)| with - odds.decibans()).collect()
        };
        let mut without = Vec::with_capacity(causes.len());
        let mut left_out = LeaveOneOut::default();
        for place in 0..self.findings.observations().len() {
            self.without_observation(place, causes, spare, &mut without)?;
            left_out.observations.push(changes(&without));
        }
        for place in 0..self.findings.readings() {
            self.without_reading(place, causes, spare, &mut without)?;
            left_out.readings.push(changes(&without));
        }
        Ok(left_out)
    }

    /// A present symptom is left out by counting its two outcomes alike; any other observation is
    /// not in the table.
    fn without_observation(
        &self,
        place: usize,
        causes: &[usize],
        spare: &mut Workspace,
        without: &mut Vec<Odds>,
    ) -> Result<(), FindingsFault> {
        let case = self.solution.case;
        let symptom = self.findings.observations().get(place).map(|&(symptom, _)| symptom);
        let dimension = symptom.and_then(|symptom| case.dimension_of(symptom));
        match dimension.filter(|&dimension| case.tolerant() >> dimension & 1 == 0) {
            Some(dimension) => {
                let ignored = Some((dimension, Credit::IGNORED));
                let mut buffer = Buffer::default();
                without.clear();
                without.extend(causes.iter().map(|&cause| self.solution.odds_of(&mut buffer, cause, ignored)));
                Ok(())
            }
            None => self.again(Change::OmitObservation(place), causes, spare, without),
        }
    }

    fn without_reading(
        &self,
        place: usize,
        causes: &[usize],
        spare: &mut Workspace,
        without: &mut Vec<Odds>,
    ) -> Result<(), FindingsFault> {
        without.clear();
        let together = if self.solution.case.dimensions().len() <= SHARED_DIMENSIONS { causes.len() } else { 1 };
        let weighed = self.odds_without(place);
        let done = causes.chunks(together.max(1)).try_for_each(|causes| self.reweigh(&weighed, causes, without));
        match done {
            Ok(()) => Ok(()),
            Err(Cancelled) => self.again(Change::OmitReading(place), causes, spare, without),
        }
    }

    /// The causes a reading bears on, each with its odds before the symptoms and without the
    /// reading.
    fn odds_without(&self, reading: usize) -> Vec<(usize, Odds)> {
        let weights = self.findings.reading(reading).iter();
        weights.map(|&(cause, weight)| (cause, self.solution.case.odds_without(cause, weight))).collect()
    }

    /// Exchanges the odds of some causes in the table, then reads off the odds of the causes
    /// asked for.
    fn reweigh(&self, weighed: &[(usize, Odds)], causes: &[usize], without: &mut Vec<Odds>) -> Result<(), Cancelled> {
        let case = self.solution.case;
        let touched = weighed.iter().map(|&(cause, _)| cause).chain(causes.iter().copied());
        let own = touched.fold(0, |own, cause| own | case.pattern(cause));
        let (mut shared, mut single) = (Buffer::default(), Buffer::default());
        let mut marginal = Marginal::of(case, self.solution.cover, own, &mut shared);
        // What one subtraction after the other leaves counts together.
        let mut left = 1.0;
        for &(cause, odds) in weighed {
            left *= take_out(&mut marginal, &[cause], |cause| self.solution.odds(cause), None)?;
            marginal.add(cause, odds);
        }
        let odds = |cause: usize| match weighed.iter().find(|(other, _)| *other == cause) {
            Some(&(_, odds)) => odds,
            None => self.solution.odds(cause),
        };
        for &cause in causes {
            let mut marginal = marginal.narrowed(case.pattern(cause), &mut single);
            if left * take_out(&mut marginal, &[cause], odds, None)? <= LEAST_SHARE {
                return Err(Cancelled);
            }
            without.push(expand_one(&mut marginal, cause, odds(cause), None));
        }
        Ok(())
    }

    fn again(
        &self,
        change: Change,
        causes: &[usize],
        spare: &mut Workspace,
        without: &mut Vec<Odds>,
    ) -> Result<(), FindingsFault> {
        let solution = spare.solve(self.network, self.findings, change)?;
        let mut buffer = Buffer::default();
        without.clear();
        without.extend(causes.iter().map(|&cause| solution.odds_of(&mut buffer, cause, None)));
        Ok(())
    }
}
