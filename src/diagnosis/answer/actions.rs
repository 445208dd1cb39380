//! What to do, in which order, and what it changes.

use serde::Serialize;
use utoipa::ToSchema;

use super::super::said::Said;
use super::causes::SourceText;
use crate::knowledge::{Setting, Text};

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
/// The causes weighed are those that can explain what was seen (where nothing was, those that the findings speak for, or
/// all) and that no reading excludes, from a probability of 0.02 on, at most nine. An action mends each of its causes independently of the others; of actions that the requirements exclude,
/// what takes their place stands here and is taken to work as often.
#[derive(Debug, Default, Serialize, ToSchema)]
pub struct ActionOrder<'k> {
    /// At most eight actions, each once. What keeps harm from people comes first when a cause that it is for has a
    /// probability of 0.1 or more; then each place goes to the action that adds most for what it takes, when those before
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
    /// Class of its cost, a word of the rules; left out where nobody states it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "RUNNING_COST")]
    pub cost: Option<&'k str>,
    /// Batches that are typically lost until it works; left out where nobody states it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = 0.05)]
    pub waste_batches: Option<f64>,
    /// Effort and what cost and waste weigh, minutes: the minutes of the cost class, 60 a lost batch, and 30 until the next
    /// batch is baked and looked at (common practice). What is not stated counts nothing.
    #[schema(example = 73.0)]
    pub expense_minutes: f64,
    /// 60 · `adds` / `expense_minutes`; half of that where it can bring a symptom that is seen already (common practice).
    #[schema(example = 0.86)]
    pub benefit_per_hour: f64,
    /// Symptoms of the product that it can bring when overdone.
    pub may_bring: Vec<BroughtSymptom<'k>>,
    /// Whether it keeps harm from people; left out where not.
    #[serde(skip_serializing_if = "is_false")]
    #[schema(required = false)]
    pub at_once: bool,
    /// Actions before it that it undoes, or that set the same otherwise: done after them, it takes their place.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub in_place_of: Vec<DisplacedAction<'k>>,
}

/// An action that another one undoes.
#[derive(Debug, Serialize, ToSchema)]
pub struct DisplacedAction<'k> {
    /// Id of the action.
    #[schema(example = "bake_longer")]
    pub action: &'k str,
    /// Id of the reading, ingredient or role that both change; left out where the rules say that one undoes the other.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "bake_time")]
    pub both_change: Option<&'k str>,
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
    /// The setting of the rules that gave it, for code that works on.
    #[serde(skip)]
    pub setting: &'k Setting,
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
    /// Whether the case says that it stands there already; left out where not.
    #[serde(skip_serializing_if = "is_false")]
    #[schema(required = false)]
    pub as_now: bool,
    /// Said when a legal limit keeps the value lower than the rule would set it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capped: Option<String>,
    /// How it was computed, where a calculation gave it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<MethodText>,
    /// Why the method is stretched here, and what must be said beside the quantity; usually empty.
    pub remarks: Vec<String>,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde passes a reference")]
fn is_false(value: &bool) -> bool {
    !value
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
