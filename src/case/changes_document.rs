//! The shape of a what-if request as callers write it.

use std::collections::BTreeMap;

use serde::Serialize;
use utoipa::ToSchema;

use super::{CaseDocument, ReadingDocument, SymptomDocument};

/// A case, and what is to be tried on it.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = WhatIfRequest)]
pub struct WhatIfDocument {
    /// The case as it is.
    pub case: CaseDocument,
    /// What is tried.
    pub changes: ChangesDocument,
    /// Anything of the caller's; it is handed back as it came. Left out, that of the case is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reference: Option<serde_json::Value>,
}

/// What is tried on a case; at least one member.
#[derive(Debug, Clone, Default, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = CaseChanges)]
pub struct ChangesDocument {
    /// Readings by id, in the place of those of the case or beside them. Limits that are left out stay, unless they contradict those that are given.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    #[schema(required = false)]
    pub readings: BTreeMap<String, ReadingDocument>,
    /// Facts by id.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    #[schema(required = false)]
    pub facts: BTreeMap<String, bool>,
    /// Symptoms, in the place of those of the case or beside them.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub symptoms: Vec<SymptomDocument>,
    /// Amounts of the formula.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub ingredients: Vec<IngredientChangeDocument>,
    /// Ids of actions that are done, each with the quantities that it has in the case.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false, example = json!(["colder_mixing_water"]))]
    pub actions: Vec<String>,
}

/// An amount of the formula that is tried.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = IngredientChange)]
pub struct IngredientChangeDocument {
    /// Id of the ingredient.
    #[schema(example = "water")]
    pub ingredient: String,
    /// Amount: 0, or from 1e-9 to 1e9 kg or % on flour; left out only where all of it is taken out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = 2.0, minimum = 0.0)]
    pub amount: Option<f64>,
    /// UCUM code of a mass in the batch, or `%` on flour.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "%")]
    pub unit: Option<String>,
    /// `doses` (the default): the amount becomes this; `adds`, `takes_out`: it changes by this.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "adds")]
    pub how: Option<String>,
}
