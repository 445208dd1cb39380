//! What the rules of a product need computed.

use std::collections::BTreeSet;

use super::{Cause, Condition, Declarations, EvidenceKind, FormulaQuantity, Input, Key, Limit, Quantity, Reading};
use crate::science::formula::Part;

/// Quantities that every answer gives when they are known: they show how the formula was understood.
pub(super) const ALWAYS_COMPUTED: [FormulaQuantity; 3] =
    [FormulaQuantity::WaterOnFlour, FormulaQuantity::FlourMass, FormulaQuantity::DoughMass];

/// The rules of one product that ask for quantities.
pub(super) struct Needs<'a> {
    declared: &'a Declarations,
    causes: Vec<&'a Cause>,
    warnings: Vec<&'a Condition>,
    limits: Vec<&'a Quantity>,
}

impl<'a> Needs<'a> {
    pub(super) fn of(
        declared: &'a Declarations,
        causes: &[Key<Cause>],
        warnings: &[usize],
        limits: &[Key<Limit>],
    ) -> Self {
        let warned = warnings.iter().filter_map(|position| declared.warnings.get(*position)?.when.as_ref());
        Self {
            declared,
            causes: causes.iter().map(|key| &declared.causes[*key]).collect(),
            warnings: warned.collect(),
            limits: limits.iter().filter_map(|key| declared.limits[*key].quantity.as_ref()).collect(),
        }
    }

    /// What warnings depend on.
    pub(super) fn warning_inputs(&self) -> BTreeSet<Input> {
        let mut inputs = BTreeSet::new();
        self.warnings.iter().for_each(|condition| {
            condition.inputs(&mut |input| {
                inputs.insert(input);
            });
        });
        inputs
    }

    /// Readings that the rules need in any way, those that are listed for the product, and what these are computed from.
    pub(super) fn readings(&self, listed: &[Key<Reading>], computable: &[Key<Reading>]) -> BTreeSet<Key<Reading>> {
        let mut used: BTreeSet<Key<Reading>> = listed.iter().copied().collect();
        self.each_quantity(&mut |quantity| {
            if let Quantity::Reading(key) = quantity {
                used.insert(*key);
            }
        });
        // Each stands after those that it needs: backwards, everything that is needed is found in one go.
        for key in computable.iter().rev() {
            if let (true, Some(quantity)) = (used.contains(key), &self.declared.readings[*key].computed) {
                quantity.inputs(&mut |input| {
                    if let Input::Reading(needed) = input {
                        used.insert(needed);
                    }
                });
            }
        }
        used
    }

    /// Quantities of the formula that the rules and the computed readings ask for.
    pub(super) fn formula_quantities(
        &self,
        computable: &[Key<Reading>],
        main: Part,
    ) -> BTreeSet<(Part, FormulaQuantity)> {
        let mut found = BTreeSet::new();
        let mut visit = |quantity: &Quantity| {
            if let Quantity::Formula(name, part) = quantity {
                found.insert((part.unwrap_or(main), *name));
            }
        };
        self.each_quantity(&mut visit);
        for quantity in computable.iter().filter_map(|key| self.declared.readings[*key].computed.as_ref()) {
            quantity.parts(&mut visit);
        }
        found
    }

    fn each_quantity(&self, visit: &mut impl FnMut(&Quantity)) {
        self.causes.iter().for_each(|cause| each_quantity(cause, visit));
        self.warnings.iter().for_each(|condition| condition.quantities(visit));
        self.limits.iter().for_each(|quantity| quantity.parts(visit));
    }
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
