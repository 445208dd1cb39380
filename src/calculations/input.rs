//! What a calculation takes, as data: from it inputs are read, shown, described in OpenAPI and checked in rules.

/// One input.
#[derive(Debug, Clone, Copy)]
pub struct Input {
    /// Name, `snake_case`.
    pub name: &'static str,
    /// What it is, in a few words.
    pub description: &'static str,
    /// What it can be.
    pub kind: InputKind,
    /// Whether it must be given.
    pub presence: Presence,
}

/// What an input can be.
#[derive(Debug, Clone, Copy)]
pub enum InputKind {
    /// A number.
    Number(NumberKind),
    /// One of several words.
    Choice(&'static [Choice]),
    /// Yes or no.
    Boolean,
    /// A name that comes back in the answer.
    Text,
    /// Shares of named components, each 0 to 100 %; what is not named is not there.
    Composition(&'static [&'static str]),
    /// A list of rows.
    Rows(RowsKind),
}

/// A number with its unit.
#[derive(Debug, Clone, Copy)]
pub struct NumberKind {
    /// UCUM code that a bare number is taken in; other units of its kind are converted.
    pub unit: &'static str,
    /// Least value that is plausible.
    pub low: f64,
    /// Largest value that is plausible.
    pub high: f64,
    /// Whether it is a difference: 9 `[degF]` are then 5 `K`.
    pub is_difference: bool,
}

/// One word of a choice.
#[derive(Debug, Clone, Copy)]
pub struct Choice {
    /// The word.
    pub word: &'static str,
    /// What it means.
    pub meaning: &'static str,
}

/// A list of rows.
#[derive(Debug, Clone, Copy)]
pub struct RowsKind {
    /// Inputs of each row.
    pub inputs: &'static [Input],
    /// Fewest rows.
    pub least: usize,
    /// Most rows.
    pub most: usize,
}

/// Whether an input must be given.
#[derive(Debug, Clone, Copy)]
pub enum Presence {
    /// It must be given.
    Required,
    /// It may be left out.
    Optional,
    /// This holds when it is left out.
    Default {
        /// The value, in the input's unit.
        value: DefaultValue,
        /// Publication, definition, `common practice` or `from memory: <work>`.
        source: &'static str,
    },
}

/// The value of an input that is left out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DefaultValue {
    /// A number, in the input's unit.
    Number(f64),
    /// A word of a choice.
    Word(&'static str),
    /// Yes or no.
    Boolean(bool),
}

impl Input {
    const fn required(name: &'static str, description: &'static str, kind: InputKind) -> Self {
        Self { name, description, kind, presence: Presence::Required }
    }

    /// The same, but it may be left out.
    pub(super) const fn optional(self) -> Self {
        Self { presence: Presence::Optional, ..self }
    }

    /// The same with a value that holds when it is left out.
    pub(super) const fn or(self, value: DefaultValue, source: &'static str) -> Self {
        Self { presence: Presence::Default { value, source }, ..self }
    }

    /// The same with a number that holds when it is left out.
    pub(super) const fn or_number(self, value: f64, source: &'static str) -> Self {
        self.or(DefaultValue::Number(value), source)
    }

    /// Whether it must be given.
    #[must_use]
    pub fn is_required(&self) -> bool {
        matches!(self.presence, Presence::Required)
    }

    /// Whether it is a number, a choice or a boolean: what a rule can give.
    #[must_use]
    pub fn is_plain(&self) -> bool {
        matches!(self.kind, InputKind::Number(_) | InputKind::Choice(_) | InputKind::Boolean)
    }
}

/// A required number in a unit, plausible from `low` to `high`.
pub(super) const fn number(
    name: &'static str,
    unit: &'static str,
    (low, high): (f64, f64),
    description: &'static str,
) -> Input {
    Input::required(name, description, InputKind::Number(NumberKind { unit, low, high, is_difference: false }))
}

/// A required difference of two values.
pub(super) const fn difference(
    name: &'static str,
    unit: &'static str,
    (low, high): (f64, f64),
    description: &'static str,
) -> Input {
    Input::required(name, description, InputKind::Number(NumberKind { unit, low, high, is_difference: true }))
}

/// A required share of 0 to 100 %.
pub(super) const fn percent(name: &'static str, description: &'static str) -> Input {
    number(name, "%", (0.0, 100.0), description)
}

/// A required word.
pub(super) const fn choice(name: &'static str, choices: &'static [Choice], description: &'static str) -> Input {
    Input::required(name, description, InputKind::Choice(choices))
}

/// A word of a choice.
pub(super) const fn word(word: &'static str, meaning: &'static str) -> Choice {
    Choice { word, meaning }
}

/// A required yes or no.
pub(super) const fn boolean(name: &'static str, description: &'static str) -> Input {
    Input::required(name, description, InputKind::Boolean)
}

/// A required name.
pub(super) const fn text(name: &'static str, description: &'static str) -> Input {
    Input::required(name, description, InputKind::Text)
}

/// A required composition.
pub(super) const fn composition(
    name: &'static str,
    components: &'static [&'static str],
    description: &'static str,
) -> Input {
    Input::required(name, description, InputKind::Composition(components))
}

/// A required list of rows.
pub(super) const fn rows(
    name: &'static str,
    inputs: &'static [Input],
    (least, most): (usize, usize),
    description: &'static str,
) -> Input {
    Input::required(name, description, InputKind::Rows(RowsKind { inputs, least, most }))
}
