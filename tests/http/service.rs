//! The service under test, with the rules that the binary carries.

use std::sync::{Arc, LazyLock};
use std::time::{Duration, SystemTime};

use actix_web::http::Method;
use actix_web::http::header::HeaderMap;
use actix_web::test::{TestRequest, call_service, init_service, read_body};
use actix_web::web::{Bytes, Data};
use serde_json::Value;
use whybake::http::{AppState, AuthorAccess, Authoring, BodyLimits, Planning, create_app};
use whybake::live_rules::LiveRules;
use whybake::rule_set::RuleSet;
use whybake::rules::RuleFiles;
use whybake::settings::TestsPolicy;

/// Largest body that the service under test takes, bytes.
pub(crate) const BODY_LIMIT: usize = 20_000;

static STATE: LazyLock<AppState> = LazyLock::new(|| AppState {
    rules: Data::from(live_rules()),
    authoring: Data::new(everybody()),
    planning: Data::new(Planning::default()),
    body_limits: BodyLimits { bytes: BODY_LIMIT, time: Duration::from_secs(5) },
});

/// The embedded rules, loaded at 2026-01-31 06:30:00 UTC.
pub(crate) fn live_rules() -> Arc<LiveRules> {
    let rules = RuleSet::load(RuleFiles::embedded(), TestsPolicy::Ignored).unwrap();
    let loaded_at = SystemTime::UNIX_EPOCH + Duration::from_secs(1_769_841_000);
    Arc::new(LiveRules::new(rules, loaded_at))
}

/// Authoring without a key and without a folder.
pub(crate) fn everybody() -> Authoring {
    Authoring::new(AuthorAccess::Everybody, None)
}

/// What the service answered.
pub(crate) struct Answer {
    pub(crate) status: u16,
    pub(crate) headers: HeaderMap,
    pub(crate) body: Bytes,
}

impl Answer {
    /// A header field as text; empty when it is not there.
    pub(crate) fn header(&self, name: &str) -> &str {
        self.headers.get(name).map_or("", |value| value.to_str().unwrap())
    }

    pub(crate) fn json(&self) -> Value {
        serde_json::from_slice(&self.body).unwrap()
    }

    /// The JSON of a successful answer.
    #[track_caller]
    pub(crate) fn success(&self) -> Value {
        assert_eq!(self.status, 200, "{}", String::from_utf8_lossy(&self.body));
        assert_eq!(self.header("content-type"), "application/json");
        self.json()
    }

    /// The whole problem must be as `expected`, its status that of the answer.
    #[track_caller]
    pub(crate) fn assert_problem(&self, expected: Value) {
        assert_eq!(self.json(), expected);
        assert_eq!(self.header("content-type"), "application/problem+json");
        assert_eq!(Value::from(self.status), expected["status"]);
    }
}

/// What the workers of the service under test share.
pub(crate) fn state() -> &'static AppState {
    &STATE
}

pub(crate) async fn send(request: TestRequest) -> Answer {
    send_to(&STATE, request).await
}

/// Sends a request to a service of another state.
pub(crate) async fn send_to(state: &AppState, request: TestRequest) -> Answer {
    let service = init_service(create_app(state)).await;
    let response = call_service(&service, request.to_request()).await;
    let (status, headers) = (response.status().as_u16(), response.headers().clone());
    Answer { status, headers, body: read_body(response).await }
}

pub(crate) async fn get(uri: &str) -> Answer {
    send(TestRequest::get().uri(uri)).await
}

pub(crate) async fn ask(method: Method, uri: &str) -> Answer {
    send(TestRequest::default().method(method).uri(uri)).await
}

/// Posts a case with the media type of JSON.
pub(crate) async fn diagnose(case: impl Into<Bytes>) -> Answer {
    send(post("application/json", case)).await
}

pub(crate) fn post(content_type: &str, body: impl Into<Bytes>) -> TestRequest {
    TestRequest::post().uri("/v1/diagnoses").insert_header(("content-type", content_type)).set_payload(body)
}

/// The item of a listing that has an id.
pub(crate) fn item<'v>(list: &'v Value, id: &str) -> &'v Value {
    let items = list.as_array().unwrap();
    items.iter().find(|item| item["id"] == id).unwrap_or_else(|| panic!("`{id}` is not listed"))
}
