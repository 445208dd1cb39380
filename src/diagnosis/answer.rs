//! The answer: everything that a [`Diagnosis`] says, borrowed from the knowledge where it can be.

use std::borrow::Cow;

use serde::Serialize;
use serde_json::value::RawValue;
use utoipa::ToSchema;

use super::inquiry::BriefOutcome;
use super::said::Said;
use crate::knowledge::Text;

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
    #[schema(value_type = Option<Object>)]
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
    /// Whether the case has a formula: then only parts of it can be missing.
    #[serde(skip)]
    pub has_formula: bool,
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

/// An action with its quantities.
#[derive(Debug, Serialize, ToSchema)]
pub struct ActionAdvice<'k> {
    /// Id of the action.
    #[schema(example = "colder_mixing_water")]
    pub action: &'k str,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// What to do.
    #[schema(value_type = String)]
    pub text: &'k Text,
    /// What to set, where it could be computed.
    pub quantities: Vec<SetQuantity<'k>>,
    /// Ids of what is needed to compute the other quantities.
    pub needs: Vec<&'k str>,
    /// Minutes until the next batch can show it.
    pub effort_minutes: f64,
    /// Probability that it mends the cause.
    pub works: f64,
    /// What else it changes, and what of the product's symptoms it can bring when overdone.
    #[schema(value_type = Vec<String>)]
    pub side_effects: Vec<Said<'k>>,
    /// Cautions.
    pub cautions: Vec<&'k str>,
    /// Sources.
    pub sources: Vec<SourceText<'k>>,
}

/// In which order to act, so that a cause that explains what was seen is taken away soonest for effort, cost and waste.
///
/// The causes weighed are those that can explain what was seen (all where nothing was), from a probability of 0.02 on,
/// at most nine. An action mends each of its causes independently of the others; of actions that the requirements exclude,
/// what takes their place stands here and is taken to work as often.
#[derive(Debug, Default, Serialize, ToSchema)]
pub struct ActionOrder<'k> {
    /// At most eight actions, each once: each place goes to the action that adds most for what it takes, when those before
    /// it took no cause away (Heckerman, Breese and Rommelse 1995, Decision-theoretic troubleshooting).
    pub actions: Vec<OrderedAction<'k>>,
    /// What is expected after the first one, two and three actions.
    pub after: Vec<AfterActions>,
    /// Further causes that could be at issue: where it is not 0, `one_cause_gone` is a lower and `all_causes_gone` an upper bound.
    pub causes_left_out: usize,
}

/// An action in its place.
#[derive(Debug, Serialize, ToSchema)]
pub struct OrderedAction<'k> {
    /// Id of the action.
    #[schema(example = "colder_mixing_water")]
    pub action: &'k str,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// Id of the excluded action whose place it takes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub instead_of: Option<&'k str>,
    /// Probability that, done alone, it takes away at least one cause that is at work and explains what was seen: the
    /// expectation over the joint posterior of the causes.
    #[schema(example = 0.62)]
    pub mends: f64,
    /// Probability that it is the first to do so: those before it took no cause away.
    #[schema(example = 0.62)]
    pub adds: f64,
    /// The causes that it mends.
    pub causes: Vec<MendedCause<'k>>,
    /// Id of the leading cause under which its quantities stand.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "dough_too_warm")]
    pub quantities_under: Option<&'k str>,
    /// Minutes until the next batch can show it.
    #[schema(example = 10.0)]
    pub effort_minutes: f64,
    /// Class of its cost, a word of the rules; `null` where nobody states it.
    #[schema(example = "RUNNING_COST")]
    pub cost: Option<&'k str>,
    /// Batches that are typically lost until it works; `null` where nobody states it.
    #[schema(example = 0.05)]
    pub waste_batches: Option<f64>,
    /// Effort and what cost and waste weigh, minutes: the minutes of the cost class, and 60 a lost batch (common practice).
    /// What is not stated counts nothing.
    #[schema(example = 43.0)]
    pub expense_minutes: f64,
    /// 60 · `adds` / `expense_minutes`; half of that where it can bring a symptom that is seen already (common practice).
    #[schema(example = 0.86)]
    pub benefit_per_hour: f64,
    /// Symptoms of the product that it can bring when overdone.
    pub may_bring: Vec<BroughtSymptom<'k>>,
}

/// A cause that an action mends.
#[derive(Debug, Serialize, ToSchema)]
pub struct MendedCause<'k> {
    /// Id of the cause.
    #[schema(example = "dough_too_warm")]
    pub cause: &'k str,
    /// Probability of the cause.
    #[schema(example = 0.78)]
    pub probability: f64,
    /// Probability that the action mends it.
    #[schema(example = 0.8)]
    pub works: f64,
}

/// A symptom that an action can bring.
#[derive(Debug, Serialize, ToSchema)]
pub struct BroughtSymptom<'k> {
    /// Id of the symptom.
    #[schema(example = "slow_proof")]
    pub symptom: &'k str,
    /// Whether it is seen already, which is a reason against the action.
    pub already_seen: bool,
}

/// What is expected after some actions. Rough: no two actions are taken to help or hinder each other, and a complaint may
/// outlive a cause that is gone.
#[derive(Debug, Serialize, ToSchema)]
pub struct AfterActions {
    /// Actions done, in order.
    #[schema(example = 1)]
    pub actions: usize,
    /// Probability that at least one cause at work that explains what was seen is gone.
    #[schema(example = 0.62)]
    pub one_cause_gone: f64,
    /// Probability that such causes are at work and all of them are gone.
    #[schema(example = 0.41)]
    pub all_causes_gone: f64,
}

/// A quantity that an action sets.
#[derive(Debug, Serialize, ToSchema)]
pub struct SetQuantity<'k> {
    /// Name.
    #[schema(example = "water_temperature")]
    pub name: &'k str,
    /// Value in `unit`.
    #[schema(example = 7.2)]
    pub value: f64,
    /// UCUM code.
    #[schema(example = "Cel")]
    pub unit: &'k str,
    /// What it changes in the case: a reading, or an amount of the formula; left out where the rules do not say.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub changes: Option<ChangeText<'k>>,
    /// Said when a legal limit keeps the value lower than the rule would set it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capped: Option<String>,
    /// How it was computed, where a calculation gave it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<MethodText>,
    /// Why the method is stretched here, and what must be said beside the quantity; usually empty.
    pub remarks: Vec<String>,
}

/// What a quantity of an action changes: a reading, or an amount of the formula.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, ToSchema)]
#[schema(as = QuantityChange, example = json!({ "ingredient": "water", "how": "adds", "basis": "flour" }))]
pub struct ChangeText<'k> {
    /// Id of the reading that is set, or that shall read the quantity when the amount is right.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reading: Option<&'k str>,
    /// Id of the ingredient.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ingredient: Option<&'k str>,
    /// Ids of the ingredients, where several are changed together in proportion.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub ingredients: Vec<&'k str>,
    /// Role of the lines that are changed in proportion.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub role: Option<&'static str>,
    /// `doses`: the amount becomes the quantity; `adds`, `takes_out`: the amount changes by it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub how: Option<&'static str>,
    /// What a share is counted on: `flour`, or the part whose mass is meant; left out of a mass in the batch.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub basis: Option<&'static str>,
}

/// How a quantity was computed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[schema(as = QuantityMethod)]
pub struct MethodText {
    /// Equation or rule.
    #[schema(example = "additive rule: n × dough temperature − other temperatures − friction factor")]
    pub name: &'static str,
    /// Publication, `common practice`, or `from memory` of a named work.
    #[schema(example = "Lehmann T., PMQ, Spring 2003, temperatures explained")]
    pub source: &'static str,
}

/// A reading or fact that settles a cause.
#[derive(Debug, Serialize, ToSchema)]
pub struct ConfirmingReading<'k> {
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

/// An action that the requirements exclude.
#[derive(Debug, Serialize, ToSchema)]
pub struct ExcludedAction<'k> {
    /// Id of the action.
    pub action: &'k str,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// Why.
    pub text: String,
    /// What the rules put in its place, as far as the requirements allow it.
    pub instead: Vec<Replacement<'k>>,
}

/// An action in the place of an excluded one.
#[derive(Debug, Serialize, ToSchema)]
pub struct Replacement<'k> {
    /// Id of the action.
    pub action: &'k str,
    /// Title.
    #[schema(value_type = String)]
    pub title: &'k Text,
    /// What to do.
    #[schema(value_type = String)]
    pub text: &'k Text,
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

/// A source.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct SourceText<'k> {
    /// Author, title, year, table.
    #[schema(value_type = String)]
    pub citation: &'k Text,
    /// `published`, `common practice` or `from memory`.
    pub provenance: &'static str,
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
