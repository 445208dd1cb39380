//! "Did you mean": the nearest declared name, or none.

/// Largest number of edits at which a suggestion still helps.
const MOST_EDITS: usize = 3;

/// The candidate nearest to `name`: at most three edits (insertions, deletions, substitutions, transpositions) and less
/// than half of the name away. `None` when nothing is that near.
pub fn closest<'a>(name: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let most = MOST_EDITS.min(name.chars().count().saturating_sub(1) / 2);
    candidates
        .into_iter()
        .filter(|candidate| candidate.len().abs_diff(name.len()) <= MOST_EDITS * 4)
        .map(|candidate| (edits(name, candidate), candidate))
        .filter(|(edits, _)| *edits <= most)
        .min()
        .map(|(_, candidate)| candidate)
}

/// Edits between two names; case and a hyphen in place of an underscore cost nothing.
fn edits(name: &str, candidate: &str) -> usize {
    let plain = |text: &str| text.to_lowercase().replace(['-', ' '], "_");
    strsim::osa_distance(&plain(name), &plain(candidate))
}

/// "did you mean `x`?" for the nearest candidate.
pub fn did_you_mean<'a>(name: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<String> {
    closest(name, candidates).map(|candidate| format!("did you mean `{candidate}`?"))
}

#[cfg(test)]
mod tests {
    use super::closest;

    #[test]
    fn suggests_only_what_is_near() {
        let names = ["dough_temperature", "water_temperature", "open_grain"];
        assert_eq!(closest("dough_temprature", names), Some("dough_temperature"));
        assert_eq!(closest("Open-Grain", names), Some("open_grain"));
        assert_eq!(closest("viscosity", names), None);
        assert_eq!(closest("ab", ["xy"]), None);
        assert_eq!(closest("", ["a"]), None);
    }
}
