//! The words of the rules, indexed: which phrases name a thing, and how much each word tells.

use std::collections::{BTreeMap, BTreeSet, HashMap};

use super::words::{Class, Words, kin, names_product, stem};

/// How much a phrase of a description tells beside a title or synonym (chosen for this program).
const DESCRIPTION: f64 = 0.8;

/// What a word of a description counts where the title and synonyms do not have it (chosen for this program).
const DESCRIPTION_WORD: f64 = 0.6;

/// What a word for the thing itself tells, of a usual word (chosen for this program).
const PRODUCT_WORD: f64 = 0.2;

/// What a word counts that stands for another (chosen for this program).
const KIN: f64 = 0.8;

/// What the degree of a quality counts for the quality (chosen for this program).
const DEGREE: f64 = 0.9;

/// What a misspelt word counts (chosen for this program).
const MISSPELT: f64 = 0.85;

/// Shortest word whose misspellings are looked for, and from which on two edits are forgiven. Four in five misspellings
/// are one edit away (Damerau F. J., A technique for computer detection and correction of spelling errors, 1964).
const LENGTHS: (usize, usize) = (4, 8);

/// Shortest half of a compound.
const SHORTEST_HALF: usize = 3;

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

/// Words that name a thing.
#[derive(Debug, Clone)]
pub(super) struct Phrase {
    pub(super) words: Vec<PhraseWord>,
    /// What the phrase counts, to 1.
    pub(super) share: f64,
}

/// One thing: how it is called.
#[derive(Debug, Default)]
pub(super) struct Entry {
    pub(super) phrases: Vec<Phrase>,
    /// What each of its stems counts, to 1.
    pub(super) fields: HashMap<String, f64>,
}

/// Names of one thing, in the order of their worth.
#[derive(Debug, Default)]
pub(super) struct Naming<'k> {
    /// Id, titles and synonyms.
    pub(super) names: Vec<&'k str>,
    /// Its description.
    pub(super) description: &'k str,
}

/// Things of one kind by the words that name them.
#[derive(Debug)]
pub(super) struct PhraseIndex {
    pub(super) entries: Vec<Entry>,
    rarity: HashMap<String, f64>,
    /// Mean rarity: what a word tells that the index does not know.
    usual: f64,
    /// What a word for the thing itself tells, of a usual word.
    product_word: f64,
    /// Every word in full with its stem: what a misspelt word is compared with.
    spelt: BTreeMap<String, String>,
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
        let mut counts: HashMap<&str, usize> = HashMap::new();
        for entry in &entries {
            entry.fields.keys().for_each(|stem| *counts.entry(stem).or_default() += 1);
        }
        let rarity: HashMap<String, f64> =
            counts.into_iter().map(|(stem, count)| (stem.to_owned(), rarity(entries.len(), count))).collect();
        #[allow(clippy::cast_precision_loss)] // a few thousand words
        let usual = rarity.values().sum::<f64>() / rarity.len().max(1) as f64;
        Self { entries, rarity, usual, product_word, spelt }
    }

    /// What a stem tells.
    pub(super) fn weight(&self, stem: &str) -> f64 {
        let factor = if names_product(stem) { self.product_word } else { 1.0 };
        self.rarity.get(stem).copied().unwrap_or(self.usual) * factor
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
        if stems.is_empty() {
            stems = self.halves(word);
        }
        if !stems.is_empty() || class == Class::Product {
            return Some(Meaning { weight: worth(&stems), stems, misspelt: false });
        }
        let meant = self.nearest(word)?;
        let stems = self.with_kin(meant, MISSPELT);
        Some(Meaning { weight: worth(&stems), stems, misspelt: true })
    }

    /// What two words mean that a hyphen joins, where they mean something together: `under-done`.
    pub(super) fn joined(&self, first: &str, second: &str) -> Option<Meaning> {
        let stems = self.with_kin(&stem(&format!("{first}{second}")), 1.0);
        let weight = stems.iter().map(|(stem, _)| self.weight(stem)).fold(0.0, f64::max);
        (!stems.is_empty()).then_some(Meaning { stems, weight, misspelt: false })
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
        if length < LENGTHS.0 {
            return None;
        }
        let most = if length < LENGTHS.1 { 1 } else { 2 };
        let first = word.chars().next();
        let candidates = self.spelt.iter().filter(|(known, _)| {
            let known_length = known.chars().count();
            known_length.abs_diff(length) <= most && known_length >= LENGTHS.0
        });
        candidates
            .map(|(known, stem)| (strsim::osa_distance(word, known), known.chars().next() != first, stem))
            // A wrong first letter is rare: it counts as an edit of its own.
            .filter(|(edits, other_first, _)| edits + usize::from(*other_first) <= most)
            .min()
            .map(|(_, _, stem)| stem.as_str())
    }
}

/// Inverse document frequency as BM25 has it (Robertson and Zaragoza 2009, The Probabilistic Relevance Framework: BM25 and
/// Beyond, section 3).
#[allow(clippy::cast_precision_loss)] // a few hundred things
fn rarity(things: usize, with_word: usize) -> f64 {
    (1.0 + (things as f64 - with_word as f64 + 0.5) / (with_word as f64 + 0.5)).ln()
}

impl Entry {
    fn new(naming: &Naming<'_>, spelt: &mut BTreeMap<String, String>) -> Self {
        let mut entry = Self::default();
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
        let mut words = Vec::new();
        for token in Words::of(text).tokens {
            let word = match token.class {
                Class::Content | Class::Product => PhraseWord::Stem(token.stem.clone()),
                Class::Denial => PhraseWord::Denial,
                Class::Lack(_) => PhraseWord::Lack,
                Class::Stop | Class::Hedge | Class::Connector | Class::Number | Class::Sign => continue,
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
            self.phrases.push(Phrase { words, share });
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
    use super::{Naming, PhraseIndex, variants};
    use crate::intake::words::{Class, stem};

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

    #[test]
    fn misspelt_and_joined_words_are_understood() {
        let naming = Naming { names: vec!["hollow under the crust"], description: "Blisters." };
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
}
