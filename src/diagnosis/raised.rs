//! Symptoms that readings show or exclude by their limits, and what people say against it.

use super::numbers::Digits;
use super::sentence::in_sentence;
use crate::case::{Case, Seen};
use crate::inference::MAX_SYMPTOMS;
use crate::knowledge::{Circumstances, Key, Knowledge, ProductView, Reading, Symptom};

/// A symptom that a reading showed or excluded.
pub(super) struct Raised {
    pub(super) symptom: Key<Symptom>,
    pub(super) present: bool,
    pub(super) text: String,
}

/// What people say of a symptom, and a reading that says otherwise.
pub(super) struct Contradicted {
    pub(super) symptom: Key<Symptom>,
    pub(super) reading: Key<Reading>,
    pub(super) text: String,
}

/// A reading whose symptom would be one more than can be weighed.
pub(super) struct CrowdedOut {
    pub(super) reading: Key<Reading>,
    pub(super) text: String,
}

/// What readings say of symptoms.
#[derive(Default)]
pub(super) struct Raising {
    pub(super) raised: Vec<Raised>,
    pub(super) contradictions: Vec<Contradicted>,
    pub(super) crowded_out: Vec<CrowdedOut>,
}

/// One limit of a reading that shows a symptom when it is passed.
struct Side {
    symptom: Option<Key<Symptom>>,
    limit: Option<f64>,
    /// Whether the plant set the limit itself.
    is_own: bool,
    past: bool,
    name: &'static str,
}

/// Readings past their limits show symptoms; within the plant's own limits they exclude them. What people say they saw
/// stands, but is told where a reading says otherwise.
pub(super) fn raise(
    case: &Case,
    knowledge: &Knowledge,
    view: &ProductView,
    circumstances: &Circumstances,
    symptoms: &mut Vec<Seen>,
) -> Raising {
    let declared = &knowledge.declared;
    let Raising { mut raised, mut contradictions, mut crowded_out } = Raising::default();
    for &key in &view.listed_readings {
        let reading = &declared.readings[key];
        let Some(value) = circumstances.reading(key) else { continue };
        for side in sides(case, reading, key, value, circumstances) {
            let (Some(symptom), Some(limit)) = (side.symptom, side.limit) else { continue };
            // Within the usual window says little: the plant may want more.
            if !side.past && !side.is_own {
                continue;
            }
            let relation = if side.past { "past" } else { "within" };
            let title = in_sentence(&declared.symptoms[symptom].title);
            let text = || {
                let unit = Some(&reading.unit);
                let digits = Digits::of(value, unit, &[limit]);
                let (value, limit) = (digits.value(value, unit), digits.limit(limit, unit));
                format!("{} {value} is {relation} its {} limit of {limit}", reading.title, side.name)
            };
            if let Some(seen) = case.symptoms.iter().find(|seen| seen.symptom == symptom) {
                if let Some(said) = said_otherwise(seen.certainty, side.past) {
                    let text = format!("{said}: {title}; but {}: look again, and measure again", text());
                    contradictions.push(Contradicted { symptom, reading: key, text });
                }
                continue;
            }
            let denies = |seen: &Seen| seen.certainty > 0.5 && declared.contradict(seen.symptom, symptom);
            if let Some(other) = case.symptoms.iter().find(|seen| side.past && denies(seen)) {
                let other_title = in_sentence(&declared.symptoms[other.symptom].title);
                let text = format!(
                    "said to be seen: {other_title}; but {}, which shows {title}: look again, and measure again",
                    text()
                );
                contradictions.push(Contradicted { symptom: other.symptom, reading: key, text });
                continue;
            }
            if symptoms.iter().any(|seen| seen.symptom == symptom) {
                continue;
            }
            let is_full = symptoms.iter().filter(|seen| seen.certainty > 0.0).count() >= MAX_SYMPTOMS;
            if side.past && is_full {
                let text = format!("{}: {title} is not counted, the case has {MAX_SYMPTOMS} symptoms already", text());
                crowded_out.push(CrowdedOut { reading: key, text });
                continue;
            }
            symptoms.push(Seen { symptom, certainty: f64::from(side.past) });
            let counts = if side.past { "counts as" } else { "speaks against" };
            raised.push(Raised { symptom, present: side.past, text: format!("{}: {counts} {title}", text()) });
        }
    }
    Raising { raised, contradictions, crowded_out }
}

fn sides(case: &Case, reading: &Reading, key: Key<Reading>, value: f64, circumstances: &Circumstances) -> [Side; 2] {
    let limits = circumstances.limits(key);
    let own = case.readings.iter().find(|measured| measured.reading == key).map(|measured| measured.limits);
    let low = Side {
        symptom: reading.low_shows,
        limit: limits.low,
        is_own: own.is_some_and(|own| own.low.is_some()),
        past: limits.low.is_some_and(|low| value < low),
        name: "low",
    };
    let high = Side {
        symptom: reading.high_shows,
        limit: limits.high,
        is_own: own.is_some_and(|own| own.high.is_some()),
        past: limits.high.is_some_and(|high| value > high),
        name: "high",
    };
    [low, high]
}

/// What was said of a symptom, where the reading says otherwise.
fn said_otherwise(certainty: f64, past: bool) -> Option<&'static str> {
    if certainty > 0.5 && !past {
        Some("said to be seen")
    } else if certainty < 0.5 && past {
        Some("said not to be seen")
    } else {
        None
    }
}
