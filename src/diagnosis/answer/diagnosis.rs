//! The whole of an answer.

use serde::Serialize;
use serde_json::value::RawValue;
use utoipa::ToSchema;

use super::actions::{ActionOrder, ExcludedAction};
use super::causes::{Argument, OtherCause, RankedCause};
use super::next::{NextQuestion, NextReading};
use super::remarks::{
    CautionText, Computed, Contradiction, Missing, RaisedSymptom, RuleFault, SetAsideFinding, Unexplained,
};
use crate::case::Formula;

/// A ranked and argued diagnosis.
#[derive(Debug, Serialize, ToSchema)]
pub struct Diagnosis<'k> {
    /// The rules that made it.
    pub rules: RulesStamp<'k>,
    /// Id of the product.
    #[schema(example = "hamburger_bun")]
    pub product: &'k str,
    /// Title of the product.
    #[schema(example = "Hamburger bun")]
    pub product_title: &'k str,
    /// The caller's reference, as it came.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<serde_json::Value>)]
    pub reference: Option<Box<RawValue>>,
    /// The answer in a sentence or two.
    pub summary: String,
    /// The leading causes, most probable first, each with its arguments: those that explain something seen, and those that
    /// explain nothing of it but that the findings make probable (50 % or more); where nothing was found, the commonest.
    pub causes: Vec<RankedCause<'k>>,
    /// All other causes of the product, most probable first. One may be more probable than the leading ones and yet have
    /// nothing to do with what was seen.
    pub other_causes: Vec<OtherCause<'k>>,
    /// In which order to act.
    pub action_order: ActionOrder<'k>,
    /// What to measure next: most information per minute first.
    pub next_readings: Vec<NextReading<'k>>,
    /// What to ask or look at next: most information per minute first.
    pub next_questions: Vec<NextQuestion<'k>>,
    /// Quantities that were computed and stand in for readings that were not taken.
    pub computed: Vec<Computed<'k>>,
    /// Symptoms that were taken from readings out of their limits.
    pub raised: Vec<RaisedSymptom<'k>>,
    /// Symptoms of which people say one thing and a reading another. What people say counts; one of the two is to be
    /// checked.
    pub contradictions: Vec<Contradiction<'k>>,
    /// Symptoms that are seen and that no probable cause explains.
    pub unexplained: Vec<Unexplained<'k>>,
    /// Findings that speak against the leading cause.
    pub against_leader: Vec<Argument<'k>>,
    /// What was given and could not be used, with the reason.
    pub set_aside: Vec<SetAsideFinding<'k>>,
    /// What the leading causes' evidence still needs.
    pub missing: Vec<Missing<'k>>,
    /// Actions that the requirements exclude, with the reason.
    pub excluded_actions: Vec<ExcludedAction<'k>>,
    /// Cautions: read them before acting.
    pub cautions: Vec<CautionText<'k>>,
    /// Rules that failed on this case and were left out.
    pub rule_faults: Vec<RuleFault>,
    /// How the case gives its formula: it settles what of it can be missing.
    #[serde(skip)]
    pub formula: GivenFormula,
}

/// Room for most answers, bytes.
const USUAL_LENGTH: usize = 48 * 1024;

impl Diagnosis<'_> {
    /// The answer as JSON: the bytes that the service and the command write.
    ///
    /// # Errors
    /// None that is known: everything in an answer can be written.
    pub fn to_json(&self) -> serde_json::Result<Vec<u8>> {
        let mut bytes = Vec::with_capacity(USUAL_LENGTH);
        serde_json::to_writer(&mut bytes, self)?;
        Ok(bytes)
    }
}

/// Which rules made an answer.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct RulesStamp<'k> {
    /// The authors' version.
    #[schema(example = "0.1.0")]
    pub version: &'k str,
    /// Hash of the rule files.
    #[schema(example = "sha256:…")]
    pub digest: &'k str,
}

/// How a case gives its formula.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GivenFormula {
    /// Not at all.
    Not,
    /// In baker's percent: no mass of the batch is known.
    InPercent,
    /// In masses.
    InMass,
}

impl GivenFormula {
    pub(in crate::diagnosis) fn of(formula: Option<&Formula>) -> Self {
        match formula {
            None => Self::Not,
            Some(formula) if formula.in_mass => Self::InMass,
            Some(_) => Self::InPercent,
        }
    }
}
