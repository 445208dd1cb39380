//! The cover table: for every subset T of the present symptoms, the probability that exactly T is
//! explained. All terms are non-negative, so nothing cancels.
#![allow(clippy::indexing_slicing, reason = "indices are dimensions below 16 and subsets below the table's 2^n")]

use super::conditioned::Conditioned;
use super::grouped::{Group, MAX_GROUP, next_subset};
use super::lattice::{divide_out, multiply_in};
use super::odds::Odds;
use super::solution::{Cancelled, LEAST_SHARE};

/// The cover table of a case, with the scratch space to build it.
#[derive(Debug, Default)]
pub(super) struct Cover {
    table: Vec<f64>,
    total: f64,
    /// P(explained) and P(not explained) of each dimension by its leak and by causes linked to it
    /// alone.
    leaks: Vec<Odds>,
    groups: Vec<Group>,
    /// Place of a pattern's group plus one, 0 for none.
    group_of: Vec<u16>,
    /// Causes with more symptoms than a group takes.
    wide: Vec<usize>,
    spare: Vec<f64>,
}

impl Cover {
    /// Builds the table of `case` from all causes but those in `skip`, with these odds of every cause before the symptoms.
    pub(super) fn build(&mut self, case: &Conditioned, odds: &[Odds], skip: &[usize]) {
        self.sort_causes(case, odds, skip);
        self.merge_groups();
        self.fold(case, odds);
        credit(&mut self.table, case);
        self.total = self.entry(self.all() & !case.tolerant(), case.tolerant());
    }

    /// Takes over the table of a case without tolerant dimensions, with other odds of a few causes: each with its odds in
    /// that table and the new ones.
    pub(super) fn exchange(
        &mut self,
        from: &Self,
        case: &Conditioned,
        causes: impl Iterator<Item = (usize, Odds, Odds)>,
    ) -> Result<(), Cancelled> {
        self.table.clone_from(&from.table);
        self.spare.resize(self.table.len(), 0.0);
        self.total = from.total;
        for (cause, old, new) in causes.filter(|(cause, ..)| case.pattern(*cause) != 0) {
            let (pattern, strengths, before) = (case.pattern(cause), case.strengths(cause), self.total);
            divide_out(&mut self.table, pattern, strengths, old, &mut self.spare);
            if self.table[self.table.len() - 1] <= LEAST_SHARE * before {
                return Err(Cancelled);
            }
            multiply_in(&mut self.table, pattern, strengths, new, &mut self.spare);
            self.total = self.table[self.table.len() - 1];
        }
        Ok(())
    }

    /// Entry of a subset of the dimensions, summed over every state of the dimensions in `either`.
    pub(super) fn entry(&self, subset: u32, either: u32) -> f64 {
        if either == 0 {
            return self.table[subset as usize];
        }
        let mut sum = 0.0;
        let mut state = 0;
        loop {
            sum += self.table[(subset | state) as usize];
            state = next_subset(state, either);
            if state == 0 {
                return sum;
            }
        }
    }

    /// The subset of all dimensions.
    pub(super) fn all(&self) -> u32 {
        self.table.len() as u32 - 1
    }

    /// P(findings), up to the scale of the case.
    pub(super) fn total(&self) -> f64 {
        self.total
    }

    fn sort_causes(&mut self, case: &Conditioned, odds: &[Odds], skip: &[usize]) {
        self.leaks.clear();
        self.leaks.extend(case.dimensions().iter().map(|dimension| dimension.leak));
        self.group_of.resize(1 << case.dimensions().len(), 0);
        self.wide.clear();
        self.groups.clear();
        for &cause in case.linked() {
            if !skip.contains(&cause) {
                self.place(case, cause, odds[cause]);
            }
        }
        for group in &self.groups {
            self.group_of[group.pattern as usize] = 0;
        }
    }

    fn place(&mut self, case: &Conditioned, cause: usize, odds: Odds) {
        let pattern = case.pattern(cause);
        let strengths = case.strengths(cause);
        match pattern.count_ones() {
            1 => merge_into_leak(&mut self.leaks[pattern.trailing_zeros() as usize], strengths[0], odds),
            2..=MAX_GROUP => self.group(pattern).add(strengths, odds),
            _ => self.wide.push(cause),
        }
    }

    fn group(&mut self, pattern: u32) -> &mut Group {
        let place = &mut self.group_of[pattern as usize];
        if *place == 0 {
            self.groups.push(Group::new(pattern));
            *place = self.groups.len() as u16;
        }
        &mut self.groups[usize::from(*place) - 1]
    }

    /// Lets groups of three symptoms absorb the groups of two that they contain.
    fn merge_groups(&mut self) {
        self.groups.sort_unstable_by_key(|group| (group.pattern.count_ones(), group.pattern));
        let pairs = self.groups.partition_point(|group| group.pattern.count_ones() == 2);
        let (pairs, triples) = self.groups.split_at_mut(pairs);
        for pair in pairs {
            if let Some(triple) = triples.iter_mut().find(|triple| triple.pattern & pair.pattern == pair.pattern) {
                triple.absorb(pair);
                pair.pattern = 0;
            }
        }
    }

    /// Adds the symptoms one at a time; what ends with a symptom is folded in as soon as it is
    /// there.
    fn fold(&mut self, case: &Conditioned, odds: &[Odds]) {
        self.table.clear();
        self.table.push(1.0);
        self.spare.resize(1 << self.leaks.len(), 0.0);
        for dimension in 0..self.leaks.len() {
            self.add_dimension(dimension);
            let ends_here = |pattern: u32| pattern >> dimension == 1;
            for group in self.groups.iter().filter(|group| ends_here(group.pattern)) {
                group.fold_into(&mut self.table);
            }
            for &cause in self.wide.iter().filter(|&&cause| ends_here(case.pattern(cause))) {
                let (pattern, strengths) = (case.pattern(cause), case.strengths(cause));
                multiply_in(&mut self.table, pattern, strengths, odds[cause], &mut self.spare);
            }
        }
    }

    fn add_dimension(&mut self, dimension: usize) {
        let leak = self.leaks[dimension];
        let half = self.table.len();
        self.table.resize(2 * half, 0.0);
        let (unexplained, explained) = self.table.split_at_mut(half);
        for (low, high) in unexplained.iter_mut().zip(explained) {
            *high = leak.present * *low;
            *low *= leak.absent;
        }
    }
}

/// A cause linked to one symptom only acts like one more leak. Neither side is formed as 1 − the
/// other.
fn merge_into_leak(leak: &mut Odds, strength: f64, odds: Odds) {
    let unexplained = odds.absent + odds.present * (1.0 - strength);
    leak.present += leak.absent * odds.present * strength;
    leak.absent *= unexplained;
}

/// Weighs the explained half of each tolerant dimension with its credit.
fn credit(table: &mut [f64], case: &Conditioned) {
    for (bit, dimension) in case.dimensions().iter().enumerate() {
        if case.tolerant() >> bit & 1 == 1 {
            for block in table.chunks_exact_mut(2 << bit) {
                let (_, explained) = block.split_at_mut(1 << bit);
                explained.iter_mut().for_each(|entry| *entry *= dimension.credit.explained);
            }
        }
    }
}
