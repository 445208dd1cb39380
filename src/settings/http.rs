//! Settings of the HTTP service.

use std::net::{Ipv4Addr, SocketAddr};
use std::num::NonZeroUsize;
use std::time::Duration;

use super::source::Section;

/// How the service listens, and what it grants to a request.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HttpSettings {
    /// Address and port to listen on; port 0 takes a free one.
    pub listen: SocketAddr,
    /// Worker threads; `None` is one a core.
    pub workers: Option<NonZeroUsize>,
    /// Largest request body, bytes.
    pub body_limit_bytes: usize,
    /// How long the head of a request may take to arrive, and then its body.
    pub request_timeout: Duration,
    /// How long requests that have begun may take to finish once the service is told to stop; whole seconds.
    pub shutdown_timeout: Duration,
    /// How long an idle connection is kept open.
    pub keep_alive: Duration,
}

impl Default for HttpSettings {
    fn default() -> Self {
        Self {
            // Only this machine, until somebody decides otherwise.
            listen: SocketAddr::from((Ipv4Addr::LOCALHOST, 8080)),
            workers: None,
            // A long case takes about 10 KiB.
            body_limit_bytes: 1024 * 1024,
            request_timeout: Duration::from_secs(10),
            // Orchestrators grant 30 s before they kill.
            shutdown_timeout: Duration::from_secs(20),
            // Longer than the idle time of common load balancers (60 s), so that they hang up first and no request meets
            // a connection that is being closed.
            keep_alive: Duration::from_secs(75),
        }
    }
}

impl HttpSettings {
    pub(super) fn read(section: &mut Section<'_>) -> Self {
        let default = Self::default();
        Self {
            listen: section.value("listen").unwrap_or(default.listen),
            workers: section.value("workers").or(default.workers),
            body_limit_bytes: section.value("body_limit_bytes").map_or(default.body_limit_bytes, NonZeroUsize::get),
            request_timeout: section.value("request_timeout_seconds").unwrap_or(default.request_timeout),
            shutdown_timeout: section.value("shutdown_timeout_seconds").unwrap_or(default.shutdown_timeout),
            keep_alive: section.value("keep_alive_seconds").unwrap_or(default.keep_alive),
        }
    }
}
