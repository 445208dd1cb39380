//! The case in a record.

use serde::Deserialize;
use serde_json::value::RawValue;

use crate::json::without_mark;

#[derive(Deserialize)]
struct Record<'t> {
    #[serde(borrow)]
    case: Option<&'t RawValue>,
}

/// The text of the `case` of a record, as it stands there; of any other text the text itself, which may be a case. A byte
/// order mark is left out.
#[must_use]
pub fn case_text(text: &[u8]) -> &[u8] {
    let text = without_mark(text);
    // The parser would take an array for the members of a record, too.
    let is_object = text.trim_ascii_start().first() == Some(&b'{');
    match serde_json::from_slice::<Record<'_>>(text) {
        Ok(Record { case: Some(case) }) if is_object => case.get().as_bytes(),
        _ => text,
    }
}

#[cfg(test)]
mod tests {
    use super::case_text;

    #[test]
    fn a_record_has_a_case_and_all_else_is_one() {
        assert_eq!(case_text(br#"{"title": "x", "case": {"product" :1}}"#), br#"{"product" :1}"#);
        for text in [&br#"{"product": "bun"}"#[..], b"[1]", b"{\"case\": ", b"", b"\xff"] {
            assert_eq!(case_text(text), text);
        }
    }
}
