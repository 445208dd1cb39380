//! How well the words of a statement name a thing.
//!
//! A library of full-text search ranks documents for one query; here one text names several things, each must be found with
//! the words that name it, and the score must say whether it is meant, not only whether it is the best. So the weights of
//! words are those of BM25, and the score is the geometric mean of two shares, both between 0 and 1:
//!
//! - *recall*: how much of the phrase that names the thing stands in the statement;
//! - *cover*: how much of what the statement says is about the thing.

use std::collections::HashMap;
use std::ops::Range;

use super::phrases::{Entry, Meaning, Phrase, PhraseIndex, PhraseWord};
use super::words::{Class, Token, Words};

/// What a denial counts where the phrase speaks of a lack, and the other way round (chosen for this program).
const OTHER_TURN: f64 = 0.8;

/// A statement as an index understands it.
#[derive(Debug)]
pub(super) struct Statement {
    /// Places of its tokens in the text.
    pub(super) range: Range<usize>,
    /// Meanings of its content words, by place.
    meanings: Vec<(usize, Option<Meaning>)>,
    /// Places of its denials.
    denials: Vec<usize>,
    /// Places of its words for a lack.
    lacks: Vec<usize>,
}

/// A thing found in a statement.
#[derive(Debug, Clone)]
pub(super) struct Found {
    /// Place of the thing in the index.
    pub(super) entry: usize,
    /// 0 to 1.
    pub(super) score: f64,
    /// Share of the naming phrase that the statement has.
    pub(super) recall: f64,
    /// Places of the words that name it.
    pub(super) named_by: Vec<usize>,
    /// Places of all words that are about it.
    pub(super) about: Vec<usize>,
    /// The denial or lack that belongs to the name.
    pub(super) turn: Option<usize>,
    /// Whether the name denies, and the statement does not.
    pub(super) turn_missing: bool,
    /// Whether every naming word has a slip.
    pub(super) misspelt: bool,
    /// Whether it is named by a description and not by a name.
    pub(super) described: bool,
}

impl Statement {
    /// Looks the words of a statement up; `taken` are words that something else has taken in.
    pub(super) fn read(
        words: &Words,
        range: Range<usize>,
        index: &PhraseIndex,
        meanings: &mut Meanings,
        taken: &[bool],
    ) -> Self {
        let mut statement = Self { range: range.clone(), meanings: Vec::new(), denials: Vec::new(), lacks: Vec::new() };
        let end = range.end;
        let mut joined = None;
        for place in range {
            let Some(token) = words.tokens.get(place) else { continue };
            if joined == Some(place) {
                continue;
            }
            let next = words.tokens.get(place + 1).filter(|_| token.hyphen && place + 1 < end);
            if let Some(meaning) = next.and_then(|next| index.joined(&token.word, &next.word)) {
                joined = Some(place + 1);
                statement.meanings.extend([(place, Some(meaning)), (place + 1, Some(Meaning::default()))]);
                continue;
            }
            if taken.get(place).copied().unwrap_or_default() {
                continue;
            }
            match token.class {
                Class::Content | Class::Product => {
                    statement.meanings.push((place, meanings.of(token, index)));
                }
                Class::Denial => statement.denials.push(place),
                Class::Lack(_) => statement.lacks.push(place),
                Class::Stop | Class::Hedge | Class::Connector | Class::Number | Class::Sign => {}
            }
        }
        statement
    }

    /// Adds a word that the statement implies: a value in °C is a temperature.
    pub(super) fn imply(&mut self, place: usize, stem: &str, index: &PhraseIndex) {
        let stems = vec![(stem.to_owned(), 1.0)];
        let meaning = Meaning { weight: index.weight(stem), stems, misspelt: false };
        self.meanings.push((place, Some(meaning)));
    }

    /// Everything of the index that the statement names to some degree.
    pub(super) fn find(&self, index: &PhraseIndex) -> Vec<Found> {
        let mut reached: HashMap<&str, (f64, usize, bool)> = HashMap::new();
        for (place, meaning) in &self.meanings {
            for (stem, factor) in meaning.iter().flat_map(|meaning| &meaning.stems) {
                let misspelt = meaning.as_ref().is_some_and(|meaning| meaning.misspelt);
                let best = reached.entry(stem).or_insert((*factor, *place, misspelt));
                if *factor > best.0 {
                    *best = (*factor, *place, misspelt);
                }
            }
        }
        if reached.is_empty() {
            return Vec::new();
        }
        let entries = index.entries.iter().enumerate();
        entries.filter_map(|(place, entry)| self.weigh(index, place, entry, &reached)).collect()
    }

    fn weigh(
        &self,
        index: &PhraseIndex,
        place: usize,
        entry: &Entry,
        reached: &HashMap<&str, (f64, usize, bool)>,
    ) -> Option<Found> {
        if !entry.fields.keys().any(|stem| reached.contains_key(stem.as_str())) {
            return None;
        }
        let (cover, about) = self.cover(index, entry);
        let named = entry.phrases.iter().filter_map(|phrase| self.name(index, phrase, reached));
        // Of two names that are there as fully, the one that also takes in a denial is meant.
        let best = named.max_by(|a, b| (a.worth.total_cmp(&b.worth)).then(a.turn.is_some().cmp(&b.turn.is_some())))?;
        Some(Found {
            entry: place,
            score: (cover * best.worth).sqrt(),
            recall: best.recall,
            named_by: best.places,
            about,
            turn: best.turn,
            turn_missing: best.turn_missing,
            misspelt: best.misspelt,
            described: best.described,
        })
    }

    /// Share of the statement that is about a thing, and the places of its words.
    fn cover(&self, index: &PhraseIndex, entry: &Entry) -> (f64, Vec<usize>) {
        let (mut total, mut covered, mut about) = (0.0, 0.0, Vec::new());
        for (place, meaning) in &self.meanings {
            let Some(meaning) = meaning else {
                total += index.unknown_weight();
                continue;
            };
            total += meaning.weight;
            let counts = |(stem, factor): &(String, f64)| entry.fields.get(stem).map(|field| factor * field);
            let best = meaning.stems.iter().filter_map(counts).fold(0.0, f64::max);
            if best > 0.0 {
                covered += meaning.weight * best;
                about.push(*place);
            }
        }
        (if total > 0.0 { covered / total } else { 0.0 }, about)
    }

    fn name(&self, index: &PhraseIndex, phrase: &Phrase, reached: &HashMap<&str, (f64, usize, bool)>) -> Option<Name> {
        let (mut total, mut matched) = (0.0, 0.0);
        let mut name = Name {
            worth: 0.0,
            recall: 0.0,
            places: Vec::new(),
            turn: None,
            turn_missing: false,
            misspelt: true,
            described: phrase.share < 1.0,
        };
        for word in &phrase.words {
            match word {
                PhraseWord::Stem(stem) => {
                    let weight = index.weight(stem);
                    total += weight;
                    if let Some((factor, place, misspelt)) = reached.get(stem.as_str()) {
                        matched += weight * factor;
                        name.misspelt &= misspelt;
                        name.places.push(*place);
                    }
                }
                PhraseWord::Denial | PhraseWord::Lack => {
                    let own_first = *word == PhraseWord::Denial;
                    let (own, other) =
                        if own_first { (&self.denials, &self.lacks) } else { (&self.lacks, &self.denials) };
                    let weight = index.turn_weight();
                    total += weight;
                    if let Some(place) = own.first() {
                        matched += weight;
                        name.turn = Some(*place);
                    } else if let Some(place) = other.first() {
                        matched += weight * OTHER_TURN;
                        name.turn = Some(*place);
                    } else {
                        name.turn_missing = true;
                    }
                }
            }
        }
        if name.places.is_empty() {
            return None;
        }
        name.recall = matched / total;
        name.worth = name.recall * phrase.share;
        Some(name)
    }
}

/// A phrase found.
struct Name {
    worth: f64,
    recall: f64,
    places: Vec<usize>,
    turn: Option<usize>,
    turn_missing: bool,
    misspelt: bool,
    described: bool,
}

/// Meanings that were looked up before: the same word stands in several windows of a text.
#[derive(Debug, Default)]
pub(super) struct Meanings(HashMap<String, Option<Meaning>>);

impl Meanings {
    fn of(&mut self, token: &Token, index: &PhraseIndex) -> Option<Meaning> {
        if let Some(known) = self.0.get(&token.word) {
            return known.clone();
        }
        let meaning = index.meaning(&token.word, &token.stem, token.class);
        self.0.insert(token.word.clone(), meaning.clone());
        meaning
    }
}
