//! The state of conditions and evidence in one case: "dough temperature 31.5 °C is above 30 °C".

use std::cmp::Ordering;

use super::super::numbers::standing;
use super::super::sentence::in_sentence;
use super::{Wording, joined, preposition};
use crate::knowledge::{Comparison, Condition, EvidenceKind, Ingredient, Judged, Key, Quantity, Reading, Side};

impl Wording<'_> {
    /// What the case says about an item of evidence: its state, true or not.
    pub(in crate::diagnosis) fn evidence(self, kind: &EvidenceKind) -> String {
        match kind {
            EvidenceKind::Graded(condition, _) => self.state(condition),
            EvidenceKind::Regions(regions) => {
                let value = regions.quantity.value(self.case).unwrap_or(f64::NAN);
                let region = regions.edges.partition_point(|edge| *edge <= value);
                let digits = self.digits(&regions.quantity, &regions.edges);
                format!("{} is {}", self.valued(&regions.quantity, digits), self.region(regions, region, digits))
            }
        }
    }

    /// The same, one text for each part that settles it.
    pub(in crate::diagnosis) fn states(self, kind: &EvidenceKind) -> Vec<String> {
        match kind {
            EvidenceKind::Graded(condition @ (Condition::All(parts) | Condition::Any(parts)), _) => {
                let deciding = self.deciding(parts, matches!(condition, Condition::Any(_)));
                deciding.into_iter().map(|part| self.state(part)).collect()
            }
            _ => vec![self.evidence(kind)],
        }
    }

    /// The state of a condition: "dough temperature 31.5 °C is above 30 °C".
    pub(in crate::diagnosis) fn state(self, condition: &Condition) -> String {
        match condition {
            Condition::Compare(left, comparison, right) => self.compared(left, *comparison, right),
            Condition::Ramp { quantity, from, to } => self.on_ramp(quantity, *from, *to),
            Condition::Between(quantity, low, high) => {
                let inside = quantity.value(self.case).is_some_and(|value| (*low..=*high).contains(&value));
                let verb = if inside { "lies between" } else { "lies outside" };
                let (digits, unit) = (self.digits(quantity, &[*low, *high]), self.unit(quantity));
                let joint = if inside { "and" } else { "to" };
                let (low, high) = (digits.limit(*low, unit), digits.limit(*high, unit));
                format!("{} {verb} {low} {joint} {high}", self.valued(quantity, digits))
            }
            Condition::PastLimit(reading, side) => self.against_limit(*reading, *side),
            Condition::OnTarget(reading) => self.on_target(*reading),
            Condition::Fact(fact) => {
                let answer = if self.case.fact(*fact) == Some(true) { "yes" } else { "no" };
                format!("{}: {answer}", self.declared.facts[*fact].title)
            }
            Condition::FormulaHas(ingredients) => {
                let named = |key: &&Key<Ingredient>| self.case.names(**key) == Some(true);
                let there: Vec<Key<Ingredient>> = ingredients.iter().filter(named).copied().collect();
                if there.is_empty() {
                    format!("the formula has no {}", self.ingredients(ingredients, " or "))
                } else {
                    match there.as_slice() {
                        [only] => format!("the formula has {}", in_sentence(&self.declared.ingredients[*only].title)),
                        several => format!("the formula has {}", self.ingredients(several, " and ")),
                    }
                }
            }
            Condition::FormulaHasRole(role) => {
                let has = if self.holds(condition) { "has" } else { "has no" };
                format!("the formula {has} {}", role.name().replace('_', " "))
            }
            Condition::Not(inner) => self.state(inner),
            Condition::All(parts) | Condition::Any(parts) => {
                let deciding = self.deciding(parts, matches!(condition, Condition::Any(_)));
                joined(deciding.into_iter().map(|part| self.state(part)), "; ")
            }
            Condition::Judged(judged) => self.judged(judged, condition),
        }
    }

    pub(super) fn holds(self, condition: &Condition) -> bool {
        condition.judge(self.case, &mut |_, _| {}).grade().is_some_and(|grade| grade > 0.0)
    }

    pub(super) fn judged(self, judged: &Judged, condition: &Condition) -> String {
        let grade = condition.judge(self.case, &mut |_, _| {}).grade();
        let answer = match grade {
            Some(grade) if grade >= 1.0 => "yes",
            Some(grade) if grade <= 0.0 => "no",
            Some(_) => "partly",
            None => "unknown",
        };
        format!("{}: {answer}", judged.text)
    }

    pub(super) fn compared(self, left: &Quantity, comparison: Comparison, right: &Quantity) -> String {
        let limit = right.value(self.case);
        let digits = self.digits(left, limit.as_slice());
        let (valued, operand) = (self.valued(left, digits), self.operand(right, left, digits));
        let word = preposition(comparison);
        let (Some(value), Some(limit)) = (left.value(self.case), limit) else {
            return format!("{valued} is {word} {operand}");
        };
        let holds = match comparison {
            Comparison::Above => value > limit,
            Comparison::AtLeast => value >= limit,
            Comparison::Below => value < limit,
            Comparison::AtMost => value <= limit,
        };
        let past = matches!(comparison, Comparison::Above | Comparison::Below);
        match (standing(value, limit), holds) {
            (Ordering::Equal, false) if past => format!("{valued} is at {operand}, not {word}"),
            (Ordering::Equal, _) => format!("{valued} is at {operand}"),
            (_, true) => format!("{valued} is {word} {operand}"),
            (_, false) => format!("{valued} is not {word} {operand}"),
        }
    }

    pub(super) fn on_ramp(self, quantity: &Quantity, from: f64, to: f64) -> String {
        let value = quantity.value(self.case).unwrap_or(f64::NAN);
        let (past, short) = if from < to { ("above", "below") } else { ("below", "above") };
        let (digits, unit) = (self.digits(quantity, &[from, to]), self.unit(quantity));
        let valued = self.valued(quantity, digits);
        let (from_text, to_text) = (digits.limit(from, unit), digits.limit(to, unit));
        let outward = |limit: f64| if from < to { standing(value, limit) } else { standing(limit, value) };
        match (outward(from), outward(to)) {
            (_, Ordering::Greater) => format!("{valued} is {past} {to_text}"),
            (_, Ordering::Equal) => format!("{valued} is at {to_text}"),
            (Ordering::Less, _) => format!("{valued} is {short} {from_text}"),
            (Ordering::Equal, _) => format!("{valued} is at {from_text}, not {past}"),
            (Ordering::Greater, _) if from < to => format!("{valued} lies between {from_text} and {to_text}"),
            (Ordering::Greater, _) => format!("{valued} lies between {to_text} and {from_text}"),
        }
    }

    pub(super) fn against_limit(self, reading: Key<Reading>, side: Side) -> String {
        let limits = self.case.limits(reading);
        let (limit, name, past) = match side {
            Side::Low => (limits.low, "low", "below"),
            Side::High => (limits.high, "high", "above"),
        };
        let quantity = Quantity::Reading(reading);
        let digits = self.digits(&quantity, limit.as_slice());
        let valued = self.valued(&quantity, digits);
        let (Some(value), Some(limit)) = (self.case.reading(reading), limit) else { return valued };
        let over = if matches!(side, Side::High) { value > limit } else { value < limit };
        let limit_text = format!("its {name} limit of {}", digits.limit(limit, self.unit(&quantity)));
        match (standing(value, limit), over) {
            (Ordering::Equal, _) => format!("{valued} is at {limit_text}, not {past}"),
            (_, true) => format!("{valued} is {past} {limit_text}"),
            (_, false) => format!("{valued} is not {past} {limit_text}"),
        }
    }

    pub(super) fn on_target(self, reading: Key<Reading>) -> String {
        let within = Condition::OnTarget(reading).judge(self.case, &mut |_, _| {}).grade() == Some(1.0);
        let verb = if within { "is within" } else { "is outside" };
        let (quantity, limits) = (Quantity::Reading(reading), self.case.limits(reading));
        let limits: Vec<f64> = limits.low.into_iter().chain(limits.high).collect();
        format!("{} {verb} its limits", self.valued(&quantity, self.digits(&quantity, &limits)))
    }
}
