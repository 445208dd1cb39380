//! A calculation described for people and programs: its inputs, figures, sources and an example.

use serde::Serialize;
use serde_json::value::RawValue;
use utoipa::ToSchema;

use super::answer::CalculationAnswer;
use super::calculation::Calculation;
use super::input::{Choice, DefaultValue, Input, InputKind, NumberKind, Presence, RowsKind};
use super::outcome::FigureKind;

/// All calculations.
#[derive(Debug, Serialize, ToSchema)]
pub struct CalculationList {
    /// The calculations, topic by topic.
    pub calculations: Vec<CalculationItem>,
}

/// A calculation, in short.
#[derive(Debug, Serialize, ToSchema)]
pub struct CalculationItem {
    /// Name: the last part of its path.
    #[schema(example = "mixing_water_temperature")]
    pub name: &'static str,
    /// Title.
    #[schema(example = "Mixing water temperature by the additive rule")]
    pub title: &'static str,
    /// What it is for.
    pub description: &'static str,
}

impl CalculationList {
    /// The list of all.
    #[must_use]
    pub fn all() -> Self {
        let item =
            |Calculation { name, title, description, .. }: &Calculation| CalculationItem { name, title, description };
        Self { calculations: super::all().map(item).collect() }
    }
}

/// A calculation.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = Calculation)]
pub struct CalculationDescription {
    /// Name.
    #[schema(example = "mixing_water_temperature")]
    pub name: &'static str,
    /// Title.
    #[schema(example = "Mixing water temperature by the additive rule")]
    pub title: &'static str,
    /// What it is for.
    pub description: &'static str,
    /// What it takes.
    pub inputs: Vec<InputDescription>,
    /// What it can give, the main figure first; empty when it gives remarks only.
    pub figures: Vec<FigureDescription>,
    /// Whether rules can use it as a word.
    pub word_of_rules: bool,
    /// Inputs that give an answer; their values are made up.
    #[schema(value_type = Object)]
    pub worked_example: &'static RawValue,
    /// The answer to them, with the methods and their sources.
    pub worked_answer: CalculationAnswer,
}

/// An input of a calculation.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = CalculationInput)]
pub struct InputDescription {
    /// Name.
    #[schema(example = "dough_temperature")]
    pub name: &'static str,
    /// What it is.
    #[schema(example = "wanted dough temperature")]
    pub description: &'static str,
    /// What it can be.
    pub kind: InputType,
    /// Whether it must be given.
    pub required: bool,
    /// Of a number: UCUM code of a bare number; other units of its kind are converted.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "Cel")]
    pub unit: Option<&'static str>,
    /// Of a number: the least that is plausible.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub low: Option<f64>,
    /// Of a number: the most that is plausible.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub high: Option<f64>,
    /// Of a number: whether it is a difference, of which 9 `[degF]` are 5 `K`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub is_difference: Option<bool>,
    /// Of a choice: its words.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub choices: Vec<ChoiceDescription>,
    /// Of a composition: the components that it may name, each in %.
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    #[schema(required = false)]
    pub components: &'static [&'static str],
    /// Of a list: the inputs of a row.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false, no_recursion)]
    pub row: Vec<InputDescription>,
    /// Of a list: the fewest rows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least_rows: Option<usize>,
    /// Of a list: the most rows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub most_rows: Option<usize>,
    /// What holds when it is left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub default: Option<DefaultDescription>,
}

/// What an input can be.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum InputType {
    /// A number in `unit`, or an object with `value` and `unit`.
    Number,
    /// One of the words.
    Choice,
    /// `true` or `false`.
    Boolean,
    /// A name that comes back in the answer.
    Text,
    /// An object of components with their shares in %.
    Composition,
    /// An array of rows.
    List,
}

/// A word of a choice.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = CalculationChoice)]
pub struct ChoiceDescription {
    /// The word.
    #[schema(example = "in_place_of_water")]
    pub word: &'static str,
    /// What it means.
    pub meaning: &'static str,
}

/// A value that holds when an input is left out: one of its members.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = CalculationDefault)]
pub struct DefaultDescription {
    /// Of a number, in the input's unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<f64>,
    /// Of a choice.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub word: Option<&'static str>,
    /// Of a yes or no.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub boolean: Option<bool>,
    /// Publication, definition, `common practice`, or `from memory` of a named work.
    pub source: &'static str,
}

/// A figure that a calculation can give.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = CalculationFigure)]
pub struct FigureDescription {
    /// Name.
    #[schema(example = "water_temperature")]
    pub name: &'static str,
    /// UCUM code.
    #[schema(example = "Cel")]
    pub unit: &'static str,
    /// What it is.
    #[schema(example = "temperature of the mixing water")]
    pub description: &'static str,
}

impl Calculation {
    /// Describes it.
    ///
    /// # Errors
    /// When its example gives no answer, which a test rules out.
    pub fn describe(&self) -> Result<CalculationDescription, String> {
        let worked_example = serde_json::from_str(self.example).map_err(|error| error.to_string())?;
        let worked_answer = self.answer(self.example.as_bytes()).map_err(|faults| faults.to_string())?;
        Ok(CalculationDescription {
            name: self.name,
            title: self.title,
            description: self.description,
            inputs: self.inputs.iter().map(input).collect(),
            figures: self.figures.iter().map(figure).collect(),
            word_of_rules: self.is_word_of_rules(),
            worked_example,
            worked_answer,
        })
    }
}

fn input(input: &Input) -> InputDescription {
    let plain = InputDescription {
        name: input.name,
        description: input.description,
        kind: InputType::Text,
        required: input.is_required(),
        unit: None,
        low: None,
        high: None,
        is_difference: None,
        choices: Vec::new(),
        components: &[],
        row: Vec::new(),
        least_rows: None,
        most_rows: None,
        default: default(input.presence),
    };
    match input.kind {
        InputKind::Number(NumberKind { unit, low, high, is_difference }) => InputDescription {
            kind: InputType::Number,
            unit: Some(unit),
            low: Some(low),
            high: Some(high),
            is_difference: Some(is_difference),
            ..plain
        },
        InputKind::Choice(choices) => {
            InputDescription { kind: InputType::Choice, choices: choices.iter().map(choice).collect(), ..plain }
        }
        InputKind::Boolean => InputDescription { kind: InputType::Boolean, ..plain },
        InputKind::Text => plain,
        InputKind::Composition(components) => InputDescription { kind: InputType::Composition, components, ..plain },
        InputKind::Rows(RowsKind { inputs, least, most }) => InputDescription {
            kind: InputType::List,
            row: inputs.iter().map(self::input).collect(),
            least_rows: Some(least),
            most_rows: Some(most),
            ..plain
        },
    }
}

fn choice(choice: &Choice) -> ChoiceDescription {
    ChoiceDescription { word: choice.word, meaning: choice.meaning }
}

fn default(presence: Presence) -> Option<DefaultDescription> {
    let Presence::Default { value, source } = presence else { return None };
    let nothing = DefaultDescription { number: None, word: None, boolean: None, source };
    Some(match value {
        DefaultValue::Number(number) => DefaultDescription { number: Some(number), ..nothing },
        DefaultValue::Word(word) => DefaultDescription { word: Some(word), ..nothing },
        DefaultValue::Boolean(boolean) => DefaultDescription { boolean: Some(boolean), ..nothing },
    })
}

fn figure(figure: &FigureKind) -> FigureDescription {
    FigureDescription { name: figure.name, unit: figure.unit, description: figure.description }
}
