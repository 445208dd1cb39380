//! How a trial is laid out: how many pieces show a difference, which runs tell changes apart, in which order to bake.
//!
//! All sizes are for two settings that are compared two-sided, with as many pieces of the one as of the other. A piece
//! counts as one independent result; pieces of one batch share what happened to the batch (see [`ONE_BATCH`]).

mod differences;
mod factorial;
mod noncentral_t;
mod normal;
mod proportions;
mod risks;
mod run_order;

pub use differences::{DifferenceSize, detectable_difference, sample_size_for_difference};
pub use factorial::{Alias, Fraction, TwoLevelDesign, two_level_design};
pub use proportions::{ProportionSize, detectable_proportion, sample_size_for_proportions};
pub use risks::Risks;
pub use run_order::randomised_order;

/// What must stand beside every number of pieces: the batch, not the piece, is what was treated (Box, Hunter and Hunter,
/// Statistics for Experimenters, 2005, on replication).
pub const ONE_BATCH: &str = "the pieces of one batch show that two batches differ; that the setting did it, only \
    repeated batches show";

/// Most pieces of a setting that are reckoned with: beyond it the difference is too small for a trial.
const MOST_PIECES: f64 = 1e6;

/// Least standardised difference with fewer than [`MOST_PIECES`] at the usual risks.
const LEAST_EFFECT: f64 = 0.004;
