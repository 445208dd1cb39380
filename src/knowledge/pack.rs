//! The name of a rule pack.

/// What `pack.rhai` says of the pack, and the digest of its files.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Pack {
    /// Id of the pack.
    pub id: String,
    /// Title for people.
    pub title: String,
    /// The authors' version.
    pub version: String,
    /// `sha256:` and the hash of all rule files, independent of the order in which they were found.
    pub digest: String,
    /// Paths of the rule files, sorted.
    pub files: Vec<String>,
}
