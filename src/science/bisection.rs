//! The root of a rising function, by halving: slow, but it cannot run away.

/// Halvings of the bracket; 100 exhaust the precision of `f64` for every bracket used here.
const HALVINGS: usize = 100;

/// Where `rising` changes from negative to positive between `low` and `high`.
///
/// Gives `low` (or `high`) when the function has one sign over the whole bracket.
pub(super) fn root_of_rising(mut low: f64, mut high: f64, rising: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if middle <= low || middle >= high {
            break;
        }
        if rising(middle) < 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}
