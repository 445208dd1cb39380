//! The trade's words for conditions and values.

use super::numbers::{measure, number};
use super::sentence::in_sentence;
use crate::knowledge::{
    Circumstances, Comparison, Condition, Declarations, EvidenceKind, Ingredient, Input, Judged, Key, Operation,
    Quantity, Reading, Regions, Side,
};

/// A condition of the rules in words: "dough temperature above 29 °C".
#[must_use]
pub fn describe_condition(declared: &Declarations, condition: &Condition) -> String {
    Wording { declared, case: &Circumstances::default() }.demand(condition)
}

/// The regions of a quantity in words, in ascending order.
#[must_use]
pub fn describe_regions(declared: &Declarations, regions: &Regions) -> Vec<String> {
    let case = Circumstances::default();
    let wording = Wording { declared, case: &case };
    let name = wording.name(&regions.quantity);
    (0..=regions.edges.len()).map(|region| format!("{name} {}", wording.region(regions, region))).collect()
}

/// Words for conditions in one case.
#[derive(Clone, Copy)]
pub(super) struct Wording<'a> {
    pub(super) declared: &'a Declarations,
    pub(super) case: &'a Circumstances,
}

impl<'a> Wording<'a> {
    /// What the case says about an item of evidence: its state, true or not.
    pub(super) fn evidence(self, kind: &EvidenceKind) -> String {
        match kind {
            EvidenceKind::Graded(condition, _) => self.state(condition),
            EvidenceKind::Regions(regions) => {
                let value = regions.quantity.value(self.case).unwrap_or(f64::NAN);
                let region = regions.edges.partition_point(|edge| *edge <= value);
                format!("{} is {}", self.valued(&regions.quantity), self.region(regions, region))
            }
        }
    }

    /// Where a region lies: "from 24 °C to below 28 °C".
    fn region(self, regions: &Regions, region: usize) -> String {
        let text = |edge: &f64| self.with_unit(&regions.quantity, *edge);
        let low = region.checked_sub(1).and_then(|index| regions.edges.get(index)).map(text);
        match (low, regions.edges.get(region).map(text)) {
            (Some(low), Some(high)) => format!("from {low} to below {high}"),
            (Some(low), None) => format!("at or above {low}"),
            (None, Some(high)) => format!("below {high}"),
            (None, None) => "known".to_owned(),
        }
    }

    /// The state of a condition: "dough temperature 31.5 °C is above 30 °C".
    pub(super) fn state(self, condition: &Condition) -> String {
        match condition {
            Condition::Compare(left, comparison, right) => self.compared(left, *comparison, right),
            Condition::Ramp { quantity, from, to } => self.on_ramp(quantity, *from, *to),
            Condition::Between(quantity, low, high) => {
                let inside = quantity.value(self.case).is_some_and(|value| (*low..=*high).contains(&value));
                let verb = if inside { "lies between" } else { "lies outside" };
                let (low, high) = (self.with_unit(quantity, *low), self.with_unit(quantity, *high));
                let joint = if inside { "and" } else { "to" };
                format!("{} {verb} {low} {joint} {high}", self.valued(quantity))
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
                    format!("the formula has {}", self.ingredients(&there, " and "))
                }
            }
            Condition::FormulaHasRole(role) => {
                let has = if self.holds(condition) { "has" } else { "has no" };
                format!("the formula {has} {}", role.name().replace('_', " "))
            }
            Condition::Not(inner) => self.state(inner),
            Condition::All(parts) | Condition::Any(parts) => {
                let known: Vec<String> =
                    parts.iter().filter(|part| self.is_known(part)).map(|part| self.state(part)).collect();
                known.join("; ")
            }
            Condition::Judged(judged) => self.judged(judged, condition),
        }
    }

    /// What a condition demands: "dough temperature above 29 °C".
    pub(super) fn demand(self, condition: &Condition) -> String {
        match condition {
            Condition::Compare(left, comparison, right) => {
                format!("{} {} {}", self.name(left), preposition(*comparison), self.operand(right, left))
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
    fn denial(self, condition: &Condition) -> String {
        match condition {
            Condition::Compare(left, comparison, right) => {
                format!("{} {} {}", self.name(left), preposition(opposite(*comparison)), self.operand(right, left))
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

    fn joined(self, parts: &[Condition], joint: &str, words: impl Fn(Self, &Condition) -> String) -> String {
        let texts: Vec<String> = parts.iter().map(|part| words(self, part)).collect();
        texts.join(joint)
    }

    fn ingredients(self, keys: &[Key<Ingredient>], joint: &str) -> String {
        let titles: Vec<String> = keys.iter().map(|key| in_sentence(&self.declared.ingredients[*key].title)).collect();
        titles.join(joint)
    }

    fn holds(self, condition: &Condition) -> bool {
        condition.judge(self.case, &mut |_, _| {}).grade().is_some_and(|grade| grade > 0.0)
    }

    fn is_known(self, condition: &Condition) -> bool {
        condition.judge(self.case, &mut |_, _| {}).grade().is_some()
    }

    fn judged(self, judged: &Judged, condition: &Condition) -> String {
        let grade = condition.judge(self.case, &mut |_, _| {}).grade();
        let answer = match grade {
            Some(grade) if grade >= 1.0 => "yes",
            Some(grade) if grade <= 0.0 => "no",
            Some(_) => "partly",
            None => "unknown",
        };
        format!("{}: {answer}", judged.text)
    }

    fn compared(self, left: &Quantity, comparison: Comparison, right: &Quantity) -> String {
        let holds = match (left.value(self.case), right.value(self.case)) {
            (Some(left), Some(right)) => match comparison {
                Comparison::Above => left > right,
                Comparison::AtLeast => left >= right,
                Comparison::Below => left < right,
                Comparison::AtMost => left <= right,
            },
            _ => true,
        };
        let verb = if holds { "is" } else { "is not" };
        format!("{} {verb} {} {}", self.valued(left), preposition(comparison), self.operand(right, left))
    }

    fn on_ramp(self, quantity: &Quantity, from: f64, to: f64) -> String {
        let value = quantity.value(self.case).unwrap_or(f64::NAN);
        let (past, short) = if from < to { ("above", "below") } else { ("below", "above") };
        let reaches = |end: f64| if from < to { value >= end } else { value <= end };
        let valued = self.valued(quantity);
        if reaches(to) {
            let verb = if (value - to).abs() < f64::EPSILON { "reaches" } else { "is" };
            let side = if verb == "is" { format!("{past} ") } else { String::new() };
            return format!("{valued} {verb} {side}{}", self.with_unit(quantity, to));
        }
        if reaches(from) && (value - from).abs() > f64::EPSILON {
            let (low, high) = (from.min(to), from.max(to));
            return format!(
                "{valued} lies between {} and {}",
                self.with_unit(quantity, low),
                self.with_unit(quantity, high)
            );
        }
        if (value - from).abs() <= f64::EPSILON {
            return format!("{valued} is not {past} {}", self.with_unit(quantity, from));
        }
        format!("{valued} is {short} {}", self.with_unit(quantity, from))
    }

    fn against_limit(self, reading: Key<Reading>, side: Side) -> String {
        let limits = self.case.limits(reading);
        let (limit, name, past) = match side {
            Side::Low => (limits.low, "low", "below"),
            Side::High => (limits.high, "high", "above"),
        };
        let valued = self.valued(&Quantity::Reading(reading));
        let (Some(value), Some(limit)) = (self.case.reading(reading), limit) else { return valued };
        let over = if matches!(side, Side::High) { value > limit } else { value < limit };
        let verb = if over { "is" } else { "is not" };
        format!("{valued} {verb} {past} its {name} limit of {}", measure(limit, &self.declared.readings[reading].unit))
    }

    fn past_limit(self, reading: Key<Reading>, side: Side) -> String {
        let declared = &self.declared.readings[reading];
        let (limit, name, past) = match side {
            Side::Low => (self.case.limits(reading).low, "low", "below"),
            Side::High => (self.case.limits(reading).high, "high", "above"),
        };
        let limit = limit.map(|limit| format!(" of {}", measure(limit, &declared.unit))).unwrap_or_default();
        format!("{} {past} its {name} limit{limit}", declared.title)
    }

    fn on_target(self, reading: Key<Reading>) -> String {
        let within = Condition::OnTarget(reading).judge(self.case, &mut |_, _| {}).grade() == Some(1.0);
        let verb = if within { "is within" } else { "is outside" };
        format!("{} {verb} its limits", self.valued(&Quantity::Reading(reading)))
    }

    /// The quantity with its value: "dough temperature 31.5 °C".
    fn valued(self, quantity: &Quantity) -> String {
        let name = self.name(quantity);
        quantity
            .value(self.case)
            .map_or_else(|| name.clone(), |value| format!("{name} {}", self.with_unit(quantity, value)))
    }

    /// The right side of a comparison; a plain number takes the unit of the left side.
    fn operand(self, right: &Quantity, left: &Quantity) -> String {
        match right {
            Quantity::Number(value) => self.with_unit(left, *value),
            other => match (own_limit(other, left), other.value(self.case)) {
                (Some(limit), Some(value)) => format!("its {limit} of {}", self.with_unit(left, value)),
                (None, Some(value)) => format!("{} ({})", self.with_unit(left, value), self.name(other)),
                (Some(limit), None) => format!("its {limit}"),
                (None, None) => self.name(other),
            },
        }
    }

    fn with_unit(self, quantity: &Quantity, value: f64) -> String {
        quantity.unit(&self.declared.readings).map_or_else(|| number(value), |unit| measure(value, unit))
    }

    /// The quantity in words.
    pub(super) fn name(self, quantity: &Quantity) -> String {
        let title = |key: &Key<Reading>| self.declared.readings[*key].title.to_string();
        match quantity {
            Quantity::Number(value) => number(*value),
            Quantity::Reading(key) => title(key),
            Quantity::LowLimit(key) => format!("low limit of {}", title(key)),
            Quantity::Target(key) => format!("target of {}", title(key)),
            Quantity::HighLimit(key) => format!("high limit of {}", title(key)),
            Quantity::BakerPercent(keys) => format!("{} on flour", self.ingredients(keys, " + ")),
            Quantity::MassPercent(keys, None) => format!("{} in the whole mass", self.ingredients(keys, " + ")),
            Quantity::MassPercent(keys, Some(part)) => {
                format!("{} in the {}", self.ingredients(keys, " + "), part.name())
            }
            Quantity::RolePercent(role) => format!("{} on flour", role.name().replace('_', " ")),
            Quantity::Formula(quantity, None) => quantity.title().to_owned(),
            Quantity::Formula(quantity, Some(part)) => format!("{} of the {}", quantity.title(), part.name()),
            Quantity::Either(first, second) => {
                // What is known speaks; the other is only its understudy.
                let told =
                    if first.value(self.case).is_none() && second.value(self.case).is_some() { second } else { first };
                self.name(told)
            }
            Quantity::Calculated(calculated) => calculated.title.clone(),
            Quantity::Abs(inner) => format!("size of ({})", self.name(inner)),
            Quantity::Binary(operation, left, right) => {
                let (left, right) = (self.name(left), self.name(right));
                match operation {
                    Operation::Add => format!("{left} + {right}"),
                    Operation::Subtract => format!("{left} − {right}"),
                    Operation::Multiply => format!("{left} × {right}"),
                    Operation::Divide => format!("{left} / {right}"),
                    Operation::Min => format!("the smaller of {left} and {right}"),
                    Operation::Max => format!("the larger of {left} and {right}"),
                }
            }
        }
    }
}

/// Whether what a condition demands is put in words that depend on the case: on its limits or its other readings.
pub(super) fn speaks_of_case(condition: &Condition) -> bool {
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

/// The name of a limit of the very reading that it is compared with.
fn own_limit(limit: &Quantity, reading: &Quantity) -> Option<&'static str> {
    let Quantity::Reading(own) = reading else { return None };
    match limit {
        Quantity::LowLimit(key) if key == own => Some("low limit"),
        Quantity::Target(key) if key == own => Some("target"),
        Quantity::HighLimit(key) if key == own => Some("high limit"),
        _ => None,
    }
}

fn preposition(comparison: Comparison) -> &'static str {
    match comparison {
        Comparison::Above => "above",
        Comparison::AtLeast => "at least",
        Comparison::Below => "below",
        Comparison::AtMost => "at most",
    }
}

fn opposite(comparison: Comparison) -> Comparison {
    match comparison {
        Comparison::Above => Comparison::AtMost,
        Comparison::AtLeast => Comparison::Below,
        Comparison::Below => Comparison::AtLeast,
        Comparison::AtMost => Comparison::Above,
    }
}

/// Id of an input.
pub(super) fn input_id(declared: &Declarations, input: Input) -> &str {
    match input {
        Input::Reading(key) => &declared.readings[key].id,
        Input::Fact(key) => &declared.facts[key].id,
        Input::Share(_) | Input::Formula => "formula",
    }
}

/// Title of an input.
pub(super) fn input_title(declared: &Declarations, input: Input) -> &str {
    match input {
        Input::Reading(key) => &declared.readings[key].title,
        Input::Fact(key) => &declared.facts[key].title,
        Input::Share(_) | Input::Formula => "the formula with all ingredients",
    }
}
