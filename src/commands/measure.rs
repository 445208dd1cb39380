//! A number with its unit on the command line.

use serde_json::{Value, json};

use super::exit::Exit;
use super::output::complain;

/// `120kg` or `120 kg`: a number and a UCUM code.
pub(super) fn measure(option: &str, text: &str) -> Result<Value, Exit> {
    let end = text.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | '-' | '+'))).unwrap_or(text.len());
    let (number, unit) = text.split_at(end);
    match number.parse::<f64>() {
        Ok(value) if value.is_finite() && !unit.trim().is_empty() => Ok(json!({"value": value, "unit": unit.trim()})),
        _ => {
            complain(format_args!("{option}: `{text}` is not a number with a unit, as in `120kg` or `12%`"));
            Err(Exit::Usage)
        }
    }
}
