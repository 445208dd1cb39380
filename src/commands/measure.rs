//! A number with its unit on the command line.

use serde_json::{Value, json};

use super::exit::Exit;
use super::output::complain;

/// The number and what stands after it, `120kg` or `120 kg`; `None` where no number stands at the start.
pub(super) fn number_and_unit(text: &str) -> Option<(f64, &str)> {
    let end = text.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | '-' | '+'))).unwrap_or(text.len());
    let (number, unit) = text.split_at(end);
    let value = number.parse::<f64>().ok().filter(|value| value.is_finite())?;
    Some((value, unit.trim()))
}

/// A number and a UCUM code as JSON.
pub(super) fn measure(option: &str, text: &str) -> Result<Value, Exit> {
    match number_and_unit(text) {
        Some((value, unit)) if !unit.is_empty() => Ok(json!({"value": value, "unit": unit})),
        _ => {
            complain(format_args!("{option}: `{text}` is not a number with a unit, as in `120kg` or `12%`"));
            Err(Exit::Usage)
        }
    }
}
