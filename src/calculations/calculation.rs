//! One named calculation: data, and a function from checked inputs to figures.

use std::fmt;

use super::input::{Input, Presence};
use super::outcome::{FigureKind, Outcome};
use super::read;
use super::values::{Value, Values};
use crate::json::{DocumentFaults, Fault, FaultCode, step};
use crate::science::{Fault as ScienceFault, Nonsense};

/// A named calculation of the science.
#[derive(Clone, Copy)]
pub struct Calculation {
    /// Name, a term of the trade in `snake_case`.
    pub name: &'static str,
    /// Title.
    pub title: &'static str,
    /// What it is for, in a sentence or two.
    pub description: &'static str,
    /// What it takes.
    pub inputs: &'static [Input],
    /// What it can give, the main figure first; empty when it gives remarks only.
    pub figures: &'static [FigureKind],
    /// Inputs as JSON that give an answer; the figures in it are made up.
    pub example: &'static str,
    /// Functions of the science that it makes available, as paths below `science`.
    pub science: &'static [&'static str],
    /// What the science calls its inputs, where it is not our name: whole inputs or parts between dots.
    pub(super) renamed: &'static [(&'static str, &'static str)],
    /// The computation.
    pub(super) compute: fn(&Values) -> Result<Outcome, Nonsense>,
}

impl Calculation {
    /// Reads inputs from JSON text.
    ///
    /// # Errors
    /// Every fault at once: malformed JSON, or all inputs that are unknown, missing, of a wrong type or unit, out of range.
    pub fn read(&self, text: &[u8]) -> Result<Values, DocumentFaults> {
        read::inputs(self.inputs, text)
    }

    /// Computes the figures.
    ///
    /// # Errors
    /// Inputs from which nothing can be computed, each with the JSON Pointer of its input.
    pub fn run(&self, values: &Values) -> Result<Outcome, Vec<Fault>> {
        let outcome = (self.compute)(values).map_err(|nonsense| self.faults(nonsense))?;
        let whole = outcome.figures.iter().all(|figure| figure.estimate.value.is_finite());
        if whole {
            Ok(outcome)
        } else {
            Err(vec![impossible(String::new(), "the result is not a finite number".to_owned())])
        }
    }

    /// An input by name.
    #[must_use]
    pub fn input(&self, name: &str) -> Option<&'static Input> {
        self.inputs.iter().find(|input| input.name == name)
    }

    /// Whether rules can use it: it gives a figure, and all that it must be given is plain.
    #[must_use]
    pub fn is_word_of_rules(&self) -> bool {
        !self.figures.is_empty() && self.inputs.iter().all(|input| input.is_plain() || !input.is_required())
    }

    fn faults(&self, nonsense: Nonsense) -> Vec<Fault> {
        nonsense.faults.into_iter().map(|fault| self.fault(fault)).collect()
    }

    fn fault(&self, ScienceFault { input, message }: ScienceFault) -> Fault {
        let path = self.path(&input);
        let ours = path.split('.').next().map(|first| first.split('[').next().unwrap_or(first));
        if ours.is_some_and(|name| self.input(name).is_some()) {
            impossible(pointer(&path), message)
        } else {
            impossible(String::new(), format!("{input}: {message}"))
        }
    }

    /// The place of an input of the science among ours: the whole name, or part by part.
    fn path(&self, input: &str) -> String {
        let renamed = |name: &str| self.renamed.iter().find(|(theirs, _)| *theirs == name).map(|(_, ours)| *ours);
        if let Some(whole) = renamed(input) {
            return whole.to_owned();
        }
        let parts = input.split('.').map(|part| {
            let (name, index) = part.split_once('[').map_or((part, None), |(name, index)| (name, Some(index)));
            let name = renamed(name).unwrap_or(name);
            index.map_or_else(|| name.to_owned(), |index| format!("{name}[{index}"))
        });
        parts.collect::<Vec<_>>().join(".")
    }
}

impl fmt::Debug for Calculation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Calculation").field("name", &self.name).finish_non_exhaustive()
    }
}

impl Input {
    /// What holds when it is left out.
    pub(crate) fn default_value(&self) -> Option<Value> {
        use super::input::DefaultValue;
        match self.presence {
            Presence::Default { value: DefaultValue::Number(number), .. } => Some(Value::Number(number)),
            Presence::Default { value: DefaultValue::Word(word), .. } => Some(Value::Word(word)),
            Presence::Default { value: DefaultValue::Boolean(yes), .. } => Some(Value::Boolean(yes)),
            Presence::Required | Presence::Optional => None,
        }
    }
}

/// `lots[2].parts` as a JSON Pointer.
fn pointer(path: &str) -> String {
    let parts = path.split(['.', '[']).map(|part| part.trim_end_matches(']'));
    parts.map(|part| format!("/{}", step(part))).collect()
}

fn impossible(pointer: String, detail: String) -> Fault {
    Fault { pointer, code: FaultCode::Impossible, detail, help: None }
}
