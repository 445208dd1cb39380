//! The trade's words for conditions and values.

mod demand;
mod state;

use super::numbers::{Digits, measure, number};
use super::sentence::{in_sentence, short};
use crate::knowledge::{
    Circumstances, Comparison, Condition, Declarations, Ingredient, Input, Key, Operation, Quantity, Reading, Regions,
};
use crate::units::Unit;

pub(in crate::diagnosis) use demand::speaks_of_case;

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
pub(in crate::diagnosis) struct Wording<'a> {
    pub(in crate::diagnosis) declared: &'a Declarations,
    pub(in crate::diagnosis) case: &'a Circumstances,
}

impl<'a> Wording<'a> {
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

    fn ingredients(self, keys: &[Key<Ingredient>], joint: &str) -> String {
        joined(keys.iter().map(|key| in_sentence(short(&self.declared.ingredients[*key].title))), joint)
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
    pub(in crate::diagnosis) fn name(self, quantity: &Quantity) -> String {
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
pub(in crate::diagnosis) fn joined(texts: impl Iterator<Item = String>, joint: &str) -> String {
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

/// Id of an input.
pub(in crate::diagnosis) fn input_id(declared: &Declarations, input: Input) -> &str {
    match input {
        Input::Reading(key) => &declared.readings[key].id,
        Input::Fact(key) => &declared.facts[key].id,
        Input::Share(_) | Input::Formula => "formula",
    }
}

/// Title of an input.
pub(in crate::diagnosis) fn input_title(declared: &Declarations, input: Input) -> &str {
    match input {
        Input::Reading(key) => &declared.readings[key].title,
        Input::Fact(key) => &declared.facts[key].title,
        Input::Share(_) | Input::Formula => "the formula with all ingredients",
    }
}
