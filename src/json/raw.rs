//! The members of a JSON object as they were written.

use std::fmt;

use serde::Deserialize;
use serde::de::{Deserializer, MapAccess, Visitor};
use serde_json::value::RawValue;

use super::value::without_mark;

/// The members of an object in their order, and twice when they stand twice; `None` where the text is no JSON object.
pub(crate) fn raw_members(text: &[u8]) -> Option<Vec<(String, &RawValue)>> {
    serde_json::from_slice::<Members<'_>>(without_mark(text)).ok().map(|members| members.0)
}

/// An object of members, each with the text of its value.
pub(crate) fn write_members<'m>(members: impl IntoIterator<Item = (&'m str, &'m str)>) -> String {
    let written = members.into_iter().map(|(name, value)| format!("{}:{value}", serde_json::Value::from(name)));
    format!("{{{}}}", written.collect::<Vec<_>>().join(","))
}

struct Members<'t>(Vec<(String, &'t RawValue)>);

impl<'de: 't, 't> Deserialize<'de> for Members<'t> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(EveryMember).map(Members)
    }
}

struct EveryMember;

impl<'de> Visitor<'de> for EveryMember {
    type Value = Vec<(String, &'de RawValue)>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut members: A) -> Result<Self::Value, A::Error> {
        let mut all = Vec::new();
        while let Some(member) = members.next_entry()? {
            all.push(member);
        }
        Ok(all)
    }
}

#[cfg(test)]
mod tests {
    use super::{raw_members, write_members};

    #[test]
    fn members_stay_as_they_were_written() {
        let text = br#"{"a" : 1.50, "b\"": [ 2 ], "a":{}}"#;
        let members = raw_members(text).unwrap();
        let written = write_members(members.iter().map(|(name, value)| (name.as_str(), value.get())));
        assert_eq!(written, r#"{"a":1.50,"b\"":[ 2 ],"a":{}}"#);
        assert!(raw_members(b"[1]").is_none() && raw_members(b"{").is_none());
    }
}
