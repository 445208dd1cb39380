//! Expressions over readings and the formula.

use std::sync::Arc;

use super::{Calculated, Circumstances, FormulaQuantity, Ingredient, Input, Key, PERCENT, Reading, Table};
use crate::science::formula::{Part, Role};
use crate::units::Unit;

/// Arithmetic on two quantities.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Operation {
    /// Sum.
    Add,
    /// Difference.
    Subtract,
    /// Product.
    Multiply,
    /// Quotient; unknown when the divisor is zero.
    Divide,
    /// The smaller.
    Min,
    /// The larger.
    Max,
}

/// A number that follows from a case, or is unknown.
#[derive(Debug, Clone)]
pub enum Quantity {
    /// A constant.
    Number(f64),
    /// The value of a reading, in its own unit.
    Reading(Key<Reading>),
    /// The low limit of a reading.
    LowLimit(Key<Reading>),
    /// The target of a reading.
    Target(Key<Reading>),
    /// The high limit of a reading.
    HighLimit(Key<Reading>),
    /// Share of some ingredients together, % on flour.
    BakerPercent(Vec<Key<Ingredient>>),
    /// Share of some ingredients together, % of the mass of a part; without a part, of the product's main part.
    MassPercent(Vec<Key<Ingredient>>, Option<Part>),
    /// Share of everything with a role, % on flour.
    RolePercent(Role),
    /// A quantity of a part of the formula; without a part, of the product's main part.
    Formula(FormulaQuantity, Option<Part>),
    /// The first, or the second where the first is unknown.
    Either(Box<Quantity>, Box<Quantity>),
    /// A figure of a calculation.
    Calculated(Arc<Calculated>),
    /// Absolute value.
    Abs(Box<Quantity>),
    /// Arithmetic.
    Binary(Operation, Box<Quantity>, Box<Quantity>),
}

impl Quantity {
    /// The value in a case; `None` when something that it needs is unknown or the result is not finite.
    #[must_use]
    pub fn value(&self, case: &Circumstances) -> Option<f64> {
        let value = match self {
            Self::Number(number) => Some(*number),
            Self::Reading(key) => case.reading(*key),
            Self::LowLimit(key) => case.limits(*key).low,
            Self::Target(key) => case.limits(*key).target,
            Self::HighLimit(key) => case.limits(*key).high,
            Self::BakerPercent(keys) => keys.iter().map(|key| case.share(*key)).sum(),
            Self::MassPercent(keys, part) => keys.iter().map(|key| case.share_in_mass(*key, *part)).sum(),
            Self::RolePercent(role) => case.role_share(*role),
            Self::Formula(quantity, part) => case.formula_quantity(*quantity, *part),
            Self::Either(first, second) => first.value(case).or_else(|| second.value(case)),
            Self::Calculated(calculated) => calculated.value(case),
            Self::Abs(inner) => inner.value(case).map(f64::abs),
            Self::Binary(operation, left, right) => Some(operation.apply(left.value(case)?, right.value(case)?)),
        };
        value.filter(|number| number.is_finite())
    }

    /// Whether all that it needs is known and yet there is no value, as of a share of nothing: it does not apply.
    #[must_use]
    pub fn is_undefined(&self, case: &Circumstances) -> bool {
        let mut is_known = true;
        self.parts(&mut |part| match part {
            Self::Abs(_) | Self::Either(..) | Self::Binary(..) => {}
            own => is_known &= own.value(case).is_some(),
        });
        is_known && self.value(case).is_none()
    }

    /// Its unit: that of its readings, as far as sums keep it. `None` of plain numbers, products and quotients.
    #[must_use]
    pub fn unit<'q>(&'q self, readings: &'q Table<Reading>) -> Option<&'q Unit> {
        match self {
            Self::Reading(key) | Self::LowLimit(key) | Self::Target(key) | Self::HighLimit(key) => {
                Some(&readings[*key].unit)
            }
            Self::Calculated(calculated) => Some(&calculated.unit),
            Self::Abs(inner) => inner.unit(readings),
            Self::Binary(Operation::Multiply | Operation::Divide, ..) | Self::Number(_) => None,
            Self::Binary(_, left, right) | Self::Either(left, right) => {
                left.unit(readings).or_else(|| right.unit(readings))
            }
            Self::Formula(quantity, _) => Some(quantity.unit()),
            Self::BakerPercent(_) | Self::MassPercent(..) | Self::RolePercent(_) => Some(&PERCENT),
        }
    }

    /// Visits everything that it depends on.
    pub fn inputs(&self, visit: &mut impl FnMut(Input)) {
        self.parts(&mut |part| part.own_inputs(&mut *visit));
    }

    /// Visits what it depends on in a case: of two alternatives only the one that counts there.
    pub fn inputs_in(&self, case: &Circumstances, visit: &mut dyn FnMut(Input)) {
        self.own_inputs(&mut *visit);
        match self {
            Self::Abs(inner) => inner.inputs_in(case, visit),
            Self::Calculated(calculated) => {
                calculated.quantities().for_each(|quantity| quantity.inputs_in(case, visit));
            }
            Self::Either(first, second) => Self::alternative(first, second, case).inputs_in(case, visit),
            Self::Binary(_, left, right) => {
                left.inputs_in(case, visit);
                right.inputs_in(case, visit);
            }
            _ => {}
        }
    }

    /// What the quantity itself names, without those inside it.
    fn own_inputs(&self, mut visit: impl FnMut(Input)) {
        match self {
            Self::Reading(key) => visit(Input::Reading(*key)),
            Self::BakerPercent(keys) | Self::MassPercent(keys, _) => {
                keys.iter().for_each(|key| visit(Input::Share(*key)));
            }
            Self::RolePercent(_) | Self::Formula(..) => visit(Input::Formula),
            Self::Calculated(calculated) => calculated.facts().for_each(|key| visit(Input::Fact(key))),
            _ => {}
        }
    }

    /// Of two alternatives the one that counts in a case: the first that is known, else the one that lacks less.
    pub(super) fn alternative<'q>(first: &'q Self, second: &'q Self, case: &Circumstances) -> &'q Self {
        let second_counts = || second.value(case).is_some() || second.lacking(case).len() < first.lacking(case).len();
        if first.value(case).is_none() && second_counts() { second } else { first }
    }

    /// Inputs that are not known; all that a formula would tell count as one.
    fn lacking(&self, case: &Circumstances) -> Vec<Input> {
        let mut lacking = Vec::new();
        self.inputs_in(case, &mut |input| {
            let whole = if matches!(input, Input::Share(_)) { Input::Formula } else { input };
            if !case.knows(input) && !lacking.contains(&whole) {
                lacking.push(whole);
            }
        });
        lacking
    }

    /// Visits itself and every quantity inside it.
    pub fn parts(&self, visit: &mut impl FnMut(&Self)) {
        visit(self);
        match self {
            Self::Abs(inner) => inner.parts(visit),
            Self::Calculated(calculated) => calculated.quantities().for_each(|quantity| quantity.parts(visit)),
            Self::Either(left, right) | Self::Binary(_, left, right) => {
                left.parts(visit);
                right.parts(visit);
            }
            _ => {}
        }
    }
}

impl Operation {
    fn apply(self, left: f64, right: f64) -> f64 {
        match self {
            Self::Add => left + right,
            Self::Subtract => left - right,
            Self::Multiply => left * right,
            Self::Divide => left / right,
            Self::Min => left.min(right),
            Self::Max => left.max(right),
        }
    }
}
