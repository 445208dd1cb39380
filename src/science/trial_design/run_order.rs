//! The order in which runs are baked: by lot, but the same for the same seed, and checkable by anyone.
//!
//! Each run is given the SHA-256 (FIPS 180-4) of `seed/block/run`, decimal and with runs and blocks counted from 1; the
//! runs of a block are baked in the order of these. Why runs are randomised, and within blocks: Box, Hunter and Hunter,
//! Statistics for Experimenters, 2005, chapter 4.

use sha2::{Digest, Sha256};

use crate::science::Nonsense;

/// Most runs of a block.
const MOST_RUNS: u32 = 64;

/// Runs of a block (counted from 1) in the order in which they are baked: 1 to `runs`, by lot.
///
/// # Errors
/// [`Nonsense`] for no runs or more than 64.
pub fn randomised_order(seed: u32, block: u32, runs: u32) -> Result<Vec<u32>, Nonsense> {
    let mut nonsense = Nonsense::default();
    nonsense.unless((1..=MOST_RUNS).contains(&runs), "runs", format!("`{runs}` is not between 1 and {MOST_RUNS}"));
    nonsense.or_ok()?;
    let mut order: Vec<u32> = (1..=runs).collect();
    order.sort_by_cached_key(|run| Sha256::digest(format!("{seed}/{block}/{run}")).to_vec());
    Ok(order)
}
