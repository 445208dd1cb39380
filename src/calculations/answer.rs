//! The answer of a calculation, as the service and the command give it.

use crate::json::DocumentFaults;
use serde::Serialize;
use utoipa::ToSchema;

use super::calculation::Calculation;
use super::outcome::{Figure, Outcome};

/// The answer of a calculation.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct CalculationAnswer {
    /// Name of the calculation.
    #[schema(example = "mixing_water_temperature")]
    pub calculation: &'static str,
    /// The figures, the main one first.
    pub figures: Vec<FigureAnswer>,
    /// What cannot be said in figures; cautions. Read them before acting.
    pub remarks: Vec<String>,
}

/// A computed figure.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
#[schema(as = Figure)]
pub struct FigureAnswer {
    /// Name.
    #[schema(example = "water_temperature")]
    pub name: &'static str,
    /// What it belongs to, where several figures have this name: a lot, a fat, a temperature.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "strong flour")]
    pub of: Option<String>,
    /// Value in `unit`.
    #[schema(example = 7.5)]
    pub value: f64,
    /// UCUM code.
    #[schema(example = "Cel")]
    pub unit: &'static str,
    /// Equation or rule.
    #[schema(example = "additive rule: n × dough temperature − other temperatures − friction factor")]
    pub method: &'static str,
    /// Publication, `common practice`, or `from memory` of a named work.
    #[schema(example = "Lehmann T., PMQ, Spring 2003, temperatures explained")]
    pub source: &'static str,
    /// Range of inputs for which the source claims the method, and its accuracy where it states one.
    #[schema(example = "same mixer, speed, time and batch size as the batch the friction factor was measured on")]
    pub domain: &'static str,
    /// Why the inputs lie outside the method's domain; empty inside it.
    pub outside_domain: Vec<String>,
}

impl Calculation {
    /// Reads inputs from JSON text and computes the answer.
    ///
    /// # Errors
    /// Every fault of the inputs at once.
    pub fn answer(&self, text: &[u8]) -> Result<CalculationAnswer, DocumentFaults> {
        let values = self.read(text)?;
        let Outcome { figures, remarks } = self.run(&values).map_err(DocumentFaults::Faulty)?;
        Ok(CalculationAnswer { calculation: self.name, figures: figures.into_iter().map(figure).collect(), remarks })
    }
}

fn figure(Figure { name, of, estimate }: Figure) -> FigureAnswer {
    FigureAnswer {
        name,
        of,
        value: estimate.value,
        unit: estimate.unit,
        method: estimate.method.name,
        source: estimate.method.source,
        domain: estimate.method.domain,
        outside_domain: estimate.outside_domain,
    }
}
