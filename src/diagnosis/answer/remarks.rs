//! What an answer says beside causes and actions: computed, raised, set aside, missing, cautions.

use std::borrow::Cow;

use serde::Serialize;
use utoipa::ToSchema;

use super::super::said::Said;
use super::actions::MethodText;
use crate::knowledge::Text;

/// A computed quantity.
#[derive(Debug, Serialize, ToSchema)]
pub struct Computed<'k> {
    /// Id of the reading that it stands in for, or name of a formula quantity.
    #[schema(example = "water_on_flour")]
    pub quantity: &'k str,
    /// Title.
    pub title: &'k str,
    /// Value in `unit`.
    #[schema(example = 61.3)]
    pub value: f64,
    /// UCUM code.
    #[schema(example = "%")]
    pub unit: &'k str,
    /// What it refers to, where the unit does not say.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "on flour")]
    pub basis: Option<&'static str>,
    /// Ids of what it was computed from.
    #[schema(example = json!("formula"))]
    pub from: Cow<'k, str>,
    /// How it was computed, where a published method or a calculation gave it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<MethodText>,
    /// Why it is to be taken with care: inputs outside the method's domain, and what must be said beside it. Empty normally.
    pub remarks: Vec<String>,
}

/// A symptom that a reading out of its limits raised.
#[derive(Debug, Serialize, ToSchema)]
pub struct RaisedSymptom<'k> {
    /// Id of the symptom.
    pub symptom: &'k str,
    /// Whether the reading shows it or shows that it is absent.
    pub present: bool,
    /// The reading and its limit in words.
    pub text: String,
}

/// A symptom and a reading that cannot both be right.
#[derive(Debug, Serialize, ToSchema)]
pub struct Contradiction<'k> {
    /// Id of the symptom.
    #[schema(example = "low_volume")]
    pub symptom: &'k str,
    /// Id of the reading.
    #[schema(example = "specific_volume")]
    pub reading: &'k str,
    /// What was said, and what was measured.
    pub text: String,
}

/// A symptom without a cause.
#[derive(Debug, Serialize, ToSchema)]
pub struct Unexplained<'k> {
    /// Id of the symptom.
    pub symptom: &'k str,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// Why it stands here.
    pub text: &'static str,
}

/// Something given that was not used.
#[derive(Debug, Serialize, ToSchema)]
pub struct SetAsideFinding<'k> {
    /// Id.
    pub finding: &'k str,
    /// Why.
    #[schema(example = "315 °C is outside the plausible range -5 °C to 60 °C")]
    pub text: String,
}

/// Something that was not given.
#[derive(Debug, Serialize, ToSchema)]
pub struct Missing<'k> {
    /// Id of the reading, fact or ingredient, or `formula`.
    pub finding: &'k str,
    /// Title; of a formula also what it lacks.
    pub title: Cow<'k, str>,
    /// Ids of the leading causes whose evidence needs it.
    pub needed_by: Vec<&'k str>,
}

/// A caution.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct CautionText<'k> {
    /// Id of the caution, of the legal limit that is exceeded, or of the ingredient that is not permitted or does not meet
    /// the requirements of the case.
    pub caution: &'k str,
    /// What brings it up.
    pub raised_by: CautionOrigin,
    /// The warning.
    #[schema(value_type = String)]
    pub text: Said<'k>,
    /// Why it stands here: what of the case raises it, or the symptom, cause or action that it belongs to; left out where
    /// it always holds.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Ids of the markets whose law it tells; left out where it holds everywhere.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false, example = json!(["US"]))]
    pub jurisdiction: Vec<&'k str>,
}

/// What brings a caution up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum CautionOrigin {
    /// What the case says: its formula, its readings, its requirements, the law of its market.
    Case,
    /// A symptom that is seen.
    Symptom,
    /// A cause that leads.
    Cause,
    /// An action that is prescribed.
    Action,
    /// Nothing: it always holds.
    Always,
}

/// A rule that failed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct RuleFault {
    /// File within the pack.
    pub file: String,
    /// Line, from 1.
    pub line: usize,
    /// What happened.
    pub message: String,
}
