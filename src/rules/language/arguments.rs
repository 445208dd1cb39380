//! Arguments of the kinds that words take.

use super::super::code::Code;
use super::super::term::Term;
use super::call::Call;
use crate::knowledge::{Condition, Input, Key, Quantity, Reading, Scope, Window};
use crate::science::formula::{Part, Role};
use crate::suggest::did_you_mean;
use crate::units::Unit;

impl Call<'_> {
    /// A text.
    pub(super) fn text(&mut self, index: usize) -> Option<String> {
        match self.argument(index, "a text")? {
            Term::Text(text) => Some(text),
            other => {
                self.wrong_kind("a text", other.kind());
                None
            }
        }
    }

    /// A number.
    pub(super) fn number(&mut self, index: usize) -> Option<f64> {
        match self.argument(index, "a number")? {
            Term::Number(number) => Some(number),
            other => {
                self.wrong_kind("a number", other.kind());
                None
            }
        }
    }

    /// A number in a range, both ends included.
    pub(super) fn number_within(&mut self, index: usize, low: f64, high: f64) -> Option<f64> {
        let number = self.number(index)?;
        if (low..=high).contains(&number) {
            return Some(number);
        }
        self.out_of_range(format!("{number} is not between {low} and {high}"));
        None
    }

    /// Two ascending numbers.
    pub(super) fn window(&mut self, low: usize, high: usize) -> Option<Window> {
        let (low, high) = (self.number(low), self.number(high));
        let (low, high) = (low?, high?);
        if low < high {
            return Some(Window { low, high });
        }
        self.out_of_range(format!("the low end {low} is not under the high end {high}"));
        None
    }

    /// A probability, both ends excluded: a number or a word of a scale.
    fn probability(&mut self, index: usize, wanted: &str, of_scale: fn(&Term) -> Option<f64>) -> Option<f64> {
        let term = self.argument(index, wanted)?;
        let number = match &term {
            Term::Number(number) => Some(*number),
            other => of_scale(other),
        };
        match number {
            Some(number) if number > 0.0 && number < 1.0 => Some(number),
            Some(number) => {
                self.out_of_range(format!("{number} is not between 0 and 1, both excluded"));
                None
            }
            None => {
                self.wrong_kind(wanted, term.kind());
                None
            }
        }
    }

    /// A prior probability.
    pub(super) fn prior(&mut self, index: usize) -> Option<f64> {
        self.probability(index, "a prior", |term| match term {
            Term::Prior(prior) => Some(*prior),
            _ => None,
        })
    }

    /// A strength.
    pub(super) fn strength(&mut self, index: usize) -> Option<f64> {
        self.probability(index, "a strength", |term| match term {
            Term::Strength(strength) => Some(*strength),
            _ => None,
        })
    }

    /// A weight in decibans, above 0 and at most 50.
    pub(super) fn weight(&mut self, index: usize) -> Option<f64> {
        let weight = match self.argument(index, "a weight")? {
            Term::Weight(weight) | Term::Number(weight) => weight,
            other => {
                self.wrong_kind("a weight", other.kind());
                return None;
            }
        };
        if weight > 0.0 && weight <= MOST_DECIBANS {
            return Some(weight);
        }
        let help =
            (weight < 0.0).then(|| "write what speaks for the cause, and `against(…)` for the contrary".to_owned());
        self.fault(Code::OutOfRange, format!("{weight} decibans are not above 0 and at most {MOST_DECIBANS}"), help);
        None
    }

    /// Batches that are lost: a number or a word of a scale.
    pub(super) fn batches(&mut self, index: usize) -> Option<f64> {
        if let Some(Term::Waste(batches)) = self.arguments.get(index) {
            return Some(*batches);
        }
        self.number_within(index, 0.0, MOST_BATCHES)
    }

    /// Numbers of a list.
    pub(super) fn numbers(&mut self, index: usize) -> Option<Vec<f64>> {
        let Term::List(items) = self.argument(index, "a list of numbers")? else {
            self.wrong(format!("`{}` wants a list of numbers", self.name));
            return None;
        };
        let numbers: Option<Vec<f64>> = items
            .iter()
            .map(|item| match item {
                Term::Number(number) | Term::Weight(number) => Some(*number),
                _ => None,
            })
            .collect();
        if numbers.is_none() {
            self.wrong(format!("`{}` wants a list of numbers", self.name));
        }
        numbers
    }

    /// Everything from argument `from` on, lists opened, that `pick` accepts; the rest is a fault.
    pub(super) fn many<T>(&mut self, from: usize, wanted: &str, pick: fn(&Term) -> Option<T>) -> Vec<T> {
        let given: Vec<Term> = self.arguments.iter().skip(from).flat_map(opened).collect();
        if given.is_empty() {
            self.wrong(format!("`{}` lacks {wanted}", self.name));
        }
        let mut picked = Vec::new();
        for term in given {
            match pick(&term) {
                Some(value) => picked.push(value),
                None if matches!(term, Term::Unknown) => {}
                None => self.wrong_kind(wanted, term.kind()),
            }
        }
        picked
    }

    /// Products and families.
    pub(super) fn scopes(&mut self, from: usize) -> Vec<Scope> {
        self.many(from, "a product or family", scope)
    }

    /// A condition; a fact is one by itself.
    pub(super) fn condition(&mut self, index: usize) -> Option<Condition> {
        let term = self.argument(index, "a condition")?;
        let found = condition(&term);
        if found.is_none() {
            self.wrong_kind("a condition", term.kind());
        }
        found
    }

    /// An expression; a reading or a number is one by itself.
    pub(super) fn quantity(&mut self, index: usize) -> Option<Quantity> {
        let term = self.argument(index, "a reading or expression")?;
        if let Term::Number(number) = term
            && !number.is_finite()
        {
            self.out_of_range(format!("{number} is not a number to compute with"));
            return None;
        }
        let found = quantity(&term);
        if found.is_none() {
            self.wrong_kind("a reading or expression", term.kind());
        }
        found
    }

    /// A reading.
    pub(super) fn reading(&mut self, index: usize) -> Option<Key<Reading>> {
        match self.argument(index, "a reading")? {
            Term::Reading(key) => Some(key),
            other => {
                self.wrong_kind("a reading", other.kind());
                None
            }
        }
    }

    /// A part of a formula by its name.
    pub(super) fn part(&mut self, index: usize) -> Option<Part> {
        let name = self.text(index)?;
        let found = Part::named(&name);
        if found.is_none() {
            let names = Part::ALL.map(Part::name);
            let help = match name.as_str() {
                "preferment" | "sponge" => format!("`{name}` counts to the dough: write `\"dough\"`"),
                _ => did_you_mean(&name, names).unwrap_or_else(|| format!("the parts are {}", names.join(", "))),
            };
            self.fault(Code::UnknownName, format!("unknown part `{name}`"), Some(help));
        }
        found
    }

    /// A role of an ingredient by its name.
    pub(super) fn role_named(&mut self, name: &str) -> Option<Role> {
        let found = Role::named(name);
        if found.is_none() {
            let names = Role::ALL.map(Role::name);
            let help = did_you_mean(name, names).unwrap_or_else(|| format!("the roles are {}", names.join(", ")));
            self.fault(Code::UnknownName, format!("unknown role `{name}`"), Some(help));
        }
        found
    }

    /// A UCUM unit code.
    pub(super) fn unit(&mut self, index: usize) -> Option<Unit> {
        let code = self.text(index)?;
        Unit::parse(&code)
            .map_err(|fault| {
                let help = fault.suggestion().map(|code| format!("write `{code}`"));
                self.fault(Code::Unit, fault.to_string(), help);
            })
            .ok()
    }
}

/// Most batches that an action loses: more is a wrong unit.
const MOST_BATCHES: f64 = 1_000.0;

/// Largest weight: a likelihood ratio of 100,000.
const MOST_DECIBANS: f64 = 50.0;

fn opened(term: &Term) -> Vec<Term> {
    match term {
        Term::List(items) => items.clone(),
        other => vec![other.clone()],
    }
}

/// The scope that a term names.
pub(super) fn scope(term: &Term) -> Option<Scope> {
    match term {
        Term::Family(key) => Some(Scope::Family(*key)),
        Term::Product(key) => Some(Scope::Product(*key)),
        _ => None,
    }
}

/// The condition that a term is.
pub(super) fn condition(term: &Term) -> Option<Condition> {
    match term {
        Term::Condition(condition) => Some(condition.clone()),
        Term::Fact(key) => Some(Condition::Fact(*key)),
        _ => None,
    }
}

/// The expression that a term is.
pub(super) fn quantity(term: &Term) -> Option<Quantity> {
    match term {
        Term::Quantity(quantity) => Some(quantity.clone()),
        Term::Reading(key) => Some(Quantity::Reading(*key)),
        Term::Number(number) => Some(Quantity::Number(*number)),
        _ => None,
    }
}

/// The input that a term is, for closures.
pub(super) fn input(term: &Term) -> Option<Input> {
    match term {
        Term::Reading(key) => Some(Input::Reading(*key)),
        Term::Fact(key) => Some(Input::Fact(*key)),
        Term::Quantity(Quantity::BakerPercent(keys)) => match keys.as_slice() {
            [key] => Some(Input::Share(*key)),
            _ => None,
        },
        _ => None,
    }
}

/// Picks keys of one kind out of arguments.
macro_rules! picks {
    ($($name:ident, $kind:ident, $of:ty);+ $(;)?) => {
        $(
            #[doc = concat!("The key, when a term is of kind `", stringify!($kind), "`.")]
            pub(super) fn $name(term: &Term) -> Option<Key<$of>> {
                if let Term::$kind(key) = term { Some(*key) } else { None }
            }
        )+
    };
}

picks! {
    source, Source, crate::knowledge::Source;
    caution, Caution, crate::knowledge::Caution;
    diet, Diet, crate::knowledge::Diet;
    allergen, Allergen, crate::knowledge::Allergen;
    family, Family, crate::knowledge::Family;
    market, Market, crate::knowledge::Market;
    limit, Limit, crate::knowledge::Limit;
    action, Action, crate::knowledge::Action;
    ingredient, Ingredient, crate::knowledge::Ingredient;
    symptom, Symptom, crate::knowledge::Symptom;
}

/// A text, when a term is one.
pub(super) fn text(term: &Term) -> Option<String> {
    if let Term::Text(text) = term { Some(text.clone()) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn facts_are_conditions_and_readings_are_expressions() {
        assert!(matches!(condition(&Term::Fact(Key::new(3))), Some(Condition::Fact(_))));
        assert!(matches!(quantity(&Term::Reading(Key::new(3))), Some(Quantity::Reading(_))));
        assert!(quantity(&Term::Text("x".to_owned())).is_none());
    }
}
