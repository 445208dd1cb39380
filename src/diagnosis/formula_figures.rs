//! What a formula comes to: shares on flour and a few totals.

use crate::case::{Formula, FormulaLine, LineContent};
use crate::knowledge::{Composition, Declarations, FormulaFigures, FormulaQuantity};

/// Largest part of a total, in % on flour, that may stay unknown (common practice: a plant's scales are no better).
const TOLERABLE_UNKNOWN: f64 = 0.3;

/// Fewest ingredients of a whole formula: flour, water, yeast and salt make the leanest bread (common practice).
const FEWEST_INGREDIENTS: usize = 4;

/// Shares and quantities of a formula.
///
/// Shares are % on the flour of all stages. Water, salt, sugars and fat are those of the ingredients other than flour; a
/// component that an ingredient does not state is unknown, and so is the total when it could matter. Of a fragment
/// ("50 kg flour, 29 kg water") what is not named is unknown too: people write down what they think matters.
pub(super) fn figures(formula: &Formula, declared: &Declarations) -> FormulaFigures {
    let flour: f64 = formula.lines.iter().filter(|line| is_flour(line, declared)).map(|line| line.amount).sum();
    // Percentages without a flour line are on 100 parts of flour by definition.
    let base = if flour > 0.0 || formula.in_mass { flour } else { 100.0 };
    let on_flour = |amount: f64| (base > 0.0).then(|| 100.0 * amount / base);
    let total: f64 = formula.lines.iter().map(|line| line.amount).sum();
    let whole = is_whole(formula);
    let told = |value: &f64| whole || *value > 0.0;
    let mut quantities = [None; FormulaQuantity::COUNT];
    for (quantity, ..) in FormulaQuantity::ALL {
        let value = match quantity {
            FormulaQuantity::WaterOnFlour => sum_on_flour(formula, declared, base, |c| c.water),
            FormulaQuantity::SaltOnFlour => sum_on_flour(formula, declared, base, |c| c.salt),
            FormulaQuantity::SugarsOnFlour => sum_on_flour(formula, declared, base, sugars),
            FormulaQuantity::FatOnFlour => sum_on_flour(formula, declared, base, |c| c.fat),
            FormulaQuantity::FlourMass => (formula.in_mass && flour > 0.0).then_some(flour),
            FormulaQuantity::DoughMass => formula.in_mass.then_some(total),
            // Not computed yet: unknown.
            _ => None,
        };
        if let Some(slot) = quantities.get_mut(quantity as usize) {
            *slot = value.filter(told);
        }
    }
    let shares = declared.ingredients.keys().map(|key| {
        let named = |line: &&FormulaLine| matches!(line.content, LineContent::Declared(own) if own == key);
        on_flour(formula.lines.iter().filter(named).map(|line| line.amount).sum()).filter(told)
    });
    FormulaFigures { shares: shares.collect(), quantities }
}

/// Whether the formula may be taken for all that goes into the product: the caller's word, else the number of ingredients.
fn is_whole(formula: &Formula) -> bool {
    formula.complete.unwrap_or(formula.lines.len() >= FEWEST_INGREDIENTS)
}

fn is_flour(line: &FormulaLine, declared: &Declarations) -> bool {
    match &line.content {
        LineContent::Declared(key) => declared.ingredients[*key].is_flour,
        LineContent::Described { is_flour, .. } => *is_flour,
    }
}

fn composition<'a>(line: &'a FormulaLine, declared: &'a Declarations) -> &'a Composition {
    match &line.content {
        LineContent::Declared(key) => &declared.ingredients[*key].composition,
        LineContent::Described { composition, .. } => composition,
    }
}

/// All sugars; known when every one of them is.
fn sugars(composition: &Composition) -> Option<f64> {
    let Composition { sucrose, glucose, fructose, lactose, maltose, .. } = *composition;
    Some(sucrose? + glucose? + fructose? + lactose? + maltose?)
}

/// A component of the ingredients other than flour, % on flour; `None` when too much of it is unknown.
fn sum_on_flour(
    formula: &Formula,
    declared: &Declarations,
    base: f64,
    component: impl Fn(&Composition) -> Option<f64>,
) -> Option<f64> {
    if base <= 0.0 {
        return None;
    }
    let (mut known, mut unknown) = (0.0, 0.0);
    for line in formula.lines.iter().filter(|line| !is_flour(line, declared)) {
        let composition = composition(line, declared);
        match component(composition) {
            Some(share) => known += line.amount * share / base,
            None => unknown += line.amount * (100.0 - composition.known_total()).max(0.0) / base,
        }
    }
    (unknown <= TOLERABLE_UNKNOWN).then_some(known)
}
