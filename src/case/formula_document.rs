//! The shape of requests about formulas as callers write them.

use serde::Serialize;
use utoipa::ToSchema;

use super::FormulaDocument;

/// A formula, of a product where that matters.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = FormulaRequest)]
pub struct FormulaRequestDocument {
    /// Id of the product; lines without a stage belong to the main part of its family, else to the dough.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "hamburger_bun")]
    pub product: Option<String>,
    /// The formula, as in a case.
    pub formula: FormulaDocument,
}

/// A formula and the batch that is wanted of it: `mass`, or `pieces` with `piece_mass`.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = BatchRequest)]
pub struct BatchDocument {
    /// Id of the product.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "hamburger_bun")]
    pub product: Option<String>,
    /// The formula, as in a case.
    pub formula: FormulaDocument,
    /// The part to scale: `dough`, `filling` or `icing`; left out for the main part.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part: Option<String>,
    /// Mass of the part.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass: Option<MeasureDocument>,
    /// Number of pieces.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 1, example = 1000)]
    pub pieces: Option<u32>,
    /// Mass of one piece when baked and cooled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub piece_mass: Option<MeasureDocument>,
    /// Mass lost in baking and cooling, in % of the dough; left out for none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bake_loss: Option<MeasureDocument>,
}

/// A formula and the classic ratio that it is set against.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = RatioRequest)]
pub struct RatioDocument {
    /// Id of the product; its own ratio is taken, or that of its family.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub product: Option<String>,
    /// The formula, as in a case.
    pub formula: FormulaDocument,
    /// Name of a classic ratio, where it is not that of the product.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "short_pastry")]
    pub ratio: Option<String>,
}

/// A value with its unit.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = Measure)]
pub struct MeasureDocument {
    /// Value, in `unit`.
    #[schema(example = 120.0, minimum = 0.0)]
    pub value: f64,
    /// UCUM code.
    #[schema(example = "kg")]
    pub unit: String,
}
