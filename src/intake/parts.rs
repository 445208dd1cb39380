//! The part of a product that a statement is about: what is said of the crumb is no fault of the crust.

use super::words::{Class, Token, Words};

/// A part that words name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Part {
    Crust,
    Crumb,
    Dough,
    Flavour,
}

/// Words for what is smelt or tasted, by their stems; "taste" is also a verb of everything that is eaten.
const FLAVOURS: &[&str] = &["flavour", "flavor", "smell", "odour", "odor", "aroma", "stink", "aftertast"];

/// Words for working dough: pastry of which they tell is not baked yet.
const WORKING: &[&str] = &[
    "folding",
    "kneading",
    "laminating",
    "lining",
    "moulding",
    "molding",
    "pinning",
    "rolled",
    "rolling",
    "sheeted",
    "sheeter",
    "sheeting",
];

impl Part {
    /// The part that the word at a place names.
    pub(super) fn named(words: &Words, place: usize) -> Option<Self> {
        let token = words.tokens.get(place)?;
        match token.stem.as_str() {
            "crust" => Some(Self::Crust),
            "crumb" if token.word == "crumb" => Some(Self::Crumb),
            "dough" => Some(Self::Dough),
            "pastri" => is_worked(words, place).then_some(Self::Dough),
            "tast" => {
                let before = words.tokens.get(place.checked_sub(1)?)?;
                (token.word == "taste" && is_adjective(before)).then_some(Self::Flavour)
            }
            stem => FLAVOURS.contains(&stem).then_some(Self::Flavour),
        }
    }

    /// Stems of the words that name the part.
    fn stems(self) -> &'static [&'static str] {
        match self {
            Self::Crust => &["crust"],
            Self::Crumb => &["crumb"],
            Self::Dough => &["dough"],
            Self::Flavour => &["flavour", "flavor", "smell", "odour", "odor", "aroma", "stink", "aftertast", "tast"],
        }
    }

    /// Whether a statement about this part is not about a fault of that part with those words.
    pub(super) fn excludes(self, part: &str, has_word: impl Fn(&str) -> bool) -> bool {
        let other = match self {
            Self::Crumb => matches!(part, "crust" | "dough"),
            // Of pastry the crust is all there is.
            Self::Crust => matches!(part, "dough" | "flavour") || (part == "crumb" && has_word("crumb")),
            Self::Dough => matches!(part, "crust" | "crumb" | "flavour" | "keeping"),
            Self::Flavour => !matches!(part, "flavour" | "keeping"),
        };
        other && !self.stems().iter().any(|stem| has_word(stem))
    }
}

/// Whether the clause of a word or the next tells that it is being worked: "pastry too dry, falls apart while rolling".
fn is_worked(words: &Words, place: usize) -> bool {
    let own = words.clauses.iter().skip_while(|clause| !clause.contains(&place));
    let tokens = own.take(2).flat_map(|clause| words.tokens.get(clause.clone()).unwrap_or_default());
    tokens.into_iter().any(|token| WORKING.contains(&token.word.as_str()))
}

/// Whether a word before "taste" makes it a noun: "sour taste", and not "cookies taste".
fn is_adjective(token: &Token) -> bool {
    token.class == Class::Content && !token.word.ends_with('s')
}
