//! How the things of the rules are called: the phrases of their titles, synonyms and descriptions.

use std::collections::{BTreeMap, BTreeSet, HashMap};

use super::opposites::{Quality, qualities};
use super::words::{Class, Words};

/// How much a phrase of a description tells beside a title or synonym (chosen for this program).
const DESCRIPTION: f64 = 0.8;

/// What a word of a description counts where the title and synonyms do not have it (chosen for this program).
const DESCRIPTION_WORD: f64 = 0.6;

/// A word of a phrase.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum PhraseWord {
    /// A stem.
    Stem(String),
    /// A denial, as in "not crisp".
    Denial,
    /// A lack, as in "low volume".
    Lack,
}

impl PhraseWord {
    /// The stem; none of a denial or lack.
    pub(super) fn stem(&self) -> Option<&str> {
        match self {
            Self::Stem(stem) => Some(stem),
            Self::Denial | Self::Lack => None,
        }
    }
}

/// Words that name a thing.
#[derive(Debug, Clone)]
pub(super) struct Phrase {
    pub(super) words: Vec<PhraseWord>,
    /// What the phrase counts, to 1.
    pub(super) share: f64,
    /// Qualities that it names; those that a denial or lack turns round are the opposite.
    pub(super) qualities: Vec<Quality>,
    /// Stems of its other words, but for those for the product itself.
    pub(super) nouns: Vec<String>,
}

/// One thing: how it is called.
#[derive(Debug, Default)]
pub(super) struct Entry {
    pub(super) phrases: Vec<Phrase>,
    /// What each of its stems counts, to 1.
    pub(super) fields: HashMap<String, f64>,
    /// The part of the product that it concerns; none of what concerns no part.
    pub(super) part: Option<String>,
}

/// Names of one thing, in the order of their worth.
#[derive(Debug, Default)]
pub(super) struct Naming<'k> {
    /// Id, titles and synonyms.
    pub(super) names: Vec<&'k str>,
    /// Its description.
    pub(super) description: &'k str,
    /// The part of the product, of a symptom.
    pub(super) part: Option<&'k str>,
}

impl Entry {
    pub(super) fn new(naming: &Naming<'_>, spelt: &mut BTreeMap<String, String>) -> Self {
        let mut entry = Self { part: naming.part.map(str::to_owned), ..Self::default() };
        let mut told = BTreeSet::new();
        for name in &naming.names {
            for words in variants(name) {
                if told.insert(words.join(" ")) {
                    entry.add(&words.join(" "), 1.0, 1.0, spelt);
                }
            }
        }
        for part in naming.description.split([',', ';', ':', '.']) {
            entry.add(part, DESCRIPTION, DESCRIPTION_WORD, spelt);
        }
        entry
    }

    fn add(&mut self, text: &str, share: f64, of_word: f64, spelt: &mut BTreeMap<String, String>) {
        let (mut words, mut named, mut nouns) = (Vec::new(), Vec::new(), Vec::new());
        for token in Words::of(text).tokens {
            let denies = words.iter().any(|word: &PhraseWord| word.stem().is_none());
            let own = qualities(&token.word, &token.stem).iter();
            if token.class == Class::Content && own.len() == 0 {
                nouns.push(token.stem.clone());
            }
            named.extend(own.map(|quality| if denies { quality.opposite() } else { *quality }));
            let word = match token.class {
                Class::Content | Class::Product => PhraseWord::Stem(token.stem.clone()),
                Class::Denial => PhraseWord::Denial,
                Class::Lack(_) | Class::Hardly => PhraseWord::Lack,
                Class::Stop | Class::Expectation | Class::Hedge | Class::Connector | Class::Number | Class::Sign => {
                    continue;
                }
            };
            if let PhraseWord::Stem(stem) = &word {
                let counts = self.fields.entry(stem.clone()).or_default();
                *counts = counts.max(of_word);
                spelt.insert(token.word, stem.clone());
            }
            if !words.contains(&word) {
                words.push(word);
            }
        }
        if words.iter().any(|word| matches!(word, PhraseWord::Stem(_))) {
            self.phrases.push(Phrase { words, share, qualities: named, nouns });
        }
    }
}

/// A name whole, and the names that it joins: "Dark or burnt bottom" is "dark bottom", too, and "Cap torn off (shell top)"
/// two names.
fn variants(name: &str) -> Vec<Vec<String>> {
    let name = name.replace('_', " ");
    let mut variants = Vec::new();
    for part in name.split(['(', ')', ':']) {
        let whole: Vec<String> = part.split_whitespace().map(str::to_owned).collect();
        if whole.is_empty() {
            continue;
        }
        variants.extend(joined(part));
        variants.push(whole);
    }
    variants
}

/// The names that commas and "or" join. A single word borrows the rest of its name from a longer one: its end when it comes
/// before it ("pale, soft sides"), its beginning when it comes behind ("large holes or tunnels").
fn joined(part: &str) -> Vec<Vec<String>> {
    let pieces = part.split(',').flat_map(|piece| piece.split(" or "));
    let joints: Vec<Vec<&str>> = pieces.map(|joint| joint.split_whitespace().collect()).collect();
    if joints.len() < 2 {
        return Vec::new();
    }
    let head = joints.iter().find(|joint| joint.len() > 1).and_then(|joint| joint.get(1..)).unwrap_or_default();
    let mut beginning: &[&str] = &[];
    let mut names = Vec::new();
    for joint in &joints {
        let name: Vec<&str> = match joint.as_slice() {
            [] => continue,
            [_] if beginning.is_empty() => joint.iter().chain(head).copied().collect(),
            [_] => beginning.iter().chain(joint).copied().collect(),
            [all_but_last @ .., _] => {
                beginning = all_but_last;
                joint.clone()
            }
        };
        names.push(name.into_iter().map(str::to_owned).collect());
    }
    names
}

#[cfg(test)]
mod tests {
    use super::variants;

    #[test]
    fn joined_names_are_told_apart() {
        let told: Vec<String> = variants("Dark or burnt bottom").iter().map(|words| words.join(" ")).collect();
        assert_eq!(told, ["Dark bottom", "burnt bottom", "Dark or burnt bottom"]);
        let told: Vec<String> = variants("Large holes or tunnels").iter().map(|words| words.join(" ")).collect();
        assert_eq!(told, ["Large holes", "Large tunnels", "Large holes or tunnels"]);
        let told: Vec<String> =
            variants("Pale, soft sides or bottom").iter().take(3).map(|words| words.join(" ")).collect();
        assert_eq!(told, ["Pale sides", "soft sides", "soft bottom"]);
        let told: Vec<String> = variants("Weeping (syneresis)").iter().map(|words| words.join(" ")).collect();
        assert_eq!(told, ["Weeping", "syneresis"]);
    }
}
