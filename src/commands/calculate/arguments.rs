//! Inputs of the command line (`dough_temperature=27Cel`) as the JSON that the service takes.

use serde_json::{Value, json};

use super::super::exit::Exit;
use super::super::measure::number_and_unit;
use super::super::output::complain;
use crate::calculations::{Calculation, InputKind};

/// The arguments as a JSON object; an input that is given twice stands twice, so that it is told.
pub(super) fn json(calculation: &Calculation, arguments: &[String]) -> Result<Vec<u8>, Exit> {
    let mut members = Vec::new();
    let mut faulty = false;
    for argument in arguments {
        match member(calculation, argument) {
            Ok(member) => members.push(member),
            Err(message) => {
                complain(message);
                faulty = true;
            }
        }
    }
    if faulty { Err(Exit::Usage) } else { Ok(format!("{{{}}}", members.join(",")).into_bytes()) }
}

fn member(calculation: &Calculation, argument: &str) -> Result<String, String> {
    let (name, text) =
        argument.split_once('=').ok_or_else(|| format!("`{argument}` is no input (help: write `name=value`)"))?;
    let value = match calculation.input(name).map(|input| input.kind) {
        Some(InputKind::Number(_)) => number(text),
        Some(InputKind::Boolean) => boolean(text),
        Some(InputKind::Composition(_) | InputKind::Rows(_)) => {
            serde_json::from_str(text).map_err(|error| format!("`{name}` is not JSON: {error}"))?
        }
        // An unknown name is told with those of the service.
        Some(InputKind::Choice(_) | InputKind::Text) | None => json!(text.trim()),
    };
    Ok(format!("{}:{value}", json!(name)))
}

/// A number, with a unit when one follows it. What is no number stays a text, and is told as such.
fn number(text: &str) -> Value {
    match number_and_unit(text) {
        Some((number, "")) => json!(number),
        Some((number, unit)) => json!({"value": number, "unit": unit}),
        None => json!(text),
    }
}

fn boolean(text: &str) -> Value {
    match text {
        "true" | "yes" => json!(true),
        "false" | "no" => json!(false),
        other => json!(other),
    }
}

#[cfg(test)]
mod tests {
    use super::number;
    use serde_json::json;

    #[test]
    fn a_number_may_carry_its_unit() {
        assert_eq!(number("27"), json!(27.0));
        assert_eq!(number("27Cel"), json!({"value": 27.0, "unit": "Cel"}));
        assert_eq!(number("-4.5 [degF]"), json!({"value": -4.5, "unit": "[degF]"}));
        assert_eq!(number("1e3Pa"), json!({"value": 1000.0, "unit": "Pa"}));
        assert_eq!(number("5eq"), json!({"value": 5.0, "unit": "eq"}));
        assert_eq!(number("12%"), json!({"value": 12.0, "unit": "%"}));
        for text in ["", "warm", "inf", "NaN", "-", "+Cel"] {
            assert_eq!(number(text), json!(text), "{text}");
        }
    }
}
