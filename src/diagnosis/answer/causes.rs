//! Causes with their arguments, and what would settle them.

use serde::Serialize;
use utoipa::ToSchema;

use super::super::said::Said;
use super::actions::ActionAdvice;
use crate::knowledge::{Confirmation, Text};

/// A leading cause.
#[derive(Debug, Serialize, ToSchema)]
pub struct RankedCause<'k> {
    /// Id of the cause.
    #[schema(example = "dough_too_warm")]
    pub cause: &'k str,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// How it brings its symptoms about.
    #[schema(value_type = String)]
    pub mechanism: &'k Text,
    /// Probability before anything was known of the case.
    pub prior: f64,
    /// Probability given everything that is known.
    pub probability: f64,
    /// What speaks for it and against it, strongest first.
    pub evidence: Vec<Argument<'k>>,
    /// What to do about it; nothing for a cause under 5 % that does not lead.
    pub actions: Vec<ActionAdvice<'k>>,
    /// What would confirm or exclude it.
    pub confirm: Vec<ConfirmingReading<'k>>,
    /// Sources of the rule.
    pub sources: Vec<SourceText<'k>>,
}

/// A finding and its weight for a cause.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct Argument<'k> {
    /// Id of the symptom, reading, fact or ingredient, or `formula`.
    #[schema(example = "dough_temperature")]
    pub finding: &'k str,
    /// The argument in words, with the value that was seen.
    #[schema(value_type = String, example = "dough temperature 31.5 °C is above 30 °C")]
    pub text: Said<'k>,
    /// 10·log10 of the factor by which the finding changes the odds of the cause; negative speaks against it.
    pub decibans: f64,
}

/// A cause that does not lead.
#[derive(Debug, Serialize, ToSchema)]
pub struct OtherCause<'k> {
    /// Id of the cause.
    pub cause: &'k str,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// Probability given everything that is known.
    pub probability: f64,
    /// Whether it explains something that was seen, or the findings make it more probable.
    #[serde(skip)]
    pub is_suspected: bool,
}

/// A reading or fact that settles a cause.
#[derive(Debug, Serialize, ToSchema)]
pub struct ConfirmingReading<'k> {
    /// The confirmation of the rules, for code that works on.
    #[serde(skip)]
    pub confirmation: &'k Confirmation,
    /// Id of the reading, fact or ingredient; the first where several are needed.
    #[schema(example = "dough_temperature")]
    pub reading: &'k str,
    /// What confirms the cause.
    #[schema(value_type = String, example = "dough temperature above 29 °C")]
    pub expect: Said<'k>,
    /// What excludes it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, example = "dough temperature below 26 °C")]
    pub excludes: Option<Said<'k>>,
    /// Whether all that does not confirm it excludes it.
    #[serde(skip)]
    pub excluded_if_not: bool,
    /// How to take the reading, or the question to ask.
    pub method: &'k str,
    /// What the case says already.
    pub status: ConfirmationStatus,
}

/// What a case says of a confirmation.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum ConfirmationStatus {
    /// Not measured.
    Open,
    /// The value confirms the cause.
    Confirmed,
    /// The value excludes the cause.
    Excluded,
    /// The value lies between.
    Undecided,
}

/// A source.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct SourceText<'k> {
    /// Author, title, year, table.
    #[schema(value_type = String)]
    pub citation: &'k Text,
    /// `published`, `common practice` or `from memory`.
    pub provenance: &'static str,
}
