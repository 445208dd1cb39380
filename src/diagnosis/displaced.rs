//! Actions of an order that undo each other.

use super::answer::{DisplacedAction, OrderedAction, RankedCause, SetQuantity};
use crate::knowledge::{Change, Declarations, How};

/// Says of each action which of those before it set the same otherwise, by the quantities under the leading causes.
pub(super) fn tell_displaced<'k>(
    order: &mut [OrderedAction<'k>],
    causes: &[RankedCause<'k>],
    declared: &'k Declarations,
) {
    for later in 1..order.len() {
        let Some((action, before)) = order.get(..=later).and_then(<[_]>::split_last) else { continue };
        let displaced: Vec<_> =
            before.iter().filter_map(|earlier| displaced(earlier, action, causes, declared)).collect();
        if let Some(action) = order.get_mut(later) {
            action.in_place_of = displaced;
        }
    }
}

fn displaced<'k>(
    earlier: &OrderedAction<'k>,
    later: &OrderedAction<'k>,
    causes: &[RankedCause<'k>],
    declared: &'k Declarations,
) -> Option<DisplacedAction<'k>> {
    let (earlier_sets, later_sets) = (quantities(earlier, causes), quantities(later, causes));
    let mut pairs = earlier_sets.iter().flat_map(|one| later_sets.iter().map(move |other| (one, other)));
    let both_change = pairs.find_map(|(one, other)| undone(one, other, declared));
    if both_change.is_none() && !declared.undo_each_other(earlier.action, later.action) {
        return None;
    }
    Some(DisplacedAction { action: earlier.action, both_change })
}

/// The quantities of an action that people read.
fn quantities<'d, 'k>(action: &OrderedAction<'k>, causes: &'d [RankedCause<'k>]) -> &'d [SetQuantity<'k>] {
    let shown = causes.iter().find(|cause| Some(cause.cause) == action.quantities_under);
    let advice = shown.and_then(|cause| cause.actions.iter().find(|advice| advice.action == action.action));
    advice.map_or(&[], |advice| &advice.quantities)
}

/// What a quantity sets to another value than an earlier one, or takes out again where that added.
fn undone<'k>(earlier: &SetQuantity<'k>, later: &SetQuantity<'k>, declared: &'k Declarations) -> Option<&'k str> {
    let (one, other) = (earlier.setting.changes.as_ref()?, later.setting.changes.as_ref()?);
    let differs = || earlier.unit == later.unit && earlier.value != later.value;
    let is_undone = match (one, other) {
        (Change::Reading(_), Change::Reading(_)) => differs(),
        (Change::Amount(one), Change::Amount(other)) => match (one.how, other.how) {
            (How::Doses, How::Doses) => one.basis == other.basis && differs(),
            (How::Adds, How::TakesOut) | (How::TakesOut, How::Adds) => true,
            _ => false,
        },
        _ => false,
    };
    if is_undone { one.shared_with(other, declared) } else { None }
}
