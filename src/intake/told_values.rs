//! The values of a text in the answer: those of a reading, and those of which that is not known.

use super::answer::{
    ComplaintContradiction, Interpretation, PossibleUnit, RecognisedReading, SuggestedReading, UnnamedValue,
};
use super::assignment::{Assigned, InScale};
use super::draft::Sure;
use super::interpreter::Interpreter;
use super::leftovers::{quote, quotes};
use super::values::Value;
use super::words::{kin, stem};
use crate::knowledge::{Key, Reading};

/// The words that values have taken in.
#[derive(Debug)]
pub(super) struct Spent {
    /// Words that tell nothing else.
    pub(super) taken: Vec<bool>,
    /// Words for what was measured that may name a symptom, too, but none that is sure.
    pub(super) measured: Vec<bool>,
}

impl Spent {
    pub(super) fn new(words: usize) -> Self {
        Self { taken: vec![false; words], measured: vec![false; words] }
    }

    fn mark(slots: &mut [bool], places: impl IntoIterator<Item = usize>) {
        for place in places {
            if let Some(slot) = slots.get_mut(place) {
                *slot = true;
            }
        }
    }

    /// All of their places.
    pub(super) fn places(&self) -> impl Iterator<Item = usize> + '_ {
        let both = self.taken.iter().zip(&self.measured).enumerate();
        both.filter(|(_, (taken, measured))| **taken || **measured).map(|(place, _)| place)
    }
}

impl<'k> Interpreter<'_, 'k> {
    /// Takes the values in, and the words that belong to them.
    pub(super) fn take_values(
        &self,
        values: &[Value],
        answer: &mut Interpretation<'k>,
        sure: &mut Sure<'k>,
        spent: &mut Spent,
    ) {
        let all = self.index.readings.assign(self.declared, self.words, values);
        for (value, what) in values.iter().zip(all) {
            Spent::mark(&mut spent.taken, value.places.clone());
            match what {
                Assigned::Reading { reading: key, value: own, named_by, note } => {
                    answer.contradictions.extend(self.second_value(key, own, sure));
                    let places: Vec<usize> = named_by.iter().copied().chain(value.places.clone()).collect();
                    let declared = &self.declared.readings[key];
                    // "Mouldy after 3 days" also tells that it is mouldy.
                    let shows = declared.low_shows.or(declared.high_shows).is_some();
                    let (of_symptoms, others) =
                        named_by.into_iter().partition::<Vec<_>, _>(|at| shows || self.is_symptom(*at));
                    Spent::mark(&mut spent.measured, of_symptoms);
                    Spent::mark(&mut spent.taken, others);
                    answer.readings.push(self.recognised(key, own, note, &places));
                }
                Assigned::Unnamed { reason, suggestions, scales, of } => {
                    Spent::mark(&mut spent.taken, of.into_iter().filter(|at| !self.is_symptom(*at)));
                    answer.values.push(self.unnamed(value, reason, &suggestions, &scales));
                }
            }
        }
        let twice: Vec<&str> = answer.contradictions.iter().flat_map(|one| one.ids.iter().copied()).collect();
        sure.readings.retain(|(id, ..)| !twice.contains(id));
    }

    /// Whether a word is the id of a symptom, or stands for it.
    fn is_symptom(&self, place: usize) -> bool {
        let Some(token) = self.words.tokens.get(place) else { return false };
        let mut ids = self.index.symptom_keys.iter().map(|key| stem(&self.declared.symptoms[*key].id));
        ids.any(|id| id == token.stem || kin(&token.stem).contains(&id))
    }

    /// Notes the value of a reading; another value of the same is a contradiction.
    fn second_value(&self, key: Key<Reading>, own: f64, sure: &mut Sure<'k>) -> Option<ComplaintContradiction<'k>> {
        let declared = &self.declared.readings[key];
        let (id, unit) = (declared.id.as_str(), declared.unit.code());
        let Some(other) = sure.readings.iter().find(|(other, ..)| *other == id) else {
            sure.readings.push((id, own, unit));
            return None;
        };
        let differs = (other.1 - own).abs() > f64::EPSILON;
        differs.then(|| ComplaintContradiction { ids: vec![id], text: format!("`{id}` has two values") })
    }

    fn recognised(
        &self,
        key: Key<Reading>,
        value: f64,
        note: Option<String>,
        places: &[usize],
    ) -> RecognisedReading<'k> {
        let declared = &self.declared.readings[key];
        let quotes = quotes(self.text, self.words, places);
        let unit = declared.unit.code();
        RecognisedReading { reading: &declared.id, title: &declared.title, value, unit, note, quotes }
    }

    fn unnamed(
        &self,
        value: &Value,
        reason: &'static str,
        suggestions: &[Key<Reading>],
        scales: &[InScale],
    ) -> UnnamedValue<'k> {
        let suggested = suggestions.iter().map(|key| &self.declared.readings[*key]);
        let reading_unit = suggested.clone().next().map_or("", |reading| reading.unit.code());
        let unit = |scale: &InScale| PossibleUnit {
            unit: scale.code,
            value: scale.value,
            reading_unit,
            plausible: scale.plausible,
        };
        UnnamedValue {
            value: value.value,
            unit: value.unit.unit.code().to_owned(),
            reason,
            suggestions: suggested.map(|own| SuggestedReading { reading: &own.id, title: &own.title }).collect(),
            units: scales.iter().map(unit).collect(),
            quote: quote(self.text, self.words, value.places.clone()),
        }
    }
}
