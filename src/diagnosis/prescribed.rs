//! The quantities of an action in a case, for what is tried on it.

use super::circumstances::lay_out;
use super::diagnostician::Diagnostician;
use crate::case::Case;
use crate::knowledge::{Action, Cause, Key, Setting};

/// An action as a cause prescribes it, with its quantities in a case.
#[derive(Debug)]
pub struct Prescribed<'k> {
    /// The cause.
    pub cause: &'k str,
    /// The quantities, in the order of the rules; `None` where something that one needs is unknown.
    pub settings: Vec<(&'k Setting, Option<f64>)>,
}

impl Diagnostician {
    /// The quantities that an action has in a case: those of the first cause, in the order of `causes`, that prescribes it.
    /// They keep within the law.
    ///
    /// # Errors
    /// Why the action is not done in this case.
    pub fn prescribed(&self, case: &Case, action: Key<Action>, causes: &[&str]) -> Result<Prescribed<'_>, String> {
        let knowledge = self.knowledge();
        let view = knowledge.view(case.product);
        let laid_out = lay_out(case, knowledge, view);
        let advising = self.advising(view, &laid_out, &case.requirements);
        if let Some(reason) = advising.reason_against(&knowledge.declared.actions[action]) {
            return Err(format!("the requirements exclude it: {reason}"));
        }
        let of_id = |id: &&str| knowledge.declared.causes.find(id);
        let prescribes = |key: Key<Cause>| {
            let cause = &knowledge.declared.causes[key];
            let prescription = cause.prescriptions.iter().find(|prescription| prescription.action == action)?;
            Some((cause, prescription))
        };
        let Some((cause, prescription)) = causes.iter().filter_map(of_id).find_map(prescribes) else {
            return Err("no cause of this product prescribes it".to_owned());
        };
        let value = |setting: &Setting| {
            let value = setting.quantity.value(&laid_out.circumstances)?;
            Some(advising.law.cap(setting, view, value).map_or(value, |capped| capped.value))
        };
        let settings = prescription.settings.iter().map(|setting| (setting, value(setting))).collect();
        Ok(Prescribed { cause: &cause.id, settings })
    }
}
