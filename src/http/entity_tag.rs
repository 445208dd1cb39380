//! Entity tags: what has not changed since the caller's last look is not sent again (RFC 9110, sections 8.8.3 and 13.1.2).

use std::time::SystemTime;

use actix_web::body::{BoxBody, MessageBody};
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::http::header::{ETag, EntityTag, Header, IfNoneMatch, TryIntoHeaderValue};
use actix_web::http::{Method, StatusCode, header};
use actix_web::middleware::Next;
use actix_web::web::Data;
use actix_web::{Error, HttpResponse};

use crate::live_rules::LiveRules;

/// What an answer hangs on, beside its URL and the version of the program.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Follows {
    /// The rules in force.
    Rules,
    /// The rules in force, when they were loaded, and the last attempt to load others.
    Status,
}

impl Follows {
    /// Weak: the same answer may be compressed or not.
    fn tag(self, rules: &LiveRules) -> EntityTag {
        let attempt = rules.last_attempt();
        let rules = rules.current();
        let mut tag = format!("{}-{}", env!("CARGO_PKG_VERSION"), rules.diagnostician.knowledge().declared.pack.digest);
        if self == Self::Status {
            let since_epoch = |at: SystemTime| at.duration_since(SystemTime::UNIX_EPOCH).unwrap_or_default().as_nanos();
            tag += &format!("-{:x}", since_epoch(rules.loaded_at));
            tag += &attempt.map(|attempt| format!("-{:x}", since_epoch(attempt.at))).unwrap_or_default();
        }
        EntityTag::new_weak(tag)
    }
}

/// Tags answers that follow from the rules in force.
pub(super) async fn of_rules<B: MessageBody + 'static>(
    request: ServiceRequest,
    next: Next<B>,
) -> Result<ServiceResponse<BoxBody>, Error> {
    tagged(Follows::Rules, request, next).await
}

/// Tags answers about the rules themselves.
pub(super) async fn of_status<B: MessageBody + 'static>(
    request: ServiceRequest,
    next: Next<B>,
) -> Result<ServiceResponse<BoxBody>, Error> {
    tagged(Follows::Status, request, next).await
}

/// `304 Not Modified` in place of an answer whose tag the caller knows; a fault is told all the same.
async fn tagged<B: MessageBody + 'static>(
    follows: Follows,
    request: ServiceRequest,
    next: Next<B>,
) -> Result<ServiceResponse<BoxBody>, Error> {
    let rules = request.app_data::<Data<LiveRules>>().cloned();
    let tag = || rules.as_ref().map(|rules| follows.tag(rules));
    let before = tag();
    let mut answer = next.call(request).await?.map_into_boxed_body();
    let is_read = matches!(*answer.request().method(), Method::GET | Method::HEAD);
    // Rules that came while the answer was made leave open which it was made with.
    let Some(tag) = before.filter(|before| tag().as_ref() == Some(before)) else { return Ok(answer) };
    if !is_read || answer.status() != StatusCode::OK {
        return Ok(answer);
    }
    // A header field that cannot be read is none.
    let is_known = match IfNoneMatch::parse(answer.request()) {
        Ok(IfNoneMatch::Any) => answer.request().headers().contains_key(header::IF_NONE_MATCH),
        Ok(IfNoneMatch::Items(known)) => known.iter().any(|known| known.weak_eq(&tag)),
        Err(_) => false,
    };
    if is_known {
        let (request, _) = answer.into_parts();
        let unchanged = HttpResponse::NotModified().insert_header(ETag(tag)).finish();
        return Ok(ServiceResponse::new(request, unchanged));
    }
    if let Ok(value) = ETag(tag).try_into_value() {
        answer.headers_mut().insert(header::ETAG, value);
    }
    Ok(answer)
}
