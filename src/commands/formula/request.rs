//! From the file and the options to the request that the HTTP service takes.

use serde_json::{Map, Value, json};

use super::{Exit, Formula};
use crate::commands::measure::measure;
use crate::json::{raw_members, write_members};

/// Members of a case that say nothing of its formula.
const OF_A_CASE: [&str; 5] = ["symptoms", "readings", "facts", "requirements", "reference"];

impl Formula {
    /// The text of the request. A formula alone is wrapped, of a case its formula and product are taken, the options are
    /// added in place of what the file says of the same; values stand as they were written, and twice where they stand twice.
    /// Text that is no JSON object is left to the reader of requests, which tells what is wrong with it.
    pub(super) fn request(&self, text: &[u8]) -> Result<Vec<u8>, Exit> {
        let sizes = self.sizes()?;
        let Some(mut members) = raw_members(text) else { return Ok(text.to_vec()) };
        let has = |member: &str| members.iter().any(|(name, _)| name == member);
        let (is_alone, has_formula) = (has("ingredients"), has("formula"));
        if has_formula {
            members.retain(|(name, _)| !OF_A_CASE.contains(&name.as_str()));
        }
        if !is_alone {
            members.retain(|(name, _)| !sizes.contains_key(name));
        }
        let given = || members.iter().map(|(name, value)| (name.as_str(), value.get()));
        let formula = if is_alone { write_members(given()) } else { String::new() };
        let sizes: Vec<(&str, String)> = sizes.iter().map(|(name, value)| (name.as_str(), value.to_string())).collect();
        let sizes = sizes.iter().map(|(name, value)| (*name, value.as_str()));
        let request = if is_alone {
            write_members([("formula", formula.as_str())].into_iter().chain(sizes))
        } else {
            write_members(given().chain(sizes))
        };
        Ok(request.into_bytes())
    }

    fn sizes(&self) -> Result<Map<String, Value>, Exit> {
        let mut sizes = Map::new();
        if let Some(mass) = &self.batch {
            sizes.insert("mass".to_owned(), measure("--batch", mass)?);
        }
        if let Some(pieces) = self.pieces {
            sizes.insert("pieces".to_owned(), json!(pieces));
        }
        if let Some(mass) = &self.piece_weight {
            sizes.insert("piece_mass".to_owned(), measure("--piece-weight", mass)?);
        }
        if let Some(loss) = &self.bake_loss {
            sizes.insert("bake_loss".to_owned(), measure("--bake-loss", loss)?);
        }
        Ok(sizes)
    }
}
