//! `whybake serve`: what keeps it from starting. That it serves is tested in `tests/http`.

use std::fs;
use std::net::TcpListener;

use crate::program::{run, whybake};

#[test]
fn every_faulty_setting_is_told() {
    let dir = tempfile::tempdir().unwrap();
    let file = dir.path().join("whybake.toml");
    fs::write(&file, "[http]\nworker = 2\n").unwrap();
    let path = file.to_str().unwrap();
    let output = whybake(&["serve", "--settings", path]).env("WHYBAKE_LOG_FORMAT", "xml").output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    let expected = format!(
        "environment variable `WHYBAKE_LOG_FORMAT`: `text` or `json` is wanted, this is `xml`\n\
         `http.worker` in {path}: unknown setting (help: did you mean `workers`?)\n"
    );
    let complaints = String::from_utf8(output.stderr).unwrap();
    let mut lines: Vec<&str> = complaints.lines().collect();
    let mut expected: Vec<&str> = expected.lines().collect();
    lines.sort_unstable();
    expected.sort_unstable();
    assert_eq!(lines, expected);
}

/// Else a service whose key is mistyped would start without one.
#[cfg(unix)]
#[test]
fn a_value_that_is_no_unicode_text_is_told() {
    use std::ffi::OsStr;
    use std::os::unix::ffi::OsStrExt;

    let key = OsStr::from_bytes(b"correct-horse-b\xe9ttery");
    // An address that cannot be bound, so that a program that does start ends by itself.
    let taken = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = taken.local_addr().unwrap().to_string();
    let output = whybake(&["serve", "--listen", &address]).env("WHYBAKE_RULES_AUTHOR_KEY", key).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    let complaints = String::from_utf8(output.stderr).unwrap();
    assert!(complaints.contains("`WHYBAKE_RULES_AUTHOR_KEY`") && !complaints.contains("correct"), "{complaints}");
}

#[test]
fn a_settings_file_that_is_not_there_is_told() {
    let run = run(&["serve", "--settings", "no/such/file.toml"]);
    assert_eq!(run.code, Some(2));
    assert!(run.complaints.starts_with("no/such/file.toml: cannot be read: "), "{}", run.complaints);
}

#[test]
fn rules_that_cannot_be_loaded_keep_it_from_starting() {
    assert_eq!(run(&["serve", "--listen", "127.0.0.1:0", "--rules", "no/such/rules"]).code, Some(3));
}

#[test]
fn rules_that_fail_their_tests_keep_it_from_starting_unless_tests_are_ignored() {
    let dir = tempfile::tempdir().unwrap();
    let rules = dir.path().join("rules");
    let path = rules.to_str().unwrap();
    run(&["rules", "export", path]).success();
    let unmet =
        r#"{ "title": "x", "case": { "product": "hamburger_bun" }, "expect": { "above": { "rope_spores": 0.9 } } }"#;
    fs::write(rules.join("soft_rolls/cases/unmet.json"), unmet).unwrap();
    // An address that cannot be bound, so that a program that does start ends by itself.
    let taken = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = taken.local_addr().unwrap().to_string();
    let serve = ["serve", "--listen", &address, "--rules", path];
    let refused = run(&serve);
    assert_eq!(refused.code, Some(3));
    assert!(
        refused.complaints.contains("fault[failed-test]: `above`: wanted `rope_spores` above 0.9"),
        "{}",
        refused.complaints
    );
    assert!(refused.complaints.ends_with("the rules fail their tests; the setting `rules.tests` can ignore them\n"));
    let ignored = whybake(&serve).env("WHYBAKE_RULES_TESTS", "ignored").output().unwrap();
    assert_eq!(ignored.status.code(), Some(4));
}

#[test]
fn an_address_in_use_keeps_it_from_starting() {
    let taken = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = taken.local_addr().unwrap().to_string();
    let run = run(&["serve", "--listen", &address]);
    assert_eq!(run.code, Some(4));
    assert!(run.complaints.contains("the service failed") && run.complaints.contains(&address), "{}", run.complaints);
}

#[test]
fn an_option_wins_over_the_environment_and_the_file() {
    let dir = tempfile::tempdir().unwrap();
    let file = dir.path().join("whybake.toml");
    fs::write(&file, "[rules]\ndir = \"from/file\"\n").unwrap();
    let path = file.to_str().unwrap();
    let complaints = |arguments: &[&str], variable: Option<&str>| {
        let mut command = whybake(arguments);
        command.envs(variable.map(|dir| ("WHYBAKE_RULES_DIR", dir)));
        let output = command.output().unwrap();
        assert_eq!(output.status.code(), Some(3));
        String::from_utf8(output.stderr).unwrap()
    };
    let serve = ["serve", "--listen", "127.0.0.1:0", "--settings", path];
    let with_option = [&serve[..], &["--rules", "from/option"]].concat();
    assert!(complaints(&serve, None).contains("from/file"));
    assert!(complaints(&serve, Some("from/environment")).contains("from/environment"));
    assert!(complaints(&with_option, Some("from/environment")).contains("from/option"));
}
