//! The sheet: everything that a plant needs on paper.

use serde::Serialize;
use serde_json::value::RawValue;
use utoipa::ToSchema;

use crate::diagnosis::RulesStamp;

/// The plan of a trial bake.
#[derive(Debug, Serialize, ToSchema)]
pub struct TrialSheet<'k> {
    /// The rules that the diagnosis was made with.
    pub rules: RulesStamp<'k>,
    /// Id of the product.
    #[schema(example = "hamburger_bun")]
    pub product: &'k str,
    /// Title of the product.
    #[schema(example = "Hamburger bun")]
    pub product_title: &'k str,
    /// The caller's reference, as it came with the case.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<serde_json::Value>)]
    pub reference: Option<Box<RawValue>>,
    /// What was seen.
    pub complaint: Vec<SeenSymptom<'k>>,
    /// How the changes are laid out over the runs.
    pub design: DesignAnswer,
    /// What is tried, in the order in which a diagnosis of the case would act (`action_order`).
    pub changes: Vec<TrialChange<'k>>,
    /// Checks, repairs and ways of working that the order puts among them: they set nothing, and are done without a trial.
    pub do_first: Vec<ActionWithoutRun<'k>>,
    /// What the order puts among them and is not tried, with the reason.
    pub not_tried: Vec<String>,
    /// The batch of the control.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub batch: Option<BatchWeights>,
    /// The runs, the control first.
    pub runs: Vec<TrialRun>,
    /// What stays the same in all runs, or in all that do not change it.
    pub hold: Vec<HeldSetting<'k>>,
    /// What to write down at each run.
    pub record: Vec<Recorded<'k>>,
    /// How many pieces to measure.
    pub sample: SampleAnswer,
    /// What counts as fixed.
    pub fixed_when: Vec<FixedWhen<'k>>,
    /// How to decide.
    pub decide: Vec<String>,
    /// When to stop.
    pub stop: Vec<String>,
    /// Cautions: read them before the first run.
    pub cautions: Vec<TrialCaution>,
    /// What people fill in by hand.
    pub blanks: Vec<Blank>,
}

/// A symptom that was seen.
#[derive(Debug, Serialize, ToSchema)]
pub struct SeenSymptom<'k> {
    /// Id.
    #[schema(example = "hollow_under_crust")]
    pub symptom: &'k str,
    /// Title.
    pub title: &'k str,
}

/// How changes are laid out over runs.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = TrialDesign)]
pub struct DesignAnswer {
    /// Name of the design, for example `2^(4-1)`; `one change at a time`.
    #[schema(example = "2^2")]
    pub name: String,
    /// Resolution of a fraction.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "IV")]
    pub resolution: Option<&'static str>,
    /// Generator of a fraction, with its sign.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "D = ABC")]
    pub generator: Option<String>,
    /// The design and what it cannot tell apart, in words.
    pub text: Vec<String>,
    /// How often every run is baked.
    pub repeats: u32,
    /// What the order of the runs was drawn from.
    pub seed: u32,
    /// Where the design and the way of drawing come from.
    pub source: &'static str,
}

/// A change that is tried.
#[derive(Debug, Serialize, ToSchema)]
pub struct TrialChange<'k> {
    /// Its letter.
    #[schema(value_type = String, example = "A")]
    pub letter: char,
    /// Id of the action.
    #[schema(example = "colder_mixing_water")]
    pub action: &'k str,
    /// Title.
    pub title: String,
    /// What to do.
    pub text: String,
    /// Id of the cause that it is for.
    pub cause: &'k str,
    /// Title of the cause.
    pub cause_title: String,
    /// Probability that it takes away a cause that is at work, `mends` of the order of a diagnosis; of what has no place there
    /// the probability of the cause, times that of the action to mend it.
    #[schema(example = 0.7)]
    pub promise: f64,
    /// What it sets.
    pub settings: Vec<ChangeSetting>,
    /// Ids of what is needed to compute the other quantities.
    pub needs: Vec<&'k str>,
    /// What else it changes.
    pub side_effects: Vec<String>,
    /// What people have to fill in, since it cannot be computed; empty when the sheet says all.
    pub by_hand: Vec<String>,
    /// Actions that aim at the same figures by another way, as baking longer and shorter aim at the same moisture; they have
    /// no run of their own unless they are named.
    pub other_ways: Vec<ActionWithoutRun<'k>>,
}

/// An action that has no run of its own: it is done before the trial, or leads to the figures of a change by another way.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = TrialActionWithoutRun)]
pub struct ActionWithoutRun<'k> {
    /// Id of the action.
    #[schema(example = "weigh_ingredients_again")]
    pub action: &'k str,
    /// Title.
    pub title: String,
    /// What to do.
    pub text: String,
    /// Id of the cause that it is for.
    pub cause: &'k str,
    /// Title of the cause.
    pub cause_title: String,
    /// Minutes that it takes.
    pub effort_minutes: f64,
}

/// A quantity of a change.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = TrialSetting)]
pub struct ChangeSetting {
    /// Name.
    #[schema(example = "water_temperature")]
    pub name: String,
    /// Value in `unit`.
    #[schema(example = 7.2)]
    pub value: f64,
    /// UCUM code.
    #[schema(example = "Cel")]
    pub unit: String,
    /// The same in words.
    #[schema(example = "water temperature 7.2 °C")]
    pub text: String,
    /// Whether it is no more than the law allows, less than it would be; `text` says so.
    pub is_capped: bool,
    /// Whether it stands in the weights of the runs, or in their settings, already.
    pub is_in_runs: bool,
}

/// The batch of the control.
#[derive(Debug, Serialize, ToSchema)]
pub struct BatchWeights {
    /// The part that is weighed: `dough`, `filling` or `icing`.
    #[schema(example = "dough")]
    pub part: &'static str,
    /// By how much the formula of the case was multiplied.
    pub factor: f64,
    /// Mass of the control, kg.
    #[schema(example = 20.0)]
    pub mass_kg: f64,
    /// Flour in the control, kg; the changes are counted on it.
    pub flour_kg: f64,
    /// What to mind.
    pub remarks: Vec<String>,
}

/// A run.
#[derive(Debug, Serialize, ToSchema)]
pub struct TrialRun {
    /// Number, from 1; the control is 1.
    pub run: u32,
    /// Name on the sheet: `control`, or the letters of its changes.
    #[schema(example = "A+B")]
    pub label: String,
    /// Letters of its changes.
    #[schema(value_type = Vec<String>)]
    pub changes: Vec<char>,
    /// Places in the order of baking, one of every repeat; of a control that is baked first and last two of every repeat.
    pub order: Vec<u32>,
    /// What to weigh; empty without a formula.
    pub weights: Vec<RunWeight>,
    /// Mass of the batch with the changes, kg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass_kg: Option<f64>,
    /// What is set otherwise than in the control.
    pub settings: Vec<RunSetting>,
}

/// A line of a run.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct RunWeight {
    /// Id, of an ingredient that the rules declare.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "water")]
    pub ingredient: Option<String>,
    /// Title, or the caller's own name.
    pub name: String,
    /// When it goes in.
    #[schema(example = "dough")]
    pub stage: &'static str,
    /// Mass to weigh, kg.
    pub mass_kg: f64,
    /// Mass in the control, kg; 0 for what the change brings in.
    pub control_kg: f64,
    /// Whether it differs from the control.
    pub is_changed: bool,
}

/// A process setting of a run that differs from the control.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct RunSetting {
    /// Letter of the change.
    #[schema(value_type = String, example = "A")]
    pub letter: char,
    /// Id of the reading; left out where the quantity is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reading: Option<String>,
    /// What is set, in words.
    #[schema(example = "temperature of the mixing water")]
    pub name: String,
    /// To what, in words; `done` where there is no figure.
    #[schema(example = "7.2 °C")]
    pub value: String,
    /// Both, with what limits it.
    #[schema(example = "water temperature 7.2 °C")]
    pub text: String,
}

/// A setting that stays.
#[derive(Debug, Serialize, ToSchema)]
pub struct HeldSetting<'k> {
    /// Id of the reading; left out of what is common practice to hold.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reading: Option<&'k str>,
    /// Value that was measured, in words.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "60 min")]
    pub value: Option<String>,
    /// What to hold, in words.
    #[schema(example = "proof time 60 min, as measured")]
    pub text: String,
    /// Letters of the changes whose runs do not hold it.
    #[schema(value_type = Vec<String>)]
    pub except_in: Vec<char>,
}

/// Kind of what is written down.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum RecordedKind {
    /// A reading.
    Reading,
    /// A symptom, judged by eye, hand or mouth.
    Symptom,
    /// A fact, or what the formula tells.
    Fact,
}

/// What to write down at each run.
#[derive(Debug, Serialize, ToSchema)]
pub struct Recorded<'k> {
    /// Kind.
    pub kind: RecordedKind,
    /// Id.
    #[schema(example = "dough_temperature")]
    pub id: &'k str,
    /// Title.
    pub title: String,
    /// UCUM code of a reading.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<&'k str>,
    /// Method, or how to judge it.
    pub how: String,
    /// Why it stands here.
    pub why: String,
}

/// Kind of what a sample shall show.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum SampleKind {
    /// A difference of means.
    Difference,
    /// A difference of shares.
    Proportion,
    /// Nobody said.
    Open,
}

/// How many pieces to measure.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = TrialSample)]
pub struct SampleAnswer {
    /// What it shall show.
    pub kind: SampleKind,
    /// In words: the pieces, or what is needed to reckon them, with an example.
    pub text: String,
    /// Pieces with the change, and as many without.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pieces_each_setting: Option<u32>,
    /// Pieces of every run.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pieces_each_run: Option<u32>,
    /// Risk of seeing a difference that is not there.
    pub alpha: f64,
    /// Chance of seeing the difference when it is there.
    pub power: f64,
    /// How it was reckoned.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<&'static str>,
    /// Publication of the method.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub source: Option<&'static str>,
    /// What to mind.
    pub remarks: Vec<String>,
}

/// What counts as fixed.
#[derive(Debug, PartialEq, Eq, Serialize, ToSchema)]
pub struct FixedWhen<'k> {
    /// Id of the reading, fact or symptom.
    pub id: &'k str,
    /// The condition in words.
    #[schema(example = "dough temperature below 27 °C")]
    pub text: String,
    /// Where it comes from: the complaint, the plant's limits, the request, or the rules with the cause that it excludes.
    #[schema(example = "the plant's limits")]
    pub from: String,
}

/// A caution of the sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct TrialCaution {
    /// The warning.
    pub text: String,
    /// Why it stands here, where that hangs on the case.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
}

/// Something to fill in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
pub struct Blank {
    /// Name, `snake_case`.
    #[schema(example = "lot")]
    pub name: &'static str,
    /// Its label.
    #[schema(example = "Lot")]
    pub label: &'static str,
}
