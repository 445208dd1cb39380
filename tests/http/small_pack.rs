//! A small pack in a folder, and the service that answers with it.

use std::fs;
use std::net::SocketAddr;
use std::num::NonZeroUsize;
use std::path::{Path, PathBuf};
use std::sync::{Arc, mpsc};
use std::thread;
use std::time::{Duration, Instant, SystemTime};

use actix_web::rt::System;
use tempfile::TempDir;
use whybake::http::{AuthorAccess, Authoring, Server};
use whybake::live_rules::{Attempt, AttemptOutcome, LiveRules, ReloadSettings, Reloader, Trigger};
use whybake::rule_set::RuleSet;
use whybake::rules::RuleFiles;
use whybake::settings::{HttpSettings, TestsPolicy};

/// How long anything here may take.
const PATIENCE: Duration = Duration::from_secs(60);

/// So long that a look at the folder never comes before the test is over.
pub(crate) const NEVER: Duration = Duration::from_secs(3600);

pub(crate) const SOON: Duration = Duration::from_millis(100);

/// Everything but the cause.
const FILES: [(&str, &str); 4] = [
    ("pack.rhai", "pack(\"small\").title(\"Small pack\").version(\"1.0.0\");\n"),
    ("sources.rhai", "source(\"practice\").citation(\"rule of thumb of the trade\").common_practice();\n"),
    ("products.rhai", "family(\"rolls\").title(\"Rolls\");\nproduct(\"bun\").title(\"Bun\").family(rolls);\n"),
    ("symptoms.rhai", "symptom(\"hollow\").title(\"Hollow\").description(\"A gap.\").products(rolls);\n"),
];

/// Where the cause stands.
pub(crate) const CAUSE: &str = "rolls/mixing.rhai";

/// The cause, with a prior: of a case that tells nothing, the answer is the prior.
pub(crate) fn cause(prior: f64) -> String {
    format!(
        "cause(\"too_warm\").title(\"Too warm\").mechanism(\"Warm dough gasses early.\").products(rolls)\n    \
         .prior({prior:?}).shows(hollow, 0.6).source(practice);\n"
    )
}

/// The pack with a prior.
pub(crate) fn pack(prior: f64) -> RuleFiles {
    let mut files = RuleFiles::default();
    for (path, text) in FILES {
        files.insert(path, text);
    }
    files.insert(CAUSE, &cause(prior));
    files
}

/// Writes the pack with a prior to a folder.
pub(crate) fn write_pack(dir: &Path, prior: f64) {
    for (path, text) in pack(prior).iter() {
        write(&dir.join(path), text);
    }
}

pub(crate) fn write(file: &Path, text: &str) {
    fs::create_dir_all(file.parent().unwrap()).unwrap();
    fs::write(file, text).unwrap();
}

/// Rules of a folder that are reloaded.
pub(crate) struct Folder {
    _temporary: TempDir,
    pub(crate) dir: PathBuf,
    pub(crate) live: Arc<LiveRules>,
    pub(crate) reloader: Reloader,
}

impl Folder {
    /// A folder with the pack of prior 0.1.
    pub(crate) fn new(poll: Duration) -> Self {
        let temporary = tempfile::tempdir().unwrap();
        let dir = temporary.path().join("rules");
        write_pack(&dir, 0.1);
        Self::of(temporary, dir, poll)
    }

    /// A folder that has been laid out.
    pub(crate) fn of(temporary: TempDir, dir: PathBuf, poll: Duration) -> Self {
        let tests = TestsPolicy::Required;
        let rules = RuleSet::load(RuleFiles::read(&dir).unwrap(), tests).unwrap();
        let live = Arc::new(LiveRules::new(rules, SystemTime::now()));
        let settings = ReloadSettings { dir: dir.clone(), tests, watch: true, poll };
        let reloader = Reloader::start(settings, Arc::clone(&live)).unwrap();
        Self { _temporary: temporary, dir, live, reloader }
    }

    pub(crate) fn write(&self, path: &str, text: &str) {
        write(&self.dir.join(path), text);
    }

    pub(crate) fn digest(&self) -> String {
        self.live.current().files.digest()
    }

    /// Waits until the rules in force are the pack with a prior.
    #[track_caller]
    pub(crate) fn wait_for(&self, prior: f64) -> Arc<Attempt> {
        let digest = pack(prior).digest();
        wait_until("the rules are in force", || {
            let attempt = self.live.last_attempt()?;
            let loaded = matches!(&attempt.outcome, AttemptOutcome::Loaded { digest: loaded, .. } if *loaded == digest);
            (loaded && self.digest() == digest).then_some(attempt)
        })
    }

    /// Waits until rules are refused with a diagnostic that contains `text`; those in force must be the pack with a prior.
    #[track_caller]
    pub(crate) fn wait_for_refusal(&self, prior: f64, text: &str) -> Trigger {
        let by = wait_until("the rules are refused", || {
            let attempt = self.live.last_attempt()?;
            let AttemptOutcome::Refused { diagnostics, .. } = &attempt.outcome else { return None };
            diagnostics.iter().any(|diagnostic| diagnostic.to_string().contains(text)).then_some(attempt.by)
        });
        assert_eq!(self.digest(), pack(prior).digest(), "refused rules change nothing");
        by
    }

    /// Waits until the loader has begun to wait for changes.
    pub(crate) fn awake(self) -> Self {
        System::new().block_on(self.reloader.request()).unwrap();
        self
    }

    /// Serves the folder over HTTP; the server ends with the process of the tests.
    pub(crate) fn serve(&self, access: AuthorAccess) -> SocketAddr {
        let (sender, receiver) = mpsc::channel();
        let listen = SocketAddr::from(([127, 0, 0, 1], 0));
        let settings = HttpSettings { listen, workers: NonZeroUsize::new(2), ..HttpSettings::default() };
        let (live, authoring) = (Arc::clone(&self.live), Authoring::new(access, Some(self.reloader.clone())));
        thread::spawn(move || {
            System::new().block_on(async move {
                let server = Server::bind(&settings, live, authoring).unwrap();
                sender.send(server.addresses()[0]).unwrap();
                server.run().await.unwrap();
            });
        });
        receiver.recv().unwrap()
    }
}

/// Asks until there is an answer.
#[track_caller]
pub(crate) fn wait_until<T>(what: &str, mut ask: impl FnMut() -> Option<T>) -> T {
    let deadline = Instant::now() + PATIENCE;
    loop {
        if let Some(answer) = ask() {
            return answer;
        }
        assert!(Instant::now() < deadline, "waited in vain until {what}");
        thread::sleep(Duration::from_millis(2));
    }
}
