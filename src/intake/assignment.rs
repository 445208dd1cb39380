//! Which reading each value of a text is assigned to.

use std::collections::HashMap;
use std::ops::Range;

use super::matching::{Found, Meanings, Statement};
use super::phrases::PhraseIndex;
use super::value_text::{KEEPING, OVEN, ValueText};
use super::values::Value;
use super::words::{Words, stem};
use crate::knowledge::{Declarations, Key, Reading};
use crate::units::{Unit, convert};

/// Least share of a reading's name for it to be meant (chosen on the tables of `tests/reference`).
const SURE_RECALL: f64 = 0.85;

/// Scores nearer than this do not tell two readings apart.
const TIE: f64 = 0.03;

/// Most readings suggested for a value.
const MOST_SUGGESTIONS: usize = 4;

/// Least temperature that only the oven of a bakery has, °C (common practice: bread and biscuits are baked at 150 to 300 °C,
/// while dough, proofers and kettles stay below 125 °C); [`ValueText::is_hot_otherwise`] has the exceptions.
const LEAST_OVEN: f64 = 150.0;

const NOT_NAMED: &str = "the words do not tell what was measured";
const NOT_PLAUSIBLE: &str = "the value cannot be true for that reading";
const NO_SCALE: &str = "degrees of which scale is not said, nor what was measured";
const EITHER_SCALE: &str = "degrees of which scale is not said, and either can be true for that reading";
const NO_READING: &str = "the rules have no reading of that kind";

/// What a value is assigned for.
#[derive(Debug)]
pub(super) enum Assigned {
    /// A value of a reading, in its unit, and the words that name it.
    Reading { reading: Key<Reading>, value: f64, named_by: Vec<usize>, note: Option<String> },
    /// A value that is no measured value of a known reading in a known unit, and the words that it is of: "yeast 2 %".
    Unnamed { reason: &'static str, suggestions: Vec<Key<Reading>>, scales: Vec<InScale>, of: Vec<usize> },
}

impl Assigned {
    fn unnamed(reason: &'static str, suggestions: Vec<Key<Reading>>) -> Self {
        Self::Unnamed { reason, suggestions, scales: Vec::new(), of: Vec::new() }
    }

    /// Adds the words that it is of.
    fn of(mut self, words: Vec<usize>) -> Self {
        if let Self::Unnamed { of, .. } = &mut self {
            *of = words;
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

/// A value of a text whose reading is asked for.
#[derive(Debug, Clone, Copy)]
struct Asked<'a> {
    declared: &'a Declarations,
    text: ValueText<'a>,
    /// Place of the value in the text's values.
    place: usize,
    value: &'a Value,
    /// Stems of what the values beside it are of.
    topic: &'a [String],
}

/// Readings of a product by their names.
#[derive(Debug)]
pub(super) struct ReadingNames {
    pub(super) keys: Vec<Key<Reading>>,
    pub(super) index: PhraseIndex,
}

impl ReadingNames {
    /// Assigns each value to the reading that the words around it name; a value without words of its own is of what the one beside it is of.
    pub(super) fn assign(&self, declared: &Declarations, words: &Words, values: &[Value]) -> Vec<Assigned> {
        let text = ValueText { words, values };
        let mut meanings = Meanings::default();
        let mut assigned: Vec<Assigned> = Vec::with_capacity(values.len());
        for (place, value) in values.iter().enumerate() {
            assigned.push(self.assign_one(Asked { declared, text, place, value, topic: &[] }, &mut meanings));
        }
        for place in (0..values.len()).chain((0..values.len()).rev()) {
            let Some(value) = values.get(place).filter(|value| value.doubt.is_none() && !value.unit.names) else {
                continue;
            };
            let topic = text.topic(&assigned, place);
            let Some(slot) = assigned.get_mut(place).filter(|_| !topic.is_empty()) else { continue };
            let carried = self.assign_one(Asked { declared, text, place, value, topic: &topic }, &mut meanings);
            if matches!((&slot, &carried), (Assigned::Unnamed { .. }, Assigned::Reading { .. })) {
                *slot = carried;
            }
        }
        assigned
    }

    fn assign_one(&self, asked: Asked<'_>, meanings: &mut Meanings) -> Assigned {
        let Asked { declared, text, value, topic, .. } = asked;
        let kinds = (0..self.keys.len()).filter(|entry| self.is_of_kind(declared, value, *entry)).count();
        if kinds == 0 {
            return Assigned::unnamed(NO_READING, Vec::new());
        }
        // A pH can only be the one pH of the product.
        let only_one = kinds == 1 && !value.unit.implies.is_empty();
        let is_meant = |here: &[Found]| {
            here.first().is_some_and(|best| only_one || is_meant(best, here.get(1), value, !topic.is_empty()))
        };
        let (found, meant) = self.nearest(asked, meanings, is_meant);
        let last_word = || {
            let best = found.first()?;
            text.last_word(value).filter(|word| best.named_by.contains(word))
        };
        let suggested =
            || found.iter().take(MOST_SUGGESTIONS).filter_map(|one| self.keys.get(one.entry)).copied().collect();
        if let Some(doubt) = value.doubt {
            let own = |best: &Found| best.named_by.iter().copied().filter(|at| *at != value.places.start).collect();
            let named = meant.as_ref().map_or_else(|| last_word().into_iter().collect(), own);
            return Assigned::unnamed(doubt, suggested()).of(named);
        }
        let key = meant.as_ref().and_then(|best| self.keys.get(best.entry).copied());
        if let Some((best, key)) = meant.zip(key) {
            let named_by = best.named_by.into_iter().filter(|named| *named != value.places.start).collect();
            return measured(value, key, &declared.readings[key], named_by);
        }
        let reason = if value.unit.doubtful { NO_SCALE } else { NOT_NAMED };
        self.oven(asked, meanings)
            .unwrap_or_else(|| Assigned::unnamed(reason, suggested()).of(last_word().into_iter().collect()))
    }

    /// What the nearest words name that name anything, best first, and the best where it is meant; words farther off are asked
    /// while it is not.
    fn nearest(
        &self,
        asked: Asked<'_>,
        meanings: &mut Meanings,
        is_meant: impl Fn(&[Found]) -> bool,
    ) -> (Vec<Found>, Option<Found>) {
        let mut found: Vec<Found> = Vec::new();
        for window in asked.text.windows(asked.place) {
            let here = self.candidates(asked, window, meanings);
            if is_meant(&here) {
                let best = here.first().cloned();
                return (here, best);
            }
            if found.is_empty() {
                found = here;
            }
        }
        (found, None)
    }

    /// A temperature that only an oven has, where no words name anything else that is as hot.
    fn oven(&self, asked: Asked<'_>, meanings: &mut Meanings) -> Option<Assigned> {
        let Asked { declared, text, place, value, .. } = asked;
        let celsius = convert(value.value, &value.unit.unit, &Unit::parse("Cel").ok()?).ok()?;
        if value.unit.doubtful || celsius < LEAST_OVEN || text.is_hot_otherwise(place) {
            return None;
        }
        let nowhere = value.places.start..value.places.start;
        let found = self.candidates(Asked { topic: &[stem(OVEN)], ..asked }, nowhere, meanings);
        let best = found.first().filter(|best| is_meant(best, found.get(1), value, true))?;
        let key = *self.keys.get(best.entry)?;
        match measured(value, key, &declared.readings[key], Vec::new()) {
            Assigned::Reading { reading, value, named_by, .. } => {
                let note = Some("no words name it: only the oven is so hot".to_owned());
                Some(Assigned::Reading { reading, value, named_by, note })
            }
            Assigned::Unnamed { .. } => None,
        }
    }

    /// Readings of the value's kind that the words about it name, best first.
    fn candidates(&self, asked: Asked<'_>, window: Range<usize>, meanings: &mut Meanings) -> Vec<Found> {
        let Asked { declared, text, value, topic, .. } = asked;
        let words = text.words;
        let own: Vec<bool> = (0..words.tokens.len()).map(|place| value.places.contains(&place)).collect();
        let mut statement = Statement::look_up(words, &window.into(), &self.index, meanings, &own);
        let at = value.places.start;
        value.unit.implies.iter().for_each(|word| statement.imply(at, &stem(word), &self.index));
        topic.iter().for_each(|stem| statement.imply(at, stem, &self.index));
        let surroundings = text.surroundings(value);
        let fits = |found: &Found| {
            self.is_of_kind(declared, value, found.entry)
                && surroundings.is_none_or(|place| self.is_of_surroundings(found.entry, place))
        };
        let mut found: Vec<Found> = statement.find(&self.index).into_iter().filter(fits).collect();
        found.sort_by(|a, b| b.score.total_cmp(&a.score).then(a.entry.cmp(&b.entry)));
        found
    }

    /// Whether a reading can have the unit; where the unit tells what was measured, as °Brix do, whether the reading is that.
    fn is_of_kind(&self, declared: &Declarations, value: &Value, entry: usize) -> bool {
        let converts = self.keys.get(entry).is_some_and(|key| {
            let reading = &declared.readings[*key];
            value.unit.unit.converts_to(&reading.unit)
        });
        let has = |word: &&str| self.fields(entry).is_some_and(|fields| fields.contains_key(&stem(word)));
        converts && (!value.unit.names || value.unit.implies.iter().all(has))
    }

    /// Whether a reading is of the surroundings of the product, or of where it is kept.
    fn is_of_surroundings(&self, entry: usize, place: &str) -> bool {
        let of = |stem: &str| self.fields(entry).is_some_and(|fields| fields.contains_key(stem));
        of(place) || KEEPING.iter().any(|stem| of(stem))
    }

    fn fields(&self, entry: usize) -> Option<&HashMap<String, f64>> {
        self.index.entries.get(entry).map(|entry| &entry.fields)
    }
}

/// A value of the reading that the words name, in the reading's unit.
fn measured(value: &Value, key: Key<Reading>, reading: &Reading, named_by: Vec<usize>) -> Assigned {
    if value.unit.doubtful {
        return by_scale(value.value, key, reading, named_by);
    }
    let own = convert(value.value, &value.unit.unit, &reading.unit).ok();
    match own.filter(|own| is_plausible(*own, reading)) {
        Some(value) => Assigned::Reading { reading: key, value, named_by, note: None },
        None => Assigned::unnamed(NOT_PLAUSIBLE, vec![key]),
    }
}

fn is_plausible(value: f64, reading: &Reading) -> bool {
    (reading.plausible.low..=reading.plausible.high).contains(&value)
}

/// Degrees of a named reading: the scale is the only one in which the reading can have the value; otherwise it is left open.
fn by_scale(degrees: f64, key: Key<Reading>, reading: &Reading, named_by: Vec<usize>) -> Assigned {
    let in_scale = |code: &'static str| {
        let value = convert(degrees, &Unit::parse(code).ok()?, &reading.unit).ok()?;
        Some(InScale { code, value, plausible: is_plausible(value, reading) })
    };
    let scales: Vec<InScale> = ["Cel", "[degF]"].into_iter().filter_map(in_scale).collect();
    let (plausible, others): (Vec<&InScale>, Vec<&InScale>) = scales.iter().partition(|scale| scale.plausible);
    match (plausible.as_slice(), others.as_slice()) {
        ([one], [other]) => {
            let note = format!("the scale is not said: {degrees} {} cannot be true for it", other.code);
            Assigned::Reading { reading: key, value: one.value, named_by, note: Some(note) }
        }
        ([], _) => Assigned::Unnamed { reason: NOT_PLAUSIBLE, suggestions: vec![key], scales, of: Vec::new() },
        _ => Assigned::Unnamed { reason: EITHER_SCALE, suggestions: vec![key], scales, of: Vec::new() },
    }
}

/// Whether the best is named fully, by a word of the text or a unit that names it, and better than the next.
fn is_meant(best: &Found, next: Option<&Found>, value: &Value, topic: bool) -> bool {
    let by_word = topic || value.unit.names || best.named_by.iter().any(|place| *place != value.places.start);
    let ahead = next.is_none_or(|next| best.score - next.score >= TIE);
    best.recall >= SURE_RECALL && by_word && ahead
}
