//! What a name or an expression of a rule file stands for.

use std::collections::BTreeMap;

use rhai::{Dynamic, FnPtr};

use super::stage::Stage;
use crate::knowledge::{
    Action, Allergen, CalculationArgument, Cause, Caution, Change, Condition, Cost, Diet, Fact, Family, Ingredient,
    Key, Limit, Market, Prescription, Product, Quantity, Reading, Source, Symptom, Warning,
};

/// Any value of the rule language.
#[derive(Debug, Clone)]
pub(super) enum Term {
    /// Stands for a name that nothing declares; accepted everywhere, since its fault has been told.
    Unknown,
    Pack,
    Source(Key<Source>),
    Caution(Key<Caution>),
    Diet(Key<Diet>),
    Allergen(Key<Allergen>),
    Market(Key<Market>),
    Family(Key<Family>),
    Product(Key<Product>),
    Ingredient(Key<Ingredient>),
    Symptom(Key<Symptom>),
    Fact(Key<Fact>),
    Reading(Key<Reading>),
    Action(Key<Action>),
    Limit(Key<Limit>),
    Cause(Key<Cause>),
    Warning(Key<Warning>),
    CappedBy(Vec<Key<Limit>>),
    Change(Change),
    Prior(f64),
    Strength(f64),
    Weight(f64),
    Cost(Cost),
    Waste(f64),
    Quantity(Quantity),
    Condition(Condition),
    Prescription(Prescription),
    Against(f64),
    Usual(f64),
    Group(String),
    Excluded(Condition),
    Number(f64),
    Text(String),
    Truth(bool),
    List(Vec<Term>),
    Map(BTreeMap<String, Term>),
    Closure(FnPtr),
    Nothing,
}

/// What a [`Term`] is, for looking up words and for messages.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Kind {
    Unknown,
    Pack,
    Source,
    Caution,
    Diet,
    Allergen,
    Market,
    Family,
    Product,
    Ingredient,
    Symptom,
    Fact,
    Reading,
    Action,
    Limit,
    Cause,
    Warning,
    CappedBy,
    Change,
    Prior,
    Strength,
    Weight,
    Cost,
    Waste,
    Quantity,
    Condition,
    Prescription,
    Against,
    Usual,
    Group,
    Excluded,
    Number,
    Text,
    Truth,
    List,
    Map,
    Closure,
    Nothing,
}

impl Kind {
    /// Whether it is a word of a scale.
    pub(super) fn is_of_scale(self) -> bool {
        matches!(self, Self::Prior | Self::Strength | Self::Weight | Self::Cost | Self::Waste)
    }

    /// The kind without its article.
    pub(super) fn word(self) -> &'static str {
        self.phrase().trim_start_matches("an ").trim_start_matches("a ").trim_start_matches("the ")
    }

    /// The kind with its article, for messages.
    pub(super) fn phrase(self) -> &'static str {
        match self {
            Self::Unknown => "an unknown name",
            Self::Pack => "the pack",
            Self::Source => "a source",
            Self::Caution => "a caution",
            Self::Diet => "a diet",
            Self::Allergen => "an allergen",
            Self::Market => "a market",
            Self::Family => "a family",
            Self::Product => "a product",
            Self::Ingredient => "an ingredient",
            Self::Symptom => "a symptom",
            Self::Fact => "a fact",
            Self::Reading => "a reading",
            Self::Action => "an action",
            Self::Limit => "a limit",
            Self::Cause => "a cause",
            Self::Warning => "a warning",
            Self::CappedBy => "a cap",
            Self::Change => "a change of the case",
            Self::Prior => "a prior",
            Self::Strength => "a strength",
            Self::Weight => "a weight",
            Self::Cost => "a cost",
            Self::Waste => "a waste",
            Self::Quantity => "an expression",
            Self::Condition => "a condition",
            Self::Prescription => "an action with quantities",
            Self::Against => "a weight against",
            Self::Usual => "a usual share",
            Self::Group => "a group",
            Self::Excluded => "an excluding condition",
            Self::Number => "a number",
            Self::Text => "a text",
            Self::Truth => "`true` or `false`",
            Self::List => "a list",
            Self::Map => "a map",
            Self::Closure => "a closure",
            Self::Nothing => "nothing",
        }
    }
}

impl Kind {
    /// Characters of the word that declares a thing of this kind: what a message about the declaration underlines.
    pub(super) fn word_width(self) -> usize {
        let words = Stage::ALL.into_iter().flat_map(Stage::declaring_words);
        words.filter(|(_, kind)| *kind == self).map(|(word, _)| word.len()).next().unwrap_or(1)
    }
}

impl Term {
    pub(super) fn kind(&self) -> Kind {
        match self {
            Self::Unknown => Kind::Unknown,
            Self::Pack => Kind::Pack,
            Self::Source(_) => Kind::Source,
            Self::Caution(_) => Kind::Caution,
            Self::Diet(_) => Kind::Diet,
            Self::Allergen(_) => Kind::Allergen,
            Self::Market(_) => Kind::Market,
            Self::Family(_) => Kind::Family,
            Self::Product(_) => Kind::Product,
            Self::Ingredient(_) => Kind::Ingredient,
            Self::Symptom(_) => Kind::Symptom,
            Self::Fact(_) => Kind::Fact,
            Self::Reading(_) => Kind::Reading,
            Self::Action(_) => Kind::Action,
            Self::Limit(_) => Kind::Limit,
            Self::Cause(_) => Kind::Cause,
            Self::Warning(_) => Kind::Warning,
            Self::CappedBy(_) => Kind::CappedBy,
            Self::Change(_) => Kind::Change,
            Self::Prior(_) => Kind::Prior,
            Self::Strength(_) => Kind::Strength,
            Self::Weight(_) => Kind::Weight,
            Self::Cost(_) => Kind::Cost,
            Self::Waste(_) => Kind::Waste,
            Self::Quantity(_) => Kind::Quantity,
            Self::Condition(_) => Kind::Condition,
            Self::Prescription(_) => Kind::Prescription,
            Self::Against(_) => Kind::Against,
            Self::Usual(_) => Kind::Usual,
            Self::Group(_) => Kind::Group,
            Self::Excluded(_) => Kind::Excluded,
            Self::Number(_) => Kind::Number,
            Self::Text(_) => Kind::Text,
            Self::Truth(_) => Kind::Truth,
            Self::List(_) => Kind::List,
            Self::Map(_) => Kind::Map,
            Self::Closure(_) => Kind::Closure,
            Self::Nothing => Kind::Nothing,
        }
    }

    /// Kind and index of a declared thing.
    pub(super) fn thing(&self) -> Option<(Kind, usize)> {
        let index = match self {
            Self::Source(key) => key.index(),
            Self::Caution(key) => key.index(),
            Self::Diet(key) => key.index(),
            Self::Allergen(key) => key.index(),
            Self::Market(key) => key.index(),
            Self::Family(key) => key.index(),
            Self::Product(key) => key.index(),
            Self::Ingredient(key) => key.index(),
            Self::Symptom(key) => key.index(),
            Self::Fact(key) => key.index(),
            Self::Reading(key) => key.index(),
            Self::Action(key) => key.index(),
            Self::Limit(key) => key.index(),
            Self::Cause(key) => key.index(),
            Self::Warning(key) => key.index(),
            _ => return None,
        };
        Some((self.kind(), index))
    }

    /// A number, of a list or map too, that nothing can be computed with: a script divided by zero.
    pub(super) fn not_finite(&self) -> Option<f64> {
        match self {
            Self::Number(number) => Some(*number).filter(|number| !number.is_finite()),
            Self::List(items) => items.iter().find_map(Self::not_finite),
            Self::Map(entries) => entries.values().find_map(Self::not_finite),
            _ => None,
        }
    }

    /// Parts of a condition, expression or prescription; 1 for all else.
    pub(super) fn nodes(&self) -> usize {
        match self {
            Self::Condition(condition) | Self::Excluded(condition) => condition_nodes(condition),
            Self::Quantity(quantity) => quantity_nodes(quantity),
            Self::Prescription(prescription) => {
                prescription.settings.iter().map(|setting| quantity_nodes(&setting.quantity)).sum()
            }
            _ => 1,
        }
    }

    /// The term of a script value.
    pub(super) fn from_dynamic(value: Dynamic) -> Self {
        let value = value.flatten();
        if value.is_unit() {
            return Self::Nothing;
        }
        if let Ok(number) = value.as_float() {
            return Self::Number(number);
        }
        #[allow(clippy::cast_precision_loss)] // rules count in small numbers
        if let Ok(number) = value.as_int() {
            return Self::Number(number as f64);
        }
        if let Ok(truth) = value.as_bool() {
            return Self::Truth(truth);
        }
        if let Some(term) = value.read_lock::<Self>() {
            return term.clone();
        }
        Self::from_container(value)
    }

    fn from_container(value: Dynamic) -> Self {
        if value.is_string() {
            return value.into_string().map_or(Self::Nothing, Self::Text);
        }
        if let Some(closure) = value.read_lock::<FnPtr>() {
            return Self::Closure(closure.clone());
        }
        if value.is_array() {
            let items = value.into_array().unwrap_or_default();
            return Self::List(items.into_iter().map(Self::from_dynamic).collect());
        }
        value.try_cast::<rhai::Map>().map_or(Self::Nothing, |map| {
            Self::Map(map.into_iter().map(|(name, value)| (name.to_string(), Self::from_dynamic(value))).collect())
        })
    }
}

fn condition_nodes(condition: &Condition) -> usize {
    let inner = match condition {
        Condition::Compare(left, _, right) => quantity_nodes(left) + quantity_nodes(right),
        Condition::Ramp { quantity, .. } | Condition::Between(quantity, ..) => quantity_nodes(quantity),
        Condition::Not(inner) => condition_nodes(inner),
        Condition::All(parts) | Condition::Any(parts) => parts.iter().map(condition_nodes).sum(),
        Condition::PastLimit(..)
        | Condition::OnTarget(_)
        | Condition::Fact(_)
        | Condition::FormulaHas(_)
        | Condition::FormulaHasRole(_)
        | Condition::Judged(_) => 0,
    };
    1 + inner
}

fn argument_nodes(argument: &CalculationArgument) -> usize {
    match argument {
        CalculationArgument::Quantity { quantity, .. } => quantity_nodes(quantity),
        CalculationArgument::Fact(_) => 1,
    }
}

fn quantity_nodes(quantity: &Quantity) -> usize {
    let inner = match quantity {
        Quantity::Calculated(calculated) => calculated.arguments.iter().map(argument_nodes).sum(),
        Quantity::Abs(inner) => quantity_nodes(inner),
        Quantity::Binary(_, left, right) | Quantity::Either(left, right) => {
            quantity_nodes(left) + quantity_nodes(right)
        }
        _ => 0,
    };
    1 + inner
}
