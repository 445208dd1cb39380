//! The outcomes that a reading or a fact can have, as far as evidence tells them apart.
//!
//! A reading's axis is cut where some evidence changes sides: at thresholds, limits, edges, and in the middle of ramps. How
//! usual each region is, when none of its causes is at work, follows from the weights of the evidence (see
//! [`usual_share`](crate::inference::usual_share)), else from the usual window of the product.

use crate::inference::{InformationBound, Reading as Outcomes};
use crate::knowledge::{
    Circumstances, Comparison, Condition, Evidence, EvidenceKind, Input, Key, Knowledge, Limits, ProductView, Quantity,
    Reading, Side,
};

use super::numbers::{measure, number};
use super::weighing::{DECIBANS_PER_LOG10, decibans};
use crate::units::Unit;

/// Least share of a region: no outcome is impossible.
const LEAST_SHARE: f64 = 0.01;

/// A window holds nine in ten values of usual production (common practice); z of the 95th percentile of a normal
/// distribution (standard tables).
const WINDOW_Z: f64 = 1.645;

/// Smaller weights, log10, are rounding errors.
const LEAST_WEIGHT: f64 = 1e-9;

/// Something that may be found out next.
#[derive(Debug)]
pub(super) struct Candidate {
    pub(super) input: Input,
    /// Ascending edges between the regions of a reading; a fact has none.
    pub(super) edges: Vec<f64>,
    /// A value in each region: the reading in its unit, or 0 and 1 for a fact.
    pub(super) samples: Vec<f64>,
    /// How usual each region is without its causes; sums to 1.
    pub(super) usual: Vec<f64>,
    /// Positions of the causes that it bears on.
    pub(super) causes: Vec<usize>,
    /// Weights, log10, a region, for each of the causes, when no partner is known.
    pub(super) weights: Vec<(usize, Vec<f64>)>,
    /// Other inputs on which the weights depend: they stand in the same condition, or tell the same story.
    pub(super) partners: Vec<Input>,
    /// Its outcomes when no partner is known; `None` when it bears on more causes than a joint posterior is computed for.
    pub(super) outcomes: Option<(Outcomes, InformationBound)>,
    /// Minutes to find it out.
    pub(super) minutes: f64,
}

/// The candidates of a product.
pub(super) fn candidates(knowledge: &Knowledge, view: &ProductView) -> Vec<Candidate> {
    let mut found = Vec::new();
    let mut blank = Circumstances::new(&view.limits, knowledge.declared.facts.len());
    for relevant in &view.inputs {
        let Some((edges, samples, usual)) = outcomes(knowledge, view, relevant.input, &relevant.causes) else {
            continue;
        };
        let mut candidate = Candidate {
            input: relevant.input,
            edges,
            samples,
            usual,
            causes: relevant.causes.clone(),
            weights: Vec::new(),
            partners: partners(knowledge, view, relevant.input, &relevant.causes),
            outcomes: None,
            minutes: minutes(knowledge, relevant.input),
        };
        candidate.weights = candidate.weights_in(knowledge, view, &mut blank);
        candidate.outcomes = Outcomes::new(&candidate.usual, &candidate.weights).ok().map(|outcomes| {
            let bound = outcomes.bound();
            (outcomes, bound)
        });
        found.push(candidate);
    }
    found
}

impl Candidate {
    /// Weights, log10, a region for each cause, in a case where the input is not known.
    pub(super) fn weights_in(
        &self,
        knowledge: &Knowledge,
        view: &ProductView,
        case: &mut Circumstances,
    ) -> Vec<(usize, Vec<f64>)> {
        let cause = |position: usize| view.causes.get(position).map(|key| &knowledge.declared.causes[*key]);
        let mut weights = Vec::with_capacity(self.causes.len());
        for &position in &self.causes {
            let Some(cause) = cause(position) else { continue };
            let without = decibans(cause, case, &mut |_, _| {});
            let with: Vec<f64> = self
                .samples
                .iter()
                .map(|sample| {
                    assume(case, self.input, Some(*sample));
                    (decibans(cause, case, &mut |_, _| {}) - without) / DECIBANS_PER_LOG10
                })
                .collect();
            assume(case, self.input, None);
            if with.iter().any(|weight| weight.abs() > LEAST_WEIGHT) {
                weights.push((position, with));
            }
        }
        weights
    }
}

/// Sets or forgets an input; of a fact, 1 is yes.
pub(super) fn assume(case: &mut Circumstances, input: Input, value: Option<f64>) {
    match input {
        Input::Reading(key) => case.set_reading(key, value),
        Input::Fact(key) => case.set_fact(key, value.map(|value| value > 0.5)),
        Input::Share(_) | Input::Formula => {}
    }
}

/// The evidence of some causes.
fn items<'k>(
    knowledge: &'k Knowledge,
    view: &'k ProductView,
    causes: &'k [usize],
) -> impl Iterator<Item = &'k EvidenceKind> {
    causes
        .iter()
        .filter_map(|position| view.causes.get(*position))
        .flat_map(|key| knowledge.declared.causes[*key].evidence.iter().map(|item| &item.kind))
}

/// Other inputs on which the weights of an input depend: those in its conditions, and those of its groups, of which only
/// the strongest item counts.
fn partners(knowledge: &Knowledge, view: &ProductView, input: Input, causes: &[usize]) -> Vec<Input> {
    let mut partners = Vec::new();
    for cause in causes.iter().filter_map(|position| view.causes.get(*position)) {
        let evidence = &knowledge.declared.causes[*cause].evidence;
        for item in evidence.iter().filter(|item| depends_on(item, input)) {
            let same_story = |other: &&Evidence| item.group.is_some() && other.group == item.group;
            for told in evidence.iter().filter(same_story).chain([item]) {
                told.inputs(&mut |found| {
                    if found != input && !partners.contains(&found) {
                        partners.push(found);
                    }
                });
            }
        }
    }
    partners
}

fn depends_on(item: &Evidence, input: Input) -> bool {
    let mut depends = false;
    item.inputs(&mut |found| depends |= found == input);
    depends
}

/// Minutes to find an input out.
fn minutes(knowledge: &Knowledge, input: Input) -> f64 {
    match input {
        Input::Reading(key) => knowledge.declared.readings[key].effort_minutes,
        Input::Fact(key) => knowledge.declared.facts[key].effort_minutes,
        Input::Share(_) | Input::Formula => 0.0,
    }
}

/// Edges, samples and usual shares of the regions of an input.
type Cuts = (Vec<f64>, Vec<f64>, Vec<f64>);

/// The outcomes of an input; `None` when evidence does not tell any apart.
fn outcomes(knowledge: &Knowledge, view: &ProductView, input: Input, causes: &[usize]) -> Option<Cuts> {
    match input {
        Input::Reading(key) => reading_outcomes(knowledge, view, key, causes),
        Input::Fact(_) => Some(fact_outcomes(knowledge, view, input, causes)),
        Input::Share(_) | Input::Formula => None,
    }
}

fn fact_outcomes(knowledge: &Knowledge, view: &ProductView, input: Input, causes: &[usize]) -> Cuts {
    let shares: Vec<f64> = items(knowledge, view, causes)
        .filter_map(|kind| match kind {
            EvidenceKind::Graded(condition, weights) => {
                let share = weights.usual?;
                match condition {
                    Condition::Fact(key) if Input::Fact(*key) == input => Some(share),
                    Condition::Not(inner) => {
                        matches!(inner.as_ref(), Condition::Fact(key) if Input::Fact(*key) == input)
                            .then_some(1.0 - share)
                    }
                    _ => None,
                }
            }
            EvidenceKind::Regions(_) => None,
        })
        .collect();
    let yes = mean(&shares).unwrap_or(0.5).clamp(LEAST_SHARE, 1.0 - LEAST_SHARE);
    (Vec::new(), vec![0.0, 1.0], vec![1.0 - yes, yes])
}

/// An edge of a reading's axis, and the share of usual values at or above it where evidence tells.
#[derive(Debug, Clone, Copy)]
struct Edge {
    at: f64,
    above: Option<f64>,
}

fn reading_outcomes(knowledge: &Knowledge, view: &ProductView, key: Key<Reading>, causes: &[usize]) -> Option<Cuts> {
    let limits = view.limits.get(key.index()).copied().unwrap_or_default();
    let mut edges = Vec::new();
    for kind in items(knowledge, view, causes) {
        match kind {
            EvidenceKind::Graded(condition, weights) => cut(condition, key, limits, weights.usual, &mut edges),
            EvidenceKind::Regions(regions) if is_reading(&regions.quantity, key) => {
                let mut above = 1.0;
                for (edge, share) in regions.edges.iter().zip(&regions.usual) {
                    above -= share;
                    edges.push(Edge { at: *edge, above: Some(above) });
                }
            }
            EvidenceKind::Regions(_) => {}
        }
    }
    edges.retain(|edge| edge.at.is_finite());
    edges.sort_by(|a, b| a.at.total_cmp(&b.at));
    let distinct: Vec<f64> = edges.iter().map(|edge| edge.at).fold(Vec::new(), |mut kept, at| {
        if kept.last().is_none_or(|last| at > *last) {
            kept.push(at);
        }
        kept
    });
    if distinct.is_empty() {
        return None;
    }
    let plausible = knowledge.declared.readings[key].plausible;
    let mut above_so_far = 1.0_f64;
    let mut usual = Vec::with_capacity(distinct.len() + 1);
    for at in &distinct {
        let told: Vec<f64> = edges.iter().filter(|edge| edge.at == *at).filter_map(|edge| edge.above).collect();
        let above = mean(&told).unwrap_or_else(|| share_above(*at, limits)).clamp(0.0, above_so_far);
        usual.push((above_so_far - above).max(LEAST_SHARE));
        above_so_far = above;
    }
    usual.push(above_so_far.max(LEAST_SHARE));
    let total: f64 = usual.iter().sum();
    usual.iter_mut().for_each(|share| *share /= total);
    let samples = samples(&distinct, plausible.low, plausible.high);
    Some((distinct, samples, usual))
}

/// Adds the edges at which a condition on the reading changes sides.
fn cut(condition: &Condition, key: Key<Reading>, limits: Limits, usual: Option<f64>, edges: &mut Vec<Edge>) {
    let mut push = |at: f64, above: Option<f64>| edges.push(Edge { at, above });
    match condition {
        Condition::Compare(left, comparison, Quantity::Number(at)) if is_reading(left, key) => {
            let upward = matches!(comparison, Comparison::Above | Comparison::AtLeast);
            push(*at, usual.map(|share| if upward { share } else { 1.0 - share }));
        }
        Condition::Ramp { quantity, from, to } if is_reading(quantity, key) => {
            push(f64::midpoint(*from, *to), usual.map(|share| if from < to { share } else { 1.0 - share }));
        }
        Condition::Between(quantity, low, high) if is_reading(quantity, key) => {
            push(*low, None);
            push(*high, None);
        }
        Condition::PastLimit(own, side) if *own == key => match side {
            Side::High => limits.high.into_iter().for_each(|high| push(high, usual)),
            Side::Low => limits.low.into_iter().for_each(|low| push(low, usual.map(|share| 1.0 - share))),
        },
        Condition::OnTarget(own) if *own == key => {
            limits.low.into_iter().chain(limits.high).for_each(|limit| push(limit, None));
        }
        Condition::Not(inner) => cut(inner, key, limits, usual.map(|share| 1.0 - share), edges),
        // The share of a joint condition says nothing about one of its parts.
        Condition::All(parts) | Condition::Any(parts) => {
            parts.iter().for_each(|part| cut(part, key, limits, None, edges))
        }
        _ => {}
    }
}

fn is_reading(quantity: &Quantity, key: Key<Reading>) -> bool {
    matches!(quantity, Quantity::Reading(own) if *own == key)
}

/// Share of usual production at or above a value, from the usual window; a half without one.
fn share_above(at: f64, limits: Limits) -> f64 {
    let (Some(low), Some(high)) = (limits.low, limits.high) else { return 0.5 };
    let deviation = (high - low) / (2.0 * WINDOW_Z);
    if deviation <= 0.0 {
        return 0.5;
    }
    let z = (at - f64::midpoint(low, high)) / deviation;
    // Logistic approximation of the normal distribution, within 0.01 (Bowling et al. 2009, J. Ind. Eng. Manag. 2(1), from memory).
    1.0 / (1.0 + (0.07056 * z.powi(3) + 1.5976 * z).exp())
}

/// A value inside each region.
fn samples(edges: &[f64], low: f64, high: f64) -> Vec<f64> {
    let first = edges.first().copied().unwrap_or(low);
    let last = edges.last().copied().unwrap_or(high);
    let inner = edges.iter().zip(edges.iter().skip(1)).map(|(low, high)| f64::midpoint(*low, *high));
    [low.min(first - 1.0)].into_iter().chain(inner).chain([high.max(last + 1.0)]).collect()
}

/// A region between two edges in words: "below 24 °C", "24 to 28 °C", "above 28 °C".
pub(super) fn region_in_words(low: Option<f64>, high: Option<f64>, unit: &Unit) -> String {
    match (low, high) {
        (Some(low), Some(high)) => format!("{} to {}", number(low), measure(high, unit)),
        (Some(low), None) => format!("above {}", measure(low, unit)),
        (None, Some(high)) => format!("below {}", measure(high, unit)),
        (None, None) => "any value".to_owned(),
    }
}

fn mean(values: &[f64]) -> Option<f64> {
    #[allow(clippy::cast_precision_loss)] // a handful of values
    (!values.is_empty()).then(|| values.iter().sum::<f64>() / values.len() as f64)
}
