//! Conditions: typed trees, judged in three-valued graded logic.

use std::fmt;
use std::sync::Arc;

use super::{Circumstances, Fact, Ingredient, Input, Key, Place, Quantity, Reading, Truth};
use crate::science::formula::Role;

/// How two quantities are compared.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Comparison {
    /// Left is larger.
    Above,
    /// Left is larger or equal.
    AtLeast,
    /// Left is smaller.
    Below,
    /// Left is smaller or equal.
    AtMost,
}

/// Which limit of a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Under the low limit.
    Low,
    /// Over the high limit.
    High,
}

/// A statement about a case that is true, false, partly true or unknown.
#[derive(Debug, Clone)]
pub enum Condition {
    /// Comparison of two quantities.
    Compare(Quantity, Comparison, Quantity),
    /// Graded from 0 at `from` to 1 at `to`; falling when `to` is the smaller.
    Ramp {
        /// What is judged.
        quantity: Quantity,
        /// Grade 0 here and beyond.
        from: f64,
        /// Grade 1 here and beyond.
        to: f64,
    },
    /// Between two numbers, both included.
    Between(Quantity, f64, f64),
    /// Past the plant's limit or the usual window, fully at one margin past it.
    PastLimit(Key<Reading>, Side),
    /// Within both limits.
    OnTarget(Key<Reading>),
    /// A stated fact.
    Fact(Key<Fact>),
    /// The formula names at least one of the ingredients.
    FormulaHas(Vec<Key<Ingredient>>),
    /// Something in the formula has the role.
    FormulaHasRole(Role),
    /// The contrary.
    Not(Box<Condition>),
    /// All hold.
    All(Vec<Condition>),
    /// At least one holds.
    Any(Vec<Condition>),
    /// A closure of the rule file.
    Judged(Judged),
}

/// The escape for what trees cannot say: a closure on plain values.
#[derive(Debug, Clone)]
pub struct Judged {
    /// What the closure takes, in its order. All must be known before it is called.
    pub inputs: Vec<Input>,
    /// What it judges, in words.
    pub text: String,
    /// The closure.
    pub judge: Arc<dyn Judge>,
    /// Where it stands.
    pub place: Place,
}

/// A closure that a rule file supplies; numbers in the readings' own units, facts as 0 or 1.
pub trait Judge: Send + Sync + fmt::Debug {
    /// Grade from 0 to 1.
    ///
    /// # Errors
    /// When the closure fails, runs over its budget or gives something that is not a grade.
    fn judge(&self, inputs: &[f64]) -> Result<f64, JudgeFault>;
}

/// Why a closure gave no grade.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JudgeFault {
    /// Lower case, without a full stop.
    pub message: String,
}

impl Condition {
    /// Judges the condition; a failing closure is unknown and is told to `faults`.
    pub fn judge(&self, case: &Circumstances, faults: &mut dyn FnMut(&Judged, JudgeFault)) -> Truth {
        match self {
            Self::Compare(left, comparison, right) => compare(left.value(case), *comparison, right.value(case)),
            Self::Ramp { quantity, from, to } => ramp(quantity.value(case), *from, *to),
            Self::Between(quantity, low, high) => {
                quantity.value(case).map(|value| (*low..=*high).contains(&value)).into()
            }
            Self::PastLimit(reading, side) => past_limit(case, *reading, *side),
            Self::OnTarget(reading) => on_target(case, *reading),
            Self::Fact(fact) => case.fact(*fact).into(),
            Self::FormulaHas(ingredients) => {
                ingredients.iter().fold(Truth::FALSE, |any, key| any.or(case.names(*key).into()))
            }
            Self::FormulaHasRole(role) => case.names_role(*role).into(),
            Self::Not(inner) => inner.judge(case, faults).not(),
            Self::All(parts) => parts.iter().fold(Truth::TRUE, |all, part| all.and(part.judge(case, faults))),
            Self::Any(parts) => parts.iter().fold(Truth::FALSE, |any, part| any.or(part.judge(case, faults))),
            Self::Judged(judged) => judged.judge(case, faults),
        }
    }

    /// Visits everything that it depends on.
    pub fn inputs(&self, visit: &mut impl FnMut(Input)) {
        match self {
            Self::Compare(left, _, right) => {
                left.inputs(visit);
                right.inputs(visit);
            }
            Self::Ramp { quantity, .. } | Self::Between(quantity, ..) => quantity.inputs(visit),
            Self::PastLimit(reading, _) | Self::OnTarget(reading) => visit(Input::Reading(*reading)),
            Self::Fact(fact) => visit(Input::Fact(*fact)),
            Self::FormulaHas(ingredients) => ingredients.iter().for_each(|key| visit(Input::Share(*key))),
            Self::FormulaHasRole(_) => visit(Input::Formula),
            Self::Not(inner) => inner.inputs(visit),
            Self::All(parts) | Self::Any(parts) => parts.iter().for_each(|part| part.inputs(visit)),
            Self::Judged(judged) => judged.inputs.iter().copied().for_each(visit),
        }
    }

    /// Whether it asks for nothing but what the formula has.
    #[must_use]
    pub fn asks_only_for_ingredients(&self) -> bool {
        match self {
            Self::FormulaHas(_) | Self::FormulaHasRole(_) => true,
            Self::Not(inner) => inner.asks_only_for_ingredients(),
            Self::All(parts) | Self::Any(parts) => parts.iter().all(Self::asks_only_for_ingredients),
            _ => false,
        }
    }

    /// Visits every quantity in it.
    pub fn quantities(&self, visit: &mut impl FnMut(&Quantity)) {
        match self {
            Self::Compare(left, _, right) => {
                left.parts(visit);
                right.parts(visit);
            }
            Self::Ramp { quantity, .. } | Self::Between(quantity, ..) => quantity.parts(visit),
            Self::Not(inner) => inner.quantities(visit),
            Self::All(parts) | Self::Any(parts) => parts.iter().for_each(|part| part.quantities(visit)),
            Self::PastLimit(..)
            | Self::OnTarget(_)
            | Self::Fact(_)
            | Self::FormulaHas(_)
            | Self::FormulaHasRole(_)
            | Self::Judged(_) => {}
        }
    }
}

impl Judged {
    fn judge(&self, case: &Circumstances, faults: &mut dyn FnMut(&Judged, JudgeFault)) -> Truth {
        let Some(values) = self.inputs.iter().map(|input| plain_value(case, *input)).collect::<Option<Vec<f64>>>()
        else {
            return Truth::UNKNOWN;
        };
        self.judge.judge(&values).map_or_else(
            |fault| {
                faults(self, fault);
                Truth::UNKNOWN
            },
            Truth::graded,
        )
    }
}

fn plain_value(case: &Circumstances, input: Input) -> Option<f64> {
    match input {
        Input::Reading(key) => case.reading(key),
        Input::Fact(key) => case.fact(key).map(f64::from),
        Input::Share(key) => case.share(key),
        Input::Formula => None,
    }
}

fn compare(left: Option<f64>, comparison: Comparison, right: Option<f64>) -> Truth {
    let (Some(left), Some(right)) = (left, right) else { return Truth::UNKNOWN };
    Truth::from(match comparison {
        Comparison::Above => left > right,
        Comparison::AtLeast => left >= right,
        Comparison::Below => left < right,
        Comparison::AtMost => left <= right,
    })
}

fn ramp(value: Option<f64>, from: f64, to: f64) -> Truth {
    value.map_or(Truth::UNKNOWN, |value| Truth::graded((value - from) / (to - from)))
}

fn past_limit(case: &Circumstances, reading: Key<Reading>, side: Side) -> Truth {
    margins_past(case, reading, side).map_or(Truth::UNKNOWN, Truth::graded)
}

/// How far a reading lies past a limit, in margins: from -1, one margin or more within, to 1, one margin or more past it.
/// Without a margin it is one or the other.
pub(super) fn margins_past(case: &Circumstances, reading: Key<Reading>, side: Side) -> Option<f64> {
    let limits = case.limits(reading);
    let (limit, outward) = match side {
        Side::Low => (limits.low, -1.0),
        Side::High => (limits.high, 1.0),
    };
    let past = (case.reading(reading)? - limit?) * outward;
    Some(match limits.margin {
        Some(margin) if margin > 0.0 => (past / margin).clamp(-1.0, 1.0),
        _ if past > 0.0 => 1.0,
        _ => -1.0,
    })
}

fn on_target(case: &Circumstances, reading: Key<Reading>) -> Truth {
    let limits = case.limits(reading);
    let Some(value) = case.reading(reading) else { return Truth::UNKNOWN };
    let over_low = limits.low.map(|low| value >= low);
    let under_high = limits.high.map(|high| value <= high);
    match (over_low, under_high) {
        (None, None) => Truth::UNKNOWN,
        (low, high) => Truth::from(low.unwrap_or(true) && high.unwrap_or(true)),
    }
}
