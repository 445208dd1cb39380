//! Exact inference in a two-layer noisy-OR network: which causes are present, given what was
//! found.
//!
//! This module knows numbers only: causes and symptoms are indices, nothing here reads rules or
//! text.
//!
//! # Model
//! Binary causes C with prior probabilities, independent a priori. Binary symptoms S, each with a
//! leak (whatever is not modelled) and links to causes with strengths q:
//!
//! ```text
//! P(S absent | C) = (1 − leak) · Π over present causes (1 − q)       noisy-OR, Pearl 1988
//! ```
//!
//! Readings multiply the prior odds of a cause by likelihood ratios; their logarithms add up and
//! are called weights of evidence, in decibans when ten times the decimal logarithm (Good 1950).
//! A symptom that somebody is not sure of is virtual evidence (Pearl 1988).
//!
//! # Method
//! Quickscore (Heckerman 1989) sums terms of alternating sign over the subsets of the present
//! symptoms; in double precision these cancel. Here no term is negative:
//!
//! 1. Readings and absent symptoms are linear and go into the odds of each cause (`conditioned`).
//! 2. The cover table holds, for every subset of the present symptoms, the probability that exactly
//!    this subset is explained. Symptoms are added one at a time, causes with the same or contained
//!    patterns together (`cover`, `grouped`). Its last entry is P(findings).
//! 3. A cause depends on the table through its own symptoms only. It is divided out of those few
//!    entries by a triangular solve (`marginal`, `lattice`). Where this subtraction would leave too
//!    few digits, the table is built again without the cause (`solution`).
//!
//! The work grows as two to the power of the present and uncertain symptoms; above
//! [`MAX_SYMPTOMS`] the answer is an error, never an approximation.
//!
//! # Use
//! ```
//! use whybake::inference::{Findings, Link, Network, Observation, Workspace, posterior};
//!
//! let links = vec![
//!     Link { cause: 0, symptom: 0, strength: 0.8 },
//!     Link { cause: 1, symptom: 0, strength: 0.5 },
//! ];
//! let network = Network::new(vec![0.1, 0.2], vec![0.01], links).expect("sound numbers");
//! let mut findings = Findings::new();
//! findings.observe(0, Observation::Present);
//! findings.weigh(&[(0, 1.0)]); // A reading ten times as likely if cause 0 is present.
//! let mut workspace = Workspace::new();
//! let case = posterior(&network, &findings, &mut workspace).expect("findings that fit");
//! assert!(case.odds()[0].probability() > 0.8);
//! assert!(case.odds()[1].probability() < 0.3); // Explained away.
//! ```
//!
//! # Sources
//! - Pearl, J. (1988), *Probabilistic Reasoning in Intelligent Systems*: noisy-OR, virtual evidence.
//! - Good, I. J. (1950), *Probability and the Weighing of Evidence*: weights of evidence, decibans.
//! - Heckerman, D. (1989), "A tractable inference algorithm for diagnosing multiple diseases", UAI.
//! - Heckerman, D., Breese, J. S., Rommelse, K. (1995), "Decision-theoretic troubleshooting", CACM: order of repairs.
//! - Shannon, C. E. (1948), "A mathematical theory of communication": mutual information.

// What comes in.
mod faults;
mod findings;
mod network;
mod odds;

// How it is solved.
mod conditioned;
mod cover;
mod dimension;
mod grouped;
mod lattice;
mod log_product;
mod marginal;
mod solution;

// What can be asked.
mod bound;
mod information;
mod leave_one_out;
mod look;
mod posterior;
mod reading;
mod repair;

pub use bound::InformationBound;
pub use conditioned::{MAX_SYMPTOMS, MAX_WEIGHT};
pub use faults::{FindingsFault, NetworkFault, ReadingFault};
pub use findings::{Findings, Observation};
pub use information::{total_under_cause, usual_share};
pub use leave_one_out::LeaveOneOut;
pub use look::{Look, look_for};
pub use network::{Link, MIN_LEAK, Network};
pub use odds::Odds;
pub use posterior::{MAX_JOINT_CAUSES, Posterior, Standing, Workspace, posterior};
pub use reading::{MAX_READING_CAUSES, Outcome, Reading};
pub use repair::{Repair, Step, order_repairs, takes_away_all, takes_away_some};
