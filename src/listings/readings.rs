//! The readings of the rules: what can be measured.

use serde::Serialize;
use utoipa::ToSchema;

use super::parts::{SourceItem, keys, sources};
use crate::knowledge::{Declarations, Key, Knowledge, Limits, Named, ProductView, Reading, Symptom};

/// Readings, of one product or all.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct ReadingList<'k> {
    /// The readings, in the order of the rules.
    readings: Vec<ReadingItem<'k>>,
}

/// A reading that a case may give.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = DeclaredReading)]
struct ReadingItem<'k> {
    /// Id, as in a case.
    #[schema(example = "dough_temperature")]
    id: &'k str,
    /// Title for people.
    #[schema(example = "dough temperature")]
    title: &'k str,
    /// What is measured, where and when.
    #[schema(example = "Core of the dough as it leaves the mixer.")]
    description: &'k str,
    /// Other words for it.
    #[schema(example = json!(["dough out of the mixer", "dough after mixing"]))]
    synonyms: Vec<&'k str>,
    /// UCUM code of the unit that the rules use; a case may give any unit of that kind.
    #[schema(example = "Cel")]
    unit: &'k str,
    /// What can be believed, in `unit`; a value outside it is set aside.
    plausible: Range,
    /// Usual window for the product, in `unit`; only with `?product=`, where the rules set one.
    #[serde(skip_serializing_if = "Option::is_none")]
    window: Option<WindowItem>,
    /// How to take it, by standard number where there is one.
    #[schema(example = "probe thermometer, after mixing, three places")]
    method: &'k str,
    /// Minutes to take it.
    #[schema(example = 2.0)]
    effort_minutes: f64,
    /// Whether it can be computed from other readings or the formula when it was not taken.
    computable: bool,
    /// Id of the symptom that counts as seen when the value is under its low limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    low_shows: Option<&'k str>,
    /// Id of the symptom that counts as seen when the value is over its high limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    high_shows: Option<&'k str>,
    /// Sources of the window and the method.
    sources: Vec<SourceItem<'k>>,
}

/// A range, both ends included.
#[derive(Debug, Serialize, ToSchema)]
struct Range {
    /// Lowest value.
    #[schema(example = -5.0)]
    low: f64,
    /// Highest value.
    #[schema(example = 60.0)]
    high: f64,
}

/// Limits that hold unless the plant gives its own.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = Window)]
struct WindowItem {
    /// Low limit.
    #[schema(example = 25.0)]
    low: f64,
    /// Target.
    #[schema(example = 26.5)]
    target: f64,
    /// High limit.
    #[schema(example = 28.0)]
    high: f64,
}

/// The listing, of one product or all.
pub(crate) fn readings<'k>(knowledge: &'k Knowledge, view: Option<&ProductView>) -> ReadingList<'k> {
    let declared = &knowledge.declared;
    let keys = keys(&declared.readings, view.map(|view| view.listed_readings.as_slice()));
    ReadingList { readings: keys.into_iter().map(|key| item(declared, view, key)).collect() }
}

fn item<'k>(declared: &'k Declarations, view: Option<&ProductView>, key: Key<Reading>) -> ReadingItem<'k> {
    let reading = &declared.readings[key];
    let symptom = |key: Key<Symptom>| declared.symptoms[key].id();
    ReadingItem {
        id: &reading.id,
        title: &reading.title,
        description: &reading.description,
        synonyms: reading.synonyms.iter().map(String::as_str).collect(),
        unit: reading.unit.code(),
        plausible: Range { low: reading.plausible.low, high: reading.plausible.high },
        window: view.and_then(|view| view.limits.get(key.index())).and_then(window),
        method: &reading.method,
        effort_minutes: reading.effort_minutes,
        computable: reading.computed.is_some(),
        low_shows: reading.low_shows.map(symptom),
        high_shows: reading.high_shows.map(symptom),
        sources: sources(declared, &reading.sources),
    }
}

fn window(limits: &Limits) -> Option<WindowItem> {
    Some(WindowItem { low: limits.low?, target: limits.target?, high: limits.high? })
}
