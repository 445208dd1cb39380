//! Qualities that exclude each other: what is called pale is not meant to be dark.

use std::collections::HashMap;
use std::sync::LazyLock;

use super::words::stem;

/// The words of the two ends of a quality (common practice). A word may stand in several rows.
const OPPOSITES: &[(&[&str], &[&str])] = &[
    (
        &["insufficient", "less", "little", "low", "narrow", "short", "small", "tiny", "undersized"],
        &[
            "big",
            "excess",
            "excessive",
            "high",
            "huge",
            "large",
            "many",
            "much",
            "over",
            "overly",
            "oversized",
            "tall",
            "wide",
        ],
    ),
    (
        &["blond", "light", "pale", "white", "whitish"],
        &["black", "brown", "burn", "burnt", "charred", "dark", "scorched"],
    ),
    (&["soft", "tender"], &["brick", "firm", "hard", "rock", "stiff", "stone", "tough"]),
    (&["clammy", "damp", "moist", "soaked", "sodden", "soggy", "wet"], &["dry"]),
    (&["liquid", "runny", "thin", "watery"], &["stiff", "thick"]),
    (&["coarse", "open", "porous"], &["close", "compact", "dense", "tight"]),
    (&["slack"], &["bucky", "stiff", "tight"]),
    (&["fast", "quick", "rapid"], &["slow", "sluggish"]),
    (&["early"], &["late"]),
    (&["doughy", "raw", "unbaked", "underbaked", "underdone"], &["burnt", "charred", "overbaked", "scorched"]),
    (&["strong"], &["weak"]),
    (&["sweet"], &["acidic", "sour"]),
];

/// One end of a quality: its row above, and which end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Quality {
    row: usize,
    end: bool,
}

static QUALITIES: LazyLock<HashMap<String, Vec<Quality>>> = LazyLock::new(|| {
    let mut qualities: HashMap<String, Vec<Quality>> = HashMap::new();
    for (row, (one, other)) in OPPOSITES.iter().enumerate() {
        for (words, end) in [(one, false), (other, true)] {
            words.iter().for_each(|word| qualities.entry(stem(word)).or_default().push(Quality { row, end }));
        }
    }
    qualities
});

impl Quality {
    pub(super) fn opposite(self) -> Self {
        Self { end: !self.end, ..self }
    }
}

/// The ends of qualities that a word names, also by their degrees: `darker`, `hardened`.
pub(super) fn qualities(word: &str, word_stem: &str) -> &'static [Quality] {
    let of = |stem: &str| QUALITIES.get(stem).map(Vec::as_slice);
    let degrees = || {
        let bases = ["er", "est", "ened", "ening", "en"].into_iter().filter_map(|ending| word.strip_suffix(ending));
        bases.flat_map(|base| [stem(base), stem(&format!("{base}e"))]).find_map(|stem| of(&stem))
    };
    of(word_stem).or_else(degrees).unwrap_or_default()
}

/// Whether a name with these qualities cannot be meant by a text with those: the text has the opposite of one, and neither
/// has both ends of it.
pub(super) fn excluded(name: &[Quality], text: &[Quality]) -> bool {
    name.iter().any(|own| {
        let opposite = own.opposite();
        text.contains(&opposite) && !text.contains(own) && !name.contains(&opposite)
    })
}

#[cfg(test)]
mod tests {
    use super::{excluded, qualities};
    use crate::intake::words::stem;

    fn clash(name: &[&str], text: &[&str]) -> bool {
        let all =
            |words: &[&str]| words.iter().flat_map(|word| qualities(word, &stem(word)).to_vec()).collect::<Vec<_>>();
        excluded(&all(name), &all(text))
    }

    #[test]
    fn opposite_words_exclude_each_other() {
        for (name, text) in
            [("low", "high"), ("excess", "smaller"), ("pale", "burnt"), ("soft", "hardened"), ("wet", "driest")]
        {
            assert!(clash(&[name], &[text]) && clash(&[text], &[name]), "{name} {text}");
        }
        assert!(
            !clash(&["thick", "thin"], &["thin"])
                && !clash(&["pale"], &["pale", "dark"])
                && !clash(&["low"], &["soft"])
        );
    }
}
