//! The problems that operations can answer with.

use std::collections::BTreeMap;

use serde_json::Value;
use utoipa::IntoResponses;
use utoipa::openapi::example::ExampleBuilder;
use utoipa::openapi::{ContentBuilder, Ref, RefOr, Response, ResponseBuilder};

use crate::http::problem::{ErrorCode, PROBLEM_JSON, Problem, ProblemEntry, ProblemKind};
use crate::rules::{Code, Diagnostic, Severity};

/// Problems of routes that take a case.
pub(in crate::http) struct CaseProblems;

/// The same where requests wait for a place.
pub(in crate::http) struct InquiryProblems;

/// Problems of calculations; written once among the components, for there are many.
pub(super) struct CalculationProblems;
/// Problems of routes that take a formula.
pub(in crate::http) struct FormulaProblems;

/// Problems of complaints.
pub(in crate::http) struct ComplaintProblems;

/// Problems of a trial sheet.
pub(in crate::http) struct TrialSheetProblems;

/// Problems of a replay.
pub(in crate::http) struct RecordProblems;

/// Problems of a trial.
pub(in crate::http) struct TrialProblems;

/// Problems of a reload.
pub(in crate::http) struct ReloadProblems;

/// Problems of routes that name an item in their path.
pub(in crate::http) struct ItemProblems;

/// Problems of routes that read or refuse query parameters.
pub(in crate::http) struct ParameterProblems;

type Responses = BTreeMap<String, RefOr<Response>>;

impl IntoResponses for CaseProblems {
    fn responses() -> Responses {
        of_document(ProblemKind::FaultyCase)
    }
}

impl IntoResponses for InquiryProblems {
    fn responses() -> Responses {
        let mut all = of_document(ProblemKind::FaultyCase);
        all.extend(responses(&[ProblemKind::Busy]));
        all
    }
}

impl IntoResponses for FormulaProblems {
    fn responses() -> Responses {
        of_document(ProblemKind::FaultyFormula)
    }
}

impl IntoResponses for ComplaintProblems {
    fn responses() -> Responses {
        of_document(ProblemKind::FaultyComplaint)
    }
}

impl IntoResponses for TrialSheetProblems {
    fn responses() -> Responses {
        of_document(ProblemKind::FaultyTrialSheet)
    }
}

impl IntoResponses for RecordProblems {
    fn responses() -> Responses {
        of_document(ProblemKind::FaultyRecord)
    }
}

impl CalculationProblems {
    const KINDS: [ProblemKind; 7] = [
        ProblemKind::MalformedJson,
        ProblemKind::UnreadableBody,
        ProblemKind::RequestTimeout,
        ProblemKind::BodyTooLarge,
        ProblemKind::UnsupportedMediaType,
        ProblemKind::FaultyInputs,
        ProblemKind::FaultyParameters,
    ];

    fn name(status: &str) -> String {
        format!("CalculationProblem{status}")
    }

    /// The responses, as components.
    pub(super) fn components() -> Responses {
        responses(&Self::KINDS).into_iter().map(|(status, response)| (Self::name(&status), response)).collect()
    }

    /// References to them, by status.
    pub(super) fn references() -> Responses {
        let statuses = responses(&Self::KINDS).into_keys();
        let reference = |status: &str| RefOr::Ref(Ref::from_response_name(Self::name(status)));
        statuses.map(|status| (status.clone(), reference(&status))).collect()
    }
}

impl IntoResponses for ReloadProblems {
    fn responses() -> Responses {
        responses(&[
            ProblemKind::UnknownAuthor,
            ProblemKind::AuthoringOff,
            ProblemKind::FaultyRules,
            ProblemKind::NoRulesFolder,
            ProblemKind::FaultyParameters,
        ])
    }
}

impl IntoResponses for TrialProblems {
    fn responses() -> Responses {
        responses(&[
            ProblemKind::MalformedJson,
            ProblemKind::UnreadableBody,
            ProblemKind::UnknownAuthor,
            ProblemKind::AuthoringOff,
            ProblemKind::RequestTimeout,
            ProblemKind::BodyTooLarge,
            ProblemKind::UnsupportedMediaType,
            ProblemKind::FaultyTrial,
            ProblemKind::LongTrial,
            ProblemKind::FaultyParameters,
            ProblemKind::Busy,
        ])
    }
}

impl IntoResponses for ItemProblems {
    fn responses() -> Responses {
        responses(&[ProblemKind::UnknownItem])
    }
}

impl IntoResponses for ParameterProblems {
    fn responses() -> Responses {
        responses(&[ProblemKind::FaultyParameters])
    }
}

/// Problems of a route that reads one JSON document, with those of the document itself.
fn of_document(faulty: ProblemKind) -> Responses {
    responses(&[
        ProblemKind::MalformedJson,
        ProblemKind::UnreadableBody,
        ProblemKind::RequestTimeout,
        ProblemKind::BodyTooLarge,
        ProblemKind::UnsupportedMediaType,
        faulty,
        ProblemKind::FaultyParameters,
    ])
}

/// One response for every status, with an example for every kind.
fn responses(kinds: &[ProblemKind]) -> Responses {
    let mut by_status: BTreeMap<String, Vec<ProblemKind>> = BTreeMap::new();
    for kind in kinds {
        by_status.entry(kind.status().as_str().to_owned()).or_default().push(*kind);
    }
    by_status.into_iter().map(|(status, kinds)| (status, RefOr::T(response(&kinds)))).collect()
}

fn response(kinds: &[ProblemKind]) -> Response {
    let titles: Vec<&str> = kinds.iter().map(|kind| kind.title()).collect();
    let examples = kinds.iter().map(|kind| {
        let document = serde_json::to_value(example(*kind).document()).unwrap_or(Value::Null);
        (kind.word(), ExampleBuilder::new().summary(kind.title()).value(Some(document)).build())
    });
    let content =
        ContentBuilder::new().schema(Some(Ref::from_schema_name("Problem"))).examples_from_iter(examples).build();
    ResponseBuilder::new().description(titles.join(", or ")).content(PROBLEM_JSON, content).build()
}

/// An occurrence of a kind, as the service tells it.
fn example(kind: ProblemKind) -> Problem {
    let problem = Problem::new(kind);
    match kind {
        ProblemKind::MalformedJson => problem.detail("expected `:` at line 1 column 12"),
        ProblemKind::UnknownItem => problem.detail("unknown cause `dough_to_warm`; did you mean `dough_too_warm`?"),
        ProblemKind::RequestTimeout => problem.detail("the body did not arrive within 10 s"),
        ProblemKind::BodyTooLarge => problem.detail("the body is longer than 1048576 bytes"),
        ProblemKind::UnsupportedMediaType => problem.detail("the body is `text/plain`, not `application/json`"),
        ProblemKind::FaultyCase => problem.entries([unknown_product(ProblemEntry::pointer, "/product")]),
        ProblemKind::FaultyFormula => problem.entries([faulty_line()]),
        ProblemKind::FaultyTrialSheet => problem.entries([unknown_product(ProblemEntry::pointer, "/case/product")]),
        ProblemKind::FaultyRecord => {
            let entry = ProblemEntry::pointer("", ErrorCode::Missing, "`diagnosis` is missing".to_owned());
            problem.entries([entry.help("store the answer to the case as it came".to_owned())])
        }
        ProblemKind::FaultyInputs => {
            let detail = "500 Cel is not between 0 and 60 Cel".to_owned();
            problem.entries([ProblemEntry::pointer("/tap_temperature", ErrorCode::OutOfRange, detail)])
        }
        ProblemKind::FaultyParameters => problem.entries([unknown_product(ProblemEntry::parameter, "product")]),
        ProblemKind::UnknownAuthor => problem.detail("the request carries no key"),
        ProblemKind::FaultyRules => {
            problem.detail("the rules cannot be loaded: 1 fault").diagnostics(vec![diagnostic()])
        }
        ProblemKind::FaultyTrial => {
            let detail = "a text or `null` is wanted, this is a number".to_owned();
            problem.entries([ProblemEntry::pointer("/files/soft_rolls~1mixing.rhai", ErrorCode::WrongType, detail)])
        }
        ProblemKind::FaultyComplaint => problem.entries([unknown_product(ProblemEntry::pointer, "/product")]),
        ProblemKind::LongTrial => problem.detail("the trial was ended after 30 s"),
        ProblemKind::UnreadableBody
        | ProblemKind::AuthoringOff
        | ProblemKind::NoRulesFolder
        | ProblemKind::Busy
        | ProblemKind::UnknownRoute
        | ProblemKind::MethodNotAllowed
        | ProblemKind::Internal => problem,
    }
}

fn faulty_line() -> ProblemEntry {
    let detail = "-3 is not at least 0".to_owned();
    ProblemEntry::pointer("/formula/ingredients/1/amount", ErrorCode::OutOfRange, detail)
}

fn diagnostic() -> Diagnostic {
    Diagnostic {
        code: Code::UnknownName,
        severity: Severity::Fault,
        file: "soft_rolls/mixing.rhai".to_owned(),
        line: 12,
        column: 15,
        width: 17,
        source_line: "    .evidence(dough_temprature > 30, STRONG)".to_owned(),
        message: "unknown name `dough_temprature`".to_owned(),
        help: Some("did you mean `dough_temperature`?".to_owned()),
    }
}

fn unknown_product(entry: fn(&str, ErrorCode, String) -> ProblemEntry, place: &str) -> ProblemEntry {
    let detail = "unknown product `hamburger_bum`".to_owned();
    entry(place, ErrorCode::UnknownName, detail).help("did you mean `hamburger_bun`?".to_owned())
}
