//! No calculation of the science is forgotten.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use whybake::calculations::all;

/// Functions of formulas need a whole formula: they have a route of their own.
const ELSEWHERE: &str = "formula";

/// Public functions at the outer level of the files of a folder, under the path of their public module.
fn functions(folder: &Path, module: &str, found: &mut BTreeSet<String>) {
    let mut entries: Vec<_> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    entries.sort();
    for path in entries {
        let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
        if path.is_dir() {
            if name != ELSEWHERE {
                functions(&path, &format!("{module}{name}::"), found);
            }
            continue;
        }
        // A file beside others of a topic is private to it; a file of the science itself is a topic.
        let module = if module.is_empty() && name != "mod" { format!("{name}::") } else { module.to_owned() };
        for line in fs::read_to_string(&path).unwrap().lines() {
            if let Some(rest) = line.strip_prefix("pub fn ") {
                found.insert(format!("{module}{}", rest.split(['(', '<']).next().unwrap()));
            }
        }
    }
}

#[test]
fn every_public_function_of_the_science_is_available() {
    let mut functions_of_science = BTreeSet::new();
    let science = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/science");
    functions(&science, "", &mut functions_of_science);
    let available: BTreeSet<String> =
        all().flat_map(|calculation| calculation.science).map(|path| (*path).to_owned()).collect();
    assert!(functions_of_science.len() > 70, "{functions_of_science:?}");
    assert_eq!(functions_of_science.difference(&available).collect::<Vec<_>>(), Vec::<&String>::new(), "forgotten");
    assert_eq!(available.difference(&functions_of_science).collect::<Vec<_>>(), Vec::<&String>::new(), "not there");
}
