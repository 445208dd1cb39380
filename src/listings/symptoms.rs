//! The symptoms of the rules: what people can see, feel or taste.

use serde::Serialize;
use utoipa::ToSchema;

use super::parts::{CautionItem, cautions, ids, keys};
use crate::knowledge::{Declarations, Knowledge, ProductView, Symptom};

/// Symptoms, of one product or all.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct SymptomList<'k> {
    /// The symptoms, in the order of the rules.
    symptoms: Vec<SymptomItem<'k>>,
}

/// A symptom that a case may name.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = DeclaredSymptom)]
struct SymptomItem<'k> {
    /// Id, as in a case.
    #[schema(example = "hollow_under_crust")]
    id: &'k str,
    /// Title for people.
    #[schema(example = "Hollow under the top crust")]
    title: &'k str,
    /// How to recognise it.
    #[schema(example = "Cut the roll upright: a flat gap between the top crust and the crumb.")]
    description: &'k str,
    /// Part of the product.
    #[schema(example = "crust")]
    part: &'k str,
    /// Other words for it.
    #[schema(example = json!(["flying top", "cap comes off"]))]
    synonyms: Vec<&'k str>,
    /// Ids of symptoms that cannot be present together with it.
    contradicts: Vec<&'k str>,
    /// Cautions.
    cautions: Vec<CautionItem<'k>>,
}

/// The listing, of one product or all.
pub(crate) fn symptoms<'k>(knowledge: &'k Knowledge, view: Option<&ProductView>) -> SymptomList<'k> {
    let declared = &knowledge.declared;
    let keys = keys(&declared.symptoms, view.map(|view| view.listed_symptoms.as_slice()));
    SymptomList { symptoms: keys.into_iter().map(|key| item(declared, &declared.symptoms[key])).collect() }
}

fn item<'k>(declared: &'k Declarations, symptom: &'k Symptom) -> SymptomItem<'k> {
    SymptomItem {
        id: &symptom.id,
        title: &symptom.title,
        description: &symptom.description,
        part: &symptom.part,
        synonyms: symptom.synonyms.iter().map(String::as_str).collect(),
        contradicts: ids(&declared.symptoms, &symptom.contradicts),
        cautions: cautions(declared, &symptom.cautions),
    }
}
