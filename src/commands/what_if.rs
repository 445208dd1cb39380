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
        let changes = self.changes().map_err(|faults| {
            faults.iter().for_each(complain);
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
    ///
    /// # Errors
    /// Everything that is not written as it should be.
    fn changes(&self) -> Result<Value, Vec<String>> {
        let mut faults = Vec::new();
        let readings = once_each(good(self.set.iter().map(|text| reading(text)), &mut faults), &mut faults);
        let facts = once_each(good(self.fact.iter().map(|text| fact(text)), &mut faults), &mut faults);
        let symptoms = good(self.symptom.iter().map(|text| symptom(text)), &mut faults);
        let ingredients = [("doses", &self.dose), ("adds", &self.add), ("takes_out", &self.take_out)];
        let ingredients = ingredients.into_iter().flat_map(|(how, texts)| texts.iter().map(move |text| (how, text)));
        let ingredients = good(ingredients.map(|(how, text)| ingredient(how, text)), &mut faults);
        if !faults.is_empty() {
            return Err(faults);
        }
        let actions = self.action.iter().map(|id| json!(id)).collect();
        let members: [(&str, Value); 5] = [
            ("readings", readings.into()),
            ("facts", facts.into()),
            ("symptoms", Value::Array(symptoms)),
            ("ingredients", Value::Array(ingredients)),
            ("actions", Value::Array(actions)),
        ];
        let is_given = |value: &Value| match value {
            Value::Array(items) => !items.is_empty(),
            Value::Object(members) => !members.is_empty(),
            _ => true,
        };
        let given = members.into_iter().filter(|(_, value)| is_given(value));
        Ok(Value::Object(given.map(|(name, value)| (name.to_owned(), value)).collect()))
    }
}

/// What is well written; the rest goes to `faults`.
fn good<T>(read: impl Iterator<Item = Result<T, String>>, faults: &mut Vec<String>) -> Vec<T> {
    let mut all = Vec::new();
    for one in read {
        match one {
            Ok(value) => all.push(value),
            Err(fault) => faults.push(fault),
        }
    }
    all
}

/// Members of an object; one that is given twice is a fault.
fn once_each(members: Vec<(String, Value)>, faults: &mut Vec<String>) -> Map<String, Value> {
    let mut all = Map::new();
    for (id, value) in members {
        if all.contains_key(&id) {
            faults.push(format!("`{id}` is given twice"));
        }
        all.insert(id, value);
    }
    all
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
