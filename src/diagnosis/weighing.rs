//! Weighs the evidence of a case: decibans for every cause, and what each finding contributes to them.

use super::answer::RuleFault;
use crate::case::Seen;
use crate::inference::{Findings, Observation};
use crate::knowledge::{
    Cause, Circumstances, Evidence, FormulaFigures, Input, JudgeFault, Judged, Knowledge, ProductView,
};

/// Decibans in one unit of log10.
pub(super) const DECIBANS_PER_LOG10: f64 = 10.0;

/// Smaller weights, decibans, are rounding errors.
const NO_WEIGHT: f64 = 1e-12;

/// A known input that evidence depends on; all shares of a formula count as one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum KnownFinding {
    Input(Input),
    Formula,
}

/// The findings of a case as the inference takes them.
pub(super) struct Weighed {
    pub(super) findings: Findings,
    /// What each of the findings' readings stands for, in their order; the last, without a source, is what they only say jointly.
    pub(super) sources: Vec<KnownFinding>,
    pub(super) rule_faults: Vec<RuleFault>,
}

/// Weighs everything that is known.
pub(super) fn weigh(knowledge: &Knowledge, view: &ProductView, case: &mut Circumstances) -> Weighed {
    let mut rule_faults = Vec::new();
    let total: Vec<f64> = view
        .causes
        .iter()
        .map(|key| {
            decibans(&knowledge.declared.causes[*key], case, &mut |judged, fault| {
                record(&mut rule_faults, judged, &fault)
            })
        })
        .collect();
    let mut shares: Vec<(KnownFinding, Vec<(usize, f64)>)> = Vec::new();
    // What is left after each finding's own share: evidence that needs several findings at once.
    let mut residual = total.clone();
    for (source, dependents) in known_sources(view, case) {
        let undo = forget(case, source);
        let mut weights = Vec::with_capacity(dependents.len());
        for &cause in &dependents {
            let without = view
                .causes
                .get(cause)
                .map_or(0.0, |key| decibans(&knowledge.declared.causes[*key], case, &mut |_, _| {}));
            let share = total.get(cause).copied().unwrap_or(0.0) - without;
            if let Some(rest) = residual.get_mut(cause) {
                *rest -= share;
            }
            weights.push((cause, share / DECIBANS_PER_LOG10));
        }
        undo.restore(case);
        shares.push((source, weights));
    }
    give_stories_to_their_tellers(knowledge, view, case, &mut shares, &mut residual);
    let mut findings = Findings::new();
    for (_, weights) in &shares {
        findings.weigh(weights);
    }
    let sources = shares.into_iter().map(|(source, _)| source).collect();
    let joint: Vec<(usize, f64)> = residual
        .iter()
        .enumerate()
        .filter(|(_, rest)| rest.abs() > NO_WEIGHT)
        .map(|(cause, rest)| (cause, rest / DECIBANS_PER_LOG10))
        .collect();
    if !joint.is_empty() {
        findings.weigh(&joint);
    }
    Weighed { findings, sources, rule_faults }
}

/// Decibans that the evidence of a cause adds to its prior log-odds: all items, but of a group only the strongest.
pub(super) fn decibans(cause: &Cause, case: &Circumstances, faults: &mut dyn FnMut(&Judged, JudgeFault)) -> f64 {
    let mut total = 0.0;
    let mut groups: Vec<(&str, f64)> = Vec::new();
    for item in &cause.evidence {
        let Some(weight) = item.decibans(case, faults) else { continue };
        let Some(name) = item.group.as_deref() else {
            total += weight;
            continue;
        };
        match groups.iter_mut().find(|(own, _)| *own == name) {
            Some((_, strongest)) if weight.abs() > strongest.abs() => *strongest = weight,
            Some(_) => {}
            None => groups.push((name, weight)),
        }
    }
    total + groups.iter().map(|(_, strongest)| strongest).sum::<f64>()
}

/// Of findings that tell the same story each seems to weigh nothing, since the others stand for it. The whole weight of a
/// group is that of the finding on which its strongest item hangs.
fn give_stories_to_their_tellers(
    knowledge: &Knowledge,
    view: &ProductView,
    case: &mut Circumstances,
    shares: &mut [(KnownFinding, Vec<(usize, f64)>)],
    residual: &mut [f64],
) {
    for (position, rest) in residual.iter_mut().enumerate().filter(|(_, rest)| rest.abs() > NO_WEIGHT) {
        let Some(cause) = view.causes.get(position).map(|key| &knowledge.declared.causes[*key]) else { continue };
        for (group, source) in tellers(cause, case) {
            let undo = forget(case, source);
            let told_by_others = strongest(cause, group, case).map_or(0.0, |(weight, _)| weight);
            undo.restore(case);
            // Only what nobody has been given: a finding that all of the story hangs on has it already.
            if told_by_others * *rest <= 0.0 {
                continue;
            }
            let given = told_by_others.abs().min(rest.abs()).copysign(*rest);
            let own = shares.iter_mut().filter(|(own, _)| *own == source).flat_map(|(_, weights)| weights);
            if let Some((_, share)) = own.into_iter().find(|(cause, _)| *cause == position) {
                *share += given / DECIBANS_PER_LOG10;
                *rest -= given;
            }
        }
    }
}

/// The groups of a cause that tell something, each with the finding that tells it.
fn tellers<'k>(cause: &'k Cause, case: &Circumstances) -> Vec<(&'k str, KnownFinding)> {
    let mut groups: Vec<&str> = cause.evidence.iter().filter_map(|item| item.group.as_deref()).collect();
    groups.sort_unstable();
    groups.dedup();
    let teller = |group| Some((group, first_known(strongest(cause, group, case)?.1, case)?));
    groups.into_iter().filter_map(teller).collect()
}

/// The item of a group that counts, with its decibans.
fn strongest<'k>(cause: &'k Cause, group: &str, case: &Circumstances) -> Option<(f64, &'k Evidence)> {
    let own = cause.evidence.iter().filter(|item| item.group.as_deref() == Some(group));
    let weights = own.filter_map(|item| Some((item.decibans(case, &mut |_, _| {})?, item)));
    weights.reduce(|strongest, other| if other.0.abs() > strongest.0.abs() { other } else { strongest })
}

/// The first known finding that an item of evidence depends on.
fn first_known(item: &Evidence, case: &Circumstances) -> Option<KnownFinding> {
    let mut first = None;
    item.inputs(&mut |input| {
        if first.is_none() && case.knows(input) {
            let is_formula = matches!(input, Input::Share(_) | Input::Formula);
            first = Some(if is_formula { KnownFinding::Formula } else { KnownFinding::Input(input) });
        }
    });
    first
}

/// Known inputs with the causes whose evidence depends on them.
fn known_sources(view: &ProductView, case: &Circumstances) -> Vec<(KnownFinding, Vec<usize>)> {
    let mut sources: Vec<(KnownFinding, Vec<usize>)> = Vec::new();
    let mut formula: Vec<usize> = Vec::new();
    for relevant in view.inputs.iter().filter(|relevant| case.knows(relevant.input)) {
        match relevant.input {
            Input::Share(_) | Input::Formula => formula.extend(&relevant.causes),
            input => sources.push((KnownFinding::Input(input), relevant.causes.clone())),
        }
    }
    if !formula.is_empty() {
        formula.sort_unstable();
        formula.dedup();
        sources.push((KnownFinding::Formula, formula));
    }
    sources
}

/// What was forgotten, to be put back.
enum Undo {
    Reading(crate::knowledge::Key<crate::knowledge::Reading>, Option<f64>),
    Fact(crate::knowledge::Key<crate::knowledge::Fact>, Option<bool>),
    Formula(Option<FormulaFigures>),
}

fn forget(case: &mut Circumstances, source: KnownFinding) -> Undo {
    match source {
        KnownFinding::Input(Input::Reading(key)) => {
            let value = case.reading(key);
            case.set_reading(key, None);
            Undo::Reading(key, value)
        }
        KnownFinding::Input(Input::Fact(key)) => {
            let value = case.fact(key);
            case.set_fact(key, None);
            Undo::Fact(key, value)
        }
        KnownFinding::Input(Input::Share(_) | Input::Formula) | KnownFinding::Formula => {
            Undo::Formula(case.take_formula())
        }
    }
}

impl Undo {
    fn restore(self, case: &mut Circumstances) {
        match self {
            Self::Reading(key, value) => case.set_reading(key, value),
            Self::Fact(key, value) => case.set_fact(key, value),
            Self::Formula(formula) => case.set_formula(formula),
        }
    }
}

fn record(faults: &mut Vec<RuleFault>, judged: &Judged, fault: &JudgeFault) {
    let fault =
        RuleFault { file: judged.place.file.to_string(), line: judged.place.line, message: fault.message.clone() };
    if !faults.contains(&fault) {
        faults.push(fault);
    }
}

/// Adds the symptoms of a case to its findings.
pub(super) fn observe(findings: &mut Findings, view: &ProductView, symptoms: &[Seen]) {
    for seen in symptoms {
        if let Some(position) = view.symptom_position(seen.symptom) {
            findings.observe(position, observation(seen.certainty));
        }
    }
}

/// How a certainty is told to the inference.
fn observation(certainty: f64) -> Observation {
    if certainty >= 1.0 {
        Observation::Present
    } else if certainty <= 0.0 {
        Observation::Absent
    } else {
        Observation::Likely(certainty)
    }
}
