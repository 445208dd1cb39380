//! The text of a rule pack: embedded in the binary, or read from a folder.

use std::collections::BTreeMap;
use std::fs::{self, DirEntry};
use std::io::{self, Read};
use std::path::Path;

use include_dir::{Dir, include_dir};
use sha2::{Digest, Sha256};

use super::ancestors::Ancestors;
use super::code::Code;
use super::diagnostic::Diagnostic;
use crate::json::text_without_mark;

static EMBEDDED: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/rules");

/// Largest rule file, bytes; a long family takes about 30 KiB.
pub(super) const LARGEST_FILE: u64 = 256 * 1024;

/// Most rule files in a pack, and most cases.
const MOST_FILES: usize = 4_000;

/// Deepest folder in a pack.
pub(super) const DEEPEST_FOLDER: usize = 8;

/// Rule files and the rule tests beside them, by path within the pack, `/` between folders.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct RuleFiles {
    files: BTreeMap<String, String>,
    /// Cases with expectations; they change no answer, so they are no part of the digest.
    cases: BTreeMap<String, String>,
}

impl RuleFiles {
    /// Longest text of a file, bytes.
    pub const LARGEST_FILE: u64 = LARGEST_FILE;

    /// Whether a pack takes a file of this path: `….rhai`, or `….json` in a folder named `cases`.
    #[must_use]
    pub fn takes(path: &str) -> bool {
        is_pack_file(path)
    }

    /// The pack that the binary carries.
    #[must_use]
    pub fn embedded() -> Self {
        let mut pack = Self::default();
        for (path, text) in Self::embedded_folder() {
            if is_pack_file(&path) {
                pack.insert(&path, &text);
            }
        }
        pack
    }

    /// Reads the `.rhai` files of a folder and its subfolders, and the `.json` files of folders named `cases`.
    ///
    /// # Errors
    /// A diagnostic for every file that cannot be read, is no ordinary file, no UTF-8 text or too long, has an ending in
    /// capital letters; for links that lead in a circle.
    pub fn read(dir: &Path) -> Result<Self, Vec<Diagnostic>> {
        let mut reader = Reader::default();
        reader.folder(dir, "", 0);
        if reader.pack.files.is_empty() && reader.faults.is_empty() {
            reader.faults.push(file_fault("", format!("`{}` holds no rule file", dir.display())));
        }
        if reader.faults.is_empty() { Ok(reader.pack) } else { Err(reader.faults) }
    }

    /// Adds or replaces a file. A byte order mark, which some editors write at the beginning, is no part of its text.
    pub fn insert(&mut self, path: &str, text: &str) {
        let files = if is_case_file(path) { &mut self.cases } else { &mut self.files };
        files.insert(path.to_owned(), text_without_mark(text).to_owned());
    }

    /// Paths and texts of the rule files, sorted by path.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &str)> {
        self.files.iter().map(|(path, text)| (path.as_str(), text.as_str()))
    }

    /// Paths and texts of the rule tests, the files `cases/*.json`, sorted by path.
    pub fn cases(&self) -> impl Iterator<Item = (&str, &str)> {
        self.cases.iter().map(|(path, text)| (path.as_str(), text.as_str()))
    }

    /// Text of a rule file.
    #[must_use]
    pub fn text(&self, path: &str) -> Option<&str> {
        self.files.get(path).map(String::as_str)
    }

    /// `sha256:` and the hash of paths and texts of all rule files; the order in which they were found does not matter.
    #[must_use]
    pub fn digest(&self) -> String {
        digest(self.iter())
    }

    /// The same with the rule tests: whether anything is left to load after a change.
    #[must_use]
    pub fn content_digest(&self) -> String {
        digest(self.iter().chain(self.cases()))
    }

    /// Takes a file out, whether it is there or not.
    pub fn remove(&mut self, path: &str) {
        self.files.remove(path);
        self.cases.remove(path);
    }
}

fn digest<'f>(files: impl Iterator<Item = (&'f str, &'f str)>) -> String {
    let mut hash = Sha256::new();
    for (path, text) in files {
        // Lengths keep a text from passing for another path.
        hash.update(path.len().to_le_bytes());
        hash.update(path);
        hash.update(text.len().to_le_bytes());
        hash.update(text);
    }
    let hex: String = hash.finalize().iter().map(|byte| format!("{byte:02x}")).collect();
    format!("sha256:{hex}")
}

impl RuleFiles {
    /// Everything that the binary carries, with the authors' guide and the cases beside the rules.
    #[must_use]
    pub fn embedded_folder() -> BTreeMap<String, String> {
        let mut files = BTreeMap::new();
        collect_embedded(&EMBEDDED, &mut files);
        files
    }
}

/// Whether a pack takes a file of this path at all.
pub(super) fn is_pack_file(path: &str) -> bool {
    is_rule_file(path) || is_case_file(path)
}

fn is_rule_file(path: &str) -> bool {
    Path::new(path).extension().is_some_and(|extension| extension == "rhai")
}

/// Whether a file stands directly in a folder `cases` and is JSON.
fn is_case_file(path: &str) -> bool {
    let path = Path::new(path);
    path.extension().is_some_and(|extension| extension == "json")
        && path.parent().and_then(Path::file_name).is_some_and(|folder| folder == "cases")
}

fn collect_embedded(dir: &Dir<'_>, files: &mut BTreeMap<String, String>) {
    for file in dir.files() {
        if let (Some(path), Some(text)) = (file.path().to_str(), file.contents_utf8()) {
            files.insert(path.replace('\\', "/"), text.to_owned());
        }
    }
    for inner in dir.dirs() {
        collect_embedded(inner, files);
    }
}

/// What a file that a pack does not take was probably meant to be: its ending is in other letters.
pub(super) fn meant_as(path: &str) -> Option<String> {
    let (stem, ending) = path.rsplit_once('.')?;
    let meant = format!("{stem}.{}", ending.to_ascii_lowercase());
    (meant != path && is_pack_file(&meant)).then_some(meant)
}

#[derive(Default)]
struct Reader {
    pack: RuleFiles,
    faults: Vec<Diagnostic>,
    inside: Ancestors,
    /// Whether folders that are nested too deep have been told: a deep tree has many.
    is_too_deep: bool,
}

impl Reader {
    fn folder(&mut self, dir: &Path, prefix: &str, depth: usize) {
        if depth > DEEPEST_FOLDER {
            if !self.is_too_deep {
                self.fault(prefix, format!("folders are nested deeper than {DEEPEST_FOLDER}"));
            }
            self.is_too_deep = true;
            return;
        }
        if !self.inside.enter(dir) {
            let help = "take the link out".to_owned();
            let fault = file_fault(prefix, "the folder is a link to one that it stands in".to_owned());
            return self.faults.push(Diagnostic { help: Some(help), ..fault });
        }
        match fs::read_dir(dir).and_then(Iterator::collect::<io::Result<Vec<_>>>) {
            Ok(entries) => entries.iter().for_each(|entry| self.entry(entry, prefix, depth)),
            Err(error) => self.fault(prefix, format!("cannot read `{}`: {error}", dir.display())),
        }
        self.inside.leave();
    }

    fn entry(&mut self, entry: &DirEntry, prefix: &str, depth: usize) {
        let name = entry.file_name().to_string_lossy().into_owned();
        // Editors and version control keep their own files behind a dot.
        if name.starts_with('.') {
            return;
        }
        let path = if prefix.is_empty() { name } else { format!("{prefix}/{name}") };
        if entry.path().is_dir() {
            self.folder(&entry.path(), &path, depth + 1);
        } else if is_pack_file(&path) {
            self.file(&entry.path(), &path);
        } else if let Some(meant) = meant_as(&path) {
            let fault = file_fault(&path, "the ending of a file is written in small letters".to_owned());
            self.faults.push(Diagnostic { help: Some(format!("rename it to `{meant}`")), ..fault });
        }
    }

    fn file(&mut self, from: &Path, path: &str) {
        let (count, what) =
            if is_case_file(path) { (self.pack.cases.len(), "cases") } else { (self.pack.files.len(), "rule files") };
        if count >= MOST_FILES {
            return self.fault(path, format!("the pack has more than {MOST_FILES} {what}"));
        }
        match read_text(from) {
            Ok(Some(text)) => self.pack.insert(path, &text),
            Ok(None) => self.fault(path, format!("the file is longer than {} KiB", LARGEST_FILE / 1024)),
            Err(error) => self.fault(path, format!("cannot read the file: {error}")),
        }
    }

    fn fault(&mut self, path: &str, message: String) {
        self.faults.push(file_fault(path, message));
    }
}

/// The text of a file; nothing where it is too long. A pipe or a device is refused: it may have no end.
fn read_text(from: &Path) -> io::Result<Option<String>> {
    if !fs::metadata(from)?.is_file() {
        return Err(io::Error::other("it is no ordinary file"));
    }
    let mut text = Vec::new();
    // A file may grow while it is read.
    fs::File::open(from)?.take(LARGEST_FILE + 1).read_to_end(&mut text)?;
    if text.len() as u64 > LARGEST_FILE {
        return Ok(None);
    }
    let not_text = |_| io::Error::new(io::ErrorKind::InvalidData, "it is not text in UTF-8");
    String::from_utf8(text).map(Some).map_err(not_text)
}

fn file_fault(path: &str, message: String) -> Diagnostic {
    Diagnostic::of_file(Code::File, path, message)
}
