//! What is to be said of the calculations in a quantity: their method, their remarks, and why one fails.

use super::answer::{MethodText, RuleFault, SetAsideFinding};
use crate::knowledge::{Circumstances, Knowledge, ProductView, Quantity};

/// The method of the main calculation and the remarks of all; those that fail go to `faults`.
pub(super) fn explain(
    quantity: &Quantity,
    case: &Circumstances,
    faults: &mut Vec<RuleFault>,
) -> (Option<MethodText>, Vec<String>) {
    let (mut method, mut remarks) = (None, Vec::new());
    quantity.calculations(case, &mut |calculated| match calculated.figure(case) {
        Ok(Some(figure)) => {
            method.get_or_insert(MethodText { name: figure.method, source: figure.source });
            remarks.extend(figure.remarks);
        }
        Ok(None) => {}
        Err(fault) => {
            let (file, line) = (calculated.place.file.to_string(), calculated.place.line);
            let fault = RuleFault { file, line, message: fault.message };
            if !faults.contains(&fault) {
                faults.push(fault);
            }
        }
    });
    (method, remarks)
}

/// Why readings that could be computed were not: what they are computed from cannot be right.
pub(super) fn failed_readings<'k>(
    knowledge: &'k Knowledge,
    view: &ProductView,
    case: &Circumstances,
) -> Vec<SetAsideFinding<'k>> {
    let unknown = view.computable.iter().filter(|key| case.reading(**key).is_none());
    let failed = unknown.filter_map(|key| {
        let reading = &knowledge.declared.readings[*key];
        let mut faults = Vec::new();
        explain(reading.computed.as_ref()?, case, &mut faults);
        let fault = faults.first()?;
        let text = format!("cannot be computed: {}; look through what it is computed from", fault.message);
        Some(SetAsideFinding { finding: &reading.id, text })
    });
    failed.collect()
}
