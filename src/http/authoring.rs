//! Who may have rules reloaded or tried.

use std::future::{Ready, ready};
use std::net::{IpAddr, SocketAddr};
use std::sync::Arc;
use std::time::Duration;

use actix_web::dev::Payload;
use actix_web::http::header::{AUTHORIZATION, HOST, ORIGIN};
use actix_web::web::Data;
use actix_web::{FromRequest, HttpRequest};
use tokio::sync::{OwnedSemaphorePermit, Semaphore};

use super::problem::{Problem, ProblemKind};
use crate::live_rules::Reloader;
use crate::settings::AuthorKey;

/// What a service grants to authors of rules.
#[derive(Debug, Clone)]
pub struct Authoring {
    /// Who may use the routes of authors.
    pub access: AuthorAccess,
    /// Has the rules of the folder loaded again; `None` when there is no folder.
    pub reloader: Option<Reloader>,
    /// Places for trials.
    trials: Arc<Semaphore>,
    /// How long a trial may take.
    pub trial_time: Duration,
}

/// Trials that run at a time: each takes a core from those who diagnose.
const TRIALS_AT_A_TIME: usize = 1;

/// How long a trial may take. The pack that the binary carries takes about a second.
const TRIAL_TIME: Duration = Duration::from_secs(30);

impl Authoring {
    /// Grants what `access` says.
    #[must_use]
    pub fn new(access: AuthorAccess, reloader: Option<Reloader>) -> Self {
        Self { access, reloader, trials: Arc::new(Semaphore::new(TRIALS_AT_A_TIME)), trial_time: TRIAL_TIME }
    }

    /// Takes a place for a trial until it is dropped; `None` when all are taken.
    #[must_use]
    pub fn occupy(&self) -> Option<OwnedSemaphorePermit> {
        Arc::clone(&self.trials).try_acquire_owned().ok()
    }
}

/// Who may use the routes of authors.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AuthorAccess {
    /// Who sends the key.
    Key(AuthorKey),
    /// Everybody who calls the machine by its own name: the service is heard there only, but so are pages of other sites that
    /// a browser shows there, and what a proxy passes on.
    Everybody,
    /// Nobody.
    Nobody,
}

impl AuthorAccess {
    /// With a key, its holders; without, everybody if the service listens on a loopback address, else nobody.
    #[must_use]
    pub fn new(key: Option<AuthorKey>, listen: SocketAddr) -> Self {
        match key {
            Some(key) => Self::Key(key),
            None if listen.ip().to_canonical().is_loopback() => Self::Everybody,
            None => Self::Nobody,
        }
    }

    fn admit(&self, request: &HttpRequest) -> Result<(), Problem> {
        let given = field(request, AUTHORIZATION.as_str()).and_then(bearer);
        match (self, given) {
            (Self::Everybody, _) if is_of_this_machine(request) => Ok(()),
            (Self::Everybody, _) => {
                let detail = "without a key only requests are taken that this machine makes to itself by its own name";
                Err(Problem::new(ProblemKind::AuthoringOff).detail(detail))
            }
            (Self::Nobody, _) => Err(Problem::new(ProblemKind::AuthoringOff)),
            (Self::Key(key), Some(given)) if key.is(given) => Ok(()),
            (Self::Key(_), Some(_)) => Err(unknown_author("the key is another one", INVALID_TOKEN)),
            (Self::Key(_), None) => Err(unknown_author("the request carries no key", CHALLENGE)),
        }
    }
}

/// Whether a request names a loopback host and comes from no page of another site.
fn is_of_this_machine(request: &HttpRequest) -> bool {
    let names_this_machine = field(request, HOST.as_str()).is_none_or(is_loopback);
    let site = field(request, "sec-fetch-site");
    // Browsers that tell no site tell the origin of what a page sends.
    let origin = field(request, ORIGIN.as_str());
    names_this_machine
        && site.is_none_or(|site| matches!(site, "same-origin" | "none"))
        && origin.is_none_or(|origin| origin.split_once("://").is_some_and(|(_, authority)| is_loopback(authority)))
}

/// Whether `host` or `host:port` is `localhost` or a loopback address.
fn is_loopback(authority: &str) -> bool {
    let host = match authority.rsplit_once(':') {
        Some((host, port)) if port.bytes().all(|byte| byte.is_ascii_digit()) => host,
        _ => authority,
    };
    let address = host.trim_start_matches('[').trim_end_matches(']').parse::<IpAddr>();
    host.eq_ignore_ascii_case("localhost") || address.is_ok_and(|address| address.to_canonical().is_loopback())
}

fn field<'r>(request: &'r HttpRequest, name: &str) -> Option<&'r str> {
    request.headers().get(name).map(|value| value.to_str().unwrap_or_default())
}

/// The challenges of RFC 6750, section 3.
const CHALLENGE: &str = "Bearer realm=\"whybake rules\"";
const INVALID_TOKEN: &str = "Bearer realm=\"whybake rules\", error=\"invalid_token\"";

fn unknown_author(detail: &str, challenge: &str) -> Problem {
    Problem::new(ProblemKind::UnknownAuthor).detail(detail).header("www-authenticate", challenge)
}

/// The token of `Bearer …`; names of schemes are the same in any case (RFC 9110, section 11.1).
fn bearer(authorization: &str) -> Option<&str> {
    let (scheme, token) = authorization.split_once(' ')?;
    scheme.eq_ignore_ascii_case("bearer").then(|| token.trim())
}

/// A request of somebody who may change rules.
#[derive(Debug)]
pub(super) struct Author;

impl FromRequest for Author {
    type Error = Problem;
    type Future = Ready<Result<Self, Problem>>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let admitted = match request.app_data::<Data<Authoring>>() {
            Some(authoring) => authoring.access.admit(request),
            None => Err(Problem::internal("the application does not know who may change rules")),
        };
        ready(admitted.map(|()| Self))
    }
}

#[cfg(test)]
mod tests {
    use super::{AuthorAccess, bearer, is_loopback};
    use crate::settings::AuthorKey;

    #[test]
    fn without_a_key_only_the_own_machine_is_heard() {
        let access = |listen: &str| AuthorAccess::new(None, listen.parse().unwrap());
        for own in ["127.0.0.1:80", "127.8.9.1:80", "[::1]:80", "[::ffff:127.0.0.1]:80"] {
            assert_eq!(access(own), AuthorAccess::Everybody, "{own}");
        }
        for open in ["0.0.0.0:80", "[::]:80", "10.0.0.1:80", "[::ffff:10.0.0.1]:80"] {
            assert_eq!(access(open), AuthorAccess::Nobody, "{open}");
        }
        let key = AuthorKey::new("correct-horse-battery");
        assert!(matches!(AuthorAccess::new(key, "127.0.0.1:80".parse().unwrap()), AuthorAccess::Key(_)));
    }

    #[test]
    fn names_of_this_machine() {
        for own in ["localhost", "LocalHost:8080", "127.0.0.1:80", "127.0.0.1", "[::1]:80", "[::1]"] {
            assert!(is_loopback(own), "{own}");
        }
        for other in ["", "whybake.example", "localhost.example:80", "10.0.0.1:80", "[2001:db8::1]:80", ":80"] {
            assert!(!is_loopback(other), "{other}");
        }
    }

    #[test]
    fn the_scheme_is_bearer() {
        assert_eq!(bearer("Bearer abc"), Some("abc"));
        assert_eq!(bearer("bearer  abc"), Some("abc"));
        assert_eq!(bearer("Basic abc"), None);
        assert_eq!(bearer("abc"), None);
    }
}
