//! The answer: everything that a [`Diagnosis`] says, borrowed from the knowledge where it can be.

mod actions;
mod causes;
mod diagnosis;
mod next;
mod remarks;

pub use actions::*;
pub use causes::*;
pub use diagnosis::*;
pub use next::*;
pub use remarks::*;
