//! The body of a request: JSON text within limits of size and time.

use std::future::Future;
use std::ops::Deref;
use std::pin::Pin;
use std::time::Duration;

use actix_web::dev::Payload;
use actix_web::http::header::{CONTENT_ENCODING, CONTENT_LENGTH, CONTENT_TYPE, HeaderName};
use actix_web::rt::time::timeout;
use actix_web::web::{self, Bytes};
use actix_web::{FromRequest, HttpRequest};

use super::problem::{Problem, ProblemKind};

/// What a request body may take.
#[derive(Debug, Clone, Copy)]
pub struct BodyLimits {
    /// Largest body, bytes.
    pub bytes: usize,
    /// Longest time in which the body must have arrived.
    pub time: Duration,
}

/// JSON text as it came: the media type and the limits are checked, the text is not.
#[derive(Debug)]
pub(super) struct JsonText(Bytes);

impl Deref for JsonText {
    type Target = [u8];

    fn deref(&self) -> &[u8] {
        &self.0
    }
}

/// The same within the limit of a trial, which holds whole rule files.
#[derive(Debug)]
pub(super) struct TrialText(Bytes);

/// The same within the limit of a record, which holds an answer beside its case.
#[derive(Debug)]
pub(super) struct RecordText(Bytes);

/// Longest answer of a record, bytes: usual ones have some fifty thousand.
const ANSWER_BYTES: usize = 1024 * 1024;

/// Longest body of a trial, bytes: several times the whole pack that the binary carries.
pub(super) const TRIAL_BYTES: usize = 8 * 1024 * 1024;

impl Deref for TrialText {
    type Target = [u8];

    fn deref(&self) -> &[u8] {
        &self.0
    }
}

impl Deref for RecordText {
    type Target = [u8];

    fn deref(&self) -> &[u8] {
        &self.0
    }
}

type Reading<T> = Pin<Box<dyn Future<Output = Result<T, Problem>>>>;

impl FromRequest for JsonText {
    type Error = Problem;
    type Future = Reading<Self>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let bytes = take(request, payload, |limits| limits);
        Box::pin(async move { bytes.await.map(Self) })
    }
}

impl FromRequest for RecordText {
    type Error = Problem;
    type Future = Reading<Self>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let bytes = take(request, payload, |limits| BodyLimits { bytes: limits.bytes + ANSWER_BYTES, ..limits });
        Box::pin(async move { bytes.await.map(Self) })
    }
}

impl FromRequest for TrialText {
    type Error = Problem;
    type Future = Reading<Self>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let bytes = take(request, payload, |limits| BodyLimits { bytes: TRIAL_BYTES, ..limits });
        Box::pin(async move { bytes.await.map(Self) })
    }
}

/// Takes the body within the limits of the application, changed as the route wants them.
fn take(request: &HttpRequest, payload: &mut Payload, changed: fn(BodyLimits) -> BodyLimits) -> Reading<Bytes> {
    let checked = check_head(request, changed);
    let payload = web::Payload::from_request(request, payload).into_inner();
    Box::pin(async move {
        let limits = checked?;
        read(payload.map_err(Problem::internal)?, limits).await
    })
}

/// Checks what the header fields promise, before any byte of the body is read.
fn check_head(request: &HttpRequest, changed: fn(BodyLimits) -> BodyLimits) -> Result<BodyLimits, Problem> {
    let limits = request.app_data::<BodyLimits>().copied();
    let limits = changed(limits.ok_or_else(|| Problem::internal("the application has no body limits"))?);
    check_media_type(field(request, &CONTENT_TYPE))?;
    check_coding(field(request, &CONTENT_ENCODING))?;
    let promised = field(request, &CONTENT_LENGTH).and_then(|length| length.parse::<usize>().ok());
    if promised.is_some_and(|length| length > limits.bytes) {
        return Err(too_large(limits));
    }
    Ok(limits)
}

fn field<'r>(request: &'r HttpRequest, name: &HeaderName) -> Option<&'r str> {
    request.headers().get(name).map(|value| value.to_str().unwrap_or_default())
}

/// `application/json`, where a charset is named it is UTF-8 (RFC 8259 knows no other).
fn check_media_type(given: Option<&str>) -> Result<(), Problem> {
    let mut parts = given.unwrap_or_default().split(';').map(str::trim);
    let is_json = parts.next().is_some_and(|essence| essence.eq_ignore_ascii_case("application/json"));
    let is_utf8 = parts.filter(|parameter| !parameter.is_empty()).all(names_utf8);
    if is_json && is_utf8 {
        return Ok(());
    }
    let detail = match given {
        Some(given) => format!("the body is `{given}`, not `application/json`"),
        None => "the request has no `Content-Type`; it must be `application/json`".to_owned(),
    };
    Err(Problem::new(ProblemKind::UnsupportedMediaType).detail(detail).header("accept", "application/json"))
}

fn names_utf8(parameter: &str) -> bool {
    parameter.split_once('=').is_some_and(|(name, value)| {
        name.eq_ignore_ascii_case("charset") && value.trim_matches('"').eq_ignore_ascii_case("utf-8")
    })
}

/// Compressed bodies are refused: a small one can unfold into a huge one, and cases are small.
fn check_coding(given: Option<&str>) -> Result<(), Problem> {
    match given {
        None => Ok(()),
        Some(coding) if coding.eq_ignore_ascii_case("identity") => Ok(()),
        Some(coding) => Err(Problem::new(ProblemKind::UnsupportedMediaType)
            .detail(format!("the body is coded as `{coding}`; send it as it is"))
            .header("accept-encoding", "identity")),
    }
}

async fn read(payload: web::Payload, limits: BodyLimits) -> Result<Bytes, Problem> {
    let arrived = timeout(limits.time, payload.to_bytes_limited(limits.bytes)).await;
    let within_time = arrived.map_err(|_| {
        let detail = format!("the body did not arrive within {} s", limits.time.as_secs_f64());
        Problem::new(ProblemKind::RequestTimeout).detail(detail)
    })?;
    let within_size = within_time.map_err(|_| too_large(limits))?;
    within_size.map_err(|_| Problem::new(ProblemKind::UnreadableBody))
}

fn too_large(limits: BodyLimits) -> Problem {
    let detail = format!("the body is longer than {} bytes", limits.bytes);
    Problem::new(ProblemKind::BodyTooLarge).detail(detail)
}

#[cfg(test)]
mod tests {
    use super::check_media_type;

    #[test]
    fn takes_json_in_utf8_only() {
        for good in [
            "application/json",
            "Application/JSON; charset=utf-8",
            "application/json;charset=\"UTF-8\"",
            "application/json;",
        ] {
            assert!(check_media_type(Some(good)).is_ok(), "{good}");
        }
        for bad in [
            "",
            "text/json",
            "application/jsonp",
            "application/json; charset=latin1",
            "application/json; v",
            "application/xml",
        ] {
            assert!(check_media_type(Some(bad)).is_err(), "{bad}");
        }
        assert!(check_media_type(None).is_err());
    }
}
