//! Where settings are read from: sections of a TOML file with environment variables over them.

use std::collections::BTreeMap;

use toml::{Table, Value};

use super::fault::SettingFault;
use super::value::SettingValue;
use crate::suggest::did_you_mean;

/// A settings file and the environment, with every fault that was met.
pub(super) struct Source {
    path: String,
    sections: BTreeMap<String, Table>,
    variables: BTreeMap<String, String>,
    known_sections: Vec<&'static str>,
    known_variables: Vec<String>,
    faults: Vec<SettingFault>,
}

/// One concern of the settings: a table of the file, and variables with a common prefix.
pub(super) struct Section<'s> {
    name: &'static str,
    source: &'s mut Source,
    table: Table,
    known_keys: Vec<&'static str>,
}

impl Source {
    /// # Errors
    /// When the text is no TOML.
    pub(super) fn new(
        path: &str,
        text: &str,
        environment: impl IntoIterator<Item = (String, String)>,
    ) -> Result<Self, Vec<SettingFault>> {
        let file: Table = text.parse().map_err(|error: toml::de::Error| {
            vec![SettingFault::new(path, format!("is not TOML: {}", error.to_string().trim_end()))]
        })?;
        let mut source = Self {
            path: path.to_owned(),
            sections: BTreeMap::new(),
            variables: environment.into_iter().filter(|(name, _)| name.starts_with("WHYBAKE_")).collect(),
            known_sections: Vec::new(),
            known_variables: Vec::new(),
            faults: Vec::new(),
        };
        for (name, value) in file {
            source.add_section(name, value);
        }
        Ok(source)
    }

    fn add_section(&mut self, name: String, value: Value) {
        if let Value::Table(table) = value {
            self.sections.insert(name, table);
        } else {
            let help = Some("settings stand in sections, for example `[http]`".to_owned());
            let place = self.place(&name);
            self.faults.push(SettingFault::new(place, "stands in no section".to_owned()).help(help));
        }
    }

    /// Reads a section; what `read` does not ask for is a fault.
    pub(super) fn section<T>(&mut self, name: &'static str, read: impl FnOnce(&mut Section<'_>) -> T) -> T {
        self.known_sections.push(name);
        let table = self.sections.remove(name).unwrap_or_default();
        let mut section = Section { name, source: self, table, known_keys: Vec::new() };
        let settings = read(&mut section);
        section.refuse_the_rest();
        settings
    }

    /// # Errors
    /// All faults, once every section has been read.
    pub(super) fn finish(mut self) -> Result<(), Vec<SettingFault>> {
        let sections = self.sections.keys().map(|name| self.unknown_section(name));
        let variables = self.variables.keys().filter(|name| self.is_ours(name)).map(|name| self.unknown_variable(name));
        let unknown: Vec<SettingFault> = sections.chain(variables).collect();
        self.faults.extend(unknown);
        if self.faults.is_empty() { Ok(()) } else { Err(self.faults) }
    }

    fn unknown_section(&self, name: &str) -> SettingFault {
        let help = did_you_mean(name, self.known_sections.iter().copied())
            .unwrap_or_else(|| format!("the sections are `{}`", self.known_sections.join("`, `")));
        SettingFault::new(self.place(name), "unknown section".to_owned()).help(Some(help))
    }

    fn unknown_variable(&self, name: &str) -> SettingFault {
        let help = did_you_mean(name, self.known_variables.iter().map(String::as_str));
        SettingFault::new(format!("environment variable `{name}`"), "unknown setting".to_owned()).help(help)
    }

    /// Whether a variable can only be meant for a section: an orchestrator that runs a service named `whybake` sets
    /// variables such as `WHYBAKE_PORT` and `WHYBAKE_SERVICE_HOST`, which are nothing to us.
    fn is_ours(&self, variable: &str) -> bool {
        self.known_sections.iter().any(|section| variable.starts_with(&prefix(section)))
    }

    fn place(&self, key: &str) -> String {
        format!("`{key}` in {}", self.path)
    }
}

impl Section<'_> {
    /// The value of a key, from the environment or else from the file; `None` when neither sets it to something usable.
    pub(super) fn value<T: SettingValue>(&mut self, key: &'static str) -> Option<T> {
        self.known_keys.push(key);
        let variable = format!("{}{}", prefix(self.name), key.to_uppercase());
        let in_file = self.table.remove(key).map(|value| plain_text(&value));
        let in_file = in_file.and_then(|text| {
            let place = self.source.place(&format!("{}.{key}", self.name));
            self.read(place, text.as_deref())
        });
        let in_environment = self.source.variables.remove(&variable);
        let in_environment =
            in_environment.and_then(|text| self.read(format!("environment variable `{variable}`"), Some(&text)));
        self.source.known_variables.push(variable);
        in_environment.or(in_file)
    }

    fn read<T: SettingValue>(&mut self, place: String, text: Option<&str>) -> Option<T> {
        let value = text.and_then(T::parse);
        if value.is_none() {
            let given = match text {
                None => "a list or section".to_owned(),
                Some(_) if T::IS_SECRET => "something else".to_owned(),
                Some(text) => format!("`{text}`"),
            };
            self.source.faults.push(SettingFault::new(place, format!("{} is wanted, this is {given}", T::WANTED)));
        }
        value
    }

    /// Tells what is wrong with the value of a key that was read.
    pub(super) fn fault(&mut self, key: &str, message: String) {
        let place = format!("`{}.{key}`", self.name);
        self.source.faults.push(SettingFault::new(place, message));
    }

    fn refuse_the_rest(self) {
        for key in self.table.keys() {
            let help = did_you_mean(key, self.known_keys.iter().copied())
                .unwrap_or_else(|| format!("the settings are `{}`", self.known_keys.join("`, `")));
            let place = self.source.place(&format!("{}.{key}", self.name));
            self.source.faults.push(SettingFault::new(place, "unknown setting".to_owned()).help(Some(help)));
        }
    }
}

fn prefix(section: &str) -> String {
    format!("WHYBAKE_{}_", section.to_uppercase())
}

/// A value of the file as it would stand in the environment; `None` when it is a list or a table.
fn plain_text(value: &Value) -> Option<String> {
    match value {
        Value::String(text) => Some(text.clone()),
        Value::Integer(number) => Some(number.to_string()),
        Value::Float(number) => Some(number.to_string()),
        Value::Boolean(flag) => Some(flag.to_string()),
        Value::Datetime(time) => Some(time.to_string()),
        Value::Array(_) | Value::Table(_) => None,
    }
}
