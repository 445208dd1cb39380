//! JSON as it was written: members in their order, and twice when they stand twice.

use std::fmt;

use serde::Deserialize;
use serde::de::{DeserializeSeed, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_json::value::RawValue;

/// A JSON value that loses nothing (a map would drop the first of two equal members).
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Json {
    Null,
    Bool(bool),
    Number(f64),
    Text(String),
    Array(Vec<Json>),
    Object(Vec<(String, Json)>),
}

impl Json {
    /// Parses JSON text. A byte order mark at its beginning is passed over (RFC 8259, section 8.1).
    ///
    /// # Errors
    /// What is wrong with the text, in words, with line and column.
    pub(crate) fn parse(text: &[u8]) -> Result<Self, String> {
        serde_json::from_slice(without_mark(text)).map_err(|error| in_words(&error))
    }

    /// The JSON name of its type, with an article.
    pub(crate) fn kind(&self) -> &'static str {
        match self {
            Self::Null => "null",
            Self::Bool(_) => "a boolean",
            Self::Number(_) => "a number",
            Self::Text(_) => "a string",
            Self::Array(_) => "an array",
            Self::Object(_) => "an object",
        }
    }
}

/// U+FEFF in UTF-8.
const BYTE_ORDER_MARK: &[u8] = b"\xef\xbb\xbf";

/// A case or a request as text, with the caller's `reference` kept byte for byte.
#[derive(Debug)]
pub(crate) struct Document {
    pub(crate) case: Json,
    /// That of the document, else that of the case in it; `null` is a reference, too.
    pub(crate) reference: Option<Box<RawValue>>,
}

impl Document {
    /// Parses JSON text, as [`Json::parse`] does.
    ///
    /// # Errors
    /// What is wrong with the text, in words, with line and column.
    pub(crate) fn parse(text: &[u8]) -> Result<Self, String> {
        Self::read(without_mark(text)).map_err(|error| in_words(&error))
    }

    fn read(text: &[u8]) -> Result<Self, serde_json::Error> {
        let (mut own, mut of_case) = (None, None);
        let mut deserializer = serde_json::Deserializer::from_slice(text);
        let case = Keeper { own: &mut own, of_case: Some(&mut of_case) }.deserialize(&mut deserializer)?;
        deserializer.end()?;
        Ok(Self { case, reference: own.or(of_case) })
    }
}

/// JSON text without the byte order mark that some editors write at its beginning.
pub(crate) fn without_mark(text: &[u8]) -> &[u8] {
    text.strip_prefix(BYTE_ORDER_MARK).unwrap_or(text)
}

/// The same for what is text already.
pub(crate) fn text_without_mark(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

/// The parser's message without the words of its trade.
fn in_words(error: &serde_json::Error) -> String {
    let message = error.to_string();
    let place = format!("line {} column {}", error.line(), error.column());
    if message.starts_with("expected ident") {
        return format!("only `true`, `false` and `null` may stand without quotation marks, at {place}");
    }
    if message.starts_with("expected value") {
        return format!("a value is missing, or begins with a character that JSON does not know, at {place}");
    }
    if message.starts_with("EOF while parsing") {
        return format!("the text ends before the document does, at {place}");
    }
    message
}

/// Where the first `reference` of an object goes, verbatim, and that of its member `case`.
struct Keeper<'r> {
    own: &'r mut Option<Box<RawValue>>,
    of_case: Option<&'r mut Option<Box<RawValue>>>,
}

impl<'de> DeserializeSeed<'de> for Keeper<'_> {
    type Value = Json;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Json, D::Error> {
        deserializer.deserialize_any(AnyValue { keeper: Some(self) })
    }
}

impl<'de> Deserialize<'de> for Json {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(AnyValue { keeper: None })
    }
}

/// Reads any value.
struct AnyValue<'r> {
    keeper: Option<Keeper<'r>>,
}

impl<'de> Visitor<'de> for AnyValue<'_> {
    type Value = Json;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON value")
    }

    fn visit_unit<E>(self) -> Result<Json, E> {
        Ok(Json::Null)
    }

    fn visit_bool<E>(self, value: bool) -> Result<Json, E> {
        Ok(Json::Bool(value))
    }

    #[allow(clippy::cast_precision_loss)] // quantities are measured; 53 bits are more than enough
    fn visit_i64<E>(self, value: i64) -> Result<Json, E> {
        Ok(Json::Number(value as f64))
    }

    #[allow(clippy::cast_precision_loss)] // as above
    fn visit_u64<E>(self, value: u64) -> Result<Json, E> {
        Ok(Json::Number(value as f64))
    }

    fn visit_f64<E>(self, value: f64) -> Result<Json, E> {
        Ok(Json::Number(value))
    }

    fn visit_str<E>(self, value: &str) -> Result<Json, E> {
        Ok(Json::Text(value.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Json, A::Error> {
        let mut array = Vec::new();
        while let Some(item) = items.next_element()? {
            array.push(item);
        }
        Ok(Json::Array(array))
    }

    fn visit_map<A: MapAccess<'de>>(mut self, mut members: A) -> Result<Json, A::Error> {
        let mut object = Vec::new();
        while let Some(name) = members.next_key::<String>()? {
            let value = match &mut self.keeper {
                Some(Keeper { own: own @ None, .. }) if name == "reference" => {
                    **own = Some(members.next_value()?);
                    Json::Null
                }
                Some(Keeper { of_case: Some(own @ None), .. }) if name == "case" => {
                    members.next_value_seed(Keeper { own, of_case: None })?
                }
                _ => members.next_value()?,
            };
            object.push((name, value));
        }
        Ok(Json::Object(object))
    }
}

#[cfg(test)]
mod tests {
    use super::{Document, Json};

    #[test]
    fn passes_over_a_byte_order_mark_and_tells_faults_in_words() {
        assert!(Document::parse(b"\xef\xbb\xbf{}").is_ok());
        let message = |text: &[u8]| Document::parse(text).unwrap_err();
        assert_eq!(
            message(b"{\"a\": treu}"),
            "only `true`, `false` and `null` may stand without quotation marks, at line 1 column 9"
        );
        assert_eq!(message(b"{"), "the text ends before the document does, at line 1 column 1");
        assert_eq!(
            message(b"{\"a\": 'x'}"),
            "a value is missing, or begins with a character that JSON does not know, at line 1 column 7"
        );
    }

    #[test]
    fn a_reference_is_that_of_the_request_else_that_of_the_case() {
        let reference = |text: &[u8]| Document::parse(text).unwrap().reference.map(|own| own.get().to_owned());
        assert_eq!(reference(br#"{"case": {"reference": 1.0}, "reference": 2.0}"#).as_deref(), Some("2.0"));
        assert_eq!(reference(br#"{"case": {"reference": 1.0}}"#).as_deref(), Some("1.0"));
        assert_eq!(reference(br#"{"case": {"reference": 1.0}, "reference": null}"#).as_deref(), Some("null"));
        assert_eq!(reference(br#"{"case": {"case": {"reference": 1.0}}, "other": {"reference": 2}}"#), None);
    }

    #[test]
    fn keeps_equal_members_and_the_reference_verbatim() {
        let text = br#"{"a":1,"a":true,"reference":{"lot": 12345678901234567890123}}"#;
        let document = Document::parse(text).unwrap();
        assert_eq!(document.reference.unwrap().get(), r#"{"lot": 12345678901234567890123}"#);
        let Json::Object(members) = document.case else { panic!("not an object") };
        assert_eq!(members[0], ("a".to_owned(), Json::Number(1.0)));
        assert_eq!(members[1], ("a".to_owned(), Json::Bool(true)));
    }
}
