//! Whether a folder of rules has changed, without reading its files.

use std::fs::{self, Metadata};
use std::path::Path;
use std::time::{Duration, SystemTime};

use sha2::{Digest, Sha256};

use super::ancestors::Ancestors;
use super::files::{DEEPEST_FOLDER, is_pack_file, meant_as};

/// Within this time a file may change twice and keep its time of change: the coarsest file systems in use count in
/// steps of 2 s.
const COARSEST_CLOCK: Duration = Duration::from_secs(2);

/// Hash of the names, sizes and times of change of the files that a pack takes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FolderStamp {
    hash: [u8; 32],
    is_young: bool,
}

impl FolderStamp {
    /// Looks at a folder. What cannot be looked at is a part of the stamp, so that it coming back is a change.
    #[must_use]
    pub fn of(dir: &Path) -> Self {
        let mut looking =
            Looking { hash: Sha256::new(), now: SystemTime::now(), is_young: false, inside: Ancestors::default() };
        looking.folder(dir, "", 0);
        Self { hash: looking.hash.finalize().into(), is_young: looking.is_young }
    }

    /// Whether nothing has changed since `earlier`, as far as stamps can tell: right after a change they cannot.
    #[must_use]
    pub fn is_surely(&self, earlier: &Self) -> bool {
        self.hash == earlier.hash && !earlier.is_young
    }

    /// Whether the two look the same.
    #[must_use]
    pub fn looks_like(&self, other: &Self) -> bool {
        self.hash == other.hash
    }
}

struct Looking {
    hash: Sha256,
    now: SystemTime,
    is_young: bool,
    inside: Ancestors,
}

impl Looking {
    fn folder(&mut self, dir: &Path, prefix: &str, depth: usize) {
        let entries = match fs::read_dir(dir) {
            Ok(entries) if depth <= DEEPEST_FOLDER => entries,
            Ok(_) => return,
            Err(error) => return self.add(prefix, format!("{:?}", error.kind()).as_bytes()),
        };
        if !self.inside.enter(dir) {
            return self.add(prefix, b"a link in a circle");
        }
        let mut paths: Vec<_> = entries.flatten().map(|entry| entry.path()).collect();
        paths.sort();
        for path in paths {
            let Some(name) = path.file_name().map(|name| name.to_string_lossy().into_owned()) else { continue };
            if name.starts_with('.') {
                continue;
            }
            let inner = if prefix.is_empty() { name } else { format!("{prefix}/{name}") };
            // What the reader refuses is looked at too: taken away, it is a change.
            let matters = is_pack_file(&inner) || meant_as(&inner).is_some();
            match fs::metadata(&path) {
                Ok(metadata) if metadata.is_dir() => self.folder(&path, &inner, depth + 1),
                Ok(metadata) if matters => self.file(&inner, &metadata),
                Err(error) if matters => self.add(&inner, format!("{:?}", error.kind()).as_bytes()),
                _ => {}
            }
        }
        self.inside.leave();
    }

    fn file(&mut self, path: &str, metadata: &Metadata) {
        let changed = metadata.modified().unwrap_or(SystemTime::UNIX_EPOCH);
        // A time of change in the future tells no age.
        self.is_young |= self.now.duration_since(changed).is_ok_and(|age| age < COARSEST_CLOCK);
        let since_epoch = changed.duration_since(SystemTime::UNIX_EPOCH).unwrap_or_default();
        self.add(path, &metadata.len().to_le_bytes());
        self.hash.update(since_epoch.as_nanos().to_le_bytes());
        self.hash.update(file_number(metadata).to_le_bytes());
    }

    fn add(&mut self, path: &str, what: &[u8]) {
        self.hash.update(path.len().to_le_bytes());
        self.hash.update(path);
        self.hash.update(what.len().to_le_bytes());
        self.hash.update(what);
    }
}

/// Tells a file from another of the same size and time that was put in its place.
#[cfg(unix)]
fn file_number(metadata: &Metadata) -> u64 {
    std::os::unix::fs::MetadataExt::ino(metadata)
}

#[cfg(not(unix))]
fn file_number(_: &Metadata) -> u64 {
    0
}
