//! Every code is explained; every wrong example says exactly what the explanation shows, every right one nothing.

use std::fs;

use whybake::diagnosis::Diagnostician;
use whybake::rule_tests::{Failure, RuleTests};
use whybake::rules::{Code, Diagnostic, Example, RuleFiles, load};

use crate::support::{Changed, is_spare, line, pack};

/// Everything that is said of the small pack with an example.
fn said(example: Example) -> Vec<Diagnostic> {
    match example {
        Example::Cause(property) => checked(&pack().property(property)),
        Example::File(path, text) => checked(&pack().with(&beside(path), text)),
        Example::OldEncoding(path, text) => {
            let dir = tempfile::tempdir().unwrap();
            let bytes: Vec<u8> = text.chars().map(|letter| u8::try_from(u32::from(letter)).unwrap()).collect();
            fs::write(dir.path().join(path), bytes).unwrap();
            RuleFiles::read(dir.path()).map_or_else(|faults| faults, |files| checked(&files))
        }
    }
}

/// The path in a folder of its own where the small pack has a file of this name.
fn beside(path: &str) -> String {
    if pack().text(path).is_some() { format!("more/{path}") } else { path.to_owned() }
}

fn checked(files: &RuleFiles) -> Vec<Diagnostic> {
    let loaded = match load(files) {
        Ok(loaded) => loaded,
        Err(faults) => return faults,
    };
    let diagnostician = Diagnostician::new(loaded.knowledge).unwrap();
    let tests = RuleTests::read(files, diagnostician.knowledge());
    let failures = tests.run(&diagnostician);
    let warnings = loaded.warnings.into_iter().filter(|warning| !is_spare(&line(warning)));
    warnings.chain(tests.diagnostics).chain(failures.iter().map(Failure::diagnostic)).collect()
}

#[test]
fn every_wrong_example_says_exactly_what_is_shown() {
    for &code in Code::ALL {
        let explanation = code.explanation();
        assert_eq!(explanation.code, code);
        let said = said(explanation.wrong);
        let texts: String = said.iter().map(|diagnostic| diagnostic.to_string().replace("more/", "")).collect();
        assert_eq!(texts.trim_end(), explanation.says, "{}", code.word());
        assert_eq!(said.iter().map(|diagnostic| diagnostic.code).collect::<Vec<_>>(), [code]);
    }
}

#[test]
fn every_right_example_is_clean() {
    for &code in Code::ALL {
        let said: Vec<String> = said(code.explanation().right).iter().map(line).collect();
        assert_eq!(said, [""; 0], "{}", code.word());
    }
}

#[test]
fn examples_show_one_mistake_and_its_repair() {
    for &code in Code::ALL {
        let explanation = code.explanation();
        assert_ne!(explanation.wrong, explanation.right, "{}", code.word());
        assert!(explanation.meaning.ends_with('.') && explanation.why.ends_with('.'), "{}", code.word());
    }
}
