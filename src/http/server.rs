//! The listening server: time-outs, limits and an orderly end.

use std::io;
use std::net::SocketAddr;
use std::sync::Arc;
use std::time::Duration;

use actix_web::{HttpServer, dev, web};

use super::app::{AppState, create_app};
use super::authoring::Authoring;
use super::body::BodyLimits;
use super::planning::Planning;
use crate::live_rules::LiveRules;
use crate::settings::HttpSettings;

/// How long a client may take to hang up before its connection is cut.
const HANG_UP: Duration = Duration::from_secs(1);

/// A server whose address is bound; it answers once [`Self::run`] is awaited.
pub struct Server {
    addresses: Vec<SocketAddr>,
    running: dev::Server,
}

impl Server {
    /// Binds the address. Must be called within an actix system.
    ///
    /// On SIGTERM, SIGINT or SIGQUIT it stops taking connections; on SIGTERM requests that have begun may finish within
    /// the shutdown time-out.
    ///
    /// # Errors
    /// When the address cannot be bound.
    pub fn bind(settings: &HttpSettings, rules: Arc<LiveRules>, authoring: Authoring) -> io::Result<Self> {
        let state = AppState {
            rules: web::Data::from(rules),
            authoring: web::Data::new(authoring),
            planning: web::Data::new(Planning::default()),
            body_limits: BodyLimits { bytes: settings.body_limit_bytes, time: settings.request_timeout },
        };
        let mut server = HttpServer::new(move || create_app(&state))
            .keep_alive(settings.keep_alive)
            .client_request_timeout(settings.request_timeout)
            .client_disconnect_timeout(HANG_UP)
            .shutdown_timeout(settings.shutdown_timeout.as_secs());
        if let Some(workers) = settings.workers {
            server = server.workers(workers.get());
        }
        let server = server.bind(settings.listen)?;
        Ok(Self { addresses: server.addrs(), running: server.run() })
    }

    /// Addresses that are bound; with port 0 they tell which port was free.
    #[must_use]
    pub fn addresses(&self) -> &[SocketAddr] {
        &self.addresses
    }

    /// Stops the server from elsewhere.
    #[must_use]
    pub fn handle(&self) -> dev::ServerHandle {
        self.running.handle()
    }

    /// Answers requests until the server is told to stop.
    ///
    /// # Errors
    /// When the workers fail.
    pub async fn run(self) -> io::Result<()> {
        self.running.await
    }
}
