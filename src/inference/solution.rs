//! A solved case: the conditioned network and its cover table, ready for joint probabilities.
#![allow(
    clippy::indexing_slicing,
    reason = "causes are checked by the public functions; configurations are below 2^(number of causes)"
)]

use super::conditioned::Conditioned;
use super::cover::Cover;
use super::marginal::{Buffer, Explained, Marginal, Recredited};
use super::odds::Odds;

/// Where a subtraction leaves less than this share, the table is built again without the causes
/// instead of dividing them out. Chosen so that at least eleven significant digits are left.
const LEAST_SHARE: f64 = 1e-4;

/// What was left after taking causes out of the table has too few digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Cancelled;

/// A case whose cover table is built.
#[derive(Debug, Clone, Copy)]
pub(super) struct Solution<'a> {
    pub(super) case: &'a Conditioned,
    pub(super) cover: &'a Cover,
}

impl<'a> Solution<'a> {
    /// Unnormalised probabilities of the configurations of some distinct causes: bit `k` of the
    /// index of `masses` says whether `causes[k]` is present.
    pub(super) fn joint(&self, causes: &[usize], recredited: Recredited, masses: &mut [f64]) {
        let mut buffer = Buffer::default();
        self.joint_in(&mut buffer, causes, recredited, masses);
    }

    fn joint_in(&self, buffer: &mut Buffer, causes: &[usize], recredited: Recredited, masses: &mut [f64]) {
        let own = self.dimensions_of(causes, recredited);
        let mut marginal = Marginal::of(self.case, self.cover, own, buffer);
        let odds = |cause: usize| self.odds(cause);
        if take_out(&mut marginal, causes, odds, recredited).is_ok() {
            return expand(&mut marginal, causes, odds, recredited, masses);
        }
        let mut others = Cover::default();
        others.build(self.case, causes);
        let mut marginal = Marginal::of(self.case, &others, own, buffer);
        expand(&mut marginal, causes, odds, recredited, masses);
    }

    /// Odds of a cause before the symptoms that have a dimension.
    pub(super) fn odds(&self, cause: usize) -> Odds {
        self.case.odds()[cause]
    }

    /// Unnormalised odds of one cause.
    pub(super) fn odds_of(&self, buffer: &mut Buffer, cause: usize, recredited: Recredited) -> Odds {
        if let Some(odds) = self.odds_by_one_symptom(cause).filter(|_| recredited.is_none()) {
            return odds;
        }
        let mut masses = [0.0; 2];
        self.joint_in(buffer, &[cause], recredited, &mut masses);
        let [absent, present] = masses;
        Odds { present, absent }
    }

    /// The same for the commonest cause, linked to a single symptom, written out.
    fn odds_by_one_symptom(&self, cause: usize) -> Option<Odds> {
        let pattern = self.case.pattern(cause);
        if !pattern.is_power_of_two() || pattern & self.case.tolerant() != 0 {
            return None;
        }
        let (Odds { present, absent }, strength) = (self.odds(cause), self.case.strengths(cause)[0]);
        let (before, tolerant) = (self.cover.total(), self.case.tolerant());
        let unexplained = self.cover.all() & !pattern & !tolerant;
        let unexplained = self.cover.entry(unexplained, tolerant) / (absent + present * (1.0 - strength));
        let explained = before - present * strength * unexplained;
        let odds = Odds { present: present * (explained + strength * unexplained), absent: absent * explained };
        (explained > LEAST_SHARE * before).then_some(odds)
    }

    fn dimensions_of(&self, causes: &[usize], recredited: Recredited) -> u32 {
        let recredited = recredited.map_or(0, |(dimension, _)| 1 << dimension);
        causes.iter().fold(recredited, |own, &cause| own | self.case.pattern(cause))
    }
}

/// Takes distinct causes out of a marginal table, unless digits would be lost.
///
/// An entry is what the causes leave unexplained, times the rest of the table, plus what they
/// explain. Rounding is relative to that sum, so the share of its first part says how many digits
/// the rest of the table keeps.
pub(super) fn take_out(
    marginal: &mut Marginal<'_>,
    causes: &[usize],
    odds: impl Fn(usize) -> Odds,
    recredited: Recredited,
) -> Result<(), Cancelled> {
    let before = marginal.total(recredited);
    let mut kept = 1.0;
    for &cause in causes {
        marginal.remove(cause, odds(cause));
        kept *= marginal.least_kept(cause, odds(cause), recredited);
    }
    let after = marginal.total(recredited);
    if kept * after > LEAST_SHARE * before { Ok(()) } else { Err(Cancelled) }
}

/// Probabilities of the configurations of causes that are not in the marginal table.
fn expand(
    marginal: &mut Marginal<'_>,
    causes: &[usize],
    odds: impl Fn(usize) -> Odds + Copy,
    recredited: Recredited,
    masses: &mut [f64],
) {
    expand_given(marginal, causes, odds, recredited, masses, (1.0, Explained::by_none()));
}

/// The same when other causes, of a prior probability, explain some symptoms: the last cause halves `masses`.
fn expand_given(
    marginal: &mut Marginal<'_>,
    causes: &[usize],
    odds: impl Fn(usize) -> Odds + Copy,
    recredited: Recredited,
    masses: &mut [f64],
    (prior, explained): (f64, Explained),
) {
    let Some((&last, causes)) = causes.split_last() else {
        masses[0] = prior * marginal.total_explained(&explained, recredited);
        return;
    };
    let (without, with) = masses.split_at_mut(1 << causes.len());
    let Odds { present, absent } = odds(last);
    expand_given(marginal, causes, odds, recredited, without, (prior * absent, explained));
    let explained = explained.and_by(marginal.case(), last);
    expand_given(marginal, causes, odds, recredited, with, (prior * present, explained));
}

/// Odds of one cause that is not in the marginal table.
pub(super) fn expand_one(marginal: &mut Marginal<'_>, cause: usize, odds: Odds, recredited: Recredited) -> Odds {
    Odds {
        present: odds.present * marginal.total_with(std::iter::once(cause), recredited),
        absent: odds.absent * marginal.total(recredited),
    }
}
