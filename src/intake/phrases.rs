//! The words of the rules, indexed: how much each word tells, and what a word of a text may mean.

use std::collections::{BTreeMap, BTreeSet, HashMap};

use super::naming::{Entry, Naming, PhraseWord};
use super::words::{Class, kin, names_product, stem};

/// What a word for the thing itself tells, of a usual word (chosen for this program).
const PRODUCT_WORD: f64 = 0.2;

/// What a word counts that stands for another (chosen for this program).
pub(super) const KIN: f64 = 0.8;

/// What the degree of a quality counts for the quality (chosen for this program).
const DEGREE: f64 = 0.9;

/// What a misspelt word counts (chosen for this program).
const MISSPELT: f64 = 0.85;

/// Shortest word whose misspellings are looked for. Four in five misspellings
/// are one edit away (Damerau F. J., A technique for computer detection and correction of spelling errors, 1964).
const SHORTEST_MISSPELT: usize = 4;

/// Shortest word of which two edits are forgiven (chosen for this program).
const SHORTEST_WITH_TWO_EDITS: usize = 8;

/// Endings of participles.
const PARTICIPLES: [&str; 2] = ["ed", "ing"];

/// Of a word in a longer name of another thing the thing itself is still the first meaning.
const SHORT_NAME: usize = 2;

/// Shortest half of a compound.
const SHORTEST_HALF: usize = 3;

/// Things of one kind by the words that name them.
#[derive(Debug)]
pub(super) struct PhraseIndex {
    pub(super) entries: Vec<Entry>,
    /// In the order of the stems, so that their sum rounds alike in every run.
    rarity: BTreeMap<String, f64>,
    /// In how many things a stem stands in a title or synonym.
    named: HashMap<String, usize>,
    /// Mean rarity: what a word tells that the index does not know.
    usual: f64,
    /// What a word for the thing itself tells, of a usual word.
    product_word: f64,
    /// Every word in full with its stem: what a misspelt word is compared with.
    spelt: BTreeMap<String, String>,
    /// Words that name something else rightly, and so are no slips of these.
    others: BTreeSet<String>,
}

/// What a word of a text may mean.
#[derive(Debug, Clone, Default)]
pub(super) struct Meaning {
    /// Stems of the index, with what each counts, to 1.
    pub(super) stems: Vec<(String, f64)>,
    /// What the word tells.
    pub(super) weight: f64,
    /// Whether it is another word with a slip.
    pub(super) misspelt: bool,
    /// The denial or lack that the word holds: "unset", "underfilled".
    pub(super) turn: Option<PhraseWord>,
}

impl PhraseIndex {
    /// Things that are found on a product: the words for the product itself say little.
    pub(super) fn new<'k>(namings: impl Iterator<Item = Naming<'k>>) -> Self {
        Self::weighted(namings, PRODUCT_WORD)
    }

    /// The products themselves.
    pub(super) fn of_products<'k>(namings: impl Iterator<Item = Naming<'k>>) -> Self {
        Self::weighted(namings, 1.0)
    }

    fn weighted<'k>(namings: impl Iterator<Item = Naming<'k>>, product_word: f64) -> Self {
        let mut spelt = BTreeMap::new();
        let entries: Vec<Entry> = namings.map(|naming| Entry::new(&naming, &mut spelt)).collect();
        let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
        for entry in &entries {
            entry.fields.keys().for_each(|stem| *counts.entry(stem).or_default() += 1);
        }
        let rarity: BTreeMap<String, f64> =
            counts.into_iter().map(|(stem, count)| (stem.to_owned(), rarity(entries.len(), count))).collect();
        #[allow(clippy::cast_precision_loss)] // a few thousand words
        let usual = rarity.values().sum::<f64>() / rarity.len().max(1) as f64;
        let named = named(&entries);
        Self { entries, rarity, named, usual, product_word, spelt, others: BTreeSet::new() }
    }

    /// The same, beside things with other names: a "burger" is no misspelt burner.
    pub(super) fn beside(self, others: &BTreeSet<String>) -> Self {
        Self { others: others.clone(), ..self }
    }

    /// What a stem tells.
    pub(super) fn weight(&self, stem: &str) -> f64 {
        let factor = if names_product(stem) { self.product_word } else { 1.0 };
        self.rarity.get(stem).copied().unwrap_or(self.usual) * factor
    }

    /// Whether one thing alone has the stem in its title or synonyms.
    pub(super) fn is_unmistakable(&self, stem: &str) -> bool {
        self.named.get(stem) == Some(&1)
    }

    /// What a denial or a lack tells in a phrase.
    pub(super) fn turn_weight(&self) -> f64 {
        self.usual
    }

    /// What a word of a text means here; `None` when nothing comes near it.
    pub(super) fn meaning(&self, word: &str, word_stem: &str, class: Class) -> Option<Meaning> {
        let worth = |stems: &[(String, f64)]| {
            if class == Class::Product {
                return self.usual * self.product_word;
            }
            stems.iter().map(|(stem, _)| self.weight(stem)).fold(0.0, f64::max)
        };
        let mut stems = self.with_kin(word_stem, 1.0);
        stems.extend(self.degrees(word));
        let mut turn = None;
        if stems.is_empty() {
            // "Underfilled" is too little filled, "undercrust" is under the crust.
            let turned = self.turned(word);
            let halves = if turned.is_some() && PARTICIPLES.iter().any(|ending| word.ends_with(ending)) {
                Vec::new()
            } else {
                self.halves(word)
            };
            (stems, turn) = match turned {
                Some((stems, turn)) if halves.is_empty() => (stems, Some(turn)),
                _ => (halves, None),
            };
        }
        if !stems.is_empty() || class == Class::Product {
            return Some(Meaning { weight: worth(&stems), stems, turn, misspelt: false });
        }
        let meant = self.nearest(word)?;
        let stems = self.with_kin(meant, MISSPELT);
        Some(Meaning { weight: worth(&stems), stems, misspelt: true, turn: None })
    }

    /// What two words mean that a hyphen joins, where they mean something together: `under-done`.
    pub(super) fn joined(&self, first: &str, second: &str) -> Option<Meaning> {
        let stems = self.with_kin(&stem(&format!("{first}{second}")), 1.0);
        let weight = stems.iter().map(|(stem, _)| self.weight(stem)).fold(0.0, f64::max);
        (!stems.is_empty()).then_some(Meaning { stems, weight, ..Meaning::default() })
    }

    /// What a word tells that means nothing here.
    pub(super) fn unknown_weight(&self) -> f64 {
        self.usual / 2.0
    }

    fn with_kin(&self, stem: &str, factor: f64) -> Vec<(String, f64)> {
        let own = std::iter::once((stem, factor));
        let others = kin(stem).iter().map(|other| (other.as_str(), factor * KIN));
        own.chain(others)
            .filter(|(stem, _)| self.rarity.contains_key(*stem))
            .map(|(stem, factor)| (stem.to_owned(), factor))
            .collect()
    }

    /// The quality whose degree a word tells: `darker`, `toughened`. Stemmers leave them alone, since `corner` ends so, too.
    fn degrees(&self, word: &str) -> Vec<(String, f64)> {
        let bases = ["er", "est", "ened", "ening", "en"].into_iter().filter_map(|ending| word.strip_suffix(ending));
        bases.map(|base| self.with_kin(&stem(base), DEGREE)).find(|stems| !stems.is_empty()).unwrap_or_default()
    }

    /// What a word names that it also turns round: `underfilled`, `unset`, `tasteless`.
    fn turned(&self, word: &str) -> Option<(Vec<(String, f64)>, PhraseWord)> {
        let rests = [
            (word.strip_prefix("under"), PhraseWord::Lack),
            (word.strip_suffix("less"), PhraseWord::Lack),
            (word.strip_prefix("un"), PhraseWord::Denial),
            (word.strip_prefix("non"), PhraseWord::Denial),
        ];
        let long = |rest: &&str| rest.len() >= SHORTEST_HALF;
        rests.into_iter().find_map(|(rest, turn)| {
            let stems = self.with_kin(&stem(rest.filter(long)?), 1.0);
            (!stems.is_empty()).then_some((stems, turn))
        })
    }

    /// The halves of a compound: `undercrust`.
    fn halves(&self, word: &str) -> Vec<(String, f64)> {
        let places = word.char_indices().map(|(at, _)| at).filter(|at| *at >= SHORTEST_HALF);
        for at in places.filter(|at| word.len() - at >= SHORTEST_HALF) {
            let (Some(first), Some(second)) = (word.get(..at), word.get(at..)) else { continue };
            if self.spelt.contains_key(first) && self.spelt.contains_key(second) {
                return vec![(stem(first), 1.0), (stem(second), 1.0)];
            }
        }
        Vec::new()
    }

    /// The stem of the word that was meant.
    fn nearest(&self, word: &str) -> Option<&str> {
        let length = word.chars().count();
        if length < SHORTEST_MISSPELT || self.others.contains(word) {
            return None;
        }
        let most = if length < SHORTEST_WITH_TWO_EDITS { 1 } else { 2 };
        let first = word.chars().next();
        let candidates = self.spelt.iter().filter(|(known, _)| {
            let known_length = known.chars().count();
            known_length.abs_diff(length) <= most && known_length >= SHORTEST_MISSPELT
        });
        candidates
            .map(|(known, stem)| (strsim::osa_distance(word, known), known.chars().next() != first, stem))
            // A wrong first letter is rare: it counts as an edit of its own.
            .filter(|(edits, other_first, _)| edits + usize::from(*other_first) <= most)
            .min()
            .map(|(_, _, stem)| stem.as_str())
    }
}

/// In how many things each stem stands in a title or synonym.
fn named(entries: &[Entry]) -> HashMap<String, usize> {
    let mut counts = HashMap::new();
    for entry in entries {
        let names = entry.phrases.iter().filter(|phrase| phrase.share >= 1.0 && phrase.words.len() <= SHORT_NAME);
        let stems: BTreeSet<&str> = names.flat_map(|phrase| &phrase.words).filter_map(PhraseWord::stem).collect();
        stems.into_iter().for_each(|stem| *counts.entry(stem.to_owned()).or_default() += 1);
    }
    counts
}

/// Inverse document frequency as BM25 has it (Robertson and Zaragoza 2009, The Probabilistic Relevance Framework: BM25 and
/// Beyond, section 3).
#[allow(clippy::cast_precision_loss)] // a few hundred things
fn rarity(things: usize, with_word: usize) -> f64 {
    (1.0 + (things as f64 - with_word as f64 + 0.5) / (with_word as f64 + 0.5)).ln()
}

#[cfg(test)]
mod tests {
    use super::{Naming, PhraseIndex};
    use crate::intake::words::{Class, stem};

    #[test]
    fn misspelt_and_joined_words_are_understood() {
        let naming = Naming { names: vec!["hollow under the crust"], description: "Blisters.", part: None };
        let index = PhraseIndex::new(std::iter::once(naming));
        let stems = |word: &str| {
            let meaning = index.meaning(word, &stem(word), Class::Content);
            meaning.map(|meaning| meaning.stems.into_iter().map(|(stem, _)| stem).collect::<Vec<_>>())
        };
        assert_eq!(stems("holow"), Some(vec!["hollow".to_owned()]));
        assert_eq!(stems("undercrust"), Some(vec!["under".to_owned(), "crust".to_owned()]));
        assert_eq!(stems("blistres"), Some(vec!["blister".to_owned()]));
        assert_eq!(stems("greetings"), None);
    }

    #[test]
    fn what_unknown_words_tell_does_not_change_from_one_index_to_the_next() {
        // Sums of floating-point numbers depend on their order, that of a hash map on chance.
        let names: Vec<String> =
            (0..97).map(|place: u32| format!("word{place} part{} kind{}", place % 7, place % 11)).collect();
        let index = || {
            let naming = |name| Naming { names: vec![name], description: "", part: None };
            PhraseIndex::new(names.iter().map(String::as_str).map(naming)).unknown_weight().to_bits()
        };
        let first = index();
        assert!((0..16).all(|_| index() == first));
    }
}
