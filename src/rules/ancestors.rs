//! The folders that a walk stands in.

use std::path::{Path, PathBuf};

/// The real paths from the first folder of a walk to the one that it is in: a link that leads back to one of them would
/// have no end.
#[derive(Debug, Default)]
pub(super) struct Ancestors(Vec<PathBuf>);

impl Ancestors {
    /// Goes into a folder; `false` where the walk stands in it already, and nothing is entered then.
    pub(super) fn enter(&mut self, dir: &Path) -> bool {
        // A folder that has no real path cannot be read either, which the reader tells.
        let real = dir.canonicalize().unwrap_or_else(|_| dir.to_path_buf());
        let is_new = !self.0.contains(&real);
        if is_new {
            self.0.push(real);
        }
        is_new
    }

    /// Leaves the folder that was entered last.
    pub(super) fn leave(&mut self) {
        self.0.pop();
    }
}
