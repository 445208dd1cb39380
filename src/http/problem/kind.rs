//! The catalogue of problems.

use actix_web::http::StatusCode;

/// What can go wrong with a request; the words are stable.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum ProblemKind {
    /// The body is not JSON.
    MalformedJson,
    /// The body broke off or is coded wrongly.
    UnreadableBody,
    /// The request does not carry the key of authors.
    UnknownAuthor,
    /// The service takes no changes of rules.
    AuthoringOff,
    /// Nothing stands at the path.
    UnknownRoute,
    /// The rules declare no such thing.
    UnknownItem,
    /// The path is there, the method is not.
    MethodNotAllowed,
    /// The request took too long to arrive.
    RequestTimeout,
    /// The rules of the folder have faults or fail their tests.
    FaultyRules,
    /// The rules come from no folder.
    NoRulesFolder,
    /// The body is over the limit.
    BodyTooLarge,
    /// The body is something other than JSON text.
    UnsupportedMediaType,
    /// The JSON is no case that the rules can judge.
    FaultyCase,
    /// The JSON is not what the calculation takes.
    FaultyInputs,
    /// The JSON is no request about a formula that can be computed.
    FaultyFormula,
    /// The JSON is no request for a trial sheet that can be planned.
    FaultyTrialSheet,
    /// The JSON is no record of a diagnosis that can be replayed.
    FaultyRecord,
    /// The JSON is no trial of rules.
    FaultyTrial,
    /// The request about a complaint has faults.
    FaultyComplaint,
    /// The trial took too long.
    LongTrial,
    /// A query parameter is unknown, double or names something unknown.
    FaultyParameters,
    /// The service failed.
    Internal,
    /// The service does as much of this as it can.
    Busy,
}

impl ProblemKind {
    /// The whole catalogue.
    pub const ALL: [Self; 23] = [
        Self::MalformedJson,
        Self::UnreadableBody,
        Self::UnknownAuthor,
        Self::AuthoringOff,
        Self::UnknownRoute,
        Self::UnknownItem,
        Self::MethodNotAllowed,
        Self::RequestTimeout,
        Self::FaultyRules,
        Self::NoRulesFolder,
        Self::BodyTooLarge,
        Self::UnsupportedMediaType,
        Self::FaultyCase,
        Self::FaultyInputs,
        Self::FaultyFormula,
        Self::FaultyTrialSheet,
        Self::FaultyRecord,
        Self::FaultyTrial,
        Self::FaultyComplaint,
        Self::LongTrial,
        Self::FaultyParameters,
        Self::Internal,
        Self::Busy,
    ];

    /// Status of the answer.
    #[must_use]
    pub fn status(self) -> StatusCode {
        match self {
            Self::MalformedJson | Self::UnreadableBody => StatusCode::BAD_REQUEST,
            Self::UnknownAuthor => StatusCode::UNAUTHORIZED,
            Self::AuthoringOff => StatusCode::FORBIDDEN,
            Self::UnknownRoute | Self::UnknownItem => StatusCode::NOT_FOUND,
            Self::MethodNotAllowed => StatusCode::METHOD_NOT_ALLOWED,
            Self::RequestTimeout => StatusCode::REQUEST_TIMEOUT,
            Self::FaultyRules | Self::NoRulesFolder => StatusCode::CONFLICT,
            Self::BodyTooLarge => StatusCode::PAYLOAD_TOO_LARGE,
            Self::UnsupportedMediaType => StatusCode::UNSUPPORTED_MEDIA_TYPE,
            Self::FaultyCase
            | Self::FaultyInputs
            | Self::FaultyFormula
            | Self::FaultyTrialSheet
            | Self::FaultyRecord
            | Self::FaultyTrial
            | Self::FaultyComplaint
            | Self::LongTrial
            | Self::FaultyParameters => StatusCode::UNPROCESSABLE_ENTITY,
            Self::Internal => StatusCode::INTERNAL_SERVER_ERROR,
            Self::Busy => StatusCode::SERVICE_UNAVAILABLE,
        }
    }

    /// Whether the rest of the body may still be on its way, so that the connection is of no further use.
    #[must_use]
    pub fn ends_connection(self) -> bool {
        matches!(self, Self::RequestTimeout | Self::BodyTooLarge | Self::UnreadableBody)
    }

    /// The stable word, for example `faulty-case`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::MalformedJson => "malformed-json",
            Self::UnreadableBody => "unreadable-body",
            Self::UnknownAuthor => "unknown-author",
            Self::AuthoringOff => "authoring-off",
            Self::UnknownRoute => "unknown-route",
            Self::UnknownItem => "unknown-item",
            Self::MethodNotAllowed => "method-not-allowed",
            Self::RequestTimeout => "request-timeout",
            Self::FaultyRules => "faulty-rules",
            Self::NoRulesFolder => "no-rules-folder",
            Self::BodyTooLarge => "body-too-large",
            Self::UnsupportedMediaType => "unsupported-media-type",
            Self::FaultyCase => "faulty-case",
            Self::FaultyInputs => "faulty-inputs",
            Self::FaultyFormula => "faulty-formula",
            Self::FaultyTrialSheet => "faulty-trial-sheet",
            Self::FaultyRecord => "faulty-record",
            Self::FaultyTrial => "faulty-trial",
            Self::FaultyComplaint => "faulty-complaint",
            Self::LongTrial => "long-trial",
            Self::FaultyParameters => "faulty-parameters",
            Self::Internal => "internal",
            Self::Busy => "busy",
        }
    }

    /// The kind of a word.
    #[must_use]
    pub fn named(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.word() == word)
    }

    /// The `type` of the problem: a path at which the service explains it.
    #[must_use]
    pub fn type_uri(self) -> String {
        format!("/v1/problems/{}", self.word())
    }

    /// What it is, the same for every occurrence.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::MalformedJson => "the body is not JSON",
            Self::UnreadableBody => "the body cannot be read",
            Self::UnknownAuthor => "the key of authors is wanted",
            Self::AuthoringOff => "the service takes no changes of rules",
            Self::UnknownRoute => "nothing stands at this path",
            Self::UnknownItem => "there is no such item",
            Self::MethodNotAllowed => "the method is not allowed here",
            Self::RequestTimeout => "the request took too long to arrive",
            Self::FaultyRules => "the rules of the folder are not put to work",
            Self::NoRulesFolder => "the rules come from no folder",
            Self::BodyTooLarge => "the body is too large",
            Self::UnsupportedMediaType => "the body is not JSON text in UTF-8",
            Self::FaultyCase => "the case has faults",
            Self::FaultyInputs => "the inputs have faults",
            Self::FaultyFormula => "the request about the formula has faults",
            Self::FaultyTrialSheet => "the request for the trial sheet has faults",
            Self::FaultyRecord => "the record has faults",
            Self::FaultyTrial => "the trial has faults",
            Self::FaultyComplaint => "the request about the complaint has faults",
            Self::LongTrial => "the trial took too long",
            Self::FaultyParameters => "the query parameters have faults",
            Self::Internal => "the service failed",
            Self::Busy => "the service is busy with others",
        }
    }

    /// What the caller can do about it.
    #[must_use]
    pub fn advice(self) -> &'static str {
        match self {
            Self::MalformedJson => "Mend the JSON text at the line and column that `detail` names.",
            Self::UnreadableBody => "Send the body whole, with a correct length or transfer coding.",
            Self::UnknownAuthor => {
                "Send `Authorization: Bearer` with the key that the service has as `rules.author_key`."
            }
            Self::AuthoringOff => {
                "Set `rules.author_key`; without it rules can be tried and reloaded by request only where the service \
                 listens on a loopback address."
            }
            Self::UnknownRoute => "The routes are listed at `/docs/` and in `/openapi.json`.",
            Self::UnknownItem => "The listing of the resource tells the ids that the rules declare.",
            Self::MethodNotAllowed => "Use a method that the `Allow` header field names.",
            Self::RequestTimeout => "Send the request again, and faster.",
            Self::FaultyRules => {
                "Mend every entry of `diagnostics`; `whybake check` tells the same. The rules that were in force stay."
            }
            Self::NoRulesFolder => {
                "Start the service with `--rules DIR`; the rules of the program itself never change."
            }
            Self::BodyTooLarge => "Send one case a request; the limit can be raised in the settings of the service.",
            Self::UnsupportedMediaType => {
                "Send JSON text in UTF-8 with `Content-Type: application/json` and without a content coding."
            }
            Self::FaultyCase => "Mend every entry of `errors`; each names the place by a JSON Pointer (RFC 6901).",
            Self::FaultyInputs => {
                "Mend every entry of `errors`; `GET` at the same path tells the inputs with units and ranges."
            }
            Self::FaultyFormula => "Mend every entry of `errors`; `/v1/ingredients` lists what a formula may name.",
            Self::FaultyTrialSheet => {
                "Mend every entry of `errors`; what stands under `/case` is a fault of the case. `/v1/diagnoses` tells the \
                 actions that a trial can take."
            }
            Self::FaultyRecord => {
                "Send `case` and `diagnosis` as they were; mend every entry of `errors`. What the rules now in force say \
                 against the case is no fault: the replay tells it."
            }
            Self::FaultyTrial => "Mend every entry of `errors`; each names the place by a JSON Pointer (RFC 6901).",
            Self::FaultyComplaint => {
                "Mend every entry of `errors`; the text is a string, and `/v1/products` lists the products."
            }
            Self::LongTrial => "Try with fewer cases, or run `whybake compare`, which takes as long as it needs.",
            Self::FaultyParameters => "Mend every entry of `errors`; each names the parameter.",
            Self::Internal => "The log of the service tells the reason; report it to whoever runs the service.",
            Self::Busy => "Ask again after the seconds that the `Retry-After` header field names.",
        }
    }
}
