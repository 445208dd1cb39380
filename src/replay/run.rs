//! Replays a record.

use super::answer::{CautionDifferences, Made, Replay};
use super::differences;
use super::record::Record;
use super::recorded::Recorded;
use super::{PROGRAM_VERSION, words};
use crate::case::{Case, Fault};
use crate::diagnosis::Diagnostician;
use crate::json::{DocumentFaults, FaultCode, Faults, Json, Node};

impl Record<'_> {
    /// Diagnoses the case again and compares.
    ///
    /// # Errors
    /// When the answer of now cannot be written or read again as JSON.
    pub fn replay(&self, diagnostician: &Diagnostician) -> serde_json::Result<Replay> {
        let pack = &diagnostician.knowledge().declared.pack;
        let now = Made {
            rules_version: pack.version.clone(),
            rules_digest: pack.digest.clone(),
            program_version: Some(PROGRAM_VERSION.to_owned()),
        };
        let then = Made {
            rules_version: self.recorded.rules_version.clone(),
            rules_digest: self.recorded.rules_digest.clone(),
            program_version: self.program_version.clone(),
        };
        let mut replay = Replay {
            same: false,
            same_content: false,
            verdict: String::new(),
            same_rules: then.rules_digest == now.rules_digest,
            same_program: then.program_version.as_ref().map(|own| own == PROGRAM_VERSION),
            then,
            now,
            refused: Vec::new(),
            ranking: None,
            actions: Vec::new(),
            cautions: CautionDifferences::default(),
            places: Vec::new(),
            places_left_out: 0,
        };
        match self.answer(diagnostician)? {
            Ok(answer) => self.compare(&answer, &mut replay)?,
            Err(faults) => replay.refused = faults,
        }
        replay.verdict = words::verdict(&replay).to_owned();
        Ok(replay)
    }

    /// The answer of now, or why there is none.
    fn answer(&self, diagnostician: &Diagnostician) -> serde_json::Result<Result<Vec<u8>, Vec<Fault>>> {
        let case = match Case::parse(self.case.as_bytes(), diagnostician.knowledge()) {
            Ok(case) => case,
            Err(DocumentFaults::Faulty(faults)) => return Ok(Err(faults)),
            Err(DocumentFaults::Malformed(detail)) => return Ok(Err(vec![fault("", detail)])),
        };
        match diagnostician.diagnose(case) {
            Ok(diagnosis) => diagnosis.to_json().map(Ok),
            Err(reason) => Ok(Err(vec![fault("/symptoms", reason.to_string())])),
        }
    }

    fn compare(&self, answer: &[u8], replay: &mut Replay) -> serde_json::Result<()> {
        replay.same = answer == self.diagnosis.as_bytes();
        if replay.same {
            replay.same_content = true;
            return Ok(());
        }
        let json: Json = serde_json::from_slice(answer)?;
        (replay.places, replay.places_left_out) = differences::places(&self.json, &json);
        replay.same_content = replay.places.is_empty();
        // The answer is our own: it has no faults.
        let now = Recorded::read(&Node::root(&json), &mut Faults::default());
        replay.ranking = differences::ranking(&self.recorded.ranking, &now.ranking);
        replay.actions = differences::actions(&self.recorded, &now);
        replay.cautions = differences::cautions(&self.recorded, &now);
        Ok(())
    }
}

fn fault(pointer: &str, detail: String) -> Fault {
    Fault { pointer: pointer.to_owned(), code: FaultCode::OutOfRange, detail, help: None }
}
