//! `/v1/symptoms`: what people can see, feel or taste.

use actix_web::HttpResponse;
use actix_web::web::Data;
use serde::Serialize;
use utoipa::ToSchema;

use super::common::{CautionItem, cautions, ids, keys};
use crate::http::openapi::ParameterProblems;
use crate::http::parameters::ProductFilter;
use crate::http::problem::Problem;
use crate::http::reply::json;
use crate::knowledge::{Declarations, Knowledge, ProductView, Symptom};
use crate::live_rules::LiveRules;

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

/// List the symptoms
#[utoipa::path(
    get,
    path = "/v1/symptoms",
    tag = "vocabulary",
    operation_id = "listSymptoms",
    params(("product" = Option<String>, Query, description = "Id of a product: only what concerns it", example = "hamburger_bun")),
    responses((status = 200, description = "The symptoms", body = SymptomList<'_>), ParameterProblems)
)]
pub(crate) async fn list(rules: Data<LiveRules>, filter: ProductFilter) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let knowledge = rules.diagnostician.knowledge();
    json(&listing(knowledge, filter.view(knowledge)?))
}

/// The listing, of one product or all.
pub(super) fn listing<'k>(knowledge: &'k Knowledge, view: Option<&ProductView>) -> SymptomList<'k> {
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
