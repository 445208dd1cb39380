//! Which readings the values of a text are.

use std::ops::Range;

use super::matching::{Found, Meanings, Statement};
use super::phrases::PhraseIndex;
use super::values::Value;
use super::words::{Class, Words, stem};
use crate::knowledge::{Declarations, Key, Reading};
use crate::units::{Unit, convert};

/// Least share of a reading's name for it to be meant (chosen on the tables of `tests/reference`).
const SURE_RECALL: f64 = 0.85;

/// Scores nearer than this do not tell two readings apart.
const TIE: f64 = 0.03;

/// Most readings suggested for a value.
const MOST_SUGGESTIONS: usize = 4;

/// Least temperature that only the oven of a bakery has, °C (common practice: bread and biscuits are baked at 150 to 300 °C,
/// while dough, proofers and kettles stay below 125 °C); [`HOT_OTHERWISE`] are the exceptions.
const LEAST_OVEN: f64 = 150.0;

/// Stems of the words for other hot things.
const HOT_OTHERWISE: &[&str] =
    &["oil", "fat", "fri", "fryer", "caramel", "sugar", "syrup", "burner", "flame", "tin", "pan", "band", "steam"];

/// Stems of the words for what is measured, which the next value does not share: "proof temperature 38 °C, 55 min".
const QUANTITIES: &[&str] = &["temperatur", "temp", "time", "humid", "weight", "rh", "ph"];

const NOT_NAMED: &str = "the words do not tell what was measured";
const NOT_PLAUSIBLE: &str = "the value cannot be true for that reading";
const NO_SCALE: &str = "degrees of which scale is not said, nor what was measured";
const EITHER_SCALE: &str = "degrees of which scale is not said, and either can be true for that reading";
const NO_READING: &str = "the rules have no reading of that kind";

/// What a value is taken for.
#[derive(Debug)]
pub(super) enum Taken {
    /// A value of a reading, in its unit, and the words that name it.
    Reading { reading: Key<Reading>, value: f64, named_by: Vec<usize>, note: Option<String> },
    /// A value whose reading or unit is not known, and the word that it is of: "yeast 2 %".
    Unnamed { reason: &'static str, suggestions: Vec<Key<Reading>>, scales: Vec<InScale>, of: Option<usize> },
}

impl Taken {
    fn unnamed(reason: &'static str, suggestions: Vec<Key<Reading>>) -> Self {
        Self::Unnamed { reason, suggestions, scales: Vec::new(), of: None }
    }

    /// Adds the word that it is of.
    fn of(mut self, word: Option<usize>) -> Self {
        if let Self::Unnamed { of, .. } = &mut self {
            *of = word;
        }
        self
    }
}

/// What degrees of one scale are of a reading.
#[derive(Debug)]
pub(super) struct InScale {
    pub(super) code: &'static str,
    /// In the reading's own unit.
    pub(super) value: f64,
    pub(super) plausible: bool,
}

/// Readings of a product by their names.
#[derive(Debug)]
pub(super) struct ReadingWords {
    pub(super) keys: Vec<Key<Reading>>,
    pub(super) index: PhraseIndex,
}

impl ReadingWords {
    /// Takes each value for what the words around it say; a value without words of its own is of what the one beside it is of.
    pub(super) fn take(&self, declared: &Declarations, words: &Words, values: &[Value]) -> Vec<Taken> {
        let mut meanings = Meanings::default();
        let mut taken: Vec<Taken> =
            (0..values.len()).map(|place| self.take_one(declared, words, values, place, &[], &mut meanings)).collect();
        for place in (0..values.len()).chain((0..values.len()).rev()) {
            let topic = topic(words, values, &taken, place);
            let Some(value) = values.get(place).filter(|value| value.doubt.is_none() && !topic.is_empty()) else {
                continue;
            };
            let carried = self.take_one(declared, words, values, place, &topic, &mut meanings);
            let Some(slot) = taken.get_mut(place) else { continue };
            if !value.unit.names && matches!((&slot, &carried), (Taken::Unnamed { .. }, Taken::Reading { .. })) {
                *slot = carried;
            }
        }
        taken
    }

    fn take_one(
        &self,
        declared: &Declarations,
        words: &Words,
        values: &[Value],
        place: usize,
        topic: &[String],
        meanings: &mut Meanings,
    ) -> Taken {
        let Some(value) = values.get(place) else { return Taken::unnamed(NOT_NAMED, Vec::new()) };
        let of_kind = |key: &&Key<Reading>| value.unit.unit.converts_to(&declared.readings[**key].unit);
        let kinds = self.keys.iter().filter(of_kind).count();
        if kinds == 0 {
            return Taken::unnamed(NO_READING, Vec::new());
        }
        // A pH can only be the one pH of the product.
        let only_one = kinds == 1 && !value.unit.implies.is_empty();
        let mut first: Option<Vec<Found>> = None;
        let mut meant: Option<Found> = None;
        for window in windows(words, values, place) {
            let found = self.candidates(declared, words, value, window, topic, meanings);
            meant = found
                .first()
                .filter(|best| only_one || is_meant(best, found.get(1), value, !topic.is_empty()))
                .cloned();
            if first.is_none() || meant.is_some() {
                first = (!found.is_empty()).then_some(found);
            }
            if meant.is_some() {
                break;
            }
        }
        let found = first.unwrap_or_default();
        let suggested =
            found.iter().take(MOST_SUGGESTIONS).filter_map(|one| self.keys.get(one.entry)).copied().collect();
        let word = found.first().and_then(|best| last_word(words, value).filter(|word| best.named_by.contains(word)));
        if let Some(doubt) = value.doubt {
            return Taken::unnamed(doubt, suggested).of(word);
        }
        let Some((best, key)) =
            meant.and_then(|best| Some((*self.keys.get(best.entry)?, best))).map(|(key, best)| (best, key))
        else {
            if let Some(oven) = self.oven(declared, words, values, place) {
                return oven;
            }
            let reason = if value.unit.doubtful { NO_SCALE } else { NOT_NAMED };
            return Taken::unnamed(reason, suggested).of(word);
        };
        let named_by = best.named_by.iter().copied().filter(|named| *named != value.places.start).collect();
        let reading = &declared.readings[key];
        if value.unit.doubtful {
            return by_scale(value.value, key, reading, named_by);
        }
        match convert(value.value, &value.unit.unit, &reading.unit).ok().filter(|own| is_plausible(*own, reading)) {
            Some(value) => Taken::Reading { reading: key, value, named_by, note: None },
            None => Taken::unnamed(NOT_PLAUSIBLE, vec![key]),
        }
    }

    /// A temperature that only an oven has, where no words name anything else that is as hot.
    fn oven(&self, declared: &Declarations, words: &Words, values: &[Value], place: usize) -> Option<Taken> {
        let value = values.get(place).filter(|value| !value.unit.doubtful && value.doubt.is_none())?;
        let celsius = convert(value.value, &value.unit.unit, &Unit::parse("Cel").ok()?).ok()?;
        let hot_otherwise = |window: &Range<usize>| {
            let tokens = words.tokens.get(window.clone()).unwrap_or_default();
            tokens.iter().any(|token| HOT_OTHERWISE.contains(&token.stem.as_str()))
        };
        if celsius < LEAST_OVEN || windows(words, values, place).first().is_some_and(hot_otherwise) {
            return None;
        }
        let mut meanings = Meanings::default();
        let topic = [stem("oven")];
        let own = value.places.clone();
        let found = self.candidates(declared, words, value, own.start..own.start, &topic, &mut meanings);
        let best = found.first().filter(|best| is_meant(best, found.get(1), value, true))?;
        let key = *self.keys.get(best.entry)?;
        let reading = &declared.readings[key];
        let own =
            convert(value.value, &value.unit.unit, &reading.unit).ok().filter(|own| is_plausible(*own, reading))?;
        let note = Some("no words name it: only the oven is so hot".to_owned());
        Some(Taken::Reading { reading: key, value: own, named_by: Vec::new(), note })
    }

    /// Readings of the value's kind that the words about it name, best first.
    fn candidates(
        &self,
        declared: &Declarations,
        words: &Words,
        value: &Value,
        window: Range<usize>,
        topic: &[String],
        meanings: &mut Meanings,
    ) -> Vec<Found> {
        let own: Vec<bool> = (0..words.tokens.len()).map(|place| value.places.contains(&place)).collect();
        let mut statement = Statement::read(words, &window.into(), &self.index, meanings, &own);
        let at = value.places.start;
        value.unit.implies.iter().for_each(|word| statement.imply(at, &stem(word), &self.index));
        topic.iter().for_each(|stem| statement.imply(at, stem, &self.index));
        let fits = |found: &Found| {
            let reading = self.keys.get(found.entry).map(|key| &declared.readings[*key]);
            reading.is_some_and(|reading| value.unit.unit.converts_to(&reading.unit))
        };
        let mut found: Vec<Found> = statement.find(&self.index).into_iter().filter(fits).collect();
        found.sort_by(|a, b| b.score.total_cmp(&a.score).then(a.entry.cmp(&b.entry)));
        found
    }
}

fn is_plausible(value: f64, reading: &Reading) -> bool {
    (reading.plausible.low..=reading.plausible.high).contains(&value)
}

/// Degrees of a named reading: the scale is the only one in which the reading can have the value; otherwise it is left open.
fn by_scale(degrees: f64, key: Key<Reading>, reading: &Reading, named_by: Vec<usize>) -> Taken {
    let in_scale = |code: &'static str| {
        let value = convert(degrees, &Unit::parse(code).ok()?, &reading.unit).ok()?;
        Some(InScale { code, value, plausible: is_plausible(value, reading) })
    };
    let scales: Vec<InScale> = ["Cel", "[degF]"].into_iter().filter_map(in_scale).collect();
    let (plausible, others): (Vec<&InScale>, Vec<&InScale>) = scales.iter().partition(|scale| scale.plausible);
    match (plausible.as_slice(), others.as_slice()) {
        ([one], [other]) => {
            let note = format!("the scale is not said: {degrees} {} cannot be true for it", other.code);
            Taken::Reading { reading: key, value: one.value, named_by, note: Some(note) }
        }
        ([], _) => Taken::Unnamed { reason: NOT_PLAUSIBLE, suggestions: vec![key], scales, of: None },
        _ => Taken::Unnamed { reason: EITHER_SCALE, suggestions: vec![key], scales, of: None },
    }
}

/// Whether the best is named fully, by a word of the text or a unit that names it, and better than the next.
fn is_meant(best: &Found, next: Option<&Found>, value: &Value, topic: bool) -> bool {
    let by_word = topic || value.unit.names || best.named_by.iter().any(|place| *place != value.places.start);
    let ahead = next.is_none_or(|next| best.score - next.score >= TIE);
    best.recall >= SURE_RECALL && by_word && ahead
}

/// The words about a value, the nearest first: what stands before it in its statement, since the value before; what stands
/// between the values beside it; the whole statement.
fn windows(words: &Words, values: &[Value], place: usize) -> Vec<Range<usize>> {
    let Some(value) = values.get(place) else { return Vec::new() };
    let Some(clause) = words.clauses.iter().find(|clause| clause.contains(&value.places.start)) else {
        return Vec::new();
    };
    let statements = words.statements(clause);
    let whole = statements.into_iter().find(|statement| statement.contains(&value.places.start));
    let whole = whole.unwrap_or_else(|| clause.clone());
    let before = place.checked_sub(1).and_then(|place| values.get(place)).map_or(0, |value| value.places.end);
    let after = values.get(place + 1).map_or(usize::MAX, |value| value.places.start);
    let narrow = whole.start.max(before)..whole.end.min(after);
    let leading = narrow.start..value.places.start.max(narrow.start);
    let tells = |at: usize| !value.places.contains(&at) && tells(words, at);
    let told: Vec<Range<usize>> = [leading, narrow].into_iter().filter(|window| window.clone().any(tells)).collect();
    if told.is_empty() { vec![whole] } else { told }
}

/// The word right before a value, but for words without meaning.
fn last_word(words: &Words, value: &Value) -> Option<usize> {
    let clause = words.clauses.iter().find(|clause| clause.contains(&value.places.start))?;
    let class = |at: &usize| words.tokens.get(*at).map(|token| token.class);
    let last = (clause.start..value.places.start).rev().find(|at| class(at) != Some(Class::Stop))?;
    (class(&last) == Some(Class::Content)).then_some(last)
}

fn tells(words: &Words, place: usize) -> bool {
    words.tokens.get(place).is_some_and(|token| matches!(token.class, Class::Content | Class::Product))
}

/// Stems of the words that name the reading beside a value that has no words of its own: "proofer 38 °C, 85 % rH, 55 min".
fn topic(words: &Words, values: &[Value], taken: &[Taken], place: usize) -> Vec<String> {
    let before = told_by(words, values, taken, place, (0..place).rev());
    before.or_else(|| told_by(words, values, taken, place, place + 1..values.len())).unwrap_or_default()
}

/// Stems of the words that name the first of some readings with words of its own, as long as no words part them.
fn told_by(
    words: &Words,
    values: &[Value],
    taken: &[Taken],
    place: usize,
    beside: impl Iterator<Item = usize>,
) -> Option<Vec<String>> {
    let mut last = values.get(place)?;
    for other in beside {
        let neighbour = values.get(other)?;
        let mut between = neighbour.places.end.min(last.places.end)..neighbour.places.start.max(last.places.start);
        let Some(Taken::Reading { named_by, note, .. }) = taken.get(other) else { return None };
        if between.any(|at| tells(words, at)) {
            return None;
        }
        let named = named_by.iter().filter_map(|at| words.tokens.get(*at)).map(|token| token.stem.clone());
        let named: Vec<String> = named.filter(|stem| !QUANTITIES.contains(&stem.as_str())).collect();
        if !named.is_empty() {
            return Some(named);
        }
        if note.is_some() {
            return Some(vec![stem("oven")]);
        }
        last = neighbour;
    }
    None
}
