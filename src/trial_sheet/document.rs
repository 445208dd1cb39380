//! The shape of a request for a trial sheet as callers write it: for the schema.

use serde::Serialize;
use utoipa::ToSchema;

use super::request::{ControlPlace, DesignKind};
use crate::case::{CaseDocument, MeasureDocument};

/// A case, the batch of a run, and what else is wanted of the trial.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = TrialSheetRequest)]
pub struct TrialSheetDocument {
    /// The case; its formula is what the control is weighed by.
    pub case: CaseDocument,
    /// How large a run is: `mass`, or `pieces` with `piece_mass`.
    pub batch: TrialBatchDocument,
    /// Ids of the actions to try, one to four; left out, the first of the order of a diagnosis (`action_order`).
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = json!(["colder_mixing_water"]))]
    pub actions: Option<Vec<String>>,
    /// How changes are laid out over the runs; left out, one change at a time.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub design: Option<DesignKind>,
    /// When the control is baked; left out, in a place by lot.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub control: Option<ControlPlace>,
    /// How often every run is baked, 1 (when left out) to 4.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 1, maximum = 4)]
    pub repeats: Option<u32>,
    /// What shall be seen, from which the number of pieces follows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub measure: Option<TrialMeasureDocument>,
    /// Whole number that the order of the runs is drawn from; left out, one that follows from the case.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0, maximum = 4_294_967_295_u64)]
    pub seed: Option<u32>,
    /// Anything of the caller's; it is handed back as it came. Left out, that of the case is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reference: Option<serde_json::Value>,
}

/// The batch of a run: `mass`, or `pieces` with `piece_mass`.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = TrialBatch)]
pub struct TrialBatchDocument {
    /// The part to scale: `dough`, `filling` or `icing`; left out for the main part.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part: Option<String>,
    /// Mass of the part in the control.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass: Option<MeasureDocument>,
    /// Number of pieces.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 1)]
    pub pieces: Option<u32>,
    /// Mass of one piece when baked and cooled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub piece_mass: Option<MeasureDocument>,
    /// Mass lost in baking and cooling, in % of the dough; left out for none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bake_loss: Option<MeasureDocument>,
}

/// What shall be seen: a `difference` of a `reading` with its `standard_deviation`, or a change of the share of faulty
/// pieces from `faulty_now` to `faulty_wanted`.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = TrialMeasure)]
pub struct TrialMeasureDocument {
    /// Id of the reading.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "specific_volume")]
    pub reading: Option<String>,
    /// Least difference of the means that would be worth the change.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub difference: Option<MeasureDocument>,
    /// Standard deviation from piece to piece at one setting, from the plant's own readings.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub standard_deviation: Option<MeasureDocument>,
    /// Id of the symptom that makes a piece faulty.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "hollow_under_crust")]
    pub symptom: Option<String>,
    /// Share of faulty pieces now.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub faulty_now: Option<MeasureDocument>,
    /// Share of faulty pieces that is wanted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub faulty_wanted: Option<MeasureDocument>,
    /// Risk of seeing a difference that is not there; left out, 0.05.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0.001, maximum = 0.5)]
    pub alpha: Option<f64>,
    /// Chance of seeing the difference when it is there; left out, 0.8.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0.5, maximum = 0.999)]
    pub power: Option<f64>,
}
