//! Operations on tables over the subsets of a few symptoms (entry `T` belongs to the subset whose
//! bits are `T`).
//!
//! A present cause explains each symptom of its pattern independently with the strength of the
//! link. As an operator on a table that is M = ⊗ [[1 − q, 0], [q, 1]]; a cause with odds b : a is
//! a·I + b·M. A pattern is a bit mask; `strengths` belong to its bits, ascending.
#![allow(
    clippy::indexing_slicing,
    reason = "these loops are the innermost of the program; their bounds follow from the table length 2^n"
)]

use super::odds::Odds;

/// Applies M: lets a present cause explain what it can.
pub(super) fn explain(table: &mut [f64], pattern: u32, strengths: &[f64]) {
    let mut rest = pattern;
    for &strength in strengths {
        let half = 1 << rest.trailing_zeros();
        for block in table.chunks_exact_mut(2 * half) {
            let (unexplained, explained) = block.split_at_mut(half);
            for (low, high) in unexplained.iter_mut().zip(explained) {
                *high += strength * *low;
                *low *= 1.0 - strength;
            }
        }
        rest &= rest - 1;
    }
}

/// Adds a cause to a table: a·I + b·M. `spare` is as long as the table.
pub(super) fn multiply_in(table: &mut [f64], pattern: u32, strengths: &[f64], odds: Odds, spare: &mut [f64]) {
    let explained = &mut spare[..table.len()];
    explained.copy_from_slice(table);
    explain(explained, pattern, strengths);
    for (entry, &explained) in table.iter_mut().zip(explained.iter()) {
        *entry = odds.absent * *entry + odds.present * explained;
    }
}

/// Takes a cause out of a table: solves (a·I + b·M)·x = table, in place. `spare` is half as long
/// as the table.
///
/// M is triangular in every dimension: the half without the highest symptom is solved first, what
/// it passes on to the other half is subtracted, then the other half is solved.
pub(super) fn divide_out(table: &mut [f64], pattern: u32, strengths: &[f64], odds: Odds, spare: &mut [f64]) {
    let Some((&strength, lower)) = strengths.split_last() else {
        let scale = 1.0 / odds.total();
        table.iter_mut().for_each(|entry| *entry *= scale);
        return;
    };
    let half = 1 << pattern.ilog2();
    let rest = pattern ^ half;
    let unexplained_odds = Odds { present: odds.present * (1.0 - strength), absent: odds.absent };
    for block in table.chunks_exact_mut(2 * half as usize) {
        let (unexplained, explained) = block.split_at_mut(half as usize);
        divide_out(unexplained, rest, lower, unexplained_odds, spare);
        let passed_on = &mut spare[..half as usize];
        passed_on.copy_from_slice(unexplained);
        explain(passed_on, rest, lower);
        for (entry, passed_on) in explained.iter_mut().zip(passed_on) {
            *entry -= odds.present * strength * *passed_on;
        }
        divide_out(explained, rest, lower, odds, spare);
    }
}

/// Weighted sum of a table: each dimension, lowest first, has a weight (for its bit clear, for
/// its bit set). `spare` is half as long as the table.
pub(super) fn contract(table: &[f64], weights: &[(f64, f64)], spare: &mut [f64]) -> f64 {
    let Some((&(clear, set), rest)) = weights.split_first() else {
        return table[0];
    };
    let mut length = table.len() / 2;
    for (sum, pair) in spare[..length].iter_mut().zip(table.chunks_exact(2)) {
        *sum = clear * pair[0] + set * pair[1];
    }
    for &(clear, set) in rest {
        length /= 2;
        for index in 0..length {
            spare[index] = clear * spare[2 * index] + set * spare[2 * index + 1];
        }
    }
    spare[0]
}

/// The same where only what is explained counts: each dimension has a weight for its bit clear, and counts whole when set.
pub(super) fn contract_explained(table: &[f64], mut weights: impl Iterator<Item = f64>, spare: &mut [f64]) -> f64 {
    let Some(clear) = weights.next() else {
        return table[0];
    };
    let mut length = table.len() / 2;
    for (sum, pair) in spare[..length].iter_mut().zip(table.chunks_exact(2)) {
        *sum = clear * pair[0] + pair[1];
    }
    for clear in weights {
        length /= 2;
        for index in 0..length {
            spare[index] = clear * spare[2 * index] + spare[2 * index + 1];
        }
    }
    spare[0]
}

/// The same for all dimensions but the one of rank `kept`: the sum where its bit is clear, and where it is set.
pub(super) fn contract_but(table: &[f64], weights: &[(f64, f64)], kept: usize, spare: &mut [f64]) -> (f64, f64) {
    let spare = &mut spare[..table.len()];
    spare.copy_from_slice(table);
    let mut length = table.len();
    for (rank, &(clear, set)) in weights.iter().enumerate().filter(|(rank, _)| *rank != kept) {
        // Once the kept dimension is the lowest, its two halves are carried along side by side.
        let together = if rank > kept { 2 } else { 1 };
        length /= 2;
        for block in 0..length / together {
            for side in 0..together {
                let low = 2 * block * together + side;
                spare[block * together + side] = clear * spare[low] + set * spare[low + together];
            }
        }
    }
    (spare[0], spare[1])
}

/// Moves the bits of `pattern` to their ranks among the bits of `among`.
pub(super) fn compress(pattern: u32, among: u32) -> u32 {
    let mut compressed = 0;
    let mut rest = pattern;
    while rest != 0 {
        let below = (rest & rest.wrapping_neg()) - 1;
        compressed |= 1 << (among & below).count_ones();
        rest &= rest - 1;
    }
    compressed
}
