//! A formula against the classic ratio of its product, as an answer.

use serde::Serialize;
use utoipa::ToSchema;

use super::Weighed;
use super::report::MethodReport;
use crate::science::formula::{ClassicRatio, Part, RatioFinding, Role, Standing, compare_with_ratio};

/// A formula beside a classic ratio.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct RatioComparison {
    /// Name of the ratio.
    #[schema(example = "short_pastry")]
    pub ratio: &'static str,
    /// The ratio as the trade says it.
    pub title: &'static str,
    /// Item by item.
    pub items: Vec<RatioItemReport>,
    /// Ingredients of the dough whose roles nobody states: they are in none of the sums.
    pub roles_unknown_of: Vec<String>,
}

/// One ratio of the formula beside the classic one, in percent.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct RatioItemReport {
    /// The ratio in words of the trade.
    #[schema(example = "fat on flour")]
    pub title: &'static str,
    /// Roles of the ingredients that count.
    pub of_roles: Vec<&'static str>,
    /// Ratio of the formula, %; left out when no ingredient has the roles.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub percent: Option<f64>,
    /// Lower end of the usual range, %.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub low: Option<f64>,
    /// The classic figure, %.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub target: Option<f64>,
    /// Upper end of the usual range, %.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub high: Option<f64>,
    /// Formula minus classic figure, percentage points.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from_target_points: Option<f64>,
    /// `below`, `within`, `above`, `no range`, or `missing` when no ingredient has the roles.
    #[schema(example = "within")]
    pub standing: &'static str,
    /// Source of the classic figure.
    pub source: &'static str,
    /// How the ratio is computed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<MethodReport>,
}

impl Weighed<'_> {
    /// The dough against a classic ratio.
    #[must_use]
    pub fn compare(&self, ratio: &ClassicRatio) -> RatioComparison {
        let dough = self.lines().filter(|(_, part)| *part == Part::Dough).map(|(line, _)| line);
        let unknown = dough.filter(|line| self.roles(line).is_none()).map(|line| self.name(line));
        RatioComparison {
            ratio: ratio.product,
            title: ratio.title,
            items: compare_with_ratio(&self.formula, ratio).iter().map(item).collect(),
            roles_unknown_of: unknown.map(str::to_owned).collect(),
        }
    }
}

fn item(finding: &RatioFinding) -> RatioItemReport {
    RatioItemReport {
        title: finding.item.title,
        of_roles: finding.item.of.iter().copied().map(Role::name).collect(),
        percent: finding.percent.as_ref().map(|estimate| estimate.value),
        low: finding.item.low,
        target: finding.item.target,
        high: finding.item.high,
        from_target_points: finding.from_target_points,
        standing: match finding.standing {
            Standing::Below => "below",
            Standing::Within => "within",
            Standing::Above => "above",
            Standing::NoRange => "no range",
            Standing::Missing => "missing",
        },
        source: finding.item.source,
        method: finding.percent.as_ref().map(|estimate| estimate.method.into()),
    }
}
