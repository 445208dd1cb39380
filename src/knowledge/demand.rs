//! What the rules of a product need computed.

use std::collections::BTreeSet;

use super::{Cause, Declarations, EvidenceKind, FormulaQuantity, Input, Key, Quantity, Reading};
use crate::science::formula::Part;

/// Quantities that every answer gives when they are known: they show how the formula was understood.
pub(super) const ALWAYS_COMPUTED: [FormulaQuantity; 3] =
    [FormulaQuantity::WaterOnFlour, FormulaQuantity::FlourMass, FormulaQuantity::DoughMass];

/// Readings that the causes need in any way, those that are listed for the product, and what these are computed from.
pub(super) fn readings(
    declared: &Declarations,
    causes: &[Key<Cause>],
    listed: &[Key<Reading>],
    computable: &[Key<Reading>],
) -> BTreeSet<Key<Reading>> {
    let mut used: BTreeSet<Key<Reading>> = listed.iter().copied().collect();
    for cause in causes.iter().map(|key| &declared.causes[*key]) {
        each_quantity(cause, &mut |quantity| {
            if let Quantity::Reading(key) = quantity {
                used.insert(*key);
            }
        });
    }
    // Each stands after those that it needs: backwards, everything that is needed is found in one go.
    for key in computable.iter().rev() {
        if let (true, Some(quantity)) = (used.contains(key), &declared.readings[*key].computed) {
            quantity.inputs(&mut |input| {
                if let Input::Reading(needed) = input {
                    used.insert(needed);
                }
            });
        }
    }
    used
}

/// Quantities of the formula that the causes and the computed readings ask for.
pub(super) fn formula_quantities(
    declared: &Declarations,
    causes: &[Key<Cause>],
    computable: &[Key<Reading>],
    main: Part,
) -> BTreeSet<(Part, FormulaQuantity)> {
    let mut found = BTreeSet::new();
    let mut visit = |quantity: &Quantity| {
        if let Quantity::Formula(name, part) = quantity {
            found.insert((part.unwrap_or(main), *name));
        }
    };
    for cause in causes.iter().map(|key| &declared.causes[*key]) {
        each_quantity(cause, &mut visit);
    }
    for quantity in computable.iter().filter_map(|key| declared.readings[*key].computed.as_ref()) {
        quantity.parts(&mut visit);
    }
    found
}

fn each_quantity(cause: &Cause, visit: &mut impl FnMut(&Quantity)) {
    for item in &cause.evidence {
        match &item.kind {
            EvidenceKind::Graded(condition, _) => condition.quantities(visit),
            EvidenceKind::Regions(regions) => regions.quantity.parts(visit),
        }
    }
    for setting in cause.prescriptions.iter().flat_map(|prescription| &prescription.settings) {
        setting.quantity.parts(visit);
    }
    for confirmation in &cause.confirmations {
        confirmation.expect.quantities(visit);
        if let Some(condition) = &confirmation.excluded {
            condition.quantities(visit);
        }
    }
}
