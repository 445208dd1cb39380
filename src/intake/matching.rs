//! How well the words of a statement name a thing.
//!
//! A library of full-text search ranks documents for one query; here one text names several things, each must be found with
//! the words that name it, and the score must say whether it is meant, not only whether it is the best. So the weights of
//! words are those of BM25, and the score is the geometric mean of two shares, both between 0 and 1:
//!
//! - *recall*: how much of the phrase that names the thing stands in the statement;
//! - *cover*: how much of what the statement says is about the thing.

use std::collections::HashMap;

use super::naming::{Entry, Phrase, PhraseWord};
use super::opposites::{Quality, excluded, qualities};
use super::parts::Part;
use super::phrases::{KIN, Meaning, PhraseIndex};
use super::windows::Window;
use super::words::{Class, Token, Words};

/// What a denial counts where the phrase speaks of a lack, and the other way round (chosen for this program).
const OTHER_TURN: f64 = 0.8;

/// What a name counts that says nothing of the qualities that the statement names (chosen for this program): "small loaf"
/// before what is called a loaf only.
const QUALITY_UNSAID: f64 = 0.9;

/// Least cover of what an unmistakable name names, however much else the statement says (chosen on the tables of
/// `tests/reference`): "weeps" in "the filling weeps after two days in the fridge".
const UNMISTAKABLE_COVER: f64 = 0.5;

/// What a name counts where the statement speaks of another part of the product (chosen for this program).
const ELSEWHERE: f64 = 0.95;

/// Recall of a name that is there in full.
const WHOLE: f64 = 0.999;

/// So many words together name nothing else.
const LONG_NAME: usize = 3;

/// A statement as an index understands it.
#[derive(Debug, Default)]
pub(super) struct Statement {
    /// Meanings of its content words, by place.
    meanings: Vec<(usize, Option<Meaning>)>,
    /// Places of words that turn round what they name: "underfilled", "unset", "tasteless".
    turned: Vec<usize>,
    /// Places of its denials.
    denials: Vec<usize>,
    /// Places of its words for a lack.
    lacks: Vec<usize>,
    /// Qualities that it names, but for those that a denial or lack turns round, by place.
    qualities: Vec<(usize, &'static [Quality])>,
    /// Parts of the product that it speaks of.
    parts: Vec<Part>,
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
    /// Whether no naming word is the name's own, but each only stands for it.
    pub(super) by_kin: bool,
    /// Whether it is named by a description and not by a name.
    pub(super) described: bool,
    /// Whether the statement speaks of another part of the product.
    pub(super) elsewhere: bool,
}

/// What a thing found must come to.
#[derive(Debug, Clone, Copy)]
pub(super) struct Threshold {
    pub(super) score: f64,
    pub(super) recall: f64,
}

impl Threshold {
    pub(super) fn is_met(self, found: &Found) -> bool {
        found.score >= self.score && found.recall >= self.recall
    }
}

impl Statement {
    /// Looks the words of a statement up; `taken` are words that something else has taken in.
    pub(super) fn look_up(
        words: &Words,
        window: &Window,
        index: &PhraseIndex,
        meanings: &mut Meanings,
        taken: &[bool],
    ) -> Self {
        let mut statement = Self::default();
        statement.parts.extend(window.about.clone().filter_map(|place| Part::named(words, place)));
        let mut joined = None;
        for place in window.places() {
            let Some(token) = words.tokens.get(place) else { continue };
            if joined == Some(place) {
                continue;
            }
            let next = words.tokens.get(place + 1).filter(|_| token.hyphen && place + 1 < window.range.end);
            if let Some(meaning) = next.and_then(|next| index.joined(&token.word, &next.word)) {
                joined = Some(place + 1);
                statement.meanings.extend([(place, Some(meaning)), (place + 1, Some(Meaning::default()))]);
                continue;
            }
            if taken.get(place).copied().unwrap_or_default() {
                continue;
            }
            statement.qualify(place, token);
            statement.parts.extend(Part::named(words, place));
            match token.class {
                Class::Content | Class::Product => {
                    let meaning = meanings.of(token, index);
                    statement.turn(place, meaning.as_ref());
                    statement.meanings.push((place, meaning));
                }
                Class::Denial | Class::Expectation => statement.denials.push(place),
                Class::Lack(_) | Class::Hardly => statement.lacks.push(place),
                Class::Stop | Class::Hedge | Class::Connector | Class::Number | Class::Sign => {}
            }
        }
        statement
    }

    fn turn(&mut self, place: usize, meaning: Option<&Meaning>) {
        let turns = match meaning.and_then(|meaning| meaning.turn.as_ref()) {
            Some(PhraseWord::Denial) => &mut self.denials,
            Some(PhraseWord::Lack) => &mut self.lacks,
            _ => return,
        };
        turns.push(place);
        self.turned.push(place);
    }

    fn qualify(&mut self, place: usize, token: &Token) {
        let named = qualities(&token.word, &token.stem);
        if self.denials.is_empty() && self.lacks.is_empty() && !named.is_empty() {
            self.qualities.push((place, named));
        }
    }

    /// Adds a word that the statement implies: a value in °C is a temperature.
    pub(super) fn imply(&mut self, place: usize, stem: &str, index: &PhraseIndex) {
        let stems = vec![(stem.to_owned(), 1.0)];
        let meaning = Meaning { weight: index.weight(stem), stems, ..Meaning::default() };
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
        let stated: Vec<Quality> = self.qualities.iter().flat_map(|(_, named)| named.iter().copied()).collect();
        let barred = |phrase: &Phrase| excluded(&phrase.qualities, &stated);
        let of_the_same = |phrase: &&Phrase| is_of_the_same(phrase, reached);
        let agrees = |phrase: &Phrase| !barred(phrase) && phrase.qualities.iter().any(|own| stated.contains(own));
        let mut same = entry.phrases.iter().filter(of_the_same);
        if same.clone().any(barred) && !same.any(agrees) {
            return None;
        }
        let (cover, about) = self.cover(index, entry);
        let open = entry.phrases.iter().filter(|phrase| !barred(phrase));
        let named = open.filter_map(|phrase| self.name(index, phrase, reached));
        // Of two names that are there as fully, the one that also takes in a denial is meant, then the one that tells more.
        let best = named.max_by(|a, b| {
            let turn = || a.turn.is_some().cmp(&b.turn.is_some());
            a.worth.total_cmp(&b.worth).then_with(turn).then_with(|| a.told.total_cmp(&b.told))
        })?;
        let cover = if best.unmistakable { cover.max(UNMISTAKABLE_COVER) } else { cover };
        let elsewhere = self.is_elsewhere(entry);
        Some(Found {
            entry: place,
            score: (cover * best.worth).sqrt() * if elsewhere { ELSEWHERE } else { 1.0 },
            elsewhere,
            recall: best.recall,
            named_by: best.places,
            about,
            turn: best.turn,
            turn_missing: best.turn_missing,
            misspelt: best.misspelt,
            by_kin: best.by_kin,
            described: best.described,
        })
    }

    /// Whether the statement names a part of the product, and the thing is of another.
    fn is_elsewhere(&self, entry: &Entry) -> bool {
        let Some(part) = &entry.part else { return false };
        let has_word = |stem: &str| entry.fields.contains_key(stem);
        !self.parts.is_empty() && self.parts.iter().all(|named| named.excludes(part, has_word))
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

    /// The phrase as the statement has it; `None` where it has no word of it.
    fn name(&self, index: &PhraseIndex, phrase: &Phrase, reached: &HashMap<&str, (f64, usize, bool)>) -> Option<Name> {
        let mut name = Name { misspelt: true, by_kin: true, described: phrase.share < 1.0, ..Name::default() };
        let mut total = 0.0;
        let stems = phrase.words.iter().filter_map(PhraseWord::stem);
        let mut told: Vec<(f64, f64, usize, bool)> = Vec::new();
        for stem in stems {
            let weight = index.weight(stem);
            total += weight;
            told.extend(reached.get(stem).map(|(factor, place, misspelt)| (*factor, weight, *place, *misspelt)));
        }
        told.sort_by(|a, b| b.0.total_cmp(&a.0));
        for (factor, weight, place, misspelt) in told {
            // A word that stands for two words of the name is one of them: "closed" for "close and heavy".
            if factor < 1.0 && name.places.contains(&place) {
                continue;
            }
            name.told += weight * factor;
            name.misspelt &= misspelt;
            name.by_kin &= factor <= KIN;
            name.places.push(place);
        }
        if name.places.is_empty() {
            return None;
        }
        for word in phrase.words.iter().filter(|word| word.stem().is_none()) {
            total += index.turn_weight();
            name.told += index.turn_weight() * self.turn_of(&mut name, word);
        }
        let turned_otherwise = |place: &usize| self.turned.contains(place) && name.turn != Some(*place);
        name.turn_missing |= name.places.iter().any(turned_otherwise);
        name.recall = name.told / total;
        let mut stems = phrase.words.iter().filter_map(PhraseWord::stem).peekable();
        name.unmistakable = name.recall >= WHOLE
            && !name.misspelt
            && !name.described
            && stems.peek().is_some()
            && (phrase.words.len() >= LONG_NAME || stems.all(|stem| index.is_unmistakable(stem)));
        let of_quality = |place: &usize| name.places.contains(place) || name.turn == Some(*place);
        let unsaid = !self.qualities.is_empty() && !self.qualities.iter().any(|(place, _)| of_quality(place));
        name.worth = name.recall * phrase.share * if unsaid { QUALITY_UNSAID } else { 1.0 };
        Some(name)
    }

    /// What the denial or lack of a phrase counts where the statement has such a word, or one of the other kind. A word that
    /// turns round what it names turns nothing else.
    fn turn_of(&self, name: &mut Name, word: &PhraseWord) -> f64 {
        let (own, other) = match word {
            PhraseWord::Denial => (&self.denials, &self.lacks),
            _ => (&self.lacks, &self.denials),
        };
        let usable = |place: &&usize| !self.turned.contains(place) || name.places.contains(place);
        let own = own.iter().find(usable).map(|place| (*place, 1.0));
        let found = own.or_else(|| other.iter().find(usable).map(|place| (*place, OTHER_TURN)));
        match found {
            Some((place, _)) => name.turn = Some(place),
            None => name.turn_missing = true,
        }
        found.map_or(0.0, |(_, share)| share)
    }
}

/// Whether a name is of the thing that the statement is about: "high volume" is, where the statement has "low volume".
fn is_of_the_same(phrase: &Phrase, reached: &HashMap<&str, (f64, usize, bool)>) -> bool {
    let has = |noun: &String| reached.get(noun.as_str()).is_some_and(|(factor, ..)| *factor >= 1.0);
    phrase.share >= 1.0 && !phrase.nouns.is_empty() && phrase.nouns.iter().all(has)
}

/// A phrase found.
#[derive(Default)]
struct Name {
    worth: f64,
    recall: f64,
    /// What its words tell.
    told: f64,
    places: Vec<usize>,
    turn: Option<usize>,
    turn_missing: bool,
    misspelt: bool,
    by_kin: bool,
    described: bool,
    /// Whether the name is there in full and is of nothing else.
    unmistakable: bool,
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
