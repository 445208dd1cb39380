//! A solved case: the conditioned network and its cover table, ready for joint probabilities.
#![allow(
    clippy::indexing_slicing,
    reason = "causes are checked by the public functions; configurations are below 2^(number of causes)"
)]

use super::conditioned::Conditioned;
use super::cover::Cover;
use super::dimension::Credit;
use super::grouped::next_subset;
use super::marginal::{Buffer, Explained, Marginal, Recredited};
use super::odds::Odds;

/// Where a subtraction leaves less than this share, the table is built again without the causes
/// instead of dividing them out. Chosen so that at least eleven significant digits are left.
pub(super) const LEAST_SHARE: f64 = 1e-4;

/// What was left after taking causes out of the table has too few digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Cancelled;

/// A case whose cover table is built.
#[derive(Debug, Clone, Copy)]
pub(super) struct Solution<'a> {
    pub(super) case: &'a Conditioned,
    /// Odds of every cause before the symptoms that have a dimension; those of the case, or revised.
    pub(super) odds: &'a [Odds],
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
            expand(&mut marginal, causes, odds, recredited, masses);
        } else {
            let mut others = Cover::default();
            others.build(self.case, self.odds, causes);
            let mut marginal = Marginal::of(self.case, &others, own, buffer);
            expand(&mut marginal, causes, odds, recredited, masses);
        }
        self.spread_over_unlinked(causes, masses);
    }

    /// The same for both outcomes of one dimension: seen absent, seen present.
    pub(super) fn joint_of_outcomes(
        &self,
        causes: &[usize],
        dimension: usize,
        absent: &mut [f64],
        present: &mut [f64],
    ) {
        let mut buffer = Buffer::default();
        let own = self.dimensions_of(causes, Some((dimension, Credit::PRESENT)));
        let mut marginal = Marginal::of(self.case, self.cover, own, &mut buffer);
        let (odds, outcomes) = (|cause: usize| self.odds(cause), [Credit::ABSENT, Credit::PRESENT]);
        let credits = outcomes.map(|credit| Some((dimension, credit)));
        if take_out_all(&mut marginal, causes, odds, &credits).is_err() {
            self.joint(causes, credits[0], absent);
            return self.joint(causes, credits[1], present);
        }
        expand_given(
            &mut marginal,
            causes,
            odds,
            0,
            (1.0, &Explained::by_none()),
            &mut |marginal, place, prior, explained| {
                let Odds { present: seen, absent: not_seen } = marginal.totals_explained(explained, dimension);
                (absent[place], present[place]) = (prior * not_seen, prior * seen);
            },
        );
        self.spread_over_unlinked(causes, absent);
        self.spread_over_unlinked(causes, present);
    }

    /// Completes the masses of configurations for causes that are linked to no symptom of the case: the findings say
    /// nothing about them.
    fn spread_over_unlinked(&self, causes: &[usize], masses: &mut [f64]) {
        let is_linked = |(_, cause): &(usize, &usize)| self.case.pattern(**cause) != 0;
        let mut done = causes.iter().enumerate().filter(is_linked).fold(0, |done, (place, _)| done | 1_u32 << place);
        for (place, &cause) in causes.iter().enumerate().filter(|cause| !is_linked(cause)) {
            let Odds { present, absent } = self.odds(cause);
            let mut configuration = 0;
            loop {
                let mass = masses[configuration as usize];
                masses[configuration as usize] = absent * mass;
                masses[(configuration | 1 << place) as usize] = present * mass;
                configuration = next_subset(configuration, done);
                if configuration == 0 {
                    break;
                }
            }
            done |= 1 << place;
        }
    }

    /// Odds of a cause before the symptoms that have a dimension.
    pub(super) fn odds(&self, cause: usize) -> Odds {
        self.odds[cause]
    }

    /// Posterior odds of every cause; the two sides add up to 1.
    pub(super) fn all_odds(&self, odds: &mut Vec<Odds>) {
        odds.clear();
        odds.extend_from_slice(self.odds);
        let mut buffer = Buffer::default();
        for &cause in self.case.linked() {
            odds[cause] = self.odds_of(&mut buffer, cause, None).normalised();
        }
    }

    /// Unnormalised odds of one cause.
    pub(super) fn odds_of(&self, buffer: &mut Buffer, cause: usize, recredited: Recredited) -> Odds {
        let written_out = || self.odds_by_one_symptom(cause).or_else(|| self.odds_by_two_symptoms(cause));
        if recredited.is_none()
            && let Some(odds) = written_out()
        {
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

    /// The same for a cause linked to two symptoms that are present.
    fn odds_by_two_symptoms(&self, cause: usize) -> Option<Odds> {
        let pattern = self.case.pattern(cause);
        let &[first, second] = self.case.strengths(cause) else { return None };
        if self.case.tolerant() != 0 {
            return None;
        }
        let Odds { present, absent } = self.odds(cause);
        let (before, all) = (self.cover.total(), self.cover.all());
        let entry = |unexplained: u32| self.cover.entry(all & !unexplained, 0);
        let of_first = pattern & pattern.wrapping_neg();
        // The table without the cause: what explains neither symptom, only one of them, both.
        let neither = entry(pattern) / (absent + present * (1.0 - first) * (1.0 - second));
        let only_first = (entry(pattern ^ of_first) - present * first * (1.0 - second) * neither)
            / (absent + present * (1.0 - second));
        let only_second =
            (entry(of_first) - present * (1.0 - first) * second * neither) / (absent + present * (1.0 - first));
        let passed_on = second * only_first + first * only_second + first * second * neither;
        let explained = before - present * passed_on;
        let odds = Odds { present: present * (explained + passed_on), absent: absent * explained };
        (explained > LEAST_SHARE * before).then_some(odds)
    }

    fn dimensions_of(&self, causes: &[usize], recredited: Recredited) -> u32 {
        let recredited = recredited.map_or(0, |(dimension, _)| 1 << dimension);
        causes.iter().fold(recredited, |own, &cause| own | self.case.pattern(cause))
    }
}

/// Takes distinct causes out of a marginal table, unless digits would be lost; tells the share of the table that is left.
///
/// An entry is what the causes leave unexplained, times the rest of the table, plus what they
/// explain. Rounding is relative to that sum, so the share of its first part says how many digits
/// the rest of the table keeps.
pub(super) fn take_out(
    marginal: &mut Marginal<'_>,
    causes: &[usize],
    odds: impl Fn(usize) -> Odds,
    recredited: Recredited,
) -> Result<f64, Cancelled> {
    take_out_all(marginal, causes, odds, &[recredited])
}

/// The same where several credits will be asked for.
fn take_out_all<const N: usize>(
    marginal: &mut Marginal<'_>,
    causes: &[usize],
    odds: impl Fn(usize) -> Odds,
    credits: &[Recredited; N],
) -> Result<f64, Cancelled> {
    let before = credits.map(|credit| marginal.total(credit));
    let mut kept = [1.0; N];
    for &cause in causes {
        marginal.remove(cause, odds(cause));
        for (kept, credit) in kept.iter_mut().zip(credits) {
            *kept *= marginal.least_kept(cause, odds(cause), *credit);
        }
    }
    let shares = kept.iter().zip(&before).zip(credits);
    // Nothing of nothing is not enough.
    let least = shares
        .map(|((kept, before), credit)| kept * marginal.total(*credit) / before)
        .fold(1.0, |least: f64, share| if share > least { least } else { share });
    if least > LEAST_SHARE { Ok(least) } else { Err(Cancelled) }
}

/// Probabilities of the configurations of causes that are not in the marginal table, as far as they are linked.
fn expand(
    marginal: &mut Marginal<'_>,
    causes: &[usize],
    odds: impl Fn(usize) -> Odds + Copy,
    recredited: Recredited,
    masses: &mut [f64],
) {
    expand_given(marginal, causes, odds, 0, (1.0, &Explained::by_none()), &mut |marginal, place, prior, explained| {
        masses[place] = prior * marginal.total_explained(explained, recredited);
    });
}

/// Visits the configurations of linked causes, with the prior probability of each and what it explains; the
/// configuration `place` already holds those of other causes.
fn expand_given(
    marginal: &mut Marginal<'_>,
    causes: &[usize],
    odds: impl Fn(usize) -> Odds + Copy,
    place: usize,
    (prior, explained): (f64, &Explained),
    visit: &mut impl FnMut(&mut Marginal<'_>, usize, f64, &Explained),
) {
    let Some((&last, causes)) = causes.split_last() else {
        return visit(marginal, place, prior, explained);
    };
    if marginal.case().pattern(last) == 0 {
        return expand_given(marginal, causes, odds, place, (prior, explained), visit);
    }
    let Odds { present, absent } = odds(last);
    expand_given(marginal, causes, odds, place, (prior * absent, explained), visit);
    let explained = explained.and_by(marginal.case(), last);
    expand_given(marginal, causes, odds, place | 1 << causes.len(), (prior * present, &explained), visit);
}

/// Odds of one cause that is not in the marginal table.
pub(super) fn expand_one(marginal: &mut Marginal<'_>, cause: usize, odds: Odds, recredited: Recredited) -> Odds {
    Odds {
        present: odds.present * marginal.total_with(std::iter::once(cause), recredited),
        absent: odds.absent * marginal.total(recredited),
    }
}
