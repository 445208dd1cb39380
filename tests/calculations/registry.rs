//! What holds of every calculation.

use std::collections::BTreeSet;

use serde_json::{Value, json};
use whybake::calculations::{Calculation, DefaultValue, Input, InputKind, Presence, all, find, suggestion};
use whybake::units::Unit;

/// Calls `check` for every input of a calculation, those of rows included.
fn each_input(inputs: &'static [Input], check: &mut impl FnMut(&'static Input)) {
    for input in inputs {
        check(input);
        if let InputKind::Rows(rows) = input.kind {
            each_input(rows.inputs, check);
        }
    }
}

fn is_name(name: &str) -> bool {
    name.starts_with(|first: char| first.is_ascii_lowercase())
        && name.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_')
}

fn example(calculation: &Calculation) -> Value {
    serde_json::from_str(calculation.example).unwrap()
}

#[test]
fn names_are_unique_and_found() {
    let names: BTreeSet<&str> = all().map(|calculation| calculation.name).collect();
    assert_eq!(names.len(), all().count());
    for calculation in all() {
        assert!(is_name(calculation.name), "{}", calculation.name);
        assert_eq!(find(calculation.name).unwrap().title, calculation.title);
    }
    assert!(find("oven").is_none());
    assert_eq!(suggestion("dew_poimt").as_deref(), Some("did you mean `dew_point`?"));
}

#[test]
fn every_calculation_and_input_is_described() {
    for calculation in all() {
        assert!(calculation.title.len() > 5 && calculation.description.ends_with('.'), "{}", calculation.name);
        each_input(calculation.inputs, &mut |input| {
            assert!(is_name(input.name) && input.description.len() > 5, "{} {}", calculation.name, input.name);
        });
        let names: BTreeSet<&str> = calculation.inputs.iter().map(|input| input.name).collect();
        assert_eq!(names.len(), calculation.inputs.len(), "{}", calculation.name);
    }
}

#[test]
fn units_are_ucum_and_defaults_lie_in_their_ranges() {
    for calculation in all() {
        for figure in calculation.figures {
            Unit::parse(figure.unit).unwrap();
            assert!(is_name(figure.name) && !figure.description.is_empty(), "{}", calculation.name);
        }
        each_input(calculation.inputs, &mut |input| {
            if let InputKind::Number(kind) = input.kind {
                Unit::parse(kind.unit).unwrap();
                assert!(kind.low < kind.high && kind.high.is_finite(), "{} {}", calculation.name, input.name);
            }
            if let Presence::Default { value, source } = input.presence {
                assert!(!source.is_empty());
                match (value, input.kind) {
                    (DefaultValue::Number(number), InputKind::Number(kind)) => {
                        assert!((kind.low..=kind.high).contains(&number), "{} {}", calculation.name, input.name);
                    }
                    (DefaultValue::Word(word), InputKind::Choice(choices)) => {
                        assert!(choices.iter().any(|choice| choice.word == word));
                    }
                    (DefaultValue::Boolean(_), InputKind::Boolean) => {}
                    other => panic!("{} {}: {other:?}", calculation.name, input.name),
                }
            }
        });
    }
}

#[test]
fn every_example_gives_declared_figures_with_method_and_source() {
    for calculation in all() {
        let answer = calculation.answer(calculation.example.as_bytes()).unwrap_or_else(|faults| {
            panic!("{}: {faults:?}", calculation.name);
        });
        assert_eq!(answer.calculation, calculation.name);
        assert!(!answer.figures.is_empty() || !answer.remarks.is_empty(), "{}", calculation.name);
        if let (Some(declared), Some(first)) = (calculation.figures.first(), answer.figures.first()) {
            assert_eq!(declared.name, first.name, "{}", calculation.name);
        }
        for figure in answer.figures {
            let declared = calculation.figures.iter().find(|declared| declared.name == figure.name).unwrap();
            assert_eq!(declared.unit, figure.unit, "{} {}", calculation.name, figure.name);
            assert!(!figure.method.is_empty() && !figure.source.is_empty() && !figure.domain.is_empty());
        }
    }
}

#[test]
fn every_word_of_every_choice_means_something() {
    for calculation in all() {
        for input in calculation.inputs {
            let InputKind::Choice(choices) = input.kind else { continue };
            for choice in choices {
                let mut inputs = example(calculation);
                inputs[input.name] = json!(choice.word);
                let answer = calculation.answer(inputs.to_string().as_bytes());
                assert!(answer.is_ok(), "{} {} {}: {answer:?}", calculation.name, input.name, choice.word);
            }
        }
    }
}

/// An input that the computation does not know by its name would be dropped without a word.
#[test]
fn every_required_input_is_missed() {
    for calculation in all() {
        for input in calculation.inputs.iter().filter(|input| input.is_required()) {
            let mut inputs = example(calculation);
            assert!(
                inputs.as_object_mut().unwrap().remove(input.name).is_some(),
                "{} {}",
                calculation.name,
                input.name
            );
            let faults = calculation.answer(inputs.to_string().as_bytes()).unwrap_err().to_string();
            assert_eq!(faults, format!(": `{}` is missing", input.name), "{}", calculation.name);
        }
    }
}

/// The example, and the example with every other word of its choices.
fn variants(calculation: &Calculation) -> Vec<Value> {
    let mut variants = vec![example(calculation)];
    for input in calculation.inputs {
        let InputKind::Choice(choices) = input.kind else { continue };
        variants.extend(choices.iter().map(|choice| {
            let mut inputs = example(calculation);
            inputs[input.name] = json!(choice.word);
            inputs
        }));
    }
    variants
}

/// A number that the computation does not read would change nothing.
#[test]
fn every_number_counts() {
    for calculation in all() {
        let outcome = |inputs: &Value| format!("{:?}", calculation.answer(inputs.to_string().as_bytes()));
        for input in calculation.inputs {
            let InputKind::Number(kind) = input.kind else { continue };
            let counts = variants(calculation).into_iter().any(|variant| {
                (0..=20).any(|step| {
                    let mut inputs = variant.clone();
                    inputs[input.name] = json!(kind.low + (kind.high - kind.low) * f64::from(step) / 20.0);
                    outcome(&inputs) != outcome(&variant)
                })
            });
            assert!(counts, "{} {}", calculation.name, input.name);
        }
    }
}

#[test]
fn most_calculations_are_words_of_rules() {
    let words = all().filter(|calculation| calculation.is_word_of_rules()).count();
    assert!(words > 50, "{words} of {}", all().count());
}
