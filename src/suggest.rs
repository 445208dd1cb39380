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

/// Most names that are suggested for one that several things bear.
const MOST_NAMES: usize = 3;

/// "did you mean `x` or `y`?" for the things whose id or other names hold every word of `name`: those that are called just so
/// first, then those with the fewest other words.
pub fn so_called<'a>(name: &str, things: impl IntoIterator<Item = (&'a str, Vec<&'a str>)>) -> Option<String> {
    let wanted = words(name);
    if wanted.is_empty() {
        return None;
    }
    let extra = |called: &str| {
        let own = words(called);
        wanted.iter().all(|word| own.contains(word)).then(|| own.len() - wanted.len().min(own.len()))
    };
    let called =
        |(id, names): (&'a str, Vec<&'a str>)| Some((names.into_iter().chain([id]).filter_map(extra).min()?, id));
    let mut found: Vec<(usize, &str)> = things.into_iter().filter_map(called).collect();
    found.sort_by_key(|(extra, _)| *extra);
    let ids: Vec<String> = found.iter().take(MOST_NAMES).map(|(_, id)| format!("`{id}`")).collect();
    (!ids.is_empty()).then(|| format!("did you mean {}?", ids.join(" or ")))
}

/// Words in lower case, plural or not.
fn words(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    let words = lower.split(|c: char| !c.is_alphanumeric()).filter(|word| word.len() > 1);
    words.map(|word| word.strip_suffix('s').filter(|one| one.len() > 2).unwrap_or(word).to_owned()).collect()
}

#[cfg(test)]
mod tests {
    use super::{closest, so_called};

    #[test]
    fn other_names_lead_to_the_id() {
        let things = || {
            [
                ("hollow_under_crust", vec!["Hollow under the top crust"]),
                ("hollow_cookie", vec!["Hollow inside", "hollow"]),
                ("weeping", vec!["Weeping (syneresis)", "leaks water"]),
                ("fresh_yeast", vec!["Fresh (compressed) baker's yeast"]),
            ]
        };
        let meant = |name: &str| so_called(name, things());
        assert_eq!(meant("hollow").as_deref(), Some("did you mean `hollow_cookie` or `hollow_under_crust`?"));
        assert_eq!(meant("syneresis").as_deref(), Some("did you mean `weeping`?"));
        assert_eq!(meant("compressed_yeast").as_deref(), Some("did you mean `fresh_yeast`?"));
        assert_eq!(meant("viscosity"), None);
        assert_eq!(meant(""), None);
    }

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
