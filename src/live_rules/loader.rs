//! The thread that loads rules.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender};
use std::sync::{Arc, Weak};
use std::time::{Duration, Instant, SystemTime};

use super::attempt::{Attempt, AttemptOutcome, Trigger};
use super::folder_watch::FolderWatch;
use super::in_force::LiveRules;
use super::reloader::{ReloadSettings, Wake};
use crate::rule_set::{RefusedRules, RuleSet};
use crate::rules::{Diagnostic, FolderStamp, RuleFiles};

/// How long a changed folder must have been quiet before it is loaded: whoever writes several files is done then.
const QUIET: Duration = Duration::from_millis(200);

/// How long a folder that never comes to rest is waited for.
const LONGEST_UNREST: Duration = Duration::from_secs(2);

/// How often a folder is read again because it changed under the reader.
const MOST_READS: usize = 5;

/// What stands in the folder: a digest, or why it cannot be read.
type Content = Result<String, Vec<Diagnostic>>;

/// Loads the rules of a folder whenever something wakes it.
pub(super) struct Loader {
    settings: ReloadSettings,
    live: Arc<LiveRules>,
    wakes: Receiver<Wake>,
    /// For the watch; the loader itself must not keep the channel open.
    waker: Weak<Sender<Wake>>,
    watch: Option<FolderWatch>,
    /// The folder when it was last read.
    stamp: Option<FolderStamp>,
    /// What was last tried.
    tried: Content,
}

/// Wakes that came together.
#[derive(Default)]
struct Calls {
    by: Option<Trigger>,
    waiting: Vec<tokio::sync::oneshot::Sender<Arc<Attempt>>>,
}

impl Calls {
    fn add(&mut self, wake: Wake) {
        let by = match wake {
            Wake::Changed => Trigger::Watch,
            Wake::Signalled => Trigger::Signal,
            Wake::Requested(sender) => {
                self.waiting.push(sender);
                Trigger::Request
            }
        };
        // Who asks outranks who notices.
        self.by = self.by.max(Some(by));
    }

    /// Whether somebody wants a load, changed or not.
    fn is_asked(&self) -> bool {
        self.by >= Some(Trigger::Signal)
    }
}

impl Loader {
    /// Watches the folder from now on.
    pub(super) fn new(
        settings: ReloadSettings,
        live: Arc<LiveRules>,
        wakes: Receiver<Wake>,
        waker: Weak<Sender<Wake>>,
    ) -> Self {
        let tried = Ok(live.current().files.content_digest());
        let mut loader = Self { settings, live, wakes, waker, watch: None, stamp: None, tried };
        loader.arm();
        loader
    }

    /// Runs until nobody can wake it any more.
    pub(super) fn run(mut self) {
        if self.settings.watch {
            // What changed between the first load and the first watch gave no notice, and may still be changing.
            self.follow(Calls { by: Some(Trigger::Watch), waiting: Vec::new() });
        }
        while let Some(calls) = self.sleep() {
            if calls.by.is_some() || !self.is_unchanged() {
                self.follow(calls);
            }
        }
    }

    /// Loads the folder once it is quiet, or at once for who asks.
    fn follow(&mut self, mut calls: Calls) {
        if !calls.is_asked() {
            self.settle(&mut calls);
        }
        self.take_waiting(&mut calls);
        // A folder that was replaced has to be watched anew, after the last notice of it was taken and before it is read, so
        // that nothing is missed.
        self.arm();
        self.load(calls);
    }

    /// Waits for the next wake; nothing called when it is time to look at the folder.
    fn sleep(&self) -> Option<Calls> {
        let wake = if self.settings.watch {
            self.wakes.recv_timeout(self.settings.poll)
        } else {
            self.wakes.recv().map_err(|_| RecvTimeoutError::Disconnected)
        };
        let mut calls = Calls::default();
        match wake {
            Ok(wake) => calls.add(wake),
            Err(RecvTimeoutError::Timeout) => {}
            Err(RecvTimeoutError::Disconnected) => return None,
        }
        Some(calls)
    }

    fn arm(&mut self) {
        if self.settings.watch {
            let waker = Weak::clone(&self.waker);
            self.watch = FolderWatch::new(&self.settings.dir, move || {
                if let Some(waker) = waker.upgrade() {
                    // Without a loader nobody has to know.
                    let _ = waker.send(Wake::Changed);
                }
            });
        }
    }

    fn is_unchanged(&self) -> bool {
        let now = FolderStamp::of(&self.settings.dir);
        self.stamp.as_ref().is_some_and(|stamp| now.is_surely(stamp))
    }

    /// Waits until the folder has been quiet for a while, or somebody asks.
    fn settle(&self, calls: &mut Calls) {
        let deadline = Instant::now() + LONGEST_UNREST;
        let mut seen = FolderStamp::of(&self.settings.dir);
        while !calls.is_asked() && Instant::now() < deadline {
            match self.wakes.recv_timeout(QUIET) {
                Ok(wake) => {
                    calls.add(wake);
                    self.take_waiting(calls);
                }
                Err(_) => {
                    let now = FolderStamp::of(&self.settings.dir);
                    if now.looks_like(&seen) {
                        return;
                    }
                    seen = now;
                }
            }
        }
    }

    fn take_waiting(&self, calls: &mut Calls) {
        self.wakes.try_iter().for_each(|wake| calls.add(wake));
    }

    /// Loads what stands in the folder, unless that was tried before and nobody asks for it.
    fn load(&mut self, calls: Calls) {
        let started = Instant::now();
        let is_asked = calls.is_asked();
        let files = self.read();
        let content = files.as_ref().map(RuleFiles::content_digest).map_err(Clone::clone);
        if !is_asked && content == self.tried {
            return;
        }
        self.tried = content;
        let outcome = self.exchange(files);
        let by = calls.by.unwrap_or(Trigger::Poll);
        let attempt = Arc::new(Attempt { at: SystemTime::now(), by, took: started.elapsed(), outcome });
        attempt.log();
        self.live.record(Arc::clone(&attempt));
        for waiting in calls.waiting {
            // Who has hung up meanwhile wants no answer.
            let _ = waiting.send(Arc::clone(&attempt));
        }
    }

    /// Reads the folder, again when it changed meanwhile: half of one state and half of another is neither.
    fn read(&mut self) -> Result<RuleFiles, Vec<Diagnostic>> {
        let mut before = FolderStamp::of(&self.settings.dir);
        let mut files = RuleFiles::read(&self.settings.dir);
        for _ in 1..MOST_READS {
            let after = FolderStamp::of(&self.settings.dir);
            if after.looks_like(&before) {
                break;
            }
            before = after;
            files = RuleFiles::read(&self.settings.dir);
        }
        self.stamp = Some(before);
        files
    }

    /// Puts the rules of the files in force, if they are good.
    fn exchange(&self, files: Result<RuleFiles, Vec<Diagnostic>>) -> AttemptOutcome {
        let tests = self.settings.tests;
        let loaded = files.map_err(RefusedRules::faulty).and_then(|files| {
            // A slip of ours must not end the reloading for good.
            catch_unwind(AssertUnwindSafe(|| RuleSet::load(files, tests))).unwrap_or_else(|_| {
                Err(RefusedRules::as_a_whole("the rules cannot be loaded", "loading the rules failed".to_owned()))
            })
        });
        match loaded {
            Ok(rules) => {
                let pack = &rules.diagnostician.knowledge().declared.pack;
                let outcome = AttemptOutcome::Loaded { version: pack.version.clone(), digest: pack.digest.clone() };
                if !rules.warnings.is_empty() {
                    tracing::warn!(count = rules.warnings.len(), "the rules have warnings; `whybake check` tells them");
                }
                self.live.replace(rules, SystemTime::now());
                outcome
            }
            Err(refused) => AttemptOutcome::refused(refused),
        }
    }
}
