//! From JSON text to what is asked for.

use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;
use sha2::{Digest, Sha256};
use utoipa::ToSchema;

use super::measure::{Measure, read_measure};
use crate::case::{BatchSize, Case, read_part, read_size};
use crate::json::{Document, DocumentFaults, Fault, FaultCode, Faults, Node, Object, listing, without_mark};
use crate::knowledge::Knowledge;
use crate::science::formula::Part;
use crate::suggest::did_you_mean;

/// Most actions of a trial: with more a day's bake tells nothing apart.
pub(super) const MOST_ACTIONS: usize = 4;

/// Most repeats of a trial.
const MOST_REPEATS: f64 = 4.0;

const MEMBERS: [&str; 9] = ["case", "batch", "actions", "design", "control", "repeats", "measure", "seed", "reference"];

/// What a trial sheet is asked for.
#[derive(Debug)]
pub struct TrialRequest {
    /// The case, with the reference of the request where that has one.
    pub case: Case,
    /// The part that is weighed; `None`: the main part.
    pub part: Option<Part>,
    /// How large a run is.
    pub size: BatchSize,
    /// Ids of the actions; `None`: the first of the order.
    pub actions: Option<Vec<String>>,
    /// How changes are laid out.
    pub design: DesignKind,
    /// When the control is baked.
    pub control: ControlPlace,
    /// How often every run is baked.
    pub repeats: u32,
    /// What shall be seen.
    pub measure: Measure,
    /// What the order is drawn from.
    pub seed: u32,
}

/// How changes are laid out over the runs.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
#[schema(as = TrialDesignKind)]
pub enum DesignKind {
    /// A control, and a run for every change.
    #[default]
    OneChangeAtATime,
    /// Changes and their combinations: all of them for two and three changes, half of them for four.
    Factorial,
    /// Half of the combinations of three or four changes.
    HalfFactorial,
}

impl DesignKind {
    const WORDS: [(&'static str, Self); 3] = [
        ("one_change_at_a_time", Self::OneChangeAtATime),
        ("factorial", Self::Factorial),
        ("half_factorial", Self::HalfFactorial),
    ];
}

/// When the control is baked.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
#[schema(as = TrialControlPlace)]
pub enum ControlPlace {
    /// Once a repeat, in a place by lot as any run.
    #[default]
    ByLot,
    /// Twice a repeat, as its first bake and as its last: what the day itself does is seen.
    FirstAndLast,
}

impl ControlPlace {
    const WORDS: [(&'static str, Self); 2] = [("by_lot", Self::ByLot), ("first_and_last", Self::FirstAndLast)];
}

#[derive(Deserialize)]
struct CaseText<'t> {
    #[serde(borrow)]
    case: Option<&'t RawValue>,
}

impl TrialRequest {
    /// Reads a request from JSON text.
    ///
    /// # Errors
    /// Every fault of the text at once, those of the case under `/case`.
    pub fn parse(text: &[u8], knowledge: &Knowledge) -> Result<Self, DocumentFaults> {
        let document = Document::parse(text).map_err(DocumentFaults::Malformed)?;
        let mut faults = Faults::default();
        let root = Node::root(&document.case);
        let object = root.object(&mut faults, &MEMBERS);
        let found = object.and_then(|object| read(&object, text, knowledge, &mut faults));
        let found = faults.finish(found)?;
        Ok(Self { case: Case { reference: document.reference, ..found.case }, ..found })
    }
}

fn read(object: &Object<'_>, text: &[u8], knowledge: &Knowledge, faults: &mut Faults) -> Option<TrialRequest> {
    let case_text =
        serde_json::from_slice::<CaseText<'_>>(without_mark(text)).ok().and_then(|own| own.case).map(RawValue::get);
    let case = object.required(faults, "case", Some("a case as `/v1/diagnoses` takes it".to_owned()));
    let case = case.and(case_text).and_then(|text| read_case(text, knowledge, faults));
    let help = Some("`mass`, or `pieces` with `piece_mass` and `bake_loss`".to_owned());
    let batch = object.required(faults, "batch", help).and_then(|node| read_batch(&node, faults));
    let design = object.optional("design").map(|node| read_word(&node, "design", &DesignKind::WORDS, faults));
    let control = object.optional("control").map(|node| read_word(&node, "place", &ControlPlace::WORDS, faults));
    let actions = object.optional("actions").map(|node| read_actions(&node, knowledge, faults));
    let repeats = object.optional("repeats").map(|node| whole(&node, (1.0, MOST_REPEATS), faults));
    let seed = object.optional("seed").map(|node| whole(&node, (0.0, f64::from(u32::MAX)), faults));
    let measure = object.optional("measure").map(|node| read_measure(&node, knowledge, faults));
    let (part, size) = batch?;
    Some(TrialRequest {
        case: case?,
        part,
        size,
        actions,
        design: design.unwrap_or_else(|| Some(DesignKind::default()))?,
        control: control.unwrap_or_else(|| Some(ControlPlace::default()))?,
        repeats: repeats.unwrap_or(Some(1))?,
        measure: measure.unwrap_or(Some(Measure::OPEN))?,
        seed: seed.unwrap_or_else(|| case_text.map(seed_of))?,
    })
}

/// A number that hangs on the case alone, so that the same case is tried in the same order.
fn seed_of(case: &str) -> u32 {
    let digest = Sha256::digest(case.as_bytes());
    digest.iter().take(4).fold(0, |seed, byte| seed << 8 | u32::from(*byte))
}

fn read_case(text: &str, knowledge: &Knowledge, faults: &mut Faults) -> Option<Case> {
    match Case::parse(text.as_bytes(), knowledge) {
        Ok(case) => Some(case),
        Err(DocumentFaults::Faulty(own)) => {
            faults.0.extend(own.into_iter().map(|fault| under("/case", fault)));
            None
        }
        // The whole text has been read as JSON before.
        Err(DocumentFaults::Malformed(detail)) => {
            let fault = Fault { pointer: String::new(), code: FaultCode::WrongType, detail, help: None };
            faults.0.push(under("/case", fault));
            None
        }
    }
}

/// The same fault below a member.
pub(super) fn under(member: &str, fault: Fault) -> Fault {
    Fault { pointer: format!("{member}{}", fault.pointer), ..fault }
}

fn read_batch(node: &Node<'_>, faults: &mut Faults) -> Option<(Option<Part>, BatchSize)> {
    let object = node.object(faults, &["part", "mass", "pieces", "piece_mass", "bake_loss"])?;
    let part = object.optional("part").map(|node| read_part(&node, faults));
    let size = read_size(&object, faults);
    Some((part.map_or(Some(None), |found| found.map(Some))?, size?))
}

fn read_word<T: Copy>(node: &Node<'_>, kind: &str, words: &[(&str, T)], faults: &mut Faults) -> Option<T> {
    let word = node.text(faults)?;
    let found = words.iter().find(|(own, _)| *own == word).map(|(_, meaning)| *meaning);
    if found.is_none() {
        let names: Vec<&str> = words.iter().map(|(own, _)| *own).collect();
        let help = format!("the {kind}s are {}", listing(&names));
        node.unknown_name(faults, kind, word, names.iter().copied(), || Some(help.clone()));
    }
    found
}

/// Whether an action suits the case is told when the trial is planned.
fn read_actions(node: &Node<'_>, knowledge: &Knowledge, faults: &mut Faults) -> Vec<String> {
    let (mut actions, mut count): (Vec<String>, usize) = (Vec::new(), 0);
    node.items(faults, |faults, item| {
        count += 1;
        let Some(id) = item.text(faults) else { return };
        if knowledge.declared.actions.find(id).is_none() {
            let known = knowledge.declared.actions.ids();
            item.unknown_name(faults, "action", id, known, || Some("a diagnosis names the actions".to_owned()));
        } else if actions.iter().any(|own| own == id) {
            item.fault(faults, FaultCode::Duplicate, format!("`{id}` stands twice"), None);
        } else {
            actions.push(id.to_owned());
        }
    });
    if node.is_array() && !(1..=MOST_ACTIONS).contains(&count) {
        let help = Some("left out, the first actions of the order are tried".to_owned());
        node.fault(
            faults,
            FaultCode::OutOfRange,
            format!("{count} actions are named, 1 to {MOST_ACTIONS} are tried"),
            help,
        );
    }
    actions
}

fn whole(node: &Node<'_>, (low, high): (f64, f64), faults: &mut Faults) -> Option<u32> {
    let number = node.number_within(faults, low, high)?;
    if number.fract() != 0.0 {
        node.fault(faults, FaultCode::OutOfRange, format!("{number} is not a whole number"), None);
        return None;
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // whole, and within the range of `u32`
    Some(number as u32)
}

/// A fault of an action that is named but cannot be tried.
pub(super) fn action_fault(place: usize, code: FaultCode, detail: String, help: Option<String>) -> Fault {
    Fault { pointer: format!("/actions/{place}"), code, detail, help }
}

/// "did you mean" among actions.
pub(super) fn nearest<'a>(id: &str, known: impl Iterator<Item = &'a str> + Clone) -> Option<String> {
    did_you_mean(id, known.clone()).or_else(|| {
        let names: Vec<&str> = known.collect();
        (!names.is_empty()).then(|| format!("the actions of the leading causes are {}", listing(&names)))
    })
}
