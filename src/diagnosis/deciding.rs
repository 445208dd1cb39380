//! What decides a condition: of several parts those that make it true or false.

use super::words::Wording;
use crate::knowledge::{Condition, EvidenceKind, Input};

impl Wording<'_> {
    /// Of the parts of `all` or `any` those that settle it as the case stands: what is false in a false `all`, what is true
    /// in a true `any`, else everything that is known.
    pub(super) fn deciding(self, parts: &[Condition], is_any: bool) -> Vec<&Condition> {
        let graded = parts.iter().filter_map(|part| Some((part, part.judge(self.case, &mut |_, _| {}).grade()?)));
        let known: Vec<(&Condition, f64)> = graded.collect();
        let settles = |grade: f64| if is_any { grade > 0.0 } else { grade <= 0.0 };
        let is_settled = known.iter().any(|(_, grade)| settles(*grade));
        known.into_iter().filter(|(_, grade)| !is_settled || settles(*grade)).map(|(part, _)| part).collect()
    }

    /// Whether evidence, as the case stands, is decided by one of the inputs that are `meant`.
    pub(super) fn hangs_on(self, kind: &EvidenceKind, meant: &dyn Fn(Input) -> bool) -> bool {
        match kind {
            EvidenceKind::Graded(condition, _) => self.is_decided_by(condition, meant),
            EvidenceKind::Regions(regions) => {
                let mut found = false;
                regions.quantity.inputs(&mut |input| found |= meant(input));
                found
            }
        }
    }

    fn is_decided_by(self, condition: &Condition, meant: &dyn Fn(Input) -> bool) -> bool {
        match condition {
            Condition::All(parts) | Condition::Any(parts) => {
                let is_any = matches!(condition, Condition::Any(_));
                self.deciding(parts, is_any).into_iter().any(|part| self.is_decided_by(part, meant))
            }
            Condition::Not(inner) => self.is_decided_by(inner, meant),
            other => {
                let mut found = false;
                other.inputs(&mut |input| found |= meant(input));
                found
            }
        }
    }
}
