//! `whybake what-if`

use std::path::PathBuf;

use clap::Args;
use serde_json::{Map, Value, json};

use super::case_request::{told, wrapped};
use super::exit::Exit;
use super::input::read_case;
use super::measure::number_and_unit;
use super::options::{JsonOption, RulesOption};
use super::output::{complain, width};
use crate::case::WhatIfRequest;
use crate::what_if::{render, what_if};

/// Diagnose one case as it would be with other readings, amounts or actions
#[derive(Debug, Args)]
pub(super) struct WhatIf {
    /// File with the case as JSON, or a record or a rule test with the case as its member `case`; `-` reads standard input
    #[arg(value_name = "CASE.json")]
    case: PathBuf,
    /// A reading, for example `dough_temperature=26Cel`
    #[arg(long, value_name = "READING=VALUE")]
    set: Vec<String>,
    /// A fact, for example `dough_waits_before_divider=no`
    #[arg(long, value_name = "FACT=yes|no")]
    fact: Vec<String>,
    /// A symptom that is seen, or not: `pale_crust=no`
    #[arg(long, value_name = "SYMPTOM[=no]")]
    symptom: Vec<String>,
    /// What the amount of an ingredient becomes, for example `water=62%` on flour or `water=31kg`
    #[arg(long, value_name = "INGREDIENT=AMOUNT")]
    dose: Vec<String>,
    /// What is added of an ingredient
    #[arg(long, value_name = "INGREDIENT=AMOUNT")]
    add: Vec<String>,
    /// What is taken out of an ingredient; without an amount all of it
    #[arg(long, value_name = "INGREDIENT[=AMOUNT]")]
    take_out: Vec<String>,
    /// An action that is done, with the quantities that it has in the case
    #[arg(long, value_name = "ID")]
    action: Vec<String>,
    #[command(flatten)]
    json: JsonOption,
    #[command(flatten)]
    rules: RulesOption,
}

impl WhatIf {
    pub(super) fn run(self) -> Result<(), Exit> {
        let changes = self.changes().map_err(|message| {
            complain(message);
            Exit::Usage
        })?;
        let diagnostician = self.rules.load()?.diagnostician;
        let rest = Map::from_iter([("changes".to_owned(), changes)]);
        let text = wrapped(&read_case(&self.case)?, &rest)?;
        let request = WhatIfRequest::parse(&text, diagnostician.knowledge()).map_err(told)?;
        let answer = what_if(request, &diagnostician).map_err(|fault| {
            complain(fault);
            Exit::Faulty
        })?;
        self.json.show(&answer, || render(&answer, width()))
    }

    /// The changes as the HTTP service takes them; members that nobody gives are left out.
    fn changes(&self) -> Result<Value, String> {
        let mut changes = Map::new();
        let readings = once_each(self.set.iter().map(|text| reading(text)))?;
        let facts = once_each(self.fact.iter().map(|text| fact(text)))?;
        let symptoms = self.symptom.iter().map(|text| symptom(text)).collect::<Result<Vec<Value>, _>>()?;
        let mut ingredients = Vec::new();
        for (how, texts) in [("doses", &self.dose), ("adds", &self.add), ("takes_out", &self.take_out)] {
            for text in texts {
                ingredients.push(ingredient(how, text)?);
            }
        }
        let lists = [("readings", readings.into()), ("facts", facts.into())];
        let arrays = [("symptoms", symptoms), ("ingredients", ingredients)];
        let actions = ("actions", self.action.iter().map(|id| json!(id)).collect());
        let members =
            lists.into_iter().chain(arrays.into_iter().chain([actions]).map(|(name, all)| (name, Value::Array(all))));
        for (name, value) in members {
            let empty = value.as_array().is_some_and(Vec::is_empty) || value.as_object().is_some_and(Map::is_empty);
            if !empty {
                changes.insert(name.to_owned(), value);
            }
        }
        Ok(Value::Object(changes))
    }
}

/// Members of an object; one that is given twice is a fault.
fn once_each(members: impl Iterator<Item = Result<(String, Value), String>>) -> Result<Map<String, Value>, String> {
    let mut all = Map::new();
    for member in members {
        let (id, value) = member?;
        if all.contains_key(&id) {
            return Err(format!("`{id}` is given twice"));
        }
        all.insert(id, value);
    }
    Ok(all)
}

fn pair<'t>(text: &'t str, example: &str) -> Result<(&'t str, &'t str), String> {
    text.split_once('=').ok_or_else(|| format!("`{text}` is not as in `{example}`"))
}

fn no_measure(text: &str) -> String {
    format!("`{text}` is not a number with a unit, as in `26Cel` or `2%`")
}

fn reading(text: &str) -> Result<(String, Value), String> {
    let (id, value) = pair(text, "dough_temperature=26Cel")?;
    let (value, unit) = number_and_unit(value).ok_or_else(|| no_measure(value))?;
    // A plain number is one: the UCUM code `1`.
    let unit = if unit.is_empty() { "1" } else { unit };
    Ok((id.to_owned(), json!({ "value": value, "unit": unit })))
}

fn truth(text: &str) -> Result<bool, String> {
    match text {
        "yes" | "true" => Ok(true),
        "no" | "false" => Ok(false),
        _ => Err(format!("`{text}` is neither `yes` nor `no`")),
    }
}

fn fact(text: &str) -> Result<(String, Value), String> {
    let (id, stated) = pair(text, "dough_waits_before_divider=no")?;
    Ok((id.to_owned(), Value::Bool(truth(stated)?)))
}

fn symptom(text: &str) -> Result<Value, String> {
    let (id, present) = text.split_once('=').unwrap_or((text, "yes"));
    Ok(json!({ "symptom": id, "present": truth(present)? }))
}

fn ingredient(how: &str, text: &str) -> Result<Value, String> {
    if how == "takes_out" && !text.contains('=') {
        return Ok(json!({ "ingredient": text, "how": how }));
    }
    let (id, amount) = pair(text, "water=2kg")?;
    // A plain number is no share here: 5 would be 500 %.
    let measured = number_and_unit(amount).filter(|(_, unit)| !unit.is_empty());
    let (amount, unit) = measured.ok_or_else(|| no_measure(amount))?;
    Ok(json!({ "ingredient": id, "how": how, "amount": amount, "unit": unit }))
}
