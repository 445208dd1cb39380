//! Units, and values with their units.

use super::fault::{Fault, FaultCode};
use super::node::{Faults, Node};
use crate::units::{ConversionFault, Unit, convert};

impl Node<'_> {
    /// A UCUM code; of an unknown one `help` is told where no other is near.
    pub(crate) fn unit(&self, faults: &mut Faults, help: Option<&str>) -> Option<Unit> {
        let code = self.text(faults)?;
        let unit = Unit::parse(code).map_err(|fault| {
            let near = fault.suggestion().map(|code| format!("write `{code}`"));
            self.fault(faults, FaultCode::UnknownUnit, fault.to_string(), near.or_else(|| help.map(str::to_owned)));
        });
        unit.ok()
    }

    /// `{"value": 120, "unit": "kg"}`: a value that is not negative, and its unit.
    pub(crate) fn value_with_unit(&self, faults: &mut Faults, help: &str) -> Option<(f64, Unit)> {
        let object = self.object(faults, &["value", "unit"])?;
        let value = object.required(faults, "value", None);
        let value = value.and_then(|node| node.number_within(faults, 0.0, f64::INFINITY));
        let unit = object.required(faults, "unit", Some(help.to_owned()));
        let unit = unit.and_then(|node| node.unit(faults, None));
        Some((value?, unit?))
    }

    /// The same in the unit that is wanted.
    pub(crate) fn value_in(&self, faults: &mut Faults, wanted: &str) -> Option<f64> {
        let help = format!("for example `{wanted}`");
        let (value, unit) = self.value_with_unit(faults, &help)?;
        let converted = convert(value, &unit, &Unit::parse(wanted).ok()?);
        let told = converted.map_err(|fault| {
            let (member, code) = match fault {
                ConversionFault::OutOfRange { .. } => ("value", FaultCode::OutOfRange),
                ConversionFault::OtherKind { .. } | ConversionFault::OtherBasis { .. } => {
                    ("unit", FaultCode::WrongKindOfUnit)
                }
            };
            let pointer = format!("{}/{member}", self.pointer());
            faults.0.push(Fault { pointer, code, detail: fault.to_string(), help: Some(help) });
        });
        told.ok()
    }
}
