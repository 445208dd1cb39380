//! The values of a text in the answer: those of a reading, and those of which that is not known.

use super::alarms::Alarm;
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

/// The words that values and alarms have taken in.
#[derive(Debug)]
pub(super) struct Spent {
    /// Words that tell nothing else.
    pub(super) taken: Vec<bool>,
    /// Words for what was measured that may name a symptom, too, but none that is sure.
    measured: Vec<bool>,
    /// Words for what was measured that by themselves name a symptom.
    shared: Vec<bool>,
    /// Words of alarms.
    alarming: Vec<bool>,
}

impl Spent {
    pub(super) fn new(words: usize) -> Self {
        let none = || vec![false; words];
        Self { taken: none(), measured: none(), shared: none(), alarming: none() }
    }

    fn mark(slots: &mut [bool], places: impl IntoIterator<Item = usize>) {
        for place in places {
            if let Some(slot) = slots.get_mut(place) {
                *slot = true;
            }
        }
    }

    /// Notes the words of an alarm.
    pub(super) fn alarm(&mut self, (_, places): &Alarm) {
        Self::mark(&mut self.alarming, places.iter().copied());
    }

    /// Whether the words of a name leave open what they are of: all are for what was measured, or the only one raises an
    /// alarm, as the sesame of an allergy does, of which no bun loses its seeds.
    pub(super) fn leave_open(&self, named_by: &[usize]) -> bool {
        let is = |slots: &[bool], place: &usize| slots.get(*place).copied().unwrap_or_default();
        let alarming = matches!(named_by, [only] if is(&self.alarming, only));
        alarming || named_by.iter().all(|place| is(&self.measured, place))
    }

    /// All of their places.
    pub(super) fn places(&self) -> impl Iterator<Item = usize> + '_ {
        let all = [&self.taken, &self.measured, &self.shared, &self.alarming];
        all.into_iter().flat_map(|slots| slots.iter().enumerate().filter(|(_, spent)| **spent).map(|(place, _)| place))
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
                    self.spend(&named_by, declared, spent);
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

    /// Notes the words that name a reading. "Mould after 3 days" also tells that there is mould, "mould-free life 21 days" need
    /// not, and "acrylamide 120 µg/kg" may be high or not.
    fn spend(&self, named_by: &[usize], reading: &Reading, spent: &mut Spent) {
        let shows = reading.low_shows.or(reading.high_shows).is_some();
        for at in named_by {
            let within_name = named_by.iter().any(|other| at.abs_diff(*other) == 1);
            let slots = match self.is_symptom(*at) {
                true if !within_name => &mut spent.shared,
                false if !shows => &mut spent.taken,
                _ => &mut spent.measured,
            };
            Spent::mark(slots, [*at]);
        }
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
