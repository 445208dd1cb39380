//! `/v1/causes`: what may go wrong.

mod rule;

use actix_web::HttpResponse;
use actix_web::web::{Data, Path};
use serde::Serialize;
use utoipa::ToSchema;

pub(crate) use rule::CauseRule;

use crate::http::openapi::{ItemProblems, ParameterProblems};
use crate::http::parameters::{NoParameters, ProductFilter};
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::json;
use crate::knowledge::{Cause, Key, Knowledge, ProductView};
use crate::listings::keys;
use crate::live_rules::LiveRules;
use crate::suggest::did_you_mean;

/// Causes, of one product or all.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct CauseList<'k> {
    /// The causes, in the order of the rules.
    causes: Vec<CauseItem<'k>>,
}

/// A cause in short.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = Cause)]
struct CauseItem<'k> {
    /// Id.
    #[schema(example = "dough_too_warm")]
    id: &'k str,
    /// Title for people.
    #[schema(example = "Dough too warm at make-up")]
    title: &'k str,
    /// How it brings its symptoms about.
    #[schema(example = "Warm dough gasses before it has strength; cells near the skin merge and lift the crust.")]
    description: &'k str,
    /// Probability for the product before anything is known of a case; only with `?product=`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = 0.1)]
    prior: Option<f64>,
}

/// List the causes
#[utoipa::path(
    get,
    path = "/v1/causes",
    tag = "vocabulary",
    operation_id = "listCauses",
    params(("product" = Option<String>, Query, description = "Id of a product: only what can befall it", example = "hamburger_bun")),
    responses((status = 200, description = "The causes", body = CauseList<'_>), ParameterProblems)
)]
pub(crate) async fn list(rules: Data<LiveRules>, filter: ProductFilter) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let knowledge = rules.diagnostician.knowledge();
    let view = filter.view(knowledge)?;
    let keys = keys(&knowledge.declared.causes, view.map(|view| view.causes.as_slice()));
    json(&CauseList { causes: keys.into_iter().map(|key| item(knowledge, view, key)).collect() })
}

/// Show a cause
///
/// The whole rule: what shows it, what speaks for and against it, what can be done, and where that is known from.
#[utoipa::path(
    get,
    path = "/v1/causes/{id}",
    tag = "vocabulary",
    operation_id = "showCause",
    params(("id" = String, Path, description = "Id of the cause", example = "dough_too_warm")),
    responses((status = 200, description = "The cause", body = CauseRule<'_>), ItemProblems, ParameterProblems)
)]
pub(crate) async fn show(rules: Data<LiveRules>, _: NoParameters, id: Path<String>) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let knowledge = rules.diagnostician.knowledge();
    let key = find(knowledge, &id)?;
    json(&CauseRule::new(knowledge, key))
}

fn find(knowledge: &Knowledge, id: &str) -> Result<Key<Cause>, Problem> {
    let causes = &knowledge.declared.causes;
    causes.find(id).ok_or_else(|| {
        let help = did_you_mean(id, causes.ids()).map(|help| format!("; {help}")).unwrap_or_default();
        Problem::new(ProblemKind::UnknownItem).detail(format!("unknown cause `{id}`{help}"))
    })
}

fn item<'k>(knowledge: &'k Knowledge, view: Option<&ProductView>, key: Key<Cause>) -> CauseItem<'k> {
    let cause = &knowledge.declared.causes[key];
    CauseItem {
        id: &cause.id,
        title: &cause.title,
        description: &cause.mechanism,
        prior: view.and_then(|view| rule::prior(view, key)),
    }
}
