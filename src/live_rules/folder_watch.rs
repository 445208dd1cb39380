//! Notices of the file system about a folder.

use std::path::{Path, PathBuf};

use notify::event::{AccessKind, AccessMode};
use notify::{Event, EventKind, RecommendedWatcher, RecursiveMode, Watcher};

/// Calls back when something in a folder, or the folder itself, may have changed; until it is dropped.
pub(super) struct FolderWatch {
    _watcher: RecommendedWatcher,
}

impl FolderWatch {
    /// Watches `dir` with its subfolders, and what its parent says of it: a folder that is put in its place is another one.
    /// `None`, with a line in the log, when the file system cannot be watched; looking at it now and then must do then.
    pub(super) fn new(dir: &Path, changed: impl Fn() + Send + 'static) -> Option<Self> {
        let own = own_path(dir);
        let name = own.clone();
        let notice = move |event: notify::Result<Event>| {
            if event.is_ok_and(|event| is_change(event.kind) && concerns(&event, &name)) {
                changed();
            }
        };
        let mut watcher = notify::recommended_watcher(notice).map_err(|error| unwatched(dir, &error)).ok()?;
        let inside = watcher.watch(&own, RecursiveMode::Recursive);
        let beside = own.parent().map(|parent| watcher.watch(parent, RecursiveMode::NonRecursive));
        if let Err(error) = &inside {
            unwatched(dir, error);
        }
        (inside.is_ok() || beside.is_some_and(|beside| beside.is_ok())).then_some(Self { _watcher: watcher })
    }
}

/// The folder's path from the root, its last step not followed: it may be a link that will point elsewhere.
fn own_path(dir: &Path) -> PathBuf {
    let absolute = std::path::absolute(dir).unwrap_or_else(|_| dir.to_owned());
    let parent = absolute.parent().and_then(|parent| parent.canonicalize().ok());
    match (parent, absolute.file_name()) {
        (Some(parent), Some(name)) => parent.join(name),
        _ => absolute,
    }
}

fn unwatched(dir: &Path, error: &notify::Error) {
    tracing::debug!(dir = %dir.display(), %error, "the folder of rules gives no notice of changes");
}

/// Reading is no change; ours would wake us for ever.
fn is_change(kind: EventKind) -> bool {
    match kind {
        EventKind::Access(access) => access == AccessKind::Close(AccessMode::Write),
        _ => true,
    }
}

/// Whether an event is about the folder or something in it; one that names no path may be about anything.
fn concerns(event: &Event, dir: &Path) -> bool {
    event.paths.is_empty() || event.paths.iter().any(|path| path.starts_with(dir))
}
