//! A case of a file, as a part of the request that the HTTP service takes.

use serde_json::{Map, Value};

use super::diagnose::explain;
use super::exit::Exit;
use crate::json::{DocumentFaults, Fault, Json, write_members};

/// The request: the case as it was written, and the other members. What is wrong with the text of the case is told with
/// the lines and columns of its own.
pub(super) fn wrapped(case: &[u8], rest: &Map<String, Value>) -> Result<Vec<u8>, Exit> {
    let whole = |message| told(DocumentFaults::Malformed(message));
    Json::parse(case).map_err(whole)?;
    let case = str::from_utf8(case).map_err(|error| whole(error.to_string()))?;
    let rest: Vec<(&str, String)> = rest.iter().map(|(name, value)| (name.as_str(), value.to_string())).collect();
    let rest = rest.iter().map(|(name, value)| (*name, value.as_str()));
    Ok(write_members([("case", case)].into_iter().chain(rest)).into_bytes())
}

/// Tells the faults of such a request.
pub(super) fn told(faults: DocumentFaults) -> Exit {
    explain(&match faults {
        DocumentFaults::Faulty(faults) => DocumentFaults::Faulty(without_case_prefix(faults)),
        malformed @ DocumentFaults::Malformed(_) => malformed,
    });
    Exit::Faulty
}

/// The file holds the case alone: what is wrong with it is told without `/case`.
fn without_case_prefix(faults: Vec<Fault>) -> Vec<Fault> {
    let of_case = |pointer: &str| {
        let own = pointer.strip_prefix("/case")?;
        (own.is_empty() || own.starts_with('/')).then(|| own.to_owned())
    };
    let own_place = |fault: Fault| Fault { pointer: of_case(&fault.pointer).unwrap_or(fault.pointer), ..fault };
    faults.into_iter().map(own_place).collect()
}
