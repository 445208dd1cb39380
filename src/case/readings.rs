//! The readings of a case: units converted, implausible values set aside.

use super::parse::find_named;
use super::types::{Measured, SetAside};
use crate::json::{FaultCode, Faults, Node, Object};
use crate::knowledge::{Declarations, Limits, Reading};
use crate::numeral::written;
use crate::units::{Unit, convert};

pub(super) fn read(node: &Node<'_>, declared: &Declarations, faults: &mut Faults) -> (Vec<Measured>, Vec<SetAside>) {
    let (mut readings, mut set_aside) = (Vec::new(), Vec::new());
    node.members(faults, |faults, id, value| {
        let key = find_named(&value, id, &declared.readings, "reading", faults);
        let reading = key.map(|key| &declared.readings[key]);
        let Some(scale) = read_value(&value, reading, faults) else { return };
        let (Some(key), Some(reading)) = (key, reading) else { return };
        let measured =
            Measured { reading: key, value: scale.value, given: scale.given, unit: scale.unit, limits: scale.limits };
        if (reading.plausible.low..=reading.plausible.high).contains(&measured.value) {
            readings.push(measured);
        } else {
            set_aside.push(SetAside { measured });
        }
    });
    (readings, set_aside)
}

/// A value and its limits, converted.
struct Converted {
    value: f64,
    given: f64,
    unit: Unit,
    limits: Limits,
}

/// Reads what can be read even when the reading's name is unknown, so that every fault is listed.
fn read_value(node: &Node<'_>, reading: Option<&Reading>, faults: &mut Faults) -> Option<Converted> {
    let object = node.object(faults, &["value", "unit", "low", "target", "high"])?;
    let given = object.required(faults, "value", Some("leave out a reading that was not taken".to_owned()));
    let given = given.and_then(|node| node.number(faults));
    let unit = read_unit(&object, reading, faults);
    let limit = |name, faults: &mut Faults| object.optional(name).and_then(|node| node.number(faults));
    let (low, target, high) = (limit("low", faults), limit("target", faults), limit("high", faults));
    check_order(&object, [("low", low), ("target", target), ("high", high)], faults);
    let unit = unit?;
    let mut own = |name, value| in_own_unit(&object, name, value, (&unit, reading), faults);
    let (value, low, target, high) = (own("value", given), own("low", low), own("target", target), own("high", high));
    Some(Converted { value: value?, given: given?, limits: Limits { low, target, high, margin: None }, unit })
}

/// The number of a member in the unit of the reading; one that is none there is a fault.
fn in_own_unit(
    object: &Object<'_>,
    name: &'static str,
    value: Option<f64>,
    (unit, reading): (&Unit, Option<&Reading>),
    faults: &mut Faults,
) -> Option<f64> {
    let Some(reading) = reading else { return value };
    convert(value?, unit, &reading.unit)
        .map_err(|fault| {
            if let Some(node) = object.optional(name) {
                let help = Some("check the number and its unit".to_owned());
                node.fault(faults, FaultCode::OutOfRange, fault.to_string(), help);
            }
        })
        .ok()
}

fn read_unit(object: &Object<'_>, reading: Option<&Reading>, faults: &mut Faults) -> Option<Unit> {
    let own = reading.map(|reading| format!("the rules use `{}`", reading.unit.code()));
    let node = object.required(faults, "unit", own.clone())?;
    let unit = node.unit(faults, own.as_deref())?;
    if let Some(reading) = reading
        && let Err(fault) = convert(0.0, &unit, &reading.unit)
    {
        let help = Some(format!("{} is given in `{}` or a unit of that kind", reading.title, reading.unit.code()));
        node.fault(faults, FaultCode::WrongKindOfUnit, fault.to_string(), help);
        return None;
    }
    Some(unit)
}

/// Limits must ascend.
fn check_order(object: &Object<'_>, limits: [(&'static str, Option<f64>); 3], faults: &mut Faults) {
    let given: Vec<(&str, f64)> = limits.iter().filter_map(|(name, value)| Some((*name, (*value)?))).collect();
    for (lower, upper) in given.iter().zip(given.iter().skip(1)) {
        if lower.1 > upper.1 {
            let detail = format!("`{}` {} is above `{}` {}", lower.0, written(lower.1), upper.0, written(upper.1));
            object.node.fault(faults, FaultCode::Contradiction, detail, None);
        }
    }
}
