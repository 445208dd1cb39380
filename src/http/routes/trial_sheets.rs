//! `/v1/trial_sheets`: from a case to the plan of a trial bake.

use actix_web::HttpResponse;
use actix_web::web::Data;

use crate::http::body::JsonText;
use crate::http::openapi::TrialSheetProblems;
use crate::http::parameters::PaperFormat;
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::{json, markdown, printed_page};
use crate::live_rules::LiveRules;
use crate::trial_sheet::{self, TrialRequest, TrialSheet, TrialSheetDocument};

/// Plan a trial bake
///
/// From a case and the batch of a run: the control and the changes in the order of a diagnosis, the weights of every run, what
/// to set, to hold and to write down, how many pieces to measure, what counts as fixed, when to stop, cautions. The same
/// request and the same rules give the same bytes.
#[utoipa::path(
    post,
    path = "/v1/trial_sheets",
    tag = "trial sheets",
    operation_id = "planTrial",
    params((
        "format" = Option<String>, Query,
        description = "`json` (when left out), `markdown`, or `page`: HTML that prints on one side of A4, in type of 7.5 to 9 pt as \
            the plan needs; what it leaves out for want of room it names. The fullest plans have a second page to write on, and \
            the first says so"
    )),
    request_body(content = TrialSheetDocument, description = "The case and the trial", content_type = "application/json"),
    responses(
        (
            status = 200, description = "The sheet",
            content((TrialSheet<'_> = "application/json"), (String = "text/markdown"), (String = "text/html"))
        ),
        TrialSheetProblems
    )
)]
pub(crate) async fn create(
    rules: Data<LiveRules>,
    format: PaperFormat,
    text: JsonText,
) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let request = TrialRequest::parse(&text, rules.diagnostician.knowledge())
        .map_err(Problem::faulty(ProblemKind::FaultyTrialSheet))?;
    let sheet =
        TrialSheet::plan(&rules.diagnostician, &request).map_err(Problem::faulty(ProblemKind::FaultyTrialSheet))?;
    match format {
        PaperFormat::Json => json(&sheet),
        PaperFormat::Markdown => Ok(markdown(trial_sheet::markdown(&sheet))),
        PaperFormat::Page => Ok(printed_page(trial_sheet::page(&sheet))),
    }
}
