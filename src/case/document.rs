//! The shape of a case as callers write it: for the schema, and for programs that build cases.

use std::collections::BTreeMap;

use serde::Serialize;
use utoipa::ToSchema;

/// A case: a product, and what is known of what went wrong.
#[derive(Debug, Clone, Default, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = Case)]
pub struct CaseDocument {
    /// Id of the product.
    #[schema(example = "hamburger_bun")]
    pub product: String,
    /// Symptoms that were looked at; leave out what nobody looked at.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub symptoms: Vec<SymptomDocument>,
    /// Readings by id; leave out what was not measured.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    #[schema(required = false)]
    pub readings: BTreeMap<String, ReadingDocument>,
    /// Facts by id; leave out what is not known.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    #[schema(required = false)]
    pub facts: BTreeMap<String, bool>,
    /// The formula.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub formula: Option<FormulaDocument>,
    /// What the answer must respect.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub requirements: Option<RequirementsDocument>,
    /// Anything of the caller's; it is handed back as it came.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reference: Option<serde_json::Value>,
}

/// A symptom that was looked at.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = Symptom)]
pub struct SymptomDocument {
    /// Id of the symptom.
    #[schema(example = "hollow_under_crust")]
    pub symptom: String,
    /// Whether it was seen (the default) or seen to be absent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub present: Option<bool>,
    /// How certain that is, 0 to 1; 1 is the default, 0.5 tells nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0.0, maximum = 1.0)]
    pub certainty: Option<f64>,
}

/// A reading with the plant's own limits.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = Reading)]
pub struct ReadingDocument {
    /// Value, in `unit`.
    #[schema(example = 31.5)]
    pub value: f64,
    /// UCUM code of the unit of the value and of the limits.
    #[schema(example = "Cel")]
    pub unit: String,
    /// The plant's low limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub low: Option<f64>,
    /// The plant's target.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub target: Option<f64>,
    /// The plant's high limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub high: Option<f64>,
}

/// A formula.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = Formula)]
pub struct FormulaDocument {
    /// Its lines: all amounts as masses, or all in % on flour.
    #[schema(min_items = 1)]
    pub ingredients: Vec<IngredientDocument>,
    /// Whether the lines are all there is; left out, four or more lines count as a whole formula. Of a fragment, what is
    /// not named is unknown, not zero.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub complete: Option<bool>,
}

/// One line of a formula: a declared `ingredient`, or a `name` with a `composition`.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = FormulaLine)]
pub struct IngredientDocument {
    /// Id of an ingredient that the rules declare.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "bread_flour")]
    pub ingredient: Option<String>,
    /// Name of an ingredient of the caller's own.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Whether the caller's own ingredient counts as flour.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub flour: Option<bool>,
    /// What the caller's own ingredient does, for example `fat`; left out, its roles are unknown.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = json!(["fat"]))]
    pub roles: Option<Vec<String>>,
    /// Sodium bicarbonate in the caller's own ingredient, g/100 g.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0.0, maximum = 100.0)]
    pub soda: Option<f64>,
    /// Sodium bicarbonate that 100 g of the caller's own ingredient neutralise, g.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0.0, maximum = 300.0)]
    pub neutralising_value: Option<f64>,
    /// Composition of the caller's own ingredient, g/100 g; what is left out is unknown.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub composition: Option<CompositionDocument>,
    /// Amount: 0, or from 1e-9 to 1e9 kg or % on flour.
    #[schema(example = 50.0, minimum = 0.0)]
    pub amount: f64,
    /// UCUM code of a mass, or `%` on flour (without flour: any parts of the whole).
    #[schema(example = "kg")]
    pub unit: String,
    /// Stage: `preferment`, `sponge`, `dough`, `filling` or `icing`; left out for the main stage of the product.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stage: Option<String>,
}

/// Composition in g/100 g; what is left out is unknown, not zero.
#[derive(Debug, Clone, Default, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = Composition)]
pub struct CompositionDocument {
    /// Water.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub water: Option<f64>,
    /// Fat.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fat: Option<f64>,
    /// Protein.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub protein: Option<f64>,
    /// Sucrose.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sucrose: Option<f64>,
    /// Glucose.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub glucose: Option<f64>,
    /// Fructose.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fructose: Option<f64>,
    /// Lactose.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lactose: Option<f64>,
    /// Maltose.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub maltose: Option<f64>,
    /// Starch.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub starch: Option<f64>,
    /// Sodium chloride.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub salt: Option<f64>,
    /// Ethanol; counts as none when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub alcohol: Option<f64>,
    /// Ash, salt included.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ash: Option<f64>,
    /// Dextrins: the higher saccharides of syrups, maltodextrin; counts as none when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dextrins: Option<f64>,
    /// Glycerol; counts as none when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub glycerol: Option<f64>,
    /// Sorbitol; counts as none when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sorbitol: Option<f64>,
    /// Citric and other fruit acids, lactic and acetic acid; counts as none when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub acids: Option<f64>,
    /// Fibre, dry; counts as none when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fibre: Option<f64>,
}

/// What the answer must respect.
#[derive(Debug, Clone, Default, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = Requirements)]
pub struct RequirementsDocument {
    /// Ids of diets.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false, example = json!(["halal"]))]
    pub diets: Vec<String>,
    /// Id of the market whose law applies.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "US")]
    pub market: Option<String>,
    /// Ids of ingredients and allergens to avoid.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false, example = json!(["lard"]))]
    pub avoid: Vec<String>,
}
