//! The handle by which others have the rules loaded again.

use std::io;
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::mpsc::{Sender, channel};
use std::thread;
use std::time::Duration;

use tokio::sync::oneshot;

use super::attempt::Attempt;
use super::in_force::LiveRules;
use super::loader::Loader;
use crate::settings::{RulesSettings, TestsPolicy};

/// Where rules are loaded from while the service runs, and when.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReloadSettings {
    /// The folder.
    pub dir: PathBuf,
    /// What a failing rule test means.
    pub tests: TestsPolicy,
    /// Whether changes of the folder are looked for.
    pub watch: bool,
    /// How often the folder is looked at, beside the notices of the file system.
    pub poll: Duration,
}

impl ReloadSettings {
    /// The settings; `None` without a folder.
    #[must_use]
    pub fn new(settings: &RulesSettings) -> Option<Self> {
        let dir = settings.dir.clone()?;
        Some(Self { dir, tests: settings.tests_policy(), watch: settings.watch, poll: settings.poll })
    }
}

/// Has the rules loaded again. The loading ends when the last handle is dropped.
#[derive(Debug, Clone)]
pub struct Reloader(Arc<Sender<Wake>>);

/// What wakes the loader.
#[derive(Debug)]
pub(super) enum Wake {
    /// The folder may have changed.
    Changed,
    /// A signal asks.
    Signalled,
    /// A request asks, and waits for the outcome.
    Requested(oneshot::Sender<Arc<Attempt>>),
}

impl Reloader {
    /// Starts the thread that loads rules of a folder into `live`, which holds rules of that folder.
    ///
    /// # Errors
    /// When no thread can be started.
    pub fn start(settings: ReloadSettings, live: Arc<LiveRules>) -> io::Result<Self> {
        let (sender, receiver) = channel();
        let sender = Arc::new(sender);
        let loader = Loader::new(settings, live, receiver, Arc::downgrade(&sender));
        thread::Builder::new().name("rules-loader".to_owned()).stack_size(STACK_BYTES).spawn(move || loader.run())?;
        Ok(Self(sender))
    }

    /// Loads the rules again because a signal says so; does not wait.
    pub fn signal(&self) {
        // Without a loader the service is about to end.
        let _ = self.0.send(Wake::Signalled);
    }

    /// Loads the rules again, changed or not, and waits for the outcome; `None` when the loader is gone.
    pub async fn request(&self) -> Option<Arc<Attempt>> {
        let (sender, receiver) = oneshot::channel();
        self.0.send(Wake::Requested(sender)).ok()?;
        receiver.await.ok()
    }
}

/// Stack of the loading thread, that of a main thread; rule files may nest calls.
const STACK_BYTES: usize = 8 * 1024 * 1024;
