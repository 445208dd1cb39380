//! A blend of available fats that comes closest to a wanted solids curve, under requirements.

mod available;
mod interaction;
mod matching;
mod requirements;
mod solver;

pub use available::{AvailableFat, FatKind};
pub use interaction::{Interaction, InteractionWarning, blend_solids, known_interactions};
pub use matching::{FatBlend, FatShare, FitPoint, match_curve};
pub use requirements::{LeftOut, Requirements};
