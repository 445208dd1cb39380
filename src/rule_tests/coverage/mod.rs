//! What of the rules the rule tests reach.
//!
//! Evidence is reached once when its condition is true and once when it is false in some test (a value on its ramp is told,
//! but is neither); each region once. A link is reached once when its symptom is present and once when it is absent in a
//! test where the cause is among the first three or expected; a prescription when its action is advised there with all its
//! quantities. Percentages are rounded down: 100 means all.

mod observed;
mod summary;
mod tally;

pub use observed::Observed;
pub use summary::{CauseTallies, Coverage, FamilyCoverage, Unreached};
pub use tally::Tally;
