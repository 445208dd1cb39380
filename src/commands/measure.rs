//! A number with its unit on the command line.

use serde_json::{Value, json};

use super::exit::Exit;
use super::output::complain;

/// The number and what stands after it, `120kg` or `1e2 kg`; `None` where no number stands at the start.
pub(super) fn number_and_unit(text: &str) -> Option<(f64, &str)> {
    let text = text.trim();
    // Words as `inf` and `NaN` are numbers to the parser only.
    if !text.starts_with(|first: char| first.is_ascii_digit() || matches!(first, '+' | '-' | '.')) {
        return None;
    }
    let ends = text.char_indices().map(|(start, letter)| start + letter.len_utf8()).rev();
    // The longest text that is a number: `1e2kg` begins with `1e2`, `5eq` with `5`.
    ends.filter_map(|end| text.split_at_checked(end)).find_map(|(digits, unit)| {
        let number = digits.parse::<f64>().ok().filter(|number| number.is_finite())?;
        Some((number, unit.trim()))
    })
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
