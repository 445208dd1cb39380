//! The answer: two diagnoses side by side.

use serde::Serialize;
use serde_json::value::RawValue;
use utoipa::ToSchema;

use crate::diagnosis::{CautionText, ChangeText, RulesStamp};
use crate::knowledge::Text;

/// What the diagnosis would be, beside what it is.
///
/// A hypothetical reading tells what the diagnosis would be if that were read. What an action does to a reading or to the
/// formula is what is aimed at, not what is promised; whether it helps, the next batch shows.
#[derive(Debug, Serialize, ToSchema)]
pub struct WhatIf<'k> {
    /// The rules that made both.
    pub rules: RulesStamp<'k>,
    /// Id of the product.
    #[schema(example = "hamburger_bun")]
    pub product: &'k str,
    /// The caller's reference, as it came.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<serde_json::Value>)]
    pub reference: Option<Box<RawValue>>,
    /// What was changed.
    pub applied: Vec<Applied<'k>>,
    /// What could not be changed, and why.
    pub not_applied: Vec<NotApplied<'k>>,
    /// The leading cause before and after.
    pub leader: LeaderChange<'k>,
    /// Causes whose probability moves, most first, and the three that lead before or after.
    pub causes: Vec<CauseChange<'k>>,
    /// Computed figures that move, appear or vanish.
    pub computed: Vec<FigureChange<'k>>,
    /// Cautions that stand in the answer only after the change.
    pub cautions_new: Vec<CautionText<'k>>,
    /// Cautions that stand in the answer only before it.
    pub cautions_gone: Vec<CautionText<'k>>,
}

/// Something that was changed.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct Applied<'k> {
    /// Id of the action; left out of what the request changes itself.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub action: Option<&'k str>,
    /// Name of the quantity of the action.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub quantity: Option<&'k str>,
    /// Id of the fact or symptom.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub finding: Option<&'k str>,
    /// The reading or the amount.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub changes: Option<ChangeText<'k>>,
    /// Before, in `unit`; of a fact 1 is yes, of a symptom the certainty that it is present. Left out where it was not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = 31.5)]
    pub before: Option<f64>,
    /// After.
    #[schema(example = 26.5)]
    pub after: f64,
    /// UCUM code; of an amount `kg` in the batch, or `%` on flour. Left out of facts and symptoms.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "Cel")]
    pub unit: Option<&'k str>,
}

/// Something that could not be changed.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct NotApplied<'k> {
    /// Id of the action; left out of what the request changes itself.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub action: Option<&'k str>,
    /// Name of the quantity, or id of the reading or ingredient; left out where the action as a whole is meant.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub quantity: Option<&'k str>,
    /// Why.
    #[schema(example = "the rules do not say what it changes")]
    pub text: String,
}

/// The leading cause before and after.
#[derive(Debug, Serialize, ToSchema)]
pub struct LeaderChange<'k> {
    /// Before.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub before: Option<WhatIfLeader<'k>>,
    /// After.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub after: Option<WhatIfLeader<'k>>,
    /// Whether it is another cause.
    pub changed: bool,
}

/// A leading cause.
#[derive(Debug, Serialize, ToSchema)]
pub struct WhatIfLeader<'k> {
    /// Id of the cause.
    #[schema(example = "dough_too_warm")]
    pub cause: &'k str,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// Probability.
    #[schema(example = 0.92)]
    pub probability: f64,
}

/// A cause before and after.
#[derive(Debug, Serialize, ToSchema)]
pub struct CauseChange<'k> {
    /// Id of the cause.
    #[schema(example = "dough_too_warm")]
    pub cause: &'k str,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// Probability before.
    #[schema(example = 0.92)]
    pub before: f64,
    /// Probability after.
    #[schema(example = 0.03)]
    pub after: f64,
    /// After less before.
    #[schema(example = -0.89)]
    pub change: f64,
}

/// A computed figure before and after.
#[derive(Debug, Serialize, ToSchema)]
pub struct FigureChange<'k> {
    /// Id of the reading that it stands in for, or name of a formula quantity.
    #[schema(example = "water_on_flour")]
    pub quantity: &'k str,
    /// Title.
    pub title: &'k str,
    /// UCUM code.
    #[schema(example = "%")]
    pub unit: &'k str,
    /// Before; left out where it was not computed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = 58.0)]
    pub before: Option<f64>,
    /// After; left out where it is not computed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = 61.0)]
    pub after: Option<f64>,
}
