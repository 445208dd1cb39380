//! The runs: which changes each has, and in which order they are baked.

use super::answer::DesignAnswer;
use super::request::{ControlPlace, DesignKind, TrialRequest};
use crate::json::{Fault, FaultCode};
use crate::science::Nonsense;
use crate::science::trial_design::{Alias, Fraction, TwoLevelDesign, randomised_order, two_level_design};

/// Letters of the changes.
pub(super) const LETTERS: [char; 4] = ['A', 'B', 'C', 'D'];

const DRAWING: &str = "order by lot: the runs of a repeat sorted by the SHA-256 of `seed/repeat/run`";

/// Number of the control.
const CONTROL: u32 = 1;

const BRACKET: &str = "The control is baked first and last of every repeat, the other runs by lot between.";

/// A run before it is weighed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct PlannedRun {
    pub(super) run: u32,
    /// Places of its changes.
    pub(super) changes: Vec<usize>,
    pub(super) order: Vec<u32>,
}

/// The runs of a design.
pub(super) struct Plan {
    pub(super) runs: Vec<PlannedRun>,
    pub(super) answer: DesignAnswer,
    /// In how many runs a change is made; as many are compared with them.
    pub(super) runs_with_a_change: u32,
}

/// Lays `changes` out.
///
/// # Errors
/// A number of changes that the design cannot take.
pub(super) fn lay_out(request: &TrialRequest, changes: usize) -> Result<Plan, Vec<Fault>> {
    let kind = request.design;
    let (levels, design) = match kind {
        DesignKind::OneChangeAtATime => (one_at_a_time(changes), None),
        DesignKind::Factorial | DesignKind::HalfFactorial => {
            let is_full = kind == DesignKind::Factorial && changes < 4;
            let fraction = if is_full { Fraction::Full } else { Fraction::Half };
            #[allow(clippy::cast_precision_loss)] // four at most
            let design = two_level_design(changes as f64, fraction).map_err(|own| faults(&own))?;
            (design.runs.clone(), Some(design))
        }
    };
    let runs_with_a_change = levels.iter().filter(|run| run.first() == Some(&true)).count();
    let order = order(levels.len(), request).map_err(|own| faults(&own))?;
    let runs = levels.iter().zip(order).zip(1..).map(|((levels, order), run)| PlannedRun {
        run,
        changes: levels.iter().enumerate().filter(|(_, high)| **high).map(|(place, _)| place).collect(),
        order,
    });
    Ok(Plan {
        runs: runs.collect(),
        answer: answer(design, changes, request),
        runs_with_a_change: u32::try_from(runs_with_a_change).unwrap_or(u32::MAX),
    })
}

/// The control, then every change alone.
fn one_at_a_time(changes: usize) -> Vec<Vec<bool>> {
    let alone = |own: usize| (0..changes).map(|place| place == own).collect();
    std::iter::once(vec![false; changes]).chain((0..changes).map(alone)).collect()
}

/// Places of every run in the order of baking, repeat after repeat. A control that is baked first and last has two in each;
/// the lot of the other runs is the same.
fn order(runs: usize, request: &TrialRequest) -> Result<Vec<Vec<u32>>, Nonsense> {
    let count = u32::try_from(runs).unwrap_or(u32::MAX);
    let (mut places, mut place) = (vec![Vec::new(); runs], 0);
    for repeat in 1..=request.repeats {
        let mut bakes = randomised_order(request.seed, repeat, count)?;
        if request.control == ControlPlace::FirstAndLast {
            bakes.retain(|run| *run != CONTROL);
            bakes = [vec![CONTROL], bakes, vec![CONTROL]].concat();
        }
        for run in bakes {
            place += 1;
            if let Some(own) = usize::try_from(run - 1).ok().and_then(|index| places.get_mut(index)) {
                own.push(place);
            }
        }
    }
    Ok(places)
}

fn answer(design: Option<TwoLevelDesign>, changes: usize, request: &TrialRequest) -> DesignAnswer {
    let TrialRequest { repeats, seed, control, .. } = *request;
    let bracket = (control == ControlPlace::FirstAndLast).then(|| BRACKET.to_owned());
    let Some(design) = design else {
        let text = format!(
            "A control and {changes} {}, each against the control. What two changes do together is not seen.",
            if changes == 1 { "run with the change" } else { "runs with one change each" }
        );
        let name = "one change at a time".to_owned();
        let text = std::iter::once(text).chain(bracket).collect();
        return DesignAnswer { name, resolution: None, generator: None, text, repeats, seed, source: DRAWING };
    };
    let mut text = vec![format!(
        "{} runs: a change counts by all runs with it against all runs without it, so every run is used for every change.",
        design.runs.len()
    )];
    text.extend(design.aliases.iter().map(alias));
    if design.aliases.is_empty() {
        text.push("What changes do together is seen too: all combinations are run.".to_owned());
    }
    text.extend(bracket);
    DesignAnswer {
        name: design.name,
        resolution: design.resolution,
        generator: design.generator,
        text,
        repeats,
        seed,
        source: "Box, Hunter and Hunter, Statistics for Experimenters, 2005, chapters 5 and 6; NIST/SEMATECH e-Handbook of \
            Statistical Methods, 5.3.3.4; order by lot: the runs of a repeat sorted by the SHA-256 of `seed/repeat/run`",
    }
}

/// What cannot be told apart, in words.
fn alias(alias: &Alias) -> String {
    let (sign, with) =
        alias.with.strip_prefix('-').map_or(("", alias.with.as_str()), |with| (", the other way round", with));
    format!("What {} does cannot be told from what {} do together{sign}.", together(&alias.effect), letters(with))
}

fn together(effect: &str) -> String {
    if effect.chars().count() == 1 { format!("{effect} alone") } else { format!("the pair {}", letters(effect)) }
}

fn letters(effect: &str) -> String {
    let letters: Vec<String> = effect.chars().map(String::from).collect();
    match letters.as_slice() {
        [rest @ .., last] if !rest.is_empty() => format!("{} and {last}", rest.join(", ")),
        _ => effect.to_owned(),
    }
}

fn faults(nonsense: &Nonsense) -> Vec<Fault> {
    let fault =
        |detail: String| Fault { pointer: "/design".to_owned(), code: FaultCode::Impossible, detail, help: None };
    nonsense.faults.iter().map(|own| fault(format!("{}: {}", own.input, own.message))).collect()
}
