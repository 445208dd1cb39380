//! Texts that follow from the rules alone: made once, when the rules are loaded.

use super::words::{Wording, speaks_of_case};
use crate::knowledge::{Cause, Circumstances, Condition, Declarations, Key, Text};

/// Texts by cause.
#[derive(Debug)]
pub(super) struct Prepared {
    confirmations: Vec<Vec<PreparedConfirmation>>,
}

/// What confirms and what excludes a cause; `None` where the words depend on the case, or nothing is said.
#[derive(Debug)]
pub(super) struct PreparedConfirmation {
    pub(super) expect: Option<Text>,
    pub(super) excludes: Option<Text>,
    /// Whether all that does not confirm it excludes it.
    pub(super) excluded_if_not: bool,
}

impl Prepared {
    pub(super) fn new(declared: &Declarations) -> Self {
        let blank = Circumstances::default();
        let wording = Wording { declared, case: &blank };
        let demand =
            |condition: &Condition| (!speaks_of_case(condition)).then(|| Text::from(wording.demand(condition)));
        let confirmations = declared.causes.iter().map(|(_, cause)| {
            let confirmations = cause.confirmations.iter().map(|confirmation| PreparedConfirmation {
                expect: demand(&confirmation.expect),
                excludes: confirmation.excluded.as_ref().and_then(demand),
                excluded_if_not: confirmation
                    .excluded
                    .as_ref()
                    .is_some_and(|excluded| wording.demand(excluded) == wording.denial(&confirmation.expect)),
            });
            confirmations.collect()
        });
        Self { confirmations: confirmations.collect() }
    }

    /// The confirmations of a cause, in its order.
    pub(super) fn confirmations(&self, cause: Key<Cause>) -> &[PreparedConfirmation] {
        self.confirmations.get(cause.index()).map_or(&[], Vec::as_slice)
    }
}
