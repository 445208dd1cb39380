//! Which actions are tried, and what each of them sets.

use super::request::{DesignKind, MOST_ACTIONS, action_fault, nearest};
use super::weights::Control;
use crate::diagnosis::{ActionAdvice, Diagnosis, OrderedAction, RankedCause, SetQuantity};
use crate::json::{Fault, FaultCode};
use crate::knowledge::{Change, Declarations};

/// Changes of a factorial trial when the caller names none: eight runs are a long day already.
const FACTORS: usize = 3;

/// A change that would help in fewer than one of twenty such cases is not worth a run unless it is named (our choice).
const LEAST_PROMISE: f64 = 0.05;

/// An action of a leading cause.
#[derive(Debug, Clone, Copy)]
pub(super) struct Candidate<'d, 'k> {
    pub(super) cause: &'d RankedCause<'k>,
    pub(super) advice: &'d ActionAdvice<'k>,
    /// Its place in the order of the answer, and what that says of it; `None` where it has none.
    ordered: Option<(usize, &'d OrderedAction<'k>)>,
}

impl Candidate<'_, '_> {
    /// Probability that it takes a cause away, as the order of the answer tells it; else that its cause is at work and that
    /// it mends it.
    pub(super) fn promise(&self) -> f64 {
        self.ordered.map_or_else(|| self.of_its_cause(), |(_, own)| own.mends)
    }

    fn of_its_cause(&self) -> f64 {
        self.cause.probability * self.advice.works
    }

    /// Whether it is a check, a repair or a way of working: it sets nothing and brings nothing into the formula.
    fn is_plain(&self, declared: &Declarations) -> bool {
        let brings = |key| !declared.actions[key].uses.is_empty();
        self.sets_nothing() && !declared.actions.find(self.advice.action).is_some_and(brings)
    }

    fn sets_nothing(&self) -> bool {
        self.advice.quantities.is_empty() && self.advice.needs.is_empty()
    }

    /// What its quantities change.
    fn changed(&self) -> impl Iterator<Item = &Change> {
        self.advice.quantities.iter().filter_map(|quantity| quantity.setting.changes.as_ref())
    }

    /// Whether both aim at the same figures of the same things: a firmer and a softer fat can have the same target.
    fn sets_the_same(&self, other: &Self, declared: &Declarations) -> bool {
        let is_same = |one: &SetQuantity<'_>, two: &SetQuantity<'_>| {
            (one.name, one.unit, one.value, &one.setting.changes)
                == (two.name, two.unit, two.value, &two.setting.changes)
        };
        let (own, theirs) = (&self.advice.quantities, &other.advice.quantities);
        let uses = |own: &Self| declared.actions.find(own.advice.action).map(|key| &declared.actions[key].uses);
        !own.is_empty()
            && own.len() == theirs.len()
            && own.iter().zip(theirs).all(|(one, two)| is_same(one, two))
            && uses(self) == uses(other)
    }
}

/// What is tried, what is done without a trial, and what is not tried with the reason.
#[derive(Default)]
pub(super) struct Chosen<'d, 'k> {
    pub(super) changes: Vec<Candidate<'d, 'k>>,
    pub(super) first: Vec<Candidate<'d, 'k>>,
    pub(super) not_tried: Vec<String>,
    /// Other ways to the figures of a change, with its place.
    pub(super) other_ways: Vec<(usize, Candidate<'d, 'k>)>,
}

/// All actions of the leading causes, each once, in the order of the answer; then what stands there in no place.
fn candidates<'d, 'k>(diagnosis: &'d Diagnosis<'k>) -> Vec<Candidate<'d, 'k>> {
    let mut all: Vec<Candidate<'d, 'k>> = Vec::new();
    for cause in &diagnosis.causes {
        for advice in &cause.actions {
            let order = diagnosis.action_order.actions.iter().enumerate();
            let own = Candidate { cause, advice, ordered: order.clone().find(|(_, own)| own.action == advice.action) };
            match all.iter_mut().find(|other| other.advice.action == advice.action) {
                Some(other) if own.of_its_cause() > other.of_its_cause() => *other = own,
                Some(_) => {}
                None => all.push(own),
            }
        }
    }
    let place = |own: &Candidate<'_, '_>| own.ordered.map_or(usize::MAX, |(place, _)| place);
    all.sort_by(|one, other| place(one).cmp(&place(other)).then_with(|| other.promise().total_cmp(&one.promise())));
    all
}

/// Chooses the changes.
///
/// # Errors
/// Actions that no leading cause prescribes or that the requirements exclude, no action at all, and a number or a
/// combination of changes that the design cannot take.
pub(super) fn choose<'d, 'k>(
    diagnosis: &'d Diagnosis<'k>,
    named: Option<&[String]>,
    design: DesignKind,
    declared: &Declarations,
    control: Option<&Control<'_>>,
) -> Result<Chosen<'d, 'k>, Vec<Fault>> {
    let candidates = candidates(diagnosis);
    if candidates.is_empty() {
        return Err(vec![nothing_to_try(diagnosis)]);
    }
    let chosen = match named {
        Some(named) => Chosen { changes: by_name(named, &candidates, diagnosis)?, ..Chosen::default() },
        None => {
            let mut chosen = in_order(&candidates, design, declared, control);
            chosen.not_tried.extend(without_prescription(&candidates, diagnosis, declared));
            chosen
        }
    };
    check_design(&chosen.changes, named.is_some(), design, declared)?;
    Ok(chosen)
}

fn nothing_to_try(diagnosis: &Diagnosis<'_>) -> Fault {
    let excluded: Vec<&str> = diagnosis.excluded_actions.iter().map(|own| own.action).collect();
    let detail = "no action is prescribed for the leading causes".to_owned();
    let help = (!excluded.is_empty()).then(|| format!("the requirements exclude {}", excluded.join(", ")));
    Fault { pointer: "/case".to_owned(), code: FaultCode::Impossible, detail, help }
}

fn by_name<'d, 'k>(
    named: &[String],
    candidates: &[Candidate<'d, 'k>],
    diagnosis: &'d Diagnosis<'k>,
) -> Result<Vec<Candidate<'d, 'k>>, Vec<Fault>> {
    let (mut found, mut faults) = (Vec::new(), Vec::new());
    for (place, id) in named.iter().enumerate() {
        if let Some(candidate) = candidates.iter().find(|own| own.advice.action == id) {
            found.push(*candidate);
            continue;
        }
        if let Some(excluded) = diagnosis.excluded_actions.iter().find(|own| own.action == id) {
            let instead: Vec<&str> = excluded.instead.iter().map(|own| own.action).collect();
            let help = (!instead.is_empty()).then(|| format!("in its place: {}", instead.join(", ")));
            let detail = format!("the requirements of the case exclude `{id}`: {}", excluded.text);
            faults.push(action_fault(place, FaultCode::Contradiction, detail, help));
            continue;
        }
        let help = nearest(id, candidates.iter().map(|own| own.advice.action));
        let detail = format!("no leading cause of this case prescribes `{id}`");
        faults.push(action_fault(place, FaultCode::Impossible, detail, help));
    }
    if faults.is_empty() { Ok(found) } else { Err(faults) }
}

/// The first of the order; in a factorial trial only those that can be made together.
fn in_order<'d, 'k>(
    candidates: &[Candidate<'d, 'k>],
    design: DesignKind,
    declared: &Declarations,
    control: Option<&Control<'_>>,
) -> Chosen<'d, 'k> {
    let most = if design == DesignKind::Factorial { FACTORS } else { MOST_ACTIONS };
    let mut chosen = Chosen::default();
    // Where the order has none of them, they are taken as they promise.
    let has_order = candidates.iter().any(|own| own.ordered.is_some());
    for candidate in candidates.iter().filter(|own| own.ordered.is_some() || !has_order) {
        let is_poor = candidate.promise() < LEAST_PROMISE;
        if candidate.is_plain(declared) {
            chosen.first.push(*candidate);
        } else if let Some(place) = chosen.changes.iter().position(|own| candidate.sets_the_same(own, declared)) {
            chosen.other_ways.push((place, *candidate));
        } else if chosen.changes.len() == most {
            continue;
        } else if let Some(why) = reason_against(candidate, &chosen.changes, design, declared, control) {
            chosen.not_tried.push(format!("{}: {why}", candidate.advice.title));
        } else if !is_poor || chosen.changes.is_empty() {
            chosen.changes.push(*candidate);
        }
    }
    // Where none of them can be weighed or set, the first is tried all the same.
    if let (true, Some(only)) = (chosen.changes.is_empty(), candidates.first()) {
        chosen.not_tried.retain(|text| !text.starts_with(&format!("{}: ", only.advice.title)));
        chosen.first.retain(|own| own.advice.action != only.advice.action);
        chosen.changes.push(*only);
    }
    chosen
}

/// Actions that the order puts in the place of excluded ones and that no leading cause prescribes itself: the rules state no
/// quantity of them here.
fn without_prescription<'a>(
    candidates: &'a [Candidate<'_, '_>],
    diagnosis: &'a Diagnosis<'_>,
    declared: &'a Declarations,
) -> impl Iterator<Item = String> + 'a {
    let is_known = |id: &str| candidates.iter().any(|own| own.advice.action == id);
    let order = diagnosis.action_order.actions.iter().filter(move |own| !is_known(own.action));
    order.filter_map(|own| {
        let excluded = &declared.actions[declared.actions.find(own.instead_of?)?].title;
        Some(format!(
            "{}: it takes the place of “{excluded}”, which the requirements exclude, and the rules state no quantity of it for \
             these causes",
            own.title
        ))
    })
}

/// Why an action is not tried beside those that are.
fn reason_against(
    candidate: &Candidate<'_, '_>,
    changes: &[Candidate<'_, '_>],
    design: DesignKind,
    declared: &Declarations,
    control: Option<&Control<'_>>,
) -> Option<String> {
    if candidate.sets_nothing() {
        return Some("nothing is reckoned for it; name it where it shall be tried".to_owned());
    }
    let together = design != DesignKind::OneChangeAtATime;
    if let Some(rival) = changes.iter().find(|other| clash(other, candidate, declared).is_some()).filter(|_| together) {
        let rival = rival.advice.title;
        return Some(format!(
            "it changes the same as “{rival}” or undoes it, and in this design changes are made together"
        ));
    }
    control?.obstacle(&candidate.advice.quantities)
}

/// Why two actions cannot be told apart, or make no sense, when both are made; `None` where they can.
fn clash(one: &Candidate<'_, '_>, other: &Candidate<'_, '_>, declared: &Declarations) -> Option<String> {
    let (own, theirs) = (one.advice.action, other.advice.action);
    if declared.undo_each_other(own, theirs) {
        return Some(format!("`{own}` and `{theirs}` undo each other"));
    }
    let mut pairs = one.changed().flat_map(|one| other.changed().map(move |other| (one, other)));
    let shared = pairs.find_map(|(one, other)| one.shared_with(other, declared))?;
    Some(format!("`{own}` changes `{shared}`, and so does `{theirs}`"))
}

fn check_design(
    changes: &[Candidate<'_, '_>],
    are_named: bool,
    design: DesignKind,
    declared: &Declarations,
) -> Result<(), Vec<Fault>> {
    let wanted = match design {
        DesignKind::OneChangeAtATime => return Ok(()),
        DesignKind::Factorial => 2..=4,
        DesignKind::HalfFactorial => 3..=4,
    };
    let mut faults = Vec::new();
    if !wanted.contains(&changes.len()) {
        let detail =
            format!("the design takes {} to {} changes, there are {}", wanted.start(), wanted.end(), changes.len());
        let help = Some("take `one_change_at_a_time`, or name other actions".to_owned());
        faults.push(Fault { pointer: "/design".to_owned(), code: FaultCode::Impossible, detail, help });
    }
    for (place, change) in changes.iter().enumerate().filter(|_| are_named) {
        if let Some(clash) = changes.iter().take(place).find_map(|other| clash(change, other, declared)) {
            let detail = format!("{clash}: in this design both are made at once");
            let help = Some("take `one_change_at_a_time`, or leave one of them out".to_owned());
            faults.push(action_fault(place, FaultCode::Contradiction, detail, help));
        }
    }
    if faults.is_empty() { Ok(()) } else { Err(faults) }
}
