//! A computed figure that can be argued with, and the refusal to compute one.

use std::fmt;

/// How a figure is computed: constant for a calculation.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Method {
    /// Name of the equation or rule, as the trade or the literature knows it.
    pub name: &'static str,
    /// Publication (author, title, year, table), `common practice`, or `from memory: <work>`.
    pub source: &'static str,
    /// Range of inputs for which the source claims it, and its accuracy where the source states one.
    pub domain: &'static str,
}

/// A computed figure: value, UCUM unit, how it came about, and whether the method was stretched.
#[derive(Debug, Clone, PartialEq)]
pub struct Estimate {
    /// The figure, in `unit`.
    pub value: f64,
    /// UCUM unit code, for example `Cel`, `%`, `kg`, `1` for a plain ratio.
    pub unit: &'static str,
    /// Equation, source and domain.
    pub method: Method,
    /// Why the inputs lie outside the method's domain; empty inside it.
    pub outside_domain: Vec<String>,
}

impl Estimate {
    /// A figure inside the domain of its method.
    #[must_use]
    pub fn new(value: f64, unit: &'static str, method: Method) -> Self {
        // A sum of nothing is -0, and so is what it is divided by: a figure is 0.
        Self { value: value + 0.0, unit, method, outside_domain: Vec::new() }
    }

    /// Adds a remark when `holds` is false, for example "66 % sucrose is above the fitted 60 %".
    #[must_use]
    pub fn valid_if(mut self, holds: bool, remark: impl FnOnce() -> String) -> Self {
        if !holds {
            self.outside_domain.push(remark());
        }
        self
    }
}

/// One input that cannot be meant.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// Name of the input, for example `dough_temperature`.
    pub input: String,
    /// What is wrong, lower case, without a full stop.
    pub message: String,
}

/// Inputs from which nothing can be computed; lists every faulty one.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Nonsense {
    /// The faults, in the order of the inputs.
    pub faults: Vec<Fault>,
}

impl Nonsense {
    /// Collects a fault unless `holds`.
    pub fn unless(&mut self, holds: bool, input: &str, message: impl Into<String>) {
        if !holds {
            self.faults.push(Fault { input: input.to_owned(), message: message.into() });
        }
    }

    /// `Ok` when nothing was collected.
    ///
    /// # Errors
    /// Itself, when at least one fault was collected.
    pub fn or_ok(self) -> Result<(), Self> {
        if self.faults.is_empty() { Ok(()) } else { Err(self) }
    }
}

impl fmt::Display for Nonsense {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let lines: Vec<String> =
            self.faults.iter().map(|fault| format!("{}: {}", fault.input, fault.message)).collect();
        f.write_str(&lines.join("; "))
    }
}

impl std::error::Error for Nonsense {}
