//! Calculations as words: each under its own name, and `calculate` for their other figures.

use std::sync::{Arc, LazyLock};

use super::super::calculation::BoundCalculation;
use super::super::code::Code;
use super::super::term::{Kind, Term};
use super::{Call, Word, arguments, makes};
use crate::calculations::{
    self, Calculation, Choice, FigureKind, Input, InputKind, NumberKind, Value, Values, converted_or_why,
};
use crate::json::listing;
use crate::knowledge::{Calculate, Calculated, CalculationArgument, Operation, Quantity};
use crate::suggest::did_you_mean;
use crate::units::{Unit, convert, convert_difference};

const CALCULATE: &str =
    "calculate(\"ice_for_mixing_water\", \"tap_water\", #{ water: 30, tap_temperature: 18, wanted_temperature: 4 })";

/// How each word is written.
static USAGES: LazyLock<Vec<(&'static str, String)>> =
    LazyLock::new(|| usable().map(|calculation| (calculation.name, usage(calculation))).collect());

static WORDS: LazyLock<Vec<Word>> = LazyLock::new(|| {
    let own = USAGES.iter().map(|(name, usage)| makes(name, &[], usage, by_own_name));
    own.chain([makes("calculate", &[], CALCULATE, by_figure)]).collect()
});

/// The words of all calculations that rules can use.
pub(super) fn words() -> &'static [Word] {
    &WORDS
}

fn usable() -> impl Iterator<Item = &'static Calculation> {
    calculations::all().filter(|calculation| calculation.is_word_of_rules())
}

/// The word with all inputs that must be given.
fn usage(calculation: &Calculation) -> String {
    let required = calculation.inputs.iter().filter(|input| input.is_required());
    let members: Vec<String> = required.map(|input| format!("{}: …", input.name)).collect();
    format!("{}(#{{ {} }})", calculation.name, members.join(", "))
}

fn by_own_name(call: &mut Call<'_>) -> Option<Term> {
    if !call.takes(1, 1) {
        return None;
    }
    let calculation = calculations::find(&call.name)?;
    calculated(call, calculation, calculation.figures.first()?, 0)
}

fn by_figure(call: &mut Call<'_>) -> Option<Term> {
    if !call.takes(3, 3) {
        return None;
    }
    let (name, figure) = (call.text(0)?, call.text(1)?);
    let Some(calculation) = usable().find(|calculation| calculation.name == name) else {
        let help = did_you_mean(&name, usable().map(|calculation| calculation.name));
        let message = match calculations::find(&name) {
            Some(_) => format!("the calculation `{name}` takes what a rule cannot give"),
            None => format!("unknown calculation `{name}`"),
        };
        call.fault(Code::UnknownName, message, help);
        return None;
    };
    let figures = || calculation.figures.iter().map(|figure| figure.name);
    let Some(kind) = calculation.figures.iter().find(|kind| kind.name == figure) else {
        let help =
            did_you_mean(&figure, figures()).unwrap_or_else(|| format!("its figures are {}", listing(figures())));
        call.fault(Code::UnknownName, format!("unknown figure `{figure}` of `{name}`"), Some(help));
        return None;
    };
    calculated(call, calculation, kind, 2)
}

/// What has been read of the map of inputs.
struct Given {
    bound: Values,
    open: Vec<&'static Input>,
    arguments: Vec<CalculationArgument>,
    whole: bool,
}

fn calculated(
    call: &mut Call<'_>,
    calculation: &'static Calculation,
    figure: &'static FigureKind,
    index: usize,
) -> Option<Term> {
    let given = given(call, calculation, index)?;
    if !given.whole {
        return None;
    }
    let bound = BoundCalculation { calculation, figure, bound: given.bound, open: given.open };
    if bound.open.is_empty() && !gives_figure(call, &bound) {
        return None;
    }
    let words = if calculation.figures.first().is_some_and(|first| first.name == figure.name) {
        calculation.name.replace('_', " ")
    } else {
        format!("{} ({})", figure.name.replace('_', " "), calculation.name.replace('_', " "))
    };
    Some(Term::Quantity(Quantity::Calculated(Arc::new(Calculated {
        title: words,
        unit: Unit::parse(figure.unit).ok()?,
        arguments: given.arguments,
        calculate: bound.shared(),
        place: call.at.clone(),
    }))))
}

/// Whether constants alone give the figure; why not is told.
fn gives_figure(call: &mut Call<'_>, bound: &BoundCalculation) -> bool {
    let message = match bound.figure(&[]) {
        Ok(Some(_)) => return true,
        Ok(None) => format!("`{}` has no `{}` for these inputs", bound.calculation.name, bound.figure.name),
        Err(fault) => fault.message,
    };
    call.out_of_range(message);
    false
}

fn given(call: &mut Call<'_>, calculation: &'static Calculation, index: usize) -> Option<Given> {
    let members = match call.argument(index, "a map of inputs")? {
        Term::Map(members) => members,
        other => {
            call.wrong_kind("a map of inputs", other.kind());
            return None;
        }
    };
    let mut given = Given { bound: Values::default(), open: Vec::new(), arguments: Vec::new(), whole: true };
    for name in members.keys().filter(|name| calculation.input(name).is_none()) {
        let names = || calculation.inputs.iter().map(|input| input.name);
        let help = did_you_mean(name, names()).unwrap_or_else(|| format!("its inputs are {}", listing(names())));
        call.fault(Code::UnknownName, format!("unknown input `{name}` of `{}`", calculation.name), Some(help));
        given.whole = false;
    }
    for input in calculation.inputs {
        match members.get(input.name) {
            Some(term) => given.whole &= take(call, input, term, &mut given).is_some(),
            None => given.whole &= leave_out(call, calculation, input, &mut given.bound).is_some(),
        }
    }
    Some(given)
}

fn leave_out(call: &mut Call<'_>, calculation: &Calculation, input: &Input, bound: &mut Values) -> Option<()> {
    if let Some(value) = input.default_value() {
        bound.set(input.name, value);
    } else if input.is_required() {
        let help = help_on(input);
        call.fault(Code::WrongArguments, format!("`{}` lacks `{}`", calculation.name, input.name), Some(help));
        return None;
    }
    Some(())
}

/// Takes one input; nothing after a fault or an unknown name, which has been told.
fn take(call: &mut Call<'_>, input: &'static Input, term: &Term, given: &mut Given) -> Option<()> {
    match (input.kind, term) {
        (_, Term::Unknown) => return None,
        (InputKind::Number(kind), Term::Number(number)) => {
            if let Some(detail) = kind.out_of_range(*number) {
                call.out_of_range(format!("`{}`: {detail}", input.name));
                return None;
            }
            given.bound.set(input.name, Value::Number(*number));
        }
        (InputKind::Number(kind), term) => {
            let Some(quantity) = arguments::quantity(term) else {
                wrong_input(call, input, "a number, reading or expression", term.kind());
                return None;
            };
            given.arguments.push(in_unit(call, input, kind, quantity)?);
            given.open.push(input);
        }
        (InputKind::Choice(choices), Term::Text(word)) => {
            given.bound.set(input.name, Value::Word(chosen(call, input, choices, word)?));
        }
        (InputKind::Choice(choices), other) => {
            wrong_input(call, input, &format!("one of {}", listing(words_of(choices))), other.kind());
            return None;
        }
        (InputKind::Boolean, Term::Truth(yes)) => given.bound.set(input.name, Value::Boolean(*yes)),
        (InputKind::Boolean, Term::Fact(key)) => {
            given.arguments.push(CalculationArgument::Fact(*key));
            given.open.push(input);
        }
        (InputKind::Boolean, other) => {
            wrong_input(call, input, "`true`, `false` or a fact", other.kind());
            return None;
        }
        (InputKind::Text | InputKind::Composition(_) | InputKind::Rows(_), _) => {
            call.fault(Code::WrongArguments, format!("`{}` cannot be given in a rule", input.name), None);
            return None;
        }
    }
    Some(())
}

fn help_on(input: &Input) -> String {
    format!("`{}`: {}", input.name, input.in_words())
}

fn wrong_input(call: &mut Call<'_>, input: &Input, wanted: &str, found: Kind) {
    call.fault(
        Code::WrongArguments,
        format!("`{}` wants {wanted}, this is {}", input.name, found.phrase()),
        Some(help_on(input)),
    );
}

fn words_of(choices: &'static [Choice]) -> impl Iterator<Item = &'static str> {
    choices.iter().map(|choice| choice.word)
}

fn chosen(call: &mut Call<'_>, input: &Input, choices: &'static [Choice], word: &str) -> Option<&'static str> {
    let found = words_of(choices).find(|own| *own == word);
    if found.is_none() {
        let help = did_you_mean(word, words_of(choices))
            .unwrap_or_else(|| format!("the words are {}", listing(words_of(choices))));
        call.fault(Code::UnknownName, format!("unknown word `{word}` for `{}`", input.name), Some(help));
    }
    found
}

/// The argument with the conversion from its own unit; one without a unit of its own is taken in that of the input.
fn in_unit(call: &mut Call<'_>, input: &Input, kind: NumberKind, quantity: Quantity) -> Option<CalculationArgument> {
    let Some(unit) = unit_of(call, &quantity)? else {
        return Some(CalculationArgument::Quantity { quantity, slope: 1.0, offset: 0.0 });
    };
    match (converted_or_why(0.0, &unit, kind), converted_or_why(1.0, &unit, kind)) {
        (Ok(offset), Ok(one)) => Some(CalculationArgument::Quantity { quantity, slope: one - offset, offset }),
        (Err(why), _) | (_, Err(why)) => {
            call.fault(Code::Unit, format!("`{}`: {why}", input.name), Some(help_on(input)));
            None
        }
    }
}

/// The unit that a quantity has of itself; sums, products and the like have none. Nothing after a fault.
fn unit_of(call: &mut Call<'_>, quantity: &Quantity) -> Option<Option<Unit>> {
    Some(match quantity {
        Quantity::Reading(key) | Quantity::LowLimit(key) | Quantity::Target(key) | Quantity::HighLimit(key) => {
            Some(call.unit_of_reading(*key)?)
        }
        Quantity::BakerPercent(_) | Quantity::MassPercent(..) | Quantity::RolePercent(_) => Unit::parse("%").ok(),
        Quantity::Formula(own, _) => Some(own.unit().clone()),
        Quantity::Calculated(calculated) => Some(calculated.unit.clone()),
        Quantity::Abs(inner) => unit_of(call, inner)?,
        Quantity::Binary(Operation::Min | Operation::Max, left, right) | Quantity::Either(left, right) => {
            let (left_unit, right_unit) = (unit_of(call, left)?, unit_of(call, right)?);
            match (left_unit, right_unit) {
                (Some(unit), None) if matches!(**right, Quantity::Number(_)) => Some(unit),
                (None, Some(unit)) if matches!(**left, Quantity::Number(_)) => Some(unit),
                (Some(unit), Some(other)) if unit == other => Some(unit),
                _ => None,
            }
        }
        Quantity::Number(_) | Quantity::Binary(..) => None,
    })
}

/// A quantity in the unit that is asked for: a calculated figure is converted, anything else is taken as it is.
pub(super) fn in_asked_unit(call: &mut Call<'_>, quantity: Quantity, asked: &Unit) -> Option<Quantity> {
    let Quantity::Calculated(calculated) = &quantity else { return Some(quantity) };
    let own = &calculated.unit;
    // A figure in kelvins is a difference: temperatures are computed in degrees Celsius.
    let convert = if own.code() == "K" { convert_difference } else { convert };
    match (convert(0.0, own, asked), convert(1.0, own, asked)) {
        (Ok(0.0), Ok(1.0)) => Some(quantity),
        (Ok(offset), Ok(one)) => {
            let scaled = Quantity::Binary(Operation::Multiply, quantity.into(), Quantity::Number(one - offset).into());
            Some(Quantity::Binary(Operation::Add, scaled.into(), Quantity::Number(offset).into()))
        }
        (Err(fault), _) | (_, Err(fault)) => {
            let help = format!("{} is computed in `{}`", calculated.title, own.code());
            call.fault(Code::Unit, fault.to_string(), Some(help));
            None
        }
    }
}
