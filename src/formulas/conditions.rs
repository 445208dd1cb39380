//! What conditions of the rules may ask of a formula.

use super::{Figure, Weighed};
use crate::case::LineContent;
use crate::knowledge::{FormulaFigures, FormulaQuantity, IngredientShare, RoleShare};
use crate::science::formula::{Part, PartLines, Role};

/// An ingredient whose roles nobody states is too little to matter up to this share, % on flour (common practice).
const TOLERABLE_UNKNOWN: f64 = 0.3;

impl Weighed<'_> {
    /// Lays out shares, roles and the wanted quantities; the figures behind the quantities come along.
    #[must_use]
    pub fn circumstances(&self, wanted: &[(Part, FormulaQuantity)]) -> (FormulaFigures, Vec<Figure>) {
        let parts = Part::ALL.map(|part| PartLines::of(&self.formula, part));
        let of_part = |part: Part| parts.get(part as usize).and_then(Option::as_ref);
        let figures: Vec<Figure> = wanted
            .iter()
            .filter_map(|(part, quantity)| Some(self.figure_of(*quantity, *part, of_part(*part)?)))
            .collect();
        let known = figures.iter().filter_map(|figure| {
            let estimate = figure.estimate.as_ref()?;
            Some((figure.part, figure.quantity, estimate.value))
        });
        let main = self.main_part();
        // Share of a kilogram on the flour of the main part, which alone is reckoned on flour, and on the mass of each part.
        let flour = of_part(main).filter(|lines| lines.brought_in(&[]).is_some()).map(|lines| lines.flour().value);
        let masses = Part::ALL.map(|part| of_part(part).map(|lines| lines.mass().value).filter(|_| self.whole));
        let facts = FormulaFigures {
            main,
            shares: self.shares(flour, masses),
            roles: self.role_shares(flour),
            quantities: known.collect(),
        };
        (facts, figures)
    }

    fn shares(&self, flour: Option<f64>, masses: [Option<f64>; Part::ALL.len()]) -> Vec<IngredientShare> {
        let unnamed = IngredientShare {
            on_flour: flour.filter(|_| self.whole).map(|_| 0.0),
            in_mass: masses.map(|mass| mass.map(|_| 0.0)),
            named: self.whole.then_some(false),
        };
        let mut shares = vec![unnamed; self.declared.ingredients.len()];
        for (line, part) in self.lines().filter(|(line, _)| line.amount > 0.0) {
            let LineContent::Declared(key) = line.content else { continue };
            let Some(share) = shares.get_mut(key.index()) else { continue };
            share.named = Some(true);
            if let (Some(flour), true) = (flour, part == self.main_part()) {
                share.on_flour = Some(share.on_flour.unwrap_or(0.0) + 100.0 * line.amount / flour);
            }
            if let (Some(Some(mass)), Some(own)) = (masses.get(part as usize), share.in_mass.get_mut(part as usize)) {
                *own = Some(own.unwrap_or(0.0) + 100.0 * line.amount / mass);
            }
        }
        shares
    }

    fn role_shares(&self, flour: Option<f64>) -> Vec<RoleShare> {
        let mut sums = [(0.0, false); Role::ALL.len()];
        let (mut untold, mut untold_on_flour) = (false, 0.0);
        for (line, part) in self.lines().filter(|(line, _)| line.amount > 0.0) {
            let on_flour = flour.filter(|_| part == self.main_part()).map_or(0.0, |flour| 100.0 * line.amount / flour);
            let Some(roles) = self.roles(line) else {
                untold = true;
                untold_on_flour += on_flour;
                continue;
            };
            for (position, (sum, named)) in sums.iter_mut().enumerate() {
                if roles.iter().any(|role| *role as usize == position) {
                    *sum += on_flour;
                    *named = true;
                }
            }
        }
        let knows_amounts = flour.is_some() && untold_on_flour <= TOLERABLE_UNKNOWN;
        let share = |(sum, named): (f64, bool)| RoleShare {
            on_flour: (knows_amounts && (self.whole || sum > 0.0)).then_some(sum),
            named: if named { Some(true) } else { (self.whole && !untold).then_some(false) },
        };
        sums.into_iter().map(share).collect()
    }
}
