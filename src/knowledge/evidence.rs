//! Evidence: what the state of a condition says for or against a cause.

use super::condition::margins_past;
use super::{Circumstances, Condition, Input, JudgeFault, Judged, Place, Quantity};

/// Weights of a condition, in decibans (10·log10 of the likelihood ratio; Good 1950).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Weights {
    /// Weight for the cause when the condition is true, above 0.
    pub supports: f64,
    /// Weight against the cause when it is false, 0 or more.
    pub opposes: f64,
    /// Share of cases without the cause in which the condition holds; `None` when nothing is said against.
    pub usual: Option<f64>,
}

/// Weights by the region in which a quantity lies.
#[derive(Debug, Clone)]
pub struct Regions {
    /// What is judged.
    pub quantity: Quantity,
    /// Ascending edges; a value on an edge belongs to the region above it.
    pub edges: Vec<f64>,
    /// Decibans of each region, one more than there are edges.
    pub weights: Vec<f64>,
    /// How often each region is met without the cause; sums to 1.
    pub usual: Vec<f64>,
}

/// The two forms of evidence.
#[derive(Debug, Clone)]
pub enum EvidenceKind {
    /// A condition that holds more or less.
    Graded(Condition, Weights),
    /// A quantity that lies in one of several regions.
    Regions(Regions),
}

/// One item of evidence of a cause.
#[derive(Debug, Clone)]
pub struct Evidence {
    /// What is judged and what it weighs.
    pub kind: EvidenceKind,
    /// Name of the story that it tells; of items with the same name only the strongest counts.
    pub group: Option<String>,
    /// Where it stands.
    pub place: Place,
}

impl Evidence {
    /// Decibans for (positive) or against (negative) the cause; `None` when unknown.
    pub fn decibans(&self, case: &Circumstances, faults: &mut dyn FnMut(&Judged, JudgeFault)) -> Option<f64> {
        match &self.kind {
            EvidenceKind::Graded(condition, weights) => weights.of(condition, case, faults),
            EvidenceKind::Regions(regions) => regions.quantity.value(case).map(|value| regions.weight_at(value)),
        }
    }

    /// Visits everything that it depends on.
    pub fn inputs(&self, visit: &mut impl FnMut(Input)) {
        match &self.kind {
            EvidenceKind::Graded(condition, _) => condition.inputs(visit),
            EvidenceKind::Regions(regions) => regions.quantity.inputs(visit),
        }
    }
}

impl Weights {
    /// Decibans of a condition; of joined parts those of the part that settles it, so that a reading near its limit says as
    /// little beside others as alone.
    fn of(
        &self,
        condition: &Condition,
        case: &Circumstances,
        faults: &mut dyn FnMut(&Judged, JudgeFault),
    ) -> Option<f64> {
        let at =
            |reading, side, sign: f64| margins_past(case, reading, side).map(|margins| self.at_margins(sign * margins));
        match condition {
            Condition::PastLimit(reading, side) => at(*reading, *side, 1.0),
            Condition::Not(inner) => match **inner {
                Condition::PastLimit(reading, side) => at(reading, side, -1.0),
                _ => self.judged(condition, case, faults),
            },
            Condition::Any(parts) => {
                settled(parts.iter().map(|part| self.of(part, case, faults)), f64::max, self.supports)
            }
            Condition::All(parts) => {
                settled(parts.iter().map(|part| self.of(part, case, faults)), f64::min, -self.opposes)
            }
            _ => self.judged(condition, case, faults),
        }
    }

    fn judged(
        &self,
        condition: &Condition,
        case: &Circumstances,
        faults: &mut dyn FnMut(&Judged, JudgeFault),
    ) -> Option<f64> {
        condition.judge(case, faults).grade().map(|grade| self.at(grade))
    }

    /// Decibans at a grade: the full weight against at 0, the full weight for at 1, straight between them.
    #[must_use]
    pub fn at(&self, grade: f64) -> f64 {
        grade * self.supports - (1.0 - grade) * self.opposes
    }

    /// Decibans so many margins past a limit: none at the limit itself, the full weight for one margin past it, the full
    /// weight against one margin within. What lies past its limit never speaks against the cause.
    #[must_use]
    pub fn at_margins(&self, margins: f64) -> f64 {
        margins * if margins > 0.0 { self.supports } else { self.opposes }
    }
}

/// The weight that `choose` prefers; where a part is unknown only `outermost`, which no other can change.
fn settled(weights: impl Iterator<Item = Option<f64>>, choose: fn(f64, f64) -> f64, outermost: f64) -> Option<f64> {
    let (mut chosen, mut all_known) = (None, true);
    for weight in weights {
        match weight {
            Some(weight) => chosen = Some(chosen.map_or(weight, |other| choose(other, weight))),
            None => all_known = false,
        }
    }
    chosen.filter(|chosen| all_known || *chosen == outermost)
}

impl Regions {
    /// Number of the region in which `value` lies, from 0.
    #[must_use]
    pub fn region_of(&self, value: f64) -> usize {
        self.edges.partition_point(|edge| *edge <= value)
    }

    /// Decibans of the region in which `value` lies.
    #[must_use]
    pub fn weight_at(&self, value: f64) -> f64 {
        self.weights.get(self.region_of(value)).copied().unwrap_or(0.0)
    }
}
