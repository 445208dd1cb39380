//! The figures of a formula as an answer.

use serde::Serialize;
use utoipa::ToSchema;

use super::{Figure, Weighed};
use crate::case::LineContent;
use crate::knowledge::FormulaQuantity;
use crate::science::formula::{self, Basis, Component, IngredientShare, Part, Total};
use crate::science::{Estimate, Method, Nonsense};

/// What a formula comes to, part by part.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[schema(as = FormulaReport)]
pub struct Report {
    /// Whether the lines were taken for all that goes into the product.
    pub whole: bool,
    /// The parts that have lines.
    pub parts: Vec<PartReport>,
}

/// One part of a formula.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct PartReport {
    /// `dough`, `filling` or `icing`.
    #[schema(example = "dough")]
    pub part: &'static str,
    /// What 100 % is: `flour`, or `total mass` where there is no flour to reckon on.
    #[schema(example = "flour")]
    pub basis: &'static str,
    /// The lines in percent, in the order of the formula.
    pub lines: Vec<LineReport>,
    /// Masses and sums of components, percentages on `basis`.
    pub totals: Vec<FigureReport>,
    /// The figures that rules can ask for.
    pub figures: Vec<FigureReport>,
}

/// One line in percent.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct LineReport {
    /// Id, of an ingredient that the rules declare.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "bread_flour")]
    pub ingredient: Option<String>,
    /// Title, or the caller's own name.
    #[schema(example = "Bread flour")]
    pub name: String,
    /// When it goes in.
    #[schema(example = "dough")]
    pub stage: &'static str,
    /// Percent on the basis of the part: baker's percent where that is flour.
    #[schema(example = 58.0)]
    pub percent: f64,
    /// Percent of the whole mass of the part.
    #[schema(example = 35.2)]
    pub true_percent: f64,
}

/// One figure, known or not.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct FigureReport {
    /// Name, as in the rules where they can ask for it.
    #[schema(example = "syrup_strength")]
    pub quantity: String,
    /// Title.
    #[schema(example = "syrup strength")]
    pub title: String,
    /// The figure in `unit`; left out when it is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = 14.2)]
    pub value: Option<f64>,
    /// UCUM code.
    #[schema(example = "%")]
    pub unit: &'static str,
    /// Least that it can be, where ingredients leave it open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_least: Option<f64>,
    /// Most that it can be, where ingredients leave it open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_most: Option<f64>,
    /// How it is computed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<MethodReport>,
    /// Why the inputs lie outside the domain of the method; empty inside it.
    pub outside_domain: Vec<String>,
    /// Ingredients whose composition, roles or leavening leave it open.
    pub unknown_in: Vec<String>,
    /// Why it is not known, where no ingredient is to blame.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why_not: Option<String>,
}

/// A method with its source and domain.
#[derive(Debug, Clone, Copy, Serialize, ToSchema)]
pub struct MethodReport {
    /// Name of the equation or rule.
    pub name: &'static str,
    /// Publication, `common practice`, or `from memory: <work>`.
    pub source: &'static str,
    /// What the source claims it for.
    pub domain: &'static str,
}

impl From<Method> for MethodReport {
    fn from(method: Method) -> Self {
        Self { name: method.name, source: method.source, domain: method.domain }
    }
}

impl PartReport {
    /// Whether every figure is a number that JSON can write.
    fn is_finite(&self) -> bool {
        let of_line = |line: &LineReport| line.percent.is_finite() && line.true_percent.is_finite();
        let of_figure =
            |own: &FigureReport| [own.value, own.at_least, own.at_most].into_iter().flatten().all(f64::is_finite);
        self.lines.iter().all(of_line) && self.totals.iter().chain(&self.figures).all(of_figure)
    }
}

impl Weighed<'_> {
    /// All figures of all parts.
    ///
    /// # Errors
    /// Amounts that are too far apart for their shares to be numbers.
    pub fn report(&self) -> Result<Report, Nonsense> {
        let parts = Part::ALL.into_iter().filter_map(|part| self.part_report(part));
        let report = Report { whole: self.whole, parts: parts.collect() };
        let mut faults = Nonsense::default();
        let message = "has amounts that are too far apart for their shares to be computed";
        faults.unless(report.parts.iter().all(PartReport::is_finite), "formula", message);
        faults.or_ok()?;
        Ok(report)
    }

    fn part_report(&self, part: Part) -> Option<PartReport> {
        let figures = formula::figures(&self.formula, part)?;
        let wanted = FormulaQuantity::ALL.iter().filter_map(|(quantity, ..)| self.figure(*quantity, part));
        Some(PartReport {
            part: part.name(),
            basis: match figures.basis {
                Basis::Flour => "flour",
                Basis::TotalMass => "total mass",
            },
            lines: self.line_reports(part, &figures.ingredients),
            totals: self.totals(&figures),
            figures: wanted.map(of_figure).collect(),
        })
    }

    /// Given lines come first, in their order; a flour that is not listed stands at the end.
    fn line_reports(&self, part: Part, shares: &[IngredientShare]) -> Vec<LineReport> {
        let mut given = self.lines().filter(|(_, own)| *own == part).map(|(line, _)| line);
        let report = |share: &IngredientShare| LineReport {
            ingredient: given.next().and_then(|line| match line.content {
                LineContent::Declared(key) => Some(self.declared.ingredients[key].id.clone()),
                LineContent::Described { .. } => None,
            }),
            name: share.name.clone(),
            stage: share.stage.name(),
            percent: share.percent.value,
            true_percent: share.true_percent.value,
        };
        shares.iter().map(report).collect()
    }

    fn totals(&self, figures: &formula::FormulaFigures) -> Vec<FigureReport> {
        let mut totals = Vec::new();
        if self.in_mass() {
            totals.push(of_estimate("mass", "mass", &figures.mass));
            totals.push(of_estimate("flour", "flour", &figures.flour));
            totals.push(of_total("total_water", "total water, flour's own left out", &figures.total_water));
        }
        if let Some(share) = &figures.prefermented_flour {
            totals.push(of_estimate("prefermented_flour", "share of the flour in preferment and sponge", share));
        }
        totals.push(of_estimate("total_percent", "sum of all lines", &figures.total_percent));
        totals.push(of_total("hydration", "water, flour's own left out", &figures.hydration));
        totals.push(of_total("moisture", "water in the whole mass", &figures.moisture));
        for (component, total) in &figures.components {
            let title = format!("{}, flour's own included", component.name());
            // Most ingredients have none of the rarer components.
            if total.at_most.value > 0.0 || matches!(component, Component::Salt | Component::Fat) {
                totals.push(of_total(component.name(), &title, total));
            }
        }
        totals.push(of_total("total_sugar", "all sugars, flour's own included", &figures.total_sugar));
        let dissolved = "sugars, salt, dextrins, polyols and acids, flour's own included";
        totals.push(of_total("dissolved_solids", dissolved, &figures.dissolved_solids));
        totals
    }
}

fn of_estimate(quantity: &str, title: &str, estimate: &Estimate) -> FigureReport {
    FigureReport {
        quantity: quantity.to_owned(),
        title: title.to_owned(),
        value: Some(estimate.value),
        unit: estimate.unit,
        at_least: None,
        at_most: None,
        method: Some(estimate.method.into()),
        outside_domain: estimate.outside_domain.clone(),
        unknown_in: Vec::new(),
        why_not: None,
    }
}

/// A total: a figure where its bounds are as good as one, else its bounds.
fn of_total(quantity: &str, title: &str, total: &Total) -> FigureReport {
    let open = !total.unknown_in.is_empty();
    let middle = total.middle();
    FigureReport {
        value: super::figure::is_tight(total).then_some(middle.value),
        at_least: open.then_some(total.at_least.value),
        at_most: open.then_some(total.at_most.value),
        unknown_in: total.unknown_in.clone(),
        ..of_estimate(quantity, title, &middle)
    }
}

fn of_figure(figure: Figure) -> FigureReport {
    let unit = FormulaQuantity::ALL.iter().find(|(own, ..)| *own == figure.quantity).map_or("1", |(.., unit)| unit);
    let estimate = figure.estimate;
    FigureReport {
        quantity: figure.quantity.name().to_owned(),
        title: figure.quantity.title().to_owned(),
        value: estimate.as_ref().map(|estimate| estimate.value),
        unit,
        at_least: figure.bounds.map(|(least, _)| least),
        at_most: figure.bounds.map(|(_, most)| most),
        method: estimate.as_ref().map(|estimate| estimate.method.into()),
        outside_domain: estimate.map(|estimate| estimate.outside_domain).unwrap_or_default(),
        unknown_in: figure.unknown_in,
        why_not: figure.why_not,
    }
}
