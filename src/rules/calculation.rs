//! Calculations as rules use them: constants bound, the rest given for every case.

use std::sync::Arc;

use crate::calculations::{Calculation, Figure, FigureKind, Input, InputKind, Value, Values};
use crate::json::Fault;
use crate::knowledge::{Calculate, CalculatedFigure, CalculationFault};

/// A calculation with its constants.
#[derive(Debug, Clone)]
pub(super) struct BoundCalculation {
    pub(super) calculation: &'static Calculation,
    /// The figure that is wanted.
    pub(super) figure: &'static FigureKind,
    /// Constants and defaults.
    pub(super) bound: Values,
    /// The inputs that are given for every case, in the order of the arguments.
    pub(super) open: Vec<&'static Input>,
}

impl BoundCalculation {
    pub(super) fn shared(self) -> Arc<dyn Calculate> {
        Arc::new(self)
    }

    fn values(&self, arguments: &[f64]) -> Result<Values, CalculationFault> {
        let mut values = self.bound.clone();
        for (input, number) in self.open.iter().zip(arguments) {
            values.set(input.name, self.value(input, *number)?);
        }
        Ok(values)
    }

    fn value(&self, input: &Input, number: f64) -> Result<Value, CalculationFault> {
        match input.kind {
            InputKind::Number(kind) => match kind.out_of_range(number) {
                Some(detail) => Err(self.fault(&format!("`{}`: {detail}", input.name))),
                None => Ok(Value::Number(number)),
            },
            _ => Ok(Value::Boolean(number > 0.5)),
        }
    }

    fn fault(&self, message: &str) -> CalculationFault {
        CalculationFault { message: format!("`{}` gives no figure: {message}", self.calculation.name) }
    }
}

impl Calculate for BoundCalculation {
    fn figure(&self, arguments: &[f64]) -> Result<Option<CalculatedFigure>, CalculationFault> {
        let values = self.values(arguments)?;
        let outcome = self.calculation.run(&values).map_err(|faults| self.fault(&in_words(&faults)))?;
        let wanted = outcome.figures.into_iter().find(|figure| figure.name == self.figure.name);
        Ok(wanted.map(|figure| with_remarks(figure, outcome.remarks)))
    }
}

fn with_remarks(figure: Figure, remarks: Vec<String>) -> CalculatedFigure {
    let estimate = figure.estimate;
    CalculatedFigure {
        value: estimate.value,
        method: estimate.method.name,
        source: estimate.method.source,
        remarks: estimate.outside_domain.into_iter().chain(remarks).collect(),
    }
}

fn in_words(faults: &[Fault]) -> String {
    let each = faults.iter().map(|fault| match fault.pointer.trim_start_matches('/') {
        "" => fault.detail.clone(),
        input => format!("`{input}`: {}", fault.detail),
    });
    each.collect::<Vec<_>>().join("; ")
}
