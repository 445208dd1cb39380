//! What to find out next.

use serde::Serialize;
use utoipa::ToSchema;

use super::super::inquiry::BriefOutcome;
use super::super::said::Said;
use crate::knowledge::Text;

/// A reading that is worth taking.
#[derive(Debug, Serialize, ToSchema)]
pub struct NextReading<'k> {
    /// Id of the reading.
    #[schema(example = "proof_humidity")]
    pub reading: &'k str,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// UCUM code to give it in.
    pub unit: &'k str,
    /// How to take it.
    #[schema(value_type = String)]
    pub method: &'k Text,
    /// Mutual information between the reading and the causes that can explain what was seen (all causes when nothing
    /// was), given the case, bits. Of a reading that bears on more than twelve causes, or on more than six and whose
    /// weights depend on other findings, the six that it can move most are counted; `/v1/inquiries` counts twelve.
    pub information_bits: f64,
    /// Minutes to take it.
    pub effort_minutes: f64,
    /// Ids of the causes whose probability it moves most.
    pub tells_apart: Vec<&'k str>,
    /// What it may turn out to be, and how the causes would then stand.
    pub outcomes: Vec<BriefOutcome<'k>>,
}

/// A fact to ask or a symptom to look at.
#[derive(Debug, Serialize, ToSchema)]
pub struct NextQuestion<'k> {
    /// Id of the fact or symptom.
    pub finding: &'k str,
    /// Whether it is a `fact` or a `symptom`.
    pub kind: QuestionKind,
    /// The question: of a symptom whether it is seen, and how to recognise it.
    #[schema(value_type = String)]
    pub text: Said<'k>,
    /// Mutual information between the answer and the causes that can explain what was seen (all causes when nothing
    /// was), given the case, bits. Where many causes hang on it, those that it can move most are counted.
    pub information_bits: f64,
    /// Minutes to find out.
    pub effort_minutes: f64,
    /// Ids of the causes whose probability it moves most.
    pub tells_apart: Vec<&'k str>,
    /// What it may turn out to be, and how the causes would then stand.
    pub outcomes: Vec<BriefOutcome<'k>>,
}

/// Kind of a question.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum QuestionKind {
    /// A fact about the line or the ingredients.
    Fact,
    /// A symptom.
    Symptom,
}
