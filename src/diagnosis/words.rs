//! The trade's words for conditions and values.

use std::cmp::Ordering;

use super::numbers::{Digits, measure, number, standing};
use super::sentence::{in_sentence, short};
use crate::knowledge::{
    Circumstances, Comparison, Condition, Declarations, EvidenceKind, Ingredient, Input, Judged, Key, Operation,
    Quantity, Reading, Regions, Side,
};
use crate::units::Unit;

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
    (0..=regions.edges.len())
        .map(|region| format!("{name} {}", wording.region(regions, region, Digits::default())))
        .collect()
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
                let digits = self.digits(&regions.quantity, &regions.edges);
                format!("{} is {}", self.valued(&regions.quantity, digits), self.region(regions, region, digits))
            }
        }
    }

    /// Where a region lies: "from 24 °C to below 28 °C".
    fn region(self, regions: &Regions, region: usize, digits: Digits) -> String {
        let text = |edge: &f64| digits.limit(*edge, self.unit(&regions.quantity));
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

    /// What a condition demands: "dough temperature above 29 °C".
    pub(super) fn demand(self, condition: &Condition) -> String {
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
    pub(super) fn denial(self, condition: &Condition) -> String {
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

    fn joined(self, parts: &[Condition], joint: &str, words: impl Fn(Self, &Condition) -> String) -> String {
        joined(parts.iter().map(|part| words(self, part)), joint)
    }

    fn ingredients(self, keys: &[Key<Ingredient>], joint: &str) -> String {
        joined(keys.iter().map(|key| in_sentence(short(&self.declared.ingredients[*key].title))), joint)
    }

    fn holds(self, condition: &Condition) -> bool {
        condition.judge(self.case, &mut |_, _| {}).grade().is_some_and(|grade| grade > 0.0)
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

    fn on_ramp(self, quantity: &Quantity, from: f64, to: f64) -> String {
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

    fn against_limit(self, reading: Key<Reading>, side: Side) -> String {
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
        let (quantity, limits) = (Quantity::Reading(reading), self.case.limits(reading));
        let limits: Vec<f64> = limits.low.into_iter().chain(limits.high).collect();
        format!("{} {verb} its limits", self.valued(&quantity, self.digits(&quantity, &limits)))
    }

    /// The quantity with its value: "dough temperature 31.5 °C".
    fn valued(self, quantity: &Quantity, digits: Digits) -> String {
        let name = self.name(quantity);
        let Some(value) = quantity.value(self.case) else { return name };
        let value = digits.value(value, self.unit(quantity));
        if self.is_assumed(quantity) { format!("{name}, taken as {value},") } else { format!("{name} {value}") }
    }

    /// The digits of a quantity beside its limits.
    fn digits(self, quantity: &Quantity, limits: &[f64]) -> Digits {
        let value = quantity.value(self.case);
        value.map_or_else(Digits::default, |value| Digits::of(value, self.unit(quantity), limits))
    }

    /// The right side of a comparison; a plain number takes the unit of the left side. How a figure is derived is told
    /// only where it is not known.
    fn operand(self, right: &Quantity, left: &Quantity, digits: Digits) -> String {
        let figure = |value: f64| digits.limit(value, self.unit(left));
        match (own_limit(right, left), right.value(self.case)) {
            (Some(limit), Some(value)) => format!("its {limit} of {}", figure(value)),
            (None, Some(value)) if self.has_name(right) => format!("{} ({})", figure(value), self.name(right)),
            (None, Some(value)) => figure(value),
            (Some(limit), None) => format!("its {limit}"),
            (None, None) => self.name(right),
        }
    }

    /// Whether a quantity is one that people name, not a number or reckoned from others.
    fn has_name(self, quantity: &Quantity) -> bool {
        match quantity {
            Quantity::Number(_) | Quantity::Abs(_) | Quantity::Binary(..) => false,
            Quantity::Either(first, second) => self.has_name(self.speaking(first, second)),
            _ => true,
        }
    }

    /// Whether a number of the rules stands in for what is not known.
    fn is_assumed(self, quantity: &Quantity) -> bool {
        let Quantity::Either(first, second) = quantity else { return false };
        let told = self.speaking(first, second);
        matches!(told, Quantity::Number(_)) || self.is_assumed(told)
    }

    /// Of two alternatives the one that is known; the other is only its understudy.
    fn speaking<'q>(self, first: &'q Quantity, second: &'q Quantity) -> &'q Quantity {
        if first.value(self.case).is_none() && second.value(self.case).is_some() { second } else { first }
    }

    fn unit<'q>(self, quantity: &'q Quantity) -> Option<&'q Unit>
    where
        'a: 'q,
    {
        quantity.unit(&self.declared.readings)
    }

    fn with_unit(self, quantity: &Quantity, value: f64) -> String {
        self.unit(quantity).map_or_else(|| number(value), |unit| measure(value, unit))
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
            Quantity::Either(first, second) => match self.speaking(first, second) {
                // A number is no name: it stands for what the first would tell.
                Quantity::Number(_) => self.name(first),
                told => self.name(told),
            },
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

/// Texts one after the other, each once.
pub(super) fn joined(texts: impl Iterator<Item = String>, joint: &str) -> String {
    let distinct = texts.fold(Vec::new(), |mut distinct, text| {
        if !distinct.contains(&text) {
            distinct.push(text);
        }
        distinct
    });
    distinct.join(joint)
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
