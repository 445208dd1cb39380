//! A stored diagnosis: read with every fault, and written on one line.

use serde::Deserialize;
use serde_json::value::RawValue;

use super::PROGRAM_VERSION;
use super::recorded::Recorded;
use crate::case::Case;
use crate::diagnosis::Diagnostician;
use crate::json::{DocumentFaults, FaultCode, Faults, Json, Node, without_mark};

/// A diagnosis as somebody stored it.
#[derive(Debug)]
pub struct Record<'t> {
    /// The text of the case, as it stands in the record.
    pub(super) case: &'t str,
    /// The text of the answer.
    pub(super) diagnosis: &'t str,
    /// The answer as JSON.
    pub(super) json: Json,
    pub(super) recorded: Recorded,
    pub(super) program_version: Option<String>,
}

#[derive(Deserialize)]
struct Texts<'t> {
    #[serde(borrow)]
    case: Option<&'t RawValue>,
    #[serde(borrow)]
    diagnosis: Option<&'t RawValue>,
}

impl<'t> Record<'t> {
    /// Reads a record from JSON text. Members beside `case`, `diagnosis` and `program_version` are the caller's own.
    ///
    /// # Errors
    /// Every fault of the record at once. What the rules say against the case is none: a replay tells it.
    pub fn parse(text: &'t [u8]) -> Result<Self, DocumentFaults> {
        let text = without_mark(text);
        let json = Json::parse(text).map_err(DocumentFaults::Malformed)?;
        let mut faults = Faults::default();
        let root = Node::root(&json);
        let mut recorded = Recorded::default();
        let mut program_version = None;
        if let Some(object) = root.any_object(&mut faults) {
            let help = || Some("a record holds `case` and `diagnosis` as they were".to_owned());
            if let Some(case) = object.required(&mut faults, "case", help())
                && !case.is_object()
            {
                case.wrong_type(&mut faults, "an object");
            }
            if let Some(diagnosis) = object.required(&mut faults, "diagnosis", help()) {
                recorded = Recorded::read(&diagnosis, &mut faults);
            }
            let version = object.optional("program_version");
            program_version = version.and_then(|node| node.text(&mut faults)).map(str::to_owned);
        }
        // Doubled members have been told as faults above; whatever else the parser of texts refuses is told by it.
        let texts = serde_json::from_slice::<Texts<'t>>(text);
        if let (Err(error), true) = (&texts, faults.0.is_empty()) {
            root.fault(&mut faults, FaultCode::WrongType, error.to_string(), None);
        }
        match texts {
            Ok(Texts { case: Some(case), diagnosis: Some(diagnosis) }) if faults.0.is_empty() => {
                let json = Json::parse(diagnosis.get().as_bytes()).map_err(DocumentFaults::Malformed)?;
                let (case, diagnosis) = (case.get(), diagnosis.get());
                Ok(Self { case, diagnosis, json, recorded, program_version })
            }
            _ => Err(DocumentFaults::Faulty(faults.0)),
        }
    }
}

/// Diagnoses the text of a case and writes the record on one line, with a newline at its end. White space between the parts
/// of the case is left out, so that a file can hold a record a line, as `whybake compare` takes it.
///
/// # Errors
/// Every fault of the case at once, and too many symptoms.
pub fn write_record(case: &[u8], diagnostician: &Diagnostician) -> Result<Vec<u8>, DocumentFaults> {
    let case = without_space(without_mark(case));
    let parsed = Case::parse(&case, diagnostician.knowledge())?;
    let diagnosis = diagnostician.diagnose(parsed).map_err(|fault| {
        let mut faults = Faults::default();
        Node::root(&Json::Null).fault(&mut faults, FaultCode::OutOfRange, fault.to_string(), None);
        DocumentFaults::Faulty(faults.0)
    })?;
    let answer = diagnosis.to_json().map_err(|error| DocumentFaults::Malformed(error.to_string()))?;
    let mut record = Vec::with_capacity(case.len() + answer.len() + 64);
    record.extend_from_slice(b"{\"case\":");
    record.extend_from_slice(&case);
    record.extend_from_slice(b",\"diagnosis\":");
    record.extend_from_slice(&answer);
    record.extend_from_slice(format!(",\"program_version\":\"{PROGRAM_VERSION}\"}}\n").as_bytes());
    Ok(record)
}

/// JSON text without the white space between its tokens; numbers and strings stay as they were written.
fn without_space(text: &[u8]) -> Vec<u8> {
    let (mut in_string, mut is_escaped) = (false, false);
    let mut kept = Vec::with_capacity(text.len());
    for &byte in text {
        if in_string {
            in_string = is_escaped || byte != b'"';
            is_escaped = !is_escaped && byte == b'\\';
        } else if matches!(byte, b' ' | b'\t' | b'\n' | b'\r') {
            continue;
        } else {
            in_string = byte == b'"';
        }
        kept.push(byte);
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::without_space;

    #[test]
    fn strings_and_numbers_stay() {
        let text = b"{ \"a \\\" b\" :\n [1.50 , \"\\\\\" , \" x \"] }";
        assert_eq!(without_space(text), b"{\"a \\\" b\":[1.50,\"\\\\\",\" x \"]}");
    }
}
