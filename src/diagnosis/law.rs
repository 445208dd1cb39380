//! The law of the case's market: which limits hold, what exceeds them, what is not permitted.

use super::answer::{CautionOrigin, CautionText};
use super::numbers::{Digits, measure};
use super::said::Said;
use super::words::Wording;
use crate::knowledge::{Action, Circumstances, Declarations, Ingredient, Key, Limit, Market, ProductView, Setting};
use crate::units::convert;

/// The law that applies; without a market every market's law is told.
#[derive(Clone, Copy)]
pub(super) struct Law<'k> {
    pub(super) declared: &'k Declarations,
    pub(super) market: Option<Key<Market>>,
}

/// A value that a limit keeps down.
pub(super) struct Capped {
    pub(super) value: f64,
    pub(super) text: String,
}

impl<'k> Law<'k> {
    /// Whether something of these markets concerns the case; of no market: everybody.
    pub(super) fn holds_in(self, markets: &[Key<Market>]) -> bool {
        markets.is_empty() || self.market.is_none_or(|market| markets.contains(&market))
    }

    /// Ids of markets.
    pub(super) fn ids(self, markets: &[Key<Market>]) -> Vec<&'k str> {
        markets.iter().map(|key| self.declared.markets[*key].id.as_str()).collect()
    }

    fn titles(self, markets: &[Key<Market>]) -> String {
        let titles: Vec<&str> = markets.iter().map(|key| &*self.declared.markets[*key].title).collect();
        titles.join(", ")
    }

    /// Legal limits that the case exceeds.
    pub(super) fn exceeded(self, view: &ProductView, case: &Circumstances) -> Vec<CautionText<'k>> {
        let limits = view.legal_limits.iter().map(|key| &self.declared.limits[*key]);
        limits.filter(|limit| self.holds_in(&limit.markets)).filter_map(|limit| self.excess(limit, case)).collect()
    }

    fn excess(self, limit: &'k Limit, case: &Circumstances) -> Option<CautionText<'k>> {
        let quantity = limit.quantity.as_ref()?;
        let value = quantity.value(case)?;
        let wording = Wording { declared: self.declared, case };
        let (unit, digits) = (Some(&limit.unit), Digits::of(value, Some(&limit.unit), &[limit.most]));
        (value > limit.most).then(|| CautionText {
            caution: &limit.id,
            raised_by: CautionOrigin::Case,
            text: Said::Always(&limit.text),
            why: Some(format!(
                "{} {} is above the limit of {} ({})",
                wording.name(quantity),
                digits.value(value, unit),
                digits.limit(limit.most, unit),
                self.titles(&limit.markets)
            )),
            jurisdiction: self.ids(&limit.markets),
        })
    }

    /// The lowest limit that a quantity would exceed, in its unit.
    pub(super) fn cap(self, setting: &Setting, view: &ProductView, value: f64) -> Option<Capped> {
        let limits = setting.capped_by.iter().filter(|key| view.legal_limits.contains(key));
        let holding = limits.map(|key| &self.declared.limits[*key]).filter(|limit| self.holds_in(&limit.markets));
        let in_unit = holding.filter_map(|limit| Some((limit, convert(limit.most, &limit.unit, &setting.unit).ok()?)));
        let (limit, most) = in_unit.min_by(|(_, a), (_, b)| a.total_cmp(b))?;
        let without_market = if self.market.is_none() { ", the strictest, since no market is given" } else { "" };
        let text = || {
            format!(
                "kept at the limit of {} ({}){without_market}; the rule would set {}",
                measure(most, &setting.unit),
                self.titles(&limit.markets),
                measure(value, &setting.unit)
            )
        };
        (value > most).then(|| Capped { value: most, text: text() })
    }

    /// The first ingredient of an action that the case's market does not permit.
    pub(super) fn forbidden(self, action: &Action) -> Option<&'k Ingredient> {
        let market = self.market?;
        let mut used = action.uses.iter().map(|key| &self.declared.ingredients[*key]);
        used.find(|ingredient| ingredient.not_permitted.contains(&market))
    }

    /// Ingredients of the formula that the law does not permit, and without a market those of the actions.
    pub(super) fn not_permitted(self, case: &Circumstances, actions: &[Key<Action>]) -> Vec<CautionText<'k>> {
        let restricted =
            self.declared.ingredients.iter().filter(|(_, ingredient)| !ingredient.not_permitted.is_empty());
        let mut texts = Vec::new();
        for (key, ingredient) in restricted.filter(|(_, ingredient)| self.holds_in(&ingredient.not_permitted)) {
            let in_formula = case.names(key) == Some(true);
            let brought_in = self.market.is_none()
                && actions.iter().any(|action| self.declared.actions[*action].uses.contains(&key));
            if in_formula || brought_in {
                texts.push(self.not_permitted_text(ingredient, in_formula));
            }
        }
        texts
    }

    fn not_permitted_text(self, ingredient: &'k Ingredient, in_formula: bool) -> CautionText<'k> {
        let markets = self.titles(&ingredient.not_permitted);
        let where_it_stands = if in_formula { "the formula has it" } else { "an action brings it in" };
        CautionText {
            caution: &ingredient.id,
            raised_by: if in_formula { CautionOrigin::Case } else { CautionOrigin::Action },
            text: Said::Now(format!(
                "{} is not permitted in: {markets}. Check the law of your market.",
                ingredient.title
            )),
            why: Some(where_it_stands.to_owned()),
            jurisdiction: self.ids(&ingredient.not_permitted),
        }
    }
}
