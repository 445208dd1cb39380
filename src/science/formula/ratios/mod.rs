//! The classic ratio of a product, and how far a formula stands from it.

mod table;

use super::line::{Formula, Line, Part, Role};
use crate::science::{Estimate, Method, Nonsense, input_checks};

pub use table::CLASSIC_RATIOS;

const RATIO: Method = Method {
    name: "ratio of ingredient masses by role, in percent",
    source: "common practice; the ratio compared with names its own source",
    domain: "masses as weighed: butter counts whole, its water is not taken out",
};
const COCOA_WATER: Method = Method {
    name: "extra water for added cocoa, 75 to 100 % of its mass",
    source: "Cake balancing guidelines (teaching sheet)",
    domain: "cocoa powder added to a balanced cake formula",
};

/// What a ratio is taken against.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Against {
    /// All flour of the dough.
    Flour,
    /// Ingredients that have one of these roles.
    Roles(&'static [Role]),
}

/// One ratio, in percent: 66 is 66 parts on 100.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RatioItem {
    /// The ratio in words of the trade, for example "fat on flour".
    pub title: &'static str,
    /// Ingredients that have one of these roles.
    pub of: &'static [Role],
    /// What 100 % is.
    pub against: Against,
    /// Lower end of the usual range, %.
    pub low: Option<f64>,
    /// The classic figure, %.
    pub target: Option<f64>,
    /// Upper end of the usual range, %.
    pub high: Option<f64>,
    /// Publication, `common practice`, or `from memory: <work>`.
    pub source: &'static str,
}

/// The ratios of one product.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClassicRatio {
    /// Name in snake case, for example `short_pastry`.
    pub product: &'static str,
    /// The ratio as the trade says it.
    pub title: &'static str,
    /// Its items.
    pub items: &'static [RatioItem],
}

/// Where a formula stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// Below the usual range.
    Below,
    /// Inside it.
    Within,
    /// Above it.
    Above,
    /// The ratio has a classic figure but no published range: see the distance.
    NoRange,
    /// No ingredient of the formula has the roles: nothing is known, which is not the same as none of it.
    Missing,
}

/// One ratio of the formula beside the classic one.
#[derive(Debug, Clone, PartialEq)]
pub struct RatioFinding {
    /// The classic ratio.
    pub item: RatioItem,
    /// Ratio of the formula, %; `None` when no ingredient has the roles.
    pub percent: Option<Estimate>,
    /// Formula minus classic figure, percentage points; `None` when either is not known.
    pub from_target_points: Option<f64>,
    /// Where it stands.
    pub standing: Standing,
}

/// The classic ratio of a product, `None` when there is none in the table.
#[must_use]
pub fn classic_ratio(product: &str) -> Option<&'static ClassicRatio> {
    CLASSIC_RATIOS.iter().find(|ratio| ratio.product == product)
}

/// Sets the dough of a formula against a classic ratio, item by item.
#[must_use]
pub fn compare_with_ratio(formula: &Formula, ratio: &ClassicRatio) -> Vec<RatioFinding> {
    ratio.items.iter().map(|item| finding(formula, item)).collect()
}

/// Least and most extra water for cocoa that is added to a balanced formula, kg.
///
/// # Errors
/// A mass that is negative or not a number.
pub fn extra_water_for_cocoa(cocoa_kg: f64) -> Result<(Estimate, Estimate), Nonsense> {
    let mut faults = Nonsense::default();
    input_checks::not_negative(&mut faults, "cocoa_kg", cocoa_kg);
    faults.or_ok()?;
    let water = |share: f64| Estimate::new(share * cocoa_kg, "kg", COCOA_WATER);
    Ok((water(0.75), water(1.0)))
}

fn finding(formula: &Formula, item: &RatioItem) -> RatioFinding {
    let of = mass_kg(formula, |line| line.has_any(item.of));
    let against = match item.against {
        Against::Flour => mass_kg(formula, |line| line.is_flour),
        Against::Roles(roles) => mass_kg(formula, |line| line.has_any(roles)),
    };
    let percent = match (of, against) {
        (Some(of), Some(against)) if against > 0.0 => Some(100.0 * of / against),
        _ => None,
    };
    RatioFinding {
        item: *item,
        percent: percent.map(|value| Estimate::new(value, "%", RATIO)),
        from_target_points: percent.zip(item.target).map(|(value, target)| value - target),
        standing: percent.map_or(Standing::Missing, |value| standing(value, item)),
    }
}

/// Mass of the dough lines that `counts`, kg; `None` when there is none.
fn mass_kg(formula: &Formula, counts: impl Fn(&Line) -> bool) -> Option<f64> {
    let mut lines = formula.part(Part::Dough).filter(|line| counts(line)).peekable();
    lines.peek()?;
    Some(lines.map(|line| line.mass_kg).sum())
}

fn standing(value: f64, item: &RatioItem) -> Standing {
    match (item.low, item.high) {
        (Some(low), _) if value < low => Standing::Below,
        (_, Some(high)) if value > high => Standing::Above,
        (None, None) => Standing::NoRange,
        _ => Standing::Within,
    }
}
