//! What a replay tells.

use serde::Serialize;
use utoipa::ToSchema;

use crate::case::{CaseDocument, Fault};
use crate::comparison::ProbabilityChange;
use crate::rule_tests::LeadingCause;

/// A record as callers store it; members that are not known here are left alone.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = DiagnosisRecord)]
pub struct RecordDocument {
    /// The case as it was given.
    pub case: CaseDocument,
    /// The answer to it, as it came: `rules`, `causes`, `other_causes` and `cautions` are read, all of it is compared.
    #[schema(value_type = Object)]
    pub diagnosis: serde_json::Value,
    /// Version of the program that answered.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "0.1.0")]
    pub program_version: Option<String>,
}

/// What an answer was made with.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Made {
    /// The authors' version of the rules.
    #[schema(example = "0.1.0")]
    pub rules_version: String,
    /// Hash of the rule files.
    #[schema(example = "sha256:…")]
    pub rules_digest: String,
    /// Version of the program; left out where the record does not say.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "0.1.0")]
    pub program_version: Option<String>,
}

/// A stored diagnosis, replayed.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Replay {
    /// Whether the answer of now is the stored one, byte for byte.
    pub same: bool,
    /// Whether it says the same: as JSON it is equal, whatever white space and order of members were stored.
    pub same_content: bool,
    /// What that means, in words.
    pub verdict: String,
    /// What the stored answer was made with.
    pub then: Made,
    /// What the answer of now is made with.
    pub now: Made,
    /// Whether both have the digest of the same rules.
    pub same_rules: bool,
    /// Whether both were made by the same version of the program; left out where the record does not say.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub same_program: Option<bool>,
    /// Why the rules of now refuse the case.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub refused: Vec<Fault>,
    /// What became of the ranking; left out where nothing differs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ranking: Option<RankingDifferences>,
    /// Actions of the leading causes that came, went, or have other quantities.
    pub actions: Vec<ActionDifference>,
    /// Cautions that came and went.
    pub cautions: CautionDifferences,
    /// The first places at which the two answers differ, as JSON Pointers into the answer.
    pub places: Vec<String>,
    /// Number of places that were left out.
    pub places_left_out: usize,
}

/// The ranking then and now.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct RankingDifferences {
    /// Whether another cause leads.
    pub leader_changed: bool,
    /// The first three causes then.
    pub before: Vec<LeadingCause>,
    /// The first three causes now.
    pub after: Vec<LeadingCause>,
    /// Causes that the stored answer does not know, with their probability now.
    pub appeared: Vec<LeadingCause>,
    /// Causes that the answer of now does not know, with their probability then.
    pub vanished: Vec<LeadingCause>,
    /// The cause whose probability changes most, if any does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub largest_change: Option<ProbabilityChange>,
    /// All causes whose probability differs, the largest change first; long lists are cut.
    pub changes: Vec<ProbabilityChange>,
}

/// What became of an action.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum ActionChange {
    /// Only the answer of now has it.
    Appeared,
    /// Only the stored answer has it.
    Vanished,
    /// Both have it, with other quantities.
    Quantities,
}

/// An action that differs.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct ActionDifference {
    /// Id of the cause that it is for.
    #[schema(example = "dough_too_warm")]
    pub cause: String,
    /// Id of the action.
    #[schema(example = "colder_mixing_water")]
    pub action: String,
    /// What became of it.
    pub change: ActionChange,
    /// Quantities that differ.
    pub quantities: Vec<QuantityChange>,
}

/// A quantity then and now.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
#[schema(as = ReplayedQuantity)]
pub struct QuantityChange {
    /// Name.
    #[schema(example = "water_temperature")]
    pub name: String,
    /// Value then, in the unit of then; left out where it was not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub before: Option<f64>,
    /// Value now, in the unit of now; left out where it is not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub after: Option<f64>,
    /// UCUM code then.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit_before: Option<String>,
    /// UCUM code now.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit_after: Option<String>,
}

/// Cautions that came and went, by id.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, ToSchema)]
pub struct CautionDifferences {
    /// Only the answer of now has them.
    pub appeared: Vec<String>,
    /// Only the stored answer has them.
    pub vanished: Vec<String>,
    /// Both have them, with other words or another reason.
    pub reworded: Vec<String>,
}
