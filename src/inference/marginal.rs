//! The cover table seen from a few symptoms, with causes taken out of it and put back.
//!
//! The joint posterior of a few causes depends only on the entries of the cover table that contain
//! every symptom outside their patterns, however many other causes and symptoms there are.
#![allow(
    clippy::indexing_slicing,
    reason = "indices are ranks among at most 16 dimensions and subsets below the table's 2^n"
)]

use super::conditioned::{Conditioned, MAX_SYMPTOMS};
use super::cover::Cover;
use super::dimension::Credit;
use super::grouped::next_subset;
use super::lattice::{compress, contract, contract_but, contract_explained, divide_out, multiply_in};
use super::odds::Odds;

/// Entries for which no memory has to be asked for: six symptoms.
const ON_STACK: usize = 64;

/// Memory for one marginal table and its scratch space.
#[derive(Debug)]
pub(super) struct Buffer {
    stack: [f64; 2 * ON_STACK],
    heap: Vec<f64>,
}

impl Default for Buffer {
    fn default() -> Self {
        Self { stack: [0.0; 2 * ON_STACK], heap: Vec::new() }
    }
}

impl Buffer {
    /// Two tables of this length.
    fn tables(&mut self, length: usize) -> (&mut [f64], &mut [f64]) {
        if length <= ON_STACK {
            return self.stack[..2 * length].split_at_mut(length);
        }
        self.heap.resize(2 * length, 0.0);
        self.heap.split_at_mut(length)
    }
}

/// A dimension whose credit is not the one of the findings: left out, or seen the other way.
pub(super) type Recredited = Option<(usize, Credit)>;

/// The cover table over the symptoms in `own`, all others being accounted for.
#[derive(Debug)]
pub(super) struct Marginal<'a> {
    case: &'a Conditioned,
    own: u32,
    table: &'a mut [f64],
    spare: &'a mut [f64],
}

impl<'a> Marginal<'a> {
    pub(super) fn of(case: &'a Conditioned, cover: &Cover, own: u32, buffer: &'a mut Buffer) -> Self {
        let (table, spare) = buffer.tables(1 << own.count_ones());
        let either = case.tolerant() & !own;
        let others = cover.all() & !own & !either;
        let mut subset = 0;
        for entry in table.iter_mut() {
            *entry = cover.entry(others | subset, either);
            subset = next_subset(subset, own);
        }
        let mut marginal = Self { case, own, table, spare };
        marginal.take_back_credit();
        marginal
    }

    pub(super) fn case(&self) -> &'a Conditioned {
        self.case
    }

    /// The part of the table that a cause with this pattern needs, in other memory.
    pub(super) fn narrowed<'b>(&self, pattern: u32, buffer: &'b mut Buffer) -> Marginal<'b>
    where
        'a: 'b,
    {
        let own = self.own & (pattern | self.case.tolerant());
        let kept = compress(own, self.own);
        let (table, spare) = buffer.tables(1 << own.count_ones());
        let others = (self.table.len() as u32 - 1) & !kept;
        let mut subset = 0;
        for entry in table.iter_mut() {
            *entry = self.table[(others | subset) as usize];
            subset = next_subset(subset, kept);
        }
        Marginal { case: self.case, own, table, spare }
    }

    /// Causes pass on what is unexplained, whatever it will count for: the credit is given after
    /// them.
    fn take_back_credit(&mut self) {
        let mut rest = self.case.tolerant() & self.own;
        while rest != 0 {
            let credit = self.case.dimensions()[rest.trailing_zeros() as usize].credit;
            let half = 1 << compress(rest & rest.wrapping_neg(), self.own).trailing_zeros();
            for block in self.table.chunks_exact_mut(2 * half) {
                let (_, explained) = block.split_at_mut(half);
                explained.iter_mut().for_each(|entry| *entry /= credit.explained);
            }
            rest &= rest - 1;
        }
    }

    /// Takes out a cause that is in the table with these odds.
    pub(super) fn remove(&mut self, cause: usize, odds: Odds) {
        let pattern = compress(self.case.pattern(cause), self.own);
        if pattern != 0 {
            divide_out(self.table, pattern, self.case.strengths(cause), odds, self.spare);
        }
    }

    /// The least probability that a cause explains none of the symptoms that may be unexplained
    /// in a total.
    pub(super) fn least_kept(&self, cause: usize, odds: Odds, recredited: Recredited) -> f64 {
        let pattern = self.case.pattern(cause);
        let may_be_unexplained = self.case.tolerant() | recredited.map_or(0, |(dimension, _)| 1 << dimension);
        if pattern & may_be_unexplained == 0 {
            return odds.total();
        }
        let mut unexplained = odds.present;
        let mut rest = pattern;
        for &strength in self.case.strengths(cause) {
            if may_be_unexplained >> rest.trailing_zeros() & 1 == 1 {
                unexplained *= 1.0 - strength;
            }
            rest &= rest - 1;
        }
        odds.absent + unexplained
    }

    /// Puts a cause into the table with these odds.
    pub(super) fn add(&mut self, cause: usize, odds: Odds) {
        let pattern = compress(self.case.pattern(cause), self.own);
        if pattern != 0 {
            multiply_in(self.table, pattern, self.case.strengths(cause), odds, self.spare);
        }
    }

    /// P(findings) from the causes in the table alone.
    pub(super) fn total(&mut self, recredited: Recredited) -> f64 {
        if recredited.is_none() && self.case.tolerant() & self.own == 0 {
            // Only what explains every symptom counts, and that is one entry.
            return self.table[self.table.len() - 1];
        }
        self.total_with(std::iter::empty(), recredited)
    }

    /// P(findings) when, on top of the causes in the table, those in `present` are there.
    pub(super) fn total_with(&mut self, present: impl Iterator<Item = usize>, recredited: Recredited) -> f64 {
        let mut explained = Explained::by_none();
        for cause in present {
            explained = explained.and_by(self.case, cause);
        }
        self.total_explained(&explained, recredited)
    }

    /// The same with one dimension seen absent, and seen present.
    pub(super) fn totals_explained(&mut self, others: &Explained, dimension: usize) -> Odds {
        let (weights, ranks) = self.weights(others, None);
        let kept = compress(1 << dimension, self.own).trailing_zeros() as usize;
        let (unexplained, explained) = contract_but(self.table, &weights[..ranks], kept, self.spare);
        let leak = others.leaks[dimension];
        Odds { present: explained + leak.present * unexplained, absent: leak.absent * unexplained }
    }

    /// P(findings) when, on top of the causes in the table, some symptoms are explained by others.
    pub(super) fn total_explained(&mut self, others: &Explained, recredited: Recredited) -> f64 {
        if recredited.is_none() && self.case.tolerant() & self.own == 0 {
            let mut rest = self.own;
            let leaks = std::iter::from_fn(|| {
                let leak = others.leaks.get(rest.trailing_zeros() as usize)?;
                rest &= rest - 1;
                Some(leak.present)
            });
            return contract_explained(self.table, leaks, self.spare);
        }
        let (weights, ranks) = self.weights(others, recredited);
        contract(self.table, &weights[..ranks], self.spare)
    }

    /// For each dimension, by rank, what counts when it is unexplained by the table and when it is explained.
    fn weights(&self, others: &Explained, recredited: Recredited) -> ([(f64, f64); MAX_SYMPTOMS], usize) {
        let mut weights = [(0.0, 0.0); MAX_SYMPTOMS];
        let mut rest = self.own;
        let mut rank = 0;
        while rest != 0 {
            let dimension = rest.trailing_zeros() as usize;
            let credit = self.credit(dimension, recredited);
            let leak = others.leaks[dimension];
            let clear = leak.absent * credit.unexplained + leak.present * credit.explained;
            weights[rank] = (clear, credit.explained);
            rank += 1;
            rest &= rest - 1;
        }
        (weights, rank)
    }

    fn credit(&self, dimension: usize, recredited: Recredited) -> Credit {
        match recredited {
            Some((other, credit)) if other == dimension => credit,
            _ => self.case.dimensions()[dimension].credit,
        }
    }
}

/// How probably causes that are known to be present explain each symptom.
#[derive(Debug, Clone, Copy)]
pub(super) struct Explained {
    leaks: [Odds; MAX_SYMPTOMS],
}

impl Explained {
    pub(super) fn by_none() -> Self {
        Self { leaks: [Odds { present: 0.0, absent: 1.0 }; MAX_SYMPTOMS] }
    }

    /// Lets one more present cause explain the symptoms of its pattern.
    pub(super) fn and_by(&self, case: &Conditioned, cause: usize) -> Self {
        let mut both = *self;
        let mut rest = case.pattern(cause);
        for &strength in case.strengths(cause) {
            let leak = &mut both.leaks[rest.trailing_zeros() as usize];
            leak.present += leak.absent * strength;
            leak.absent *= 1.0 - strength;
            rest &= rest - 1;
        }
        both
    }
}
