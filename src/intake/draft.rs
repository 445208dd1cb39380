//! The case that follows from what is sure.

use std::collections::BTreeMap;

use crate::case::{CaseDocument, ReadingDocument, SymptomDocument};
use crate::inference::MAX_SYMPTOMS;

/// Certainty of what the speaker hedges: "perhaps a pale crust" (chosen for this program; the case can be changed).
const HEDGED: f64 = 0.7;

/// What is sure of a text.
#[derive(Debug, Default)]
pub(super) struct Sure<'k> {
    /// Symptoms, best first: id, whether present, whether hedged.
    pub(super) symptoms: Vec<(&'k str, bool, bool)>,
    /// Readings: id, value, unit code.
    pub(super) readings: Vec<(&'k str, f64, &'k str)>,
    /// Facts.
    pub(super) facts: Vec<(&'k str, bool)>,
}

/// The case. Symptoms beyond those that can be weighed exactly are left out, the least sure first.
pub(super) fn draft(product: &str, sure: &Sure<'_>) -> CaseDocument {
    let symptom = |(id, present, hedged): &(&str, bool, bool)| SymptomDocument {
        symptom: (*id).to_owned(),
        present: (!present).then_some(false),
        certainty: hedged.then_some(HEDGED),
    };
    let reading = |(id, value, unit): &(&str, f64, &str)| {
        let document = ReadingDocument { value: *value, unit: (*unit).to_owned(), low: None, target: None, high: None };
        ((*id).to_owned(), document)
    };
    CaseDocument {
        product: product.to_owned(),
        symptoms: sure.symptoms.iter().take(MAX_SYMPTOMS).map(symptom).collect(),
        readings: sure.readings.iter().map(reading).collect::<BTreeMap<_, _>>(),
        facts: sure.facts.iter().map(|(id, stated)| ((*id).to_owned(), *stated)).collect(),
        ..CaseDocument::default()
    }
}
