//! Causes with the same or a contained pattern, combined before they meet the big table.
#![allow(
    clippy::indexing_slicing,
    reason = "patterns have two or three bits here, so every index is below 8 or below the table's 2^n"
)]

use super::lattice::{compress, multiply_in};
use super::odds::Odds;

/// Most symptoms a group may cover. From four on, folding a group costs more than folding its
/// causes one by one.
pub(super) const MAX_GROUP: u32 = 3;
const SIZE: usize = 1 << MAX_GROUP;

/// What some causes explain together: a distribution over the subsets of their symptoms.
#[derive(Debug, Clone, Copy)]
pub(super) struct Group {
    pub(super) pattern: u32,
    distribution: [f64; SIZE],
}

impl Group {
    /// A group without a cause explains nothing.
    pub(super) fn new(pattern: u32) -> Self {
        let mut distribution = [0.0; SIZE];
        distribution[0] = 1.0;
        Self { pattern, distribution }
    }

    fn entries(&self) -> usize {
        1 << self.pattern.count_ones()
    }

    /// Adds a cause whose pattern is the group's.
    pub(super) fn add(&mut self, strengths: &[f64], odds: Odds) {
        let entries = self.entries();
        let dense = (1 << strengths.len()) - 1;
        multiply_in(&mut self.distribution[..entries], dense, strengths, odds, &mut [0.0; SIZE]);
    }

    /// Adds all causes of a group whose pattern is contained in this one's.
    pub(super) fn absorb(&mut self, smaller: &Self) {
        let pattern = compress(smaller.pattern, self.pattern);
        let entries = self.entries();
        smaller.fold_at(pattern, &mut self.distribution[..entries]);
    }

    /// Adds the group's causes to the cover table.
    pub(super) fn fold_into(&self, table: &mut [f64]) {
        self.fold_at(self.pattern, table);
    }

    fn fold_at(&self, pattern: u32, table: &mut [f64]) {
        match pattern.count_ones() {
            2 => fold::<4>(&self.distribution, pattern, table),
            _ => fold::<8>(&self.distribution, pattern, table),
        }
    }
}

/// Or-convolution of a distribution over the `N` subsets of `pattern` with the whole table.
fn fold<const N: usize>(distribution: &[f64; SIZE], pattern: u32, table: &mut [f64]) {
    let transition = transition::<N>(distribution);
    let offsets = subsets::<N>(pattern);
    let mut base = 0;
    while base < table.len() {
        let before = offsets.map(|offset| table[base + offset]);
        for (union, &offset) in offsets.iter().enumerate() {
            let mut sum = 0.0;
            for (from, &entry) in before.iter().enumerate().take(union + 1) {
                sum += transition[union][from] * entry;
            }
            table[base + offset] = sum;
        }
        base = next_without(base, pattern as usize);
    }
}

/// `transition[union][from]`: probability that the group takes the explained subset `from` to
/// `union`.
fn transition<const N: usize>(distribution: &[f64; SIZE]) -> [[f64; N]; N] {
    let mut transition = [[0.0; N]; N];
    for (explained, &probability) in distribution.iter().enumerate().take(N) {
        for from in 0..N {
            transition[explained | from][from] += probability;
        }
    }
    transition
}

/// The subsets of a pattern, ascending.
fn subsets<const N: usize>(pattern: u32) -> [usize; N] {
    let mut subset = 0;
    std::array::from_fn(|_| {
        let this = subset;
        subset = next_subset(subset, pattern);
        this as usize
    })
}

/// The next larger subset of a pattern; after the last one, the empty set.
pub(super) fn next_subset(subset: u32, pattern: u32) -> u32 {
    subset.wrapping_sub(pattern) & pattern
}

/// The next index that has none of the bits of `pattern`.
fn next_without(index: usize, pattern: usize) -> usize {
    ((index | pattern) + 1) & !pattern
}
