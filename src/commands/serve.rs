//! `whybake serve`

use std::net::SocketAddr;
use std::path::PathBuf;
use std::sync::Arc;
use std::time::SystemTime;
use std::{env, io};

use actix_web::rt::System;
use clap::Args;

use super::exit::Exit;
use super::knowledge::load_rules;
use super::log;
use super::output::complain;
use crate::http::{AuthorAccess, Authoring, Server};
use crate::live_rules::{LiveRules, ReloadSettings, Reloader};
use crate::settings::Settings;

/// Answer cases over HTTP
///
/// Settings come from the file, then from environment variables such as WHYBAKE_HTTP_LISTEN, then from the options; the
/// later wins. A change of the folder of rules is live within a second, or at the next look where the file system gives no
/// notice; SIGHUP loads it at once. Rules with a fault change nothing. On SIGTERM no connection is taken any more, and
/// requests that have begun are answered.
#[derive(Debug, Args)]
pub(super) struct Serve {
    /// Address and port to listen on, for example 0.0.0.0:8080
    #[arg(long, value_name = "ADDRESS")]
    listen: Option<SocketAddr>,
    /// Folder of a rule pack, in place of the rules that the program carries; its rule tests must pass
    #[arg(long, value_name = "DIR")]
    rules: Option<PathBuf>,
    /// Settings file (TOML)
    #[arg(long, value_name = "FILE")]
    settings: Option<PathBuf>,
}

impl Serve {
    pub(super) fn run(self) -> Result<(), Exit> {
        let settings = self.settings()?;
        log::start(&settings.log);
        let rules = load_rules(settings.rules.dir.as_deref(), settings.rules.tests_policy())?;
        let pack = &rules.diagnostician.knowledge().declared.pack;
        tracing::info!(pack = pack.id, version = pack.version, digest = pack.digest, "rules loaded");
        let rules = Arc::new(LiveRules::new(rules, SystemTime::now()));
        System::new().block_on(serve(&settings, rules)).map_err(|error| {
            tracing::error!(%error, listen = %settings.http.listen, "the service failed");
            Exit::Failed
        })
    }

    fn settings(self) -> Result<Settings, Exit> {
        // A name that is no Unicode text cannot be one of ours; a value of ours that is none is a fault, not left out.
        let environment = env::vars_os()
            .filter_map(|(name, value)| Some((name.into_string().ok()?, value.to_string_lossy().into_owned())));
        let mut settings = Settings::load(self.settings.as_deref(), environment).map_err(|faults| {
            faults.iter().for_each(complain);
            Exit::Usage
        })?;
        settings.http.listen = self.listen.unwrap_or(settings.http.listen);
        settings.rules.dir = self.rules.or(settings.rules.dir);
        Ok(settings)
    }
}

async fn serve(settings: &Settings, rules: Arc<LiveRules>) -> io::Result<()> {
    let reloader =
        ReloadSettings::new(&settings.rules).map(|reload| Reloader::start(reload, Arc::clone(&rules))).transpose()?;
    if let Some(reloader) = &reloader {
        reload_on_hang_up(reloader.clone())?;
    }
    let access = AuthorAccess::new(settings.rules.author_key.clone(), settings.http.listen);
    let server = Server::bind(&settings.http, rules, Authoring::new(access, reloader))?;
    for address in server.addresses() {
        tracing::info!(%address, "listening");
    }
    server.run().await?;
    tracing::info!("stopped");
    Ok(())
}

/// Loads the rules again whenever the service gets SIGHUP.
#[cfg(unix)]
fn reload_on_hang_up(reloader: Reloader) -> io::Result<()> {
    use actix_web::rt::signal::unix::{SignalKind, signal};

    let mut hang_ups = signal(SignalKind::hangup())?;
    actix_web::rt::spawn(async move {
        while hang_ups.recv().await.is_some() {
            reloader.signal();
        }
    });
    Ok(())
}

#[cfg(not(unix))]
fn reload_on_hang_up(_: Reloader) -> io::Result<()> {
    Ok(())
}
