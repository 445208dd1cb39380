//! What DEVELOPERS.md says of the folders of the program.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The third column of the table, by the name of the module.
fn told() -> BTreeMap<String, BTreeSet<String>> {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    let rows = text.lines().filter_map(|line| line.strip_prefix("| `src/"));
    let row = |row: &str| {
        let (name, rest) = row.split_once('`').unwrap();
        let known = rest.trim_end_matches('|').rsplit('|').next().unwrap();
        let known = known.split(',').map(|own| own.trim().to_owned()).filter(|own| own != "nothing");
        (name.trim_end_matches(".rs").to_owned(), known.collect())
    };
    rows.map(row).collect()
}

/// The files of a module.
fn files(path: PathBuf) -> Vec<PathBuf> {
    if path.is_file() {
        return vec![path];
    }
    fs::read_dir(path).unwrap().flat_map(|entry| files(entry.unwrap().path())).collect()
}

/// The other modules that the code of a file names; comments and tests are none.
fn named(text: &str) -> impl Iterator<Item = String> {
    let code = text.split("#[cfg(test)]\n").next().unwrap_or_default();
    let lines = code.lines().filter(|line| !line.trim_start().starts_with("//"));
    let names = lines.flat_map(|line| line.split("crate::").skip(1));
    names.map(|rest| rest.chars().take_while(|c| c.is_ascii_alphanumeric() || *c == '_').collect())
}

#[test]
fn the_table_tells_what_each_folder_knows_of() {
    let mut used: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for entry in fs::read_dir(root().join("src")).unwrap() {
        let path = entry.unwrap().path();
        let module = path.file_stem().unwrap().to_str().unwrap().to_owned();
        if ["lib", "main"].contains(&module.as_str()) {
            continue;
        }
        let sources = files(path).into_iter().filter(|file| file.extension().is_some_and(|ending| ending == "rs"));
        let names = sources.flat_map(|file| named(&fs::read_to_string(file).unwrap()).collect::<Vec<_>>());
        let others = names.filter(|name| *name != module && !name.is_empty()).collect();
        used.insert(module, others);
    }
    assert_eq!(told(), used, "left what DEVELOPERS.md says, right what the code does");
}

/// `knowledge`, `inference`, `case` and `diagnosis` know neither the web framework nor the script engine.
#[test]
fn the_core_knows_neither_the_web_framework_nor_the_script_engine() {
    for module in ["knowledge", "inference", "case", "diagnosis", "science", "units"] {
        for file in files(root().join("src").join(module)) {
            let text = fs::read_to_string(&file).unwrap();
            assert!(!text.contains("actix_web") && !text.contains("rhai::"), "{}", file.display());
        }
    }
}
