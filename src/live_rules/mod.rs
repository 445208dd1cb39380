//! The rules that a service answers with, and their exchange while it runs.
//!
//! ```text
//! file system --notices--+
//! clock -----poll--------+--> loader thread: settle, read, load, test --whole--> LiveRules <-- requests
//! SIGHUP, request -------+                                      `----refused--> LiveRules::last_attempt
//! ```
//!
//! All or nothing: rules with a fault, or that fail their required tests, change nothing but
//! [`LiveRules::last_attempt`]. One thread loads, so there is one load at a time and requests never wait for it; changes
//! that come while it is busy make one load together.

mod attempt;
mod folder_watch;
mod in_force;
mod loader;
mod reloader;

pub use attempt::{Attempt, AttemptOutcome, MOST_DIAGNOSTICS, Trigger};
pub use in_force::{LiveRules, RulesInForce};
pub use reloader::{ReloadSettings, Reloader};
