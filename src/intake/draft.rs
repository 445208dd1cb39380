//! The case that follows from what is sure.

use std::collections::BTreeMap;

use super::answer::Saying;
use crate::case::{CaseDocument, ReadingDocument, SymptomDocument};

/// Certainty of what the speaker hedges: "perhaps a pale crust" (chosen for this program; the case can be changed).
const HEDGED: f64 = 0.7;

/// Certainty of what is hardly there (chosen likewise).
const HARDLY: f64 = 0.3;

/// What is sure of a text.
#[derive(Debug, Default)]
pub(super) struct Sure<'k> {
    /// Symptoms, best first and no more than can be weighed exactly: id, what is said of it, whether hedged.
    pub(super) symptoms: Vec<(&'k str, Saying, bool)>,
    /// Readings: id, value, unit code.
    pub(super) readings: Vec<(&'k str, f64, &'k str)>,
    /// Facts.
    pub(super) facts: Vec<(&'k str, bool)>,
}

/// The case.
pub(super) fn draft(product: &str, sure: &Sure<'_>) -> CaseDocument {
    let symptom = |(id, said, hedged): &(&str, Saying, bool)| SymptomDocument {
        symptom: (*id).to_owned(),
        present: (*said == Saying::Absent).then_some(false),
        certainty: if *said == Saying::Hardly { Some(HARDLY) } else { hedged.then_some(HEDGED) },
    };
    let reading = |(id, value, unit): &(&str, f64, &str)| {
        let document = ReadingDocument { value: *value, unit: (*unit).to_owned(), low: None, target: None, high: None };
        ((*id).to_owned(), document)
    };
    CaseDocument {
        product: product.to_owned(),
        symptoms: sure.symptoms.iter().map(symptom).collect(),
        readings: sure.readings.iter().map(reading).collect::<BTreeMap<_, _>>(),
        facts: sure.facts.iter().map(|(id, stated)| ((*id).to_owned(), *stated)).collect(),
        ..CaseDocument::default()
    }
}
