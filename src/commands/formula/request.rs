//! From the file and the options to the request that the HTTP service takes.

use serde_json::{Map, Value, json};

use super::{Exit, Formula};
use crate::commands::measure::measure;

/// Members of a case that say nothing of its formula.
const OF_A_CASE: [&str; 5] = ["symptoms", "readings", "facts", "requirements", "reference"];

impl Formula {
    /// The text of the request. A formula alone is wrapped, of a case its formula and product are taken, the options are
    /// added; text that is no JSON object is left to the reader of requests, which tells what is wrong with it.
    pub(super) fn request(&self, text: &[u8]) -> Result<Vec<u8>, Exit> {
        let sizes = self.sizes()?;
        let Ok(Value::Object(mut request)) = serde_json::from_slice::<Value>(text) else { return Ok(text.to_vec()) };
        if request.contains_key("formula") {
            request.retain(|member, _| !OF_A_CASE.contains(&member.as_str()));
        }
        let is_alone = request.contains_key("ingredients");
        if is_alone {
            request = Map::from_iter([("formula".to_owned(), Value::Object(request))]);
        }
        request.extend(sizes);
        Ok(Value::Object(request).to_string().into_bytes())
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
