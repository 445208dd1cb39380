//! Totals of a component over lines, with what is not known kept apart.

use super::composition::Component;
use super::line::Line;
use crate::science::{Estimate, Method};

/// A total with its bounds. Both are the same when every ingredient's share is known.
#[derive(Debug, Clone, PartialEq)]
pub struct Total {
    /// What is known to be there: a lower bound.
    pub at_least: Estimate,
    /// What could be there at most, when the unknown shares take all that the known components leave over.
    pub at_most: Estimate,
    /// Ingredients whose share is not known, in the order of the formula, each once.
    pub unknown_in: Vec<String>,
}

impl Total {
    /// The figure, when it is known for every ingredient.
    #[must_use]
    pub fn exact(&self) -> Option<&Estimate> {
        self.unknown_in.is_empty().then_some(&self.at_least)
    }

    /// How far the bounds are apart, in the unit of the figure.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.at_most.value - self.at_least.value
    }

    /// The middle between the bounds. It is an estimate of its own: it keeps what was remarked about either bound, but
    /// not that they are bounds.
    #[must_use]
    pub fn middle(&self) -> Estimate {
        let Self { at_least, at_most, unknown_in } = self;
        // `of` puts the remark that this is a bound first.
        let own = usize::from(!unknown_in.is_empty());
        let mut remarks: Vec<String> = at_least.outside_domain.iter().skip(own).cloned().collect();
        remarks.extend(
            at_most.outside_domain.iter().skip(own).filter(|text| !at_least.outside_domain.contains(text)).cloned(),
        );
        Estimate { value: f64::midpoint(at_least.value, at_most.value), outside_domain: remarks, ..at_least.clone() }
    }

    /// A total from its bounds.
    pub(super) fn of(
        bounds: Bounds,
        divisor: f64,
        unit: &'static str,
        method: Method,
        unknown_in: Vec<String>,
    ) -> Self {
        let estimate = |value: f64| {
            Estimate::new(value / divisor, unit, method).valid_if(unknown_in.is_empty(), || remark(&unknown_in))
        };
        Self { at_least: estimate(bounds.least), at_most: estimate(bounds.most), unknown_in }
    }
}

/// A bound rather than a figure: says why.
fn remark(unknown_in: &[String]) -> String {
    format!("a bound: the share is not known of {}", unknown_in.join(", "))
}

/// Least and most mass, kg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Bounds {
    pub(super) least: f64,
    pub(super) most: f64,
}

/// Mass of `components` together in `lines`, kg.
pub(super) fn bounds_kg<'a>(lines: impl Iterator<Item = &'a Line>, components: &[Component]) -> Bounds {
    lines.fold(Bounds { least: 0.0, most: 0.0 }, |sum, line| {
        let (least, most) = line.composition.bounds_percent(components);
        Bounds { least: sum.least + line.mass_kg * least / 100.0, most: sum.most + line.mass_kg * most / 100.0 }
    })
}

/// Names of the lines whose share of `components` is open, each once. What has no room left for them
/// (shortening of 100 % fat) needs no analysis to have none.
pub(super) fn unknown_in<'a>(lines: impl Iterator<Item = &'a Line>, components: &[Component]) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for line in lines {
        let (least, most) = line.composition.bounds_percent(components);
        let unknown = line.mass_kg > 0.0 && most > least;
        if unknown && !names.contains(&line.name) {
            names.push(line.name.clone());
        }
    }
    names
}
