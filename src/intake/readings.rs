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
    /// A value whose reading or unit is not known.
    Unnamed { reason: &'static str, suggestions: Vec<Key<Reading>>, scales: Vec<InScale> },
}

impl Taken {
    fn unnamed(reason: &'static str, suggestions: Vec<Key<Reading>>) -> Self {
        Self::Unnamed { reason, suggestions, scales: Vec::new() }
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
    /// Takes each value for what the words around it say.
    pub(super) fn take(&self, declared: &Declarations, words: &Words, values: &[Value]) -> Vec<Taken> {
        let mut meanings = Meanings::default();
        let windows = (0..values.len()).map(|place| window(words, values, place)).collect::<Vec<_>>();
        values
            .iter()
            .zip(windows)
            .map(|(value, window)| self.take_one(declared, words, value, window, &mut meanings))
            .collect()
    }

    fn take_one(
        &self,
        declared: &Declarations,
        words: &Words,
        value: &Value,
        window: Range<usize>,
        meanings: &mut Meanings,
    ) -> Taken {
        let at = value.places.start;
        let found = self.candidates(declared, words, value, window, meanings);
        let suggestions =
            || found.iter().take(MOST_SUGGESTIONS).filter_map(|one| self.keys.get(one.entry)).copied().collect();
        let of_kind = |key: &&Key<Reading>| value.unit.unit.converts_to(&declared.readings[**key].unit);
        let kinds = self.keys.iter().filter(of_kind).count();
        if kinds == 0 {
            return Taken::unnamed(NO_READING, Vec::new());
        }
        if let Some(doubt) = value.doubt {
            return Taken::unnamed(doubt, suggestions());
        }
        // A pH can only be the one pH of the product.
        let only_one = kinds == 1 && !value.unit.implies.is_empty();
        let best = found.first().filter(|best| only_one || is_meant(best, found.get(1), at));
        let Some((best, key)) = best.and_then(|best| Some((best, *self.keys.get(best.entry)?))) else {
            let reason = if value.unit.doubtful { NO_SCALE } else { NOT_NAMED };
            return Taken::unnamed(reason, suggestions());
        };
        let named_by = best.named_by.iter().copied().filter(|place| *place != at).collect();
        let reading = &declared.readings[key];
        if value.unit.doubtful {
            return by_scale(value.value, key, reading, named_by);
        }
        match convert(value.value, &value.unit.unit, &reading.unit).ok().filter(|own| is_plausible(*own, reading)) {
            Some(value) => Taken::Reading { reading: key, value, named_by, note: None },
            None => Taken::unnamed(NOT_PLAUSIBLE, vec![key]),
        }
    }

    /// Readings of the value's kind that the words about it name, best first.
    fn candidates(
        &self,
        declared: &Declarations,
        words: &Words,
        value: &Value,
        window: Range<usize>,
        meanings: &mut Meanings,
    ) -> Vec<Found> {
        let own: Vec<bool> = (0..words.tokens.len()).map(|place| value.places.contains(&place)).collect();
        let mut statement = Statement::read(words, &window.into(), &self.index, meanings, &own);
        let at = value.places.start;
        value.unit.implies.iter().for_each(|word| statement.imply(at, &stem(word), &self.index));
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
        ([], _) => Taken::Unnamed { reason: NOT_PLAUSIBLE, suggestions: vec![key], scales },
        _ => Taken::Unnamed { reason: EITHER_SCALE, suggestions: vec![key], scales },
    }
}

/// Whether the best is named fully, by a word of the text and not by the unit alone, and better than the next.
fn is_meant(best: &Found, next: Option<&Found>, at: usize) -> bool {
    let by_word = best.named_by.iter().any(|place| *place != at);
    let ahead = next.is_none_or(|next| best.score - next.score >= TIE);
    best.recall >= SURE_RECALL && by_word && ahead
}

/// The words about a value: its statement, between the values beside it; with no word there, the whole statement.
fn window(words: &Words, values: &[Value], place: usize) -> Range<usize> {
    let Some(value) = values.get(place) else { return 0..0 };
    let Some(clause) = words.clauses.iter().find(|clause| clause.contains(&value.places.start)) else { return 0..0 };
    let statements = words.statements(clause);
    let whole = statements.into_iter().find(|statement| statement.contains(&value.places.start));
    let whole = whole.unwrap_or_else(|| clause.clone());
    let before = place.checked_sub(1).and_then(|place| values.get(place)).map_or(0, |value| value.places.end);
    let after = values.get(place + 1).map_or(usize::MAX, |value| value.places.start);
    let narrow = whole.start.max(before)..whole.end.min(after);
    let tells = |at: usize| {
        !value.places.contains(&at)
            && words.tokens.get(at).is_some_and(|token| matches!(token.class, Class::Content | Class::Product))
    };
    let leading = narrow.start..value.places.start.max(narrow.start);
    if leading.clone().any(tells) {
        leading
    } else if narrow.clone().any(tells) {
        narrow
    } else {
        whole
    }
}
