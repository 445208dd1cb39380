//! What finding out would tell: the answer of `/v1/inquiries`, and the outcomes in a diagnosis.

use serde::Serialize;
use serde_json::value::RawValue;
use utoipa::ToSchema;

use super::super::answer::{CautionText, RuleFault, RulesStamp};
use crate::case::InquiryOptions;
use crate::knowledge::Text;

/// What a reading or question may turn out to be.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct BriefOutcome<'k> {
    /// The outcome in words: where the reading lies, `yes` or `no`, `seen` or `not seen`.
    #[schema(example = "above 29 °C")]
    pub outcome: String,
    /// Probability of the outcome, given the case.
    pub probability: f64,
    /// How causes would then stand: first the most probable one at issue, then those that the outcome changes most.
    pub causes: Vec<CauseAfter<'k>>,
}

/// A cause after an outcome.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct CauseAfter<'k> {
    /// Id of the cause.
    #[schema(example = "dough_too_warm")]
    pub cause: &'k str,
    /// Its probability given the case and the outcome.
    #[schema(example = 0.83)]
    pub probability: f64,
}

/// What there is to find out about a case, and in which order.
#[derive(Debug, Serialize, ToSchema)]
pub struct Inquiries<'k> {
    /// The rules that made it.
    pub rules: RulesStamp<'k>,
    /// Id of the product.
    #[schema(example = "hamburger_bun")]
    pub product: &'k str,
    /// The caller's reference, as it came.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<serde_json::Value>)]
    pub reference: Option<Box<RawValue>>,
    /// How far finding out may go, as given or usual.
    pub options: InquiryOptions,
    /// The most probable causes at issue as the case stands.
    pub causes: Vec<ProbableCause<'k>>,
    /// What to find out, step by step.
    pub plan: Plan<'k>,
    /// Every reading, fact and symptom that the case leaves open and that tells something: most information a minute first.
    pub inquiries: Vec<Inquiry<'k>>,
    /// Ids of those that tell less than 0.001 bit.
    pub tell_nothing: Vec<&'k str>,
    /// Cautions: read them before going to the line.
    pub cautions: Vec<CautionText<'k>>,
    /// Rules that failed on this case and were left out.
    pub rule_faults: Vec<RuleFault>,
}

impl Inquiries<'_> {
    /// The answer as JSON: the bytes that the service and the command write.
    ///
    /// # Errors
    /// None that is known: everything in an answer can be written.
    pub fn to_json(&self) -> serde_json::Result<Vec<u8>> {
        serde_json::to_vec(self)
    }
}

/// A cause with its probability.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct ProbableCause<'k> {
    /// Id of the cause.
    #[schema(example = "dough_too_warm")]
    pub cause: &'k str,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// Probability given what is known.
    pub probability: f64,
}

/// What kind of thing is found out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum InquiryKind {
    /// A reading to take.
    Reading,
    /// A fact about the line or the ingredients, to ask.
    Fact,
    /// A symptom to look at.
    Symptom,
}

/// Something that may be found out.
#[derive(Debug, Clone, Copy, Serialize, ToSchema)]
pub struct Sought<'k> {
    /// Id of the reading, fact or symptom.
    #[schema(example = "dough_temperature")]
    pub finding: &'k str,
    /// What kind of thing it is.
    pub kind: InquiryKind,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// How to take the reading, the question to ask, or how to recognise the symptom.
    #[schema(value_type = String)]
    pub how: &'k Text,
    /// UCUM code to give a reading in.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "Cel")]
    pub unit: Option<&'k str>,
    /// Minutes to find it out.
    pub effort_minutes: f64,
    /// Mutual information between it and the causes that can explain what was seen (all causes when nothing was), given
    /// what is known, bits.
    pub information_bits: f64,
    /// Information a minute; less than a minute counts as one.
    pub bits_per_minute: f64,
    /// Whether the information counts every cause that bears on it. Of a reading or fact twelve causes are counted at most,
    /// of a symptom thirteen, those first that it can move most; with more than seven present or uncertain symptoms one
    /// less for each, but at least four.
    pub exact: bool,
}

/// Something worth finding out, and what each outcome would do.
#[derive(Debug, Serialize, ToSchema)]
pub struct Inquiry<'k> {
    /// What to find out, and how much it tells.
    pub find_out: Sought<'k>,
    /// Ids of the causes whose probability it moves most.
    pub tells_apart: Vec<&'k str>,
    /// What it may turn out to be; the probabilities add up to 1. How the causes stand after an outcome is what a diagnosis
    /// would say with a value clearly inside the region; a value near an edge moves less. Symptoms that the reading itself
    /// would raise, and what could be computed from it, are not foreseen. The mean over the outcomes is the probability
    /// before, as far as the weights of the rules agree with how usual the outcomes are.
    pub outcomes: Vec<InquiryOutcome<'k>>,
}

/// An outcome and what it would do to the ranking.
#[derive(Debug, Serialize, ToSchema)]
pub struct InquiryOutcome<'k> {
    /// The outcome in words: where the reading lies, `yes` or `no`, `seen` or `not seen`.
    #[schema(example = "above 29 °C")]
    pub outcome: String,
    /// Probability of the outcome, given the case.
    pub probability: f64,
    /// The most probable cause at issue after it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub leader: Option<ProbableCause<'k>>,
    /// The causes that it changes most, the greatest change first.
    pub changes: Vec<ChangedCause<'k>>,
}

/// A cause before and after an outcome.
#[derive(Debug, Serialize, ToSchema)]
pub struct ChangedCause<'k> {
    /// Id of the cause.
    #[schema(example = "dough_too_warm")]
    pub cause: &'k str,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// Probability as the case stands.
    pub before: f64,
    /// Probability after the outcome.
    pub after: f64,
}

/// A plan: what to find out first, and after each outcome what next.
///
/// At every step the inquiry with the most information a minute is taken, of those that the minutes allow.
#[derive(Debug, Serialize, ToSchema)]
pub struct Plan<'k> {
    /// Minutes that it takes on the average over its outcomes.
    pub expected_minutes: f64,
    /// Probability that it ends with a cause that is certain enough.
    pub probability_certain: f64,
    /// Where it begins.
    pub start: PlanStep<'k>,
}

/// A point of a plan: find something out, or stop.
#[derive(Debug, Serialize, ToSchema)]
pub struct PlanStep<'k> {
    /// The most probable cause at issue here.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub leader: Option<ProbableCause<'k>>,
    /// Why the plan ends here; left out where it goes on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stop: Option<Stop>,
    /// What to find out; left out where the plan ends.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub find_out: Option<Sought<'k>>,
    /// What it may turn out to be, and how the plan goes on from there.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub outcomes: Vec<PlannedOutcome<'k>>,
}

/// An outcome in a plan.
#[derive(Debug, Serialize, ToSchema)]
pub struct PlannedOutcome<'k> {
    /// The outcome in words.
    #[schema(example = "above 29 °C")]
    pub outcome: String,
    /// Its probability at this point of the plan.
    pub probability: f64,
    /// How the plan goes on.
    #[schema(no_recursion)]
    pub then: PlanStep<'k>,
}

/// The end of a way through a plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Stop {
    /// Why.
    pub reason: StopReason,
    /// The same in words.
    #[schema(example = "certain enough: Dough too warm at make-up, 93 %")]
    pub text: String,
}

/// Why a plan ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum StopReason {
    /// A cause is certain enough.
    Certain,
    /// The leader is more probable than not, and the probabilities of all other causes that the findings speak for add up
    /// to no more than the doubt that is allowed.
    RivalsExcluded,
    /// Nothing that is left tells enough a minute.
    NotWorthTheEffort,
    /// What is left takes more minutes than there are.
    MinutesUsedUp,
    /// The plan looks no further: ask again with what was found.
    DepthReached,
}
