//! The calculations, one file a topic.

mod dough_temperature;

use super::calculation::Calculation;

/// All topics, in the order of the science.
pub(super) const TOPICS: [&[Calculation]; 1] = [dough_temperature::CALCULATIONS];
