use std::num::NonZeroUsize;
use std::path::PathBuf;
use std::time::Duration;

use tracing::level_filters::LevelFilter;

use super::{AuthorKey, HttpSettings, LogFormat, LogSettings, RulesSettings, Settings, TestsPolicy};

fn load(text: &str, environment: &[(&str, &str)]) -> Result<Settings, Vec<String>> {
    let environment = environment.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned()));
    let settings = Settings::from_text("whybake.toml", text, environment);
    settings.map_err(|faults| faults.iter().map(ToString::to_string).collect())
}

#[test]
fn defaults() {
    let expected = Settings {
        http: HttpSettings {
            listen: "127.0.0.1:8080".parse().unwrap(),
            workers: None,
            body_limit_bytes: 1_048_576,
            request_timeout: Duration::from_secs(10),
            shutdown_timeout: Duration::from_secs(20),
            keep_alive: Duration::from_secs(75),
        },
        rules: RulesSettings { dir: None, tests: None, watch: true, poll: Duration::from_secs(2), author_key: None },
        log: LogSettings { level: LevelFilter::INFO, format: LogFormat::Text },
    };
    assert_eq!(load("", &[]).unwrap(), expected);
}

#[test]
fn every_setting_can_stand_in_the_file() {
    let text = r#"
        [http]
        listen = "[::]:80"
        workers = 3
        body_limit_bytes = 5000
        request_timeout_seconds = 0.5
        shutdown_timeout_seconds = 7
        keep_alive_seconds = 9
        [rules]
        dir = "house"
        tests = "ignored"
        watch = false
        poll_seconds = 30
        author_key = "correct-horse-battery"
        [log]
        level = "debug"
        format = "json"
    "#;
    let expected = Settings {
        http: HttpSettings {
            listen: "[::]:80".parse().unwrap(),
            workers: NonZeroUsize::new(3),
            body_limit_bytes: 5000,
            request_timeout: Duration::from_millis(500),
            shutdown_timeout: Duration::from_secs(7),
            keep_alive: Duration::from_secs(9),
        },
        rules: RulesSettings {
            dir: Some(PathBuf::from("house")),
            tests: Some(TestsPolicy::Ignored),
            watch: false,
            poll: Duration::from_secs(30),
            author_key: AuthorKey::new("correct-horse-battery"),
        },
        log: LogSettings { level: LevelFilter::DEBUG, format: LogFormat::Json },
    };
    assert_eq!(load(text, &[]).unwrap(), expected);
}

#[test]
fn tests_are_required_of_a_folder_unless_the_setting_says_otherwise() {
    let policy = |text: &str| load(text, &[]).unwrap().rules.tests_policy();
    assert_eq!(policy(""), TestsPolicy::Ignored);
    assert_eq!(policy("[rules]\ndir = \"house\""), TestsPolicy::Required);
    assert_eq!(policy("[rules]\ndir = \"house\"\ntests = \"ignored\""), TestsPolicy::Ignored);
    assert_eq!(policy("[rules]\ntests = \"required\""), TestsPolicy::Required);
}

#[test]
fn the_environment_wins_over_the_file() {
    let settings = load("[http]\nworkers = 3\nkeep_alive_seconds = 9", &[("WHYBAKE_HTTP_WORKERS", "4")]).unwrap();
    assert_eq!(settings.http.workers, NonZeroUsize::new(4));
    assert_eq!(settings.http.keep_alive, Duration::from_secs(9));
}

#[test]
fn all_faults_are_told_at_once() {
    let text = "loose = 1\n[http]\nlisten = \"everywhere\"\nworker = 2\nworkers = [1]\n[htp]\n[logs]\nlevel = \"info\"";
    let environment =
        [("WHYBAKE_HTTP_KEEP_ALIVE_SECONDS", "-1"), ("WHYBAKE_LOG_LEVL", "info"), ("WHYBAKE_PORT", "tcp://10.0.0.1")];
    let expected = [
        "`loose` in whybake.toml: stands in no section (help: settings stand in sections, for example `[http]`)",
        "`http.listen` in whybake.toml: an IP address with a port, for example `0.0.0.0:8080` is wanted, this is `everywhere`",
        "`http.workers` in whybake.toml: a whole number of 1 or more is wanted, this is a list or section",
        "environment variable `WHYBAKE_HTTP_KEEP_ALIVE_SECONDS`: a number of seconds above 0, at most 3600 is wanted, this is `-1`",
        "`http.worker` in whybake.toml: unknown setting (help: did you mean `workers`?)",
        "`htp` in whybake.toml: unknown section (help: did you mean `http`?)",
        "`logs` in whybake.toml: unknown section (help: did you mean `log`?)",
        "environment variable `WHYBAKE_LOG_LEVL`: unknown setting (help: did you mean `WHYBAKE_LOG_LEVEL`?)",
    ];
    assert_eq!(load(text, &environment).unwrap_err(), expected);
}

#[test]
fn text_that_is_no_toml_is_told_with_its_place() {
    let faults = load("[http\n", &[]).unwrap_err();
    assert_eq!(faults.len(), 1);
    assert!(faults[0].starts_with("whybake.toml: is not TOML: TOML parse error at line 1"), "{faults:?}");
}

#[test]
fn the_key_of_authors_can_stand_in_a_file_of_its_own() {
    let dir = tempfile::tempdir().unwrap();
    let file = dir.path().join("key");
    std::fs::write(&file, "correct-horse-battery\n").unwrap();
    let variable = |file: &str| load("", &[("WHYBAKE_RULES_AUTHOR_KEY_FILE", file)]);
    let settings = variable(file.to_str().unwrap()).unwrap();
    assert_eq!(settings.rules.author_key, AuthorKey::new("correct-horse-battery"));
    std::fs::write(&file, "hunter2").unwrap();
    let faults = variable(file.to_str().unwrap()).unwrap_err();
    let expected = format!(
        "`rules.author_key_file`: a key of 20 to 512 visible ASCII characters without spaces is wanted in `{}`",
        file.display()
    );
    assert_eq!(faults, [expected]);
    assert!(
        variable("no/such/key").unwrap_err()[0].starts_with("`rules.author_key_file`: `no/such/key` cannot be read: ")
    );
}

#[test]
fn a_key_is_never_printed() {
    let faults = load("", &[("WHYBAKE_RULES_AUTHOR_KEY", "hunter2")]).unwrap_err();
    let expected = "environment variable `WHYBAKE_RULES_AUTHOR_KEY`: a key of 20 to 512 visible ASCII characters without \
                    spaces is wanted, this is something else";
    assert_eq!(faults, [expected]);
    let settings = load("[rules]\nauthor_key = \"correct-horse-battery\"", &[]).unwrap();
    let printed = format!("{settings:?} {settings:#?}");
    assert!(printed.contains("author_key: Some(AuthorKey(not shown))") && !printed.contains("correct"), "{printed}");
    let both = "[rules]\nauthor_key = \"correct-horse-battery\"\nauthor_key_file = \"key\"";
    assert_eq!(
        load(both, &[]).unwrap_err(),
        ["`rules.author_key_file`: stands beside `author_key`; one of them is enough"]
    );
}
