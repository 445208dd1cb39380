//! One figure of a formula: known, or with the reason why not.

use super::{Weighed, leavening, water_activity};
use crate::knowledge::FormulaQuantity;
use crate::science::formula::{Component, Part, PartLines, Total};
use crate::science::proof_bake::wheat_starch_onset;
use crate::science::{Estimate, Method};

/// Bounds that are no further apart are one figure: in the unit of a percentage (common practice: a plant's scales are
/// no better), or as a share of the figure.
const TOLERABLE_WIDTH: f64 = 0.3;
const TOLERABLE_SHARE: f64 = 0.02;

/// Glucose, fructose, lactose and maltose.
const REDUCING: [Component; 4] = [Component::Glucose, Component::Fructose, Component::Lactose, Component::Maltose];

/// Share of other sugars than sucrose from which a method that was made for sucrose is remarked on, % (our choice).
const MUCH_REDUCING: f64 = 10.0;

/// A figure of one part of a formula.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Which quantity.
    pub quantity: FormulaQuantity,
    /// Of which part.
    pub part: Part,
    /// The figure; `None` when it is not known.
    pub estimate: Option<Estimate>,
    /// Least and most that it can be, where that is known.
    pub bounds: Option<(f64, f64)>,
    /// Ingredients whose composition, roles or leavening leave it open or blurred, each once.
    pub unknown_in: Vec<String>,
    /// Why it is not known, in words, where no ingredient is to blame.
    pub why_not: Option<String>,
}

/// What a figure comes to before it is labelled.
pub(super) struct Outcome {
    pub(super) estimate: Option<Estimate>,
    pub(super) bounds: Option<(f64, f64)>,
    pub(super) unknown_in: Vec<String>,
    pub(super) why_not: Option<String>,
}

impl Outcome {
    pub(super) fn known(estimate: Estimate) -> Self {
        Self { estimate: Some(estimate), bounds: None, unknown_in: Vec::new(), why_not: None }
    }

    pub(super) fn unknown(why: impl Into<String>) -> Self {
        Self { estimate: None, bounds: None, unknown_in: Vec::new(), why_not: Some(why.into()) }
    }

    pub(super) fn unknown_because_of(names: Vec<String>) -> Self {
        Self { estimate: None, bounds: None, unknown_in: names, why_not: None }
    }

    fn of(total: Option<Total>, otherwise: &str) -> Self {
        let Some(total) = total else { return Self::unknown(otherwise) };
        let estimate = is_tight(&total).then(|| total.middle());
        let bounds = Some((total.at_least.value, total.at_most.value)).filter(|_| !total.unknown_in.is_empty());
        Self { estimate, bounds, unknown_in: total.unknown_in, why_not: None }
    }
}

/// Whether the bounds are as good as a figure. Of masses only the share of the figure counts: 0.3 kg are much in a small
/// batch.
pub(super) fn is_tight(total: &Total) -> bool {
    let middle = f64::midpoint(total.at_least.value, total.at_most.value);
    let width = if total.at_least.unit == "%" { TOLERABLE_WIDTH } else { 0.0 };
    total.width() <= width.max(TOLERABLE_SHARE * middle)
}

const NO_STARCH: &str = "no ingredient brings starch";
const NO_FLOUR: &str = "this part has no flour to reckon on";
const PERCENT_ONLY: &str = "the amounts are percentages, not masses";
const FRAGMENT: &str = "the formula is a fragment; say `complete` when these are all its ingredients";

impl Weighed<'_> {
    /// One figure of a part; `None` when the formula has no line in it.
    #[must_use]
    pub fn figure(&self, quantity: FormulaQuantity, part: Part) -> Option<Figure> {
        let lines = PartLines::of(&self.formula, part)?;
        Some(self.figure_of(quantity, part, &lines))
    }

    pub(super) fn figure_of(&self, quantity: FormulaQuantity, part: Part, lines: &PartLines<'_>) -> Figure {
        let outcome = if self.whole || of_named_alone(quantity) {
            self.outcome(quantity, part, lines)
        } else {
            Outcome::unknown(FRAGMENT)
        };
        // Of a fragment nothing is known of what it does not name.
        let nothing = |estimate: &Estimate| !self.whole && estimate.value <= 0.0;
        let why_not = outcome.estimate.as_ref().filter(|estimate| nothing(estimate)).map(|_| FRAGMENT.to_owned());
        Figure {
            quantity,
            part,
            estimate: outcome.estimate.filter(|estimate| !nothing(estimate)),
            bounds: outcome.bounds,
            unknown_in: outcome.unknown_in,
            why_not: why_not.or(outcome.why_not),
        }
    }

    fn outcome(&self, quantity: FormulaQuantity, part: Part, lines: &PartLines<'_>) -> Outcome {
        let in_mass = |components: &[Component]| Outcome::of(Some(lines.in_mass(components)), "");
        let on_flour = |components: &[Component]| Outcome::of(lines.brought_in(components), NO_FLOUR);
        match quantity {
            FormulaQuantity::WaterOnFlour => {
                let based = lines.brought_in(&[Component::Water]).map(|_| lines.hydration());
                Outcome::of(based, NO_FLOUR)
            }
            FormulaQuantity::SaltOnFlour => on_flour(&[Component::Salt]),
            FormulaQuantity::SugarsOnFlour => on_flour(&Component::SUGARS),
            FormulaQuantity::FatOnFlour => on_flour(&[Component::Fat]),
            FormulaQuantity::ReducingSugarsOnFlour => on_flour(&REDUCING),
            FormulaQuantity::FlourMass => self.weighed(Some(lines.flour()).filter(|flour| flour.value > 0.0)),
            FormulaQuantity::DoughMass => self.weighed(Some(lines.mass())),
            FormulaQuantity::SugarsInMass => in_mass(&Component::SUGARS),
            FormulaQuantity::FatInMass => in_mass(&[Component::Fat]),
            FormulaQuantity::SaltInMass => in_mass(&[Component::Salt]),
            FormulaQuantity::WaterInMass => Outcome::of(Some(lines.moisture()), ""),
            FormulaQuantity::StarchInMass => in_mass(&[Component::Starch]),
            FormulaQuantity::ProteinInMass => in_mass(&[Component::Protein]),
            FormulaQuantity::SolubleSolids => in_mass(&Component::DISSOLVED),
            FormulaQuantity::ReducingShareOfSugars => {
                Outcome::of(lines.among(&REDUCING, &Component::SUGARS), "no ingredient brings sugar")
            }
            FormulaQuantity::FlourProtein => Outcome::of(lines.flour_protein(), NO_FLOUR),
            FormulaQuantity::SyrupStrength => {
                Outcome::of(lines.syrup_strength(), "no ingredient brings water or sugar")
            }
            FormulaQuantity::WaterActivity => water_activity::water_activity(lines),
            FormulaQuantity::FreezingPoint => water_activity::freezing_point(lines),
            FormulaQuantity::StarchSettingTemperature => starch_setting(lines),
            FormulaQuantity::SodaSurplusOnFlour => leavening::soda_surplus_on_flour(self, part, lines),
            FormulaQuantity::LeaveningCarbonDioxide => leavening::carbon_dioxide(self, part, lines),
        }
    }

    fn weighed(&self, mass: Option<Estimate>) -> Outcome {
        match mass {
            Some(mass) if self.in_mass() => Outcome::known(mass),
            Some(_) => Outcome::unknown(PERCENT_ONLY),
            None => Outcome::unknown(NO_FLOUR),
        }
    }
}

/// Figures that need no more than the ingredients that a fragment names.
fn of_named_alone(quantity: FormulaQuantity) -> bool {
    matches!(
        quantity,
        FormulaQuantity::WaterOnFlour
            | FormulaQuantity::SaltOnFlour
            | FormulaQuantity::SugarsOnFlour
            | FormulaQuantity::FatOnFlour
            | FormulaQuantity::ReducingSugarsOnFlour
            | FormulaQuantity::FlourMass
            | FormulaQuantity::DoughMass
            | FormulaQuantity::FlourProtein
    )
}

/// The middle of the published range of onsets for the sugar in the liquid.
fn starch_setting(lines: &PartLines<'_>) -> Outcome {
    if lines.in_mass(&[Component::Starch]).at_most.value <= 0.0 {
        return Outcome::unknown(NO_STARCH);
    }
    let strength = Outcome::of(lines.sugar_in_liquid(), "no ingredient brings water");
    let Some(sugar) = &strength.estimate else { return strength };
    let Ok(onset) = wheat_starch_onset(sugar.value) else { return strength };
    let reducing = lines.among(&REDUCING, &Component::SUGARS).map_or(0.0, |share| share.at_most.value);
    let middle = Estimate {
        value: f64::midpoint(onset.low.value, onset.high.value),
        method: Method {
            name: "middle of the onset of gelatinisation of wheat starch in the sugar of the liquid",
            ..onset.low.method
        },
        ..onset.low
    };
    let middle = middle.valid_if(sugar.value <= 0.0 || reducing <= MUCH_REDUCING, || {
        format!("up to {reducing:.0} % of the sugars are not sucrose, which lift it less")
    });
    Outcome { estimate: Some(middle), bounds: None, ..strength }
}
