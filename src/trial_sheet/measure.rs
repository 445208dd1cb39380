//! What a trial shall show: read from JSON with every fault.

use crate::case::find;
use crate::json::{FaultCode, Faults, Node, Object};
use crate::knowledge::{Key, Knowledge, Reading, Symptom};
use crate::science::trial_design::Risks;
use crate::units::{Unit, convert, convert_difference};

const MEASURE: [&str; 8] =
    ["reading", "difference", "standard_deviation", "symptom", "faulty_now", "faulty_wanted", "alpha", "power"];

/// Help for a unit.
const UCUM: &str = "a UCUM code";

/// What shall be seen, at which risks.
#[derive(Debug, Clone)]
pub struct Measure {
    /// What; `None` when nobody says.
    pub target: Option<Target>,
    /// The two risks.
    pub risks: Risks,
}

/// A difference that a trial shall show.
#[derive(Debug, Clone)]
pub enum Target {
    /// Of the mean of a reading.
    Difference {
        /// The reading, when it is named.
        reading: Option<Key<Reading>>,
        /// Least difference that is worth it, in `unit`.
        difference: f64,
        /// Standard deviation from piece to piece, in `unit`.
        standard_deviation: f64,
        /// Unit of both.
        unit: Unit,
    },
    /// Of the share of faulty pieces.
    Proportion {
        /// What makes a piece faulty, when it is named.
        symptom: Option<Key<Symptom>>,
        /// Share now, %.
        now: f64,
        /// Share wanted, %.
        wanted: f64,
    },
}

impl Measure {
    /// Nothing that anybody named, at the usual risks.
    pub(super) const OPEN: Self = Self { target: None, risks: Risks::USUAL };
}

pub(super) fn read_measure(node: &Node<'_>, knowledge: &Knowledge, faults: &mut Faults) -> Option<Measure> {
    let object = node.object(faults, &MEASURE)?;
    let risk = |name, (low, high), usual, faults: &mut Faults| {
        object.optional(name).map_or(Some(usual), |node| node.number_within(faults, low, high))
    };
    let alpha = risk("alpha", (0.001, 0.5), Risks::USUAL.alpha, faults);
    let power = risk("power", (0.5, 0.999), Risks::USUAL.power, faults);
    let names = |wanted: &[&'static str]| wanted.iter().any(|name| object.optional(name).is_some());
    let of_reading = names(&["reading", "difference", "standard_deviation"]);
    let of_pieces = names(&["symptom", "faulty_now", "faulty_wanted"]);
    let target = match (of_reading, of_pieces) {
        (true, true) => {
            let help = Some("either a difference of a reading, or shares of faulty pieces".to_owned());
            let detail = "two things to see are mixed".to_owned();
            node.fault(faults, FaultCode::Contradiction, detail, help);
            None
        }
        (true, false) => read_difference(&object, knowledge, faults).map(Some),
        (false, true) => read_proportion(&object, knowledge, faults).map(Some),
        (false, false) => Some(None),
    };
    Some(Measure { target: target?, risks: Risks { alpha: alpha?, power: power? } })
}

fn read_difference(object: &Object<'_>, knowledge: &Knowledge, faults: &mut Faults) -> Option<Target> {
    let readings = &knowledge.declared.readings;
    let reading = object.optional("reading").map(|node| find(&node, readings, "reading", faults));
    let help = || Some("a value with its unit; a difference is reckoned against the spread of the pieces".to_owned());
    let difference = object.required(faults, "difference", help());
    let deviation = object.required(faults, "standard_deviation", help());
    let difference_read = difference.as_ref().and_then(|node| node.value_with_unit(faults, UCUM));
    let deviation_read = deviation.as_ref().and_then(|node| node.value_with_unit(faults, UCUM));
    let (wanted, unit) = difference_read?;
    let (spread, own) = deviation_read?;
    let reading = reading.map_or(Some(None), |found| found.map(Some))?;
    if let (Some(key), Some(node)) = (reading, &difference)
        && let Err(fault) = convert_difference(wanted, &unit, &readings[key].unit)
    {
        let help = Some(format!("{} is given in `{}`", readings[key].title, readings[key].unit.code()));
        node.fault(faults, FaultCode::WrongKindOfUnit, fault.to_string(), help);
        return None;
    }
    let standard_deviation = convert_difference(spread, &own, &unit).map_err(|fault| {
        let help = Some(format!("the difference is given in `{}`", unit.code()));
        if let Some(node) = &deviation {
            node.fault(faults, FaultCode::WrongKindOfUnit, fault.to_string(), help);
        }
    });
    Some(Target::Difference { reading, difference: wanted, standard_deviation: standard_deviation.ok()?, unit })
}

fn read_proportion(object: &Object<'_>, knowledge: &Knowledge, faults: &mut Faults) -> Option<Target> {
    let symptoms = &knowledge.declared.symptoms;
    let symptom = object.optional("symptom").map(|node| find(&node, symptoms, "symptom", faults));
    let help = || Some("a share of the pieces, for example `{\"value\": 20, \"unit\": \"%\"}`".to_owned());
    let now = object.required(faults, "faulty_now", help()).and_then(|node| share(&node, faults));
    let wanted = object.required(faults, "faulty_wanted", help()).and_then(|node| share(&node, faults));
    let symptom = symptom.map_or(Some(None), |found| found.map(Some))?;
    if let (Some(now), Some(wanted)) = (now, wanted)
        && wanted > now
    {
        let help = Some("a trial is to show fewer faulty pieces".to_owned());
        let detail = format!("`faulty_wanted`, {wanted} %, is above `faulty_now`, {now} %");
        object.node.fault(faults, FaultCode::Contradiction, detail, help);
        return None;
    }
    Some(Target::Proportion { symptom, now: now?, wanted: wanted? })
}

/// A share in %.
fn share(node: &Node<'_>, faults: &mut Faults) -> Option<f64> {
    let (value, unit) = node.value_with_unit(faults, UCUM)?;
    let percent = Unit::parse("%").ok()?;
    match convert(value, &unit, &percent) {
        Ok(share) if share <= 100.0 => Some(share),
        Ok(share) => {
            node.fault(faults, FaultCode::OutOfRange, format!("{share} % is not between 0 and 100 %"), None);
            None
        }
        Err(fault) => {
            node.fault(faults, FaultCode::WrongKindOfUnit, fault.to_string(), Some("a share in `%`".to_owned()));
            None
        }
    }
}
