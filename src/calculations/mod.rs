//! Named calculations: what [`science`](crate::science) computes, for people, programs and rules, by one registry.
//!
//! A [`Calculation`] is data (name, inputs with units, ranges and defaults, figures, an example that runs) and one
//! function from checked inputs to figures. The service, the command and the rule language all read this registry; none
//! of them knows a calculation by name. To add one, write it in the file of its topic under `topics/`.

mod answer;
mod calculation;
mod description;
mod input;
mod outcome;
mod read;
mod topics;
mod values;

pub use answer::{CalculationAnswer, FigureAnswer};
pub use calculation::Calculation;
pub use description::{
    CalculationDescription, CalculationItem, CalculationList, ChoiceDescription, DefaultDescription, FigureDescription,
    InputDescription, InputType,
};
pub use input::{Choice, DefaultValue, Input, InputKind, NumberKind, Presence, RowsKind};
pub use outcome::{Figure, FigureKind, Outcome};
pub(crate) use read::{LONGEST_TEXT, converted_or_why};
pub use values::{Value, Values};

use crate::suggest::did_you_mean;

/// All calculations, topic by topic.
pub fn all() -> impl Iterator<Item = &'static Calculation> {
    topics::TOPICS.into_iter().flatten()
}

/// The calculation of a name.
#[must_use]
pub fn find(name: &str) -> Option<&'static Calculation> {
    all().find(|calculation| calculation.name == name)
}

/// "did you mean" among the names.
#[must_use]
pub fn suggestion(name: &str) -> Option<String> {
    did_you_mean(name, all().map(|calculation| calculation.name))
}
