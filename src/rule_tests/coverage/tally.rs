//! So many of so many.

use std::fmt;
use std::ops::AddAssign;

use serde::ser::{Serialize, SerializeStruct, Serializer};

/// How much of something is reached.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Tally {
    /// How many are reached.
    pub reached: usize,
    /// How many there are.
    pub of: usize,
}

impl Tally {
    /// Counts one more.
    pub(super) fn count(&mut self, reached: bool) {
        self.reached += usize::from(reached);
        self.of += 1;
    }

    /// Tenths of a per cent, rounded down: 1000 only when all is reached; `None` when there is nothing to reach.
    #[must_use]
    pub fn permille(self) -> Option<usize> {
        (self.reached * 1000).checked_div(self.of)
    }
}

impl AddAssign for Tally {
    fn add_assign(&mut self, other: Self) {
        self.reached += other.reached;
        self.of += other.of;
    }
}

impl fmt::Display for Tally {
    /// Per cent with one decimal; a dash for nothing.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.permille() {
            Some(permille) => f.pad(&format!("{}.{} %", permille / 10, permille % 10)),
            None => f.pad("–"),
        }
    }
}

impl Serialize for Tally {
    /// `{"reached", "of", "percent"}`; `percent` is `null` when there is nothing to reach.
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut object = serializer.serialize_struct("Tally", 3)?;
        object.serialize_field("reached", &self.reached)?;
        object.serialize_field("of", &self.of)?;
        #[allow(clippy::cast_precision_loss)] // at most 1000
        object.serialize_field("percent", &self.permille().map(|permille| permille as f64 / 10.0))?;
        object.end()
    }
}

#[cfg(test)]
mod tests {
    use super::Tally;

    fn shown(reached: usize, of: usize) -> String {
        Tally { reached, of }.to_string()
    }

    #[test]
    fn percentages_are_rounded_down() {
        assert_eq!(shown(9996, 10_000), "99.9 %");
        assert_eq!(shown(9999, 10_000), "99.9 %");
        assert_eq!(shown(2, 3), "66.6 %");
        assert_eq!(shown(0, 7), "0.0 %");
        assert_eq!(shown(7, 7), "100.0 %");
        assert_eq!(shown(0, 0), "–");
    }

    #[test]
    fn json_gives_the_rounded_per_cent() {
        let json = serde_json::to_string(&Tally { reached: 9996, of: 10_000 }).unwrap();
        assert_eq!(json, r#"{"reached":9996,"of":10000,"percent":99.9}"#);
    }
}
