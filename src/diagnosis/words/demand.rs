//! What conditions demand: "dough temperature above 29 °C".

use super::super::numbers::{Digits, measure};
use super::{Wording, joined, preposition};
use crate::knowledge::{Comparison, Condition, Key, Quantity, Reading, Side};

impl Wording<'_> {
    /// What a condition demands: "dough temperature above 29 °C".
    pub(in crate::diagnosis) fn demand(self, condition: &Condition) -> String {
        match condition {
            Condition::Compare(left, comparison, right) => {
                format!(
                    "{} {} {}",
                    self.name(left),
                    preposition(*comparison),
                    self.operand(right, left, Digits::default())
                )
            }
            Condition::Ramp { quantity, from, to } => {
                let side = if from < to { "above" } else { "below" };
                format!("{} {side} {}", self.name(quantity), self.with_unit(quantity, *to))
            }
            Condition::Between(quantity, low, high) => {
                let (low, high) = (self.with_unit(quantity, *low), self.with_unit(quantity, *high));
                format!("{} from {low} to {high}", self.name(quantity))
            }
            Condition::PastLimit(reading, side) => self.past_limit(*reading, *side),
            Condition::OnTarget(reading) => format!("{} within its limits", self.declared.readings[*reading].title),
            Condition::Fact(fact) => self.declared.facts[*fact].title.to_string(),
            Condition::FormulaHas(ingredients) => format!("{} in the formula", self.ingredients(ingredients, " or ")),
            Condition::FormulaHasRole(role) => format!("{} in the formula", role.name().replace('_', " ")),
            Condition::Not(inner) => self.denial(inner),
            Condition::All(parts) => self.joined(parts, " and ", Self::demand),
            Condition::Any(parts) => self.joined(parts, " or ", Self::demand),
            Condition::Judged(judged) => judged.text.clone(),
        }
    }

    /// What the opposite of a condition demands: "dough temperature at most 29 °C".
    pub(in crate::diagnosis) fn denial(self, condition: &Condition) -> String {
        match condition {
            Condition::Compare(left, comparison, right) => {
                format!(
                    "{} {} {}",
                    self.name(left),
                    preposition(opposite(*comparison)),
                    self.operand(right, left, Digits::default())
                )
            }
            Condition::Between(quantity, low, high) => {
                let (low, high) = (self.with_unit(quantity, *low), self.with_unit(quantity, *high));
                format!("{} below {low} or above {high}", self.name(quantity))
            }
            Condition::OnTarget(reading) => format!("{} outside its limits", self.declared.readings[*reading].title),
            Condition::Fact(fact) => format!("{}: no", self.declared.facts[*fact].title),
            Condition::FormulaHas(_) | Condition::FormulaHasRole(_) => format!("no {}", self.demand(condition)),
            Condition::Not(inner) => self.demand(inner),
            Condition::All(parts) => self.joined(parts, " or ", Self::denial),
            Condition::Any(parts) => self.joined(parts, " and ", Self::denial),
            Condition::Ramp { .. } | Condition::PastLimit(..) | Condition::Judged(_) => {
                format!("not {}", self.demand(condition))
            }
        }
    }

    pub(super) fn joined(self, parts: &[Condition], joint: &str, words: impl Fn(Self, &Condition) -> String) -> String {
        joined(parts.iter().map(|part| words(self, part)), joint)
    }

    pub(super) fn past_limit(self, reading: Key<Reading>, side: Side) -> String {
        let declared = &self.declared.readings[reading];
        let (limit, name, past) = match side {
            Side::Low => (self.case.limits(reading).low, "low", "below"),
            Side::High => (self.case.limits(reading).high, "high", "above"),
        };
        let limit = limit.map(|limit| format!(" of {}", measure(limit, &declared.unit))).unwrap_or_default();
        format!("{} {past} its {name} limit{limit}", declared.title)
    }
}

/// Whether what a condition demands is put in words that depend on the case: on its limits or its other readings.
pub(in crate::diagnosis) fn speaks_of_case(condition: &Condition) -> bool {
    match condition {
        Condition::Compare(left, _, right) => chooses(left) || !matches!(right, Quantity::Number(_)),
        Condition::PastLimit(..) => true,
        Condition::Not(inner) => speaks_of_case(inner),
        Condition::All(parts) | Condition::Any(parts) => parts.iter().any(speaks_of_case),
        Condition::Ramp { quantity, .. } | Condition::Between(quantity, ..) => chooses(quantity),
        Condition::OnTarget(_)
        | Condition::Fact(_)
        | Condition::FormulaHas(_)
        | Condition::FormulaHasRole(_)
        | Condition::Judged(_) => false,
    }
}

/// Whether the case settles which of two quantities is meant.
fn chooses(quantity: &Quantity) -> bool {
    let mut found = false;
    quantity.parts(&mut |part| found |= matches!(part, Quantity::Either(..)));
    found
}

fn opposite(comparison: Comparison) -> Comparison {
    match comparison {
        Comparison::Above => Comparison::AtMost,
        Comparison::AtLeast => Comparison::Below,
        Comparison::Below => Comparison::AtLeast,
        Comparison::AtMost => Comparison::Above,
    }
}
