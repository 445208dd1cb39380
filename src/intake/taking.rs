//! The values of a text as readings of the answer.

use super::answer::{
    ComplaintContradiction, ComplaintReading, PossibleUnit, RecognisedReading, SuggestedReading, UnnamedValue,
};
use super::draft::Sure;
use super::leftovers::{quote, quotes};
use super::reader::Reader;
use super::readings::{InScale, Taken};
use super::values::Value;
use crate::knowledge::{Key, Reading};

impl<'k> Reader<'_, 'k> {
    /// Takes the values in; the words that belong to them are marked as taken.
    pub(super) fn take_values(
        &self,
        values: &[Value],
        reading: &mut ComplaintReading<'k>,
        sure: &mut Sure<'k>,
        taken: &mut [bool],
    ) {
        let all = self.index.readings.take(self.declared, self.words, values);
        let mut take = |places: &mut dyn Iterator<Item = usize>| {
            for place in places {
                if let Some(slot) = taken.get_mut(place) {
                    *slot = true;
                }
            }
        };
        for (value, what) in values.iter().zip(all) {
            take(&mut value.places.clone());
            match what {
                Taken::Reading { reading: key, value: own, named_by, note } => {
                    reading.contradictions.extend(self.second_value(key, own, sure));
                    let places: Vec<usize> = named_by.iter().copied().chain(value.places.clone()).collect();
                    take(&mut named_by.into_iter());
                    reading.readings.push(self.recognised(key, own, note, &places));
                }
                Taken::Unnamed { reason, suggestions, scales, of } => {
                    take(&mut of.into_iter());
                    reading.values.push(self.unnamed(value, reason, &suggestions, &scales));
                }
            }
        }
        let twice: Vec<&str> = reading.contradictions.iter().flat_map(|one| one.ids.iter().copied()).collect();
        sure.readings.retain(|(id, ..)| !twice.contains(id));
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
