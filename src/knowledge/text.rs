//! Words of the rules that stand in many answers.

use std::fmt;
use std::ops::Deref;

use serde::{Serialize, Serializer};
use serde_json::value::{RawValue, to_raw_value};

/// A text that is kept together with its JSON form, since an answer consists of such texts for the most part.
///
/// `serde_json` writes that form; another format of serde gets what it makes of a
/// [`RawValue`](serde_json::value::RawValue).
#[derive(Clone, Default)]
pub struct Text {
    text: String,
    /// `None` only for the empty text that stands where nothing was declared.
    json: Option<Box<RawValue>>,
}

impl Text {
    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.text
    }
}

impl From<String> for Text {
    fn from(text: String) -> Self {
        Self { json: to_raw_value(&text).ok(), text }
    }
}

impl From<&str> for Text {
    fn from(text: &str) -> Self {
        Self::from(text.to_owned())
    }
}

impl Deref for Text {
    type Target = str;

    fn deref(&self) -> &str {
        &self.text
    }
}

impl PartialEq for Text {
    fn eq(&self, other: &Self) -> bool {
        self.text == other.text
    }
}

impl Eq for Text {}

impl fmt::Display for Text {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.text)
    }
}

impl fmt::Debug for Text {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(&self.text, f)
    }
}

impl Serialize for Text {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match &self.json {
            Some(json) => json.serialize(serializer),
            None => serializer.serialize_str(&self.text),
        }
    }
}
