//! Texts that follow from the rules alone: made once, when the rules are loaded.

use super::sentence::in_sentence;
use super::words::{Wording, speaks_of_case};
use crate::knowledge::{Action, Cause, Circumstances, Condition, Declarations, Key, Text};

/// Texts by cause and by action.
#[derive(Debug)]
pub(super) struct Prepared {
    confirmations: Vec<Vec<PreparedConfirmation>>,
    side_effects: Vec<Vec<Text>>,
}

/// What confirms and what excludes a cause; `None` where the words depend on the case, or nothing is said.
#[derive(Debug)]
pub(super) struct PreparedConfirmation {
    pub(super) expect: Option<Text>,
    pub(super) excludes: Option<Text>,
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
            });
            confirmations.collect()
        });
        let side_effects = declared.actions.iter().map(|(_, action)| side_effects(declared, action));
        Self { confirmations: confirmations.collect(), side_effects: side_effects.collect() }
    }

    /// The confirmations of a cause, in its order.
    pub(super) fn confirmations(&self, cause: Key<Cause>) -> &[PreparedConfirmation] {
        self.confirmations.get(cause.index()).map_or(&[], Vec::as_slice)
    }

    /// What an action does besides, and what it brings when it is overdone.
    pub(super) fn side_effects(&self, action: Key<Action>) -> &[Text] {
        self.side_effects.get(action.index()).map_or(&[], Vec::as_slice)
    }
}

fn side_effects(declared: &Declarations, action: &Action) -> Vec<Text> {
    let may_show = action.may_show.iter().map(|key| {
        let title = in_sentence(&declared.symptoms[*key].title);
        Text::from(format!("overdone it can bring: {title}"))
    });
    action.side_effects.iter().cloned().chain(may_show).collect()
}
