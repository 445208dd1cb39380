//! `POST /v1/rules/trial`

use std::collections::BTreeSet;
use std::time::Duration;

use actix_web::test::{TestRequest, call_service, init_service, read_body};
use actix_web::web::Data;
use serde_json::{Value, json};
use whybake::http::{AppState, AuthorAccess, Authoring, BodyLimits, Planning, create_app};
use whybake::live_rules::LiveRules;
use whybake::rule_set::RuleSet;
use whybake::rules::{Code, RuleFiles};
use whybake::settings::{AuthorKey, TestsPolicy};

use crate::schema::{self, document};
use crate::service::{Answer, post, send};
use crate::small_pack::{CAUSE, cause, pack};

const KEY: &str = "correct-horse-battery-staple";

fn request(trial: &Value) -> TestRequest {
    post("application/json", trial.to_string()).uri("/v1/rules/trial")
}

/// The small pack with prior 0.1 and a rule test that wants it.
fn tested_pack() -> RuleFiles {
    let mut files = pack(0.1);
    let test = r#"{"title": "blank", "case": {"product": "bun"}, "expect": {"below": {"too_warm": 0.15}}}"#;
    files.insert("rolls/cases/blank.json", test);
    files
}

fn authoring() -> Authoring {
    let mut authoring = Authoring::new(AuthorAccess::Everybody, None);
    // However slow the machine.
    authoring.trial_time = Duration::from_secs(3600);
    authoring
}

/// Asks a service with the small pack.
async fn ask(authoring: Authoring, request: TestRequest) -> Answer {
    let rules = RuleSet::load(tested_pack(), TestsPolicy::Required).unwrap();
    let state = AppState {
        rules: Data::new(LiveRules::new(rules, std::time::SystemTime::UNIX_EPOCH)),
        authoring: Data::new(authoring),
        planning: Data::new(Planning::default()),
        body_limits: BodyLimits { bytes: 100, time: Duration::from_secs(5) },
    };
    let service = init_service(create_app(&state)).await;
    let response = call_service(&service, request.to_request()).await;
    let (status, headers) = (response.status().as_u16(), response.headers().clone());
    let answer = Answer { status, headers, body: read_body(response).await };
    assert_eq!(state.rules.current().files, tested_pack(), "a trial changes nothing");
    answer
}

async fn tried(trial: Value) -> Value {
    let answer = ask(authoring(), request(&trial)).await.success();
    assert_eq!(schema::faults("TrialAnswer", &answer), Vec::<String>::new(), "{answer}");
    answer
}

#[actix_web::test]
async fn a_change_is_judged_by_the_rule_tests_and_the_cases() {
    let case = json!({"product": "bun", "symptoms": [{"symptom": "hollow"}]});
    let unknown = json!({"product": "loaf"});
    let answer = tried(json!({"files": {CAUSE: cause(0.2)}, "cases": [case, unknown]})).await;
    assert_eq!(answer["rules"]["digest"], pack(0.1).digest());
    assert_eq!(answer["trial"]["digest"], pack(0.2).digest());
    assert_eq!(answer["tests"]["passed"], 0);
    let failed = &answer["tests"]["failed"][0];
    assert_eq!((&failed["file"], &failed["found"]), (&json!("rolls/cases/blank.json"), &json!("0.200")));
    let counts =
        json!({"unchanged": 0, "probabilities": 2, "leader": 0, "newly_refused": 0, "newly_answered": 0, "refused": 1});
    assert_eq!(answer["counts"], counts);
    let rankings = answer["rankings"].as_array().unwrap();
    let cases: Vec<&Value> = rankings.iter().map(|ranking| &ranking["case"]).collect();
    assert_eq!(cases, [&json!({"index": 0}), &json!({"file": "rolls/cases/blank.json"}), &json!({"index": 1})]);
    let blank = &rankings[1];
    assert_eq!((&blank["effect"], &blank["leader_changed"]), (&json!("probabilities"), &json!(false)));
    let before = blank["before"][0]["probability"].as_f64().unwrap();
    let after = blank["after"][0]["probability"].as_f64().unwrap();
    assert!((before - 0.1).abs() < 1e-12 && (after - 0.2).abs() < 1e-12, "{blank}");
    assert_eq!(blank["largest_change"], json!({"cause": "too_warm", "before": before, "after": after}));
    assert_eq!(rankings[2]["refused_after"][0]["detail"], "unknown product `loaf`");
}

#[actix_web::test]
async fn what_does_not_change_is_counted_only() {
    let answer = tried(json!({"cases": [{"product": "bun"}]})).await;
    assert_eq!((&answer["counts"]["unchanged"], &answer["rankings"]), (&json!(2), &json!([])));
    assert_eq!((&answer["tests"]["passed"], &answer["tests"]["failed"]), (&json!(1), &json!([])));
    assert_eq!(answer["trial"], answer["rules"]);
}

#[actix_web::test]
async fn a_new_cause_can_take_the_lead() {
    let rival = cause(0.3).replace("too_warm", "rival");
    let answer = tried(json!({"files": {"rolls/rival.rhai": rival}})).await;
    let ranking = &answer["rankings"][0];
    assert_eq!((&ranking["effect"], &ranking["leader_changed"]), (&json!("leader"), &json!(true)));
    assert_eq!((&ranking["before"][0]["cause"], &ranking["after"][0]["cause"]), (&json!("too_warm"), &json!("rival")));
    let change = &ranking["largest_change"];
    assert_eq!((&change["cause"], &change["before"]), (&json!("rival"), &json!(0.0)));
}

#[actix_web::test]
async fn faulty_rules_are_an_answer() {
    let answer =
        tried(json!({"files": {CAUSE: cause(0.2).replace("hollow", "hollo"), "symptoms.rhai": "symptom("}})).await;
    assert_eq!((&answer["trial"], &answer["tests"]), (&Value::Null, &Value::Null));
    let told: BTreeSet<&str> =
        answer["diagnostics"].as_array().unwrap().iter().map(|told| told["file"].as_str().unwrap()).collect();
    assert!(told.contains(CAUSE) && told.contains("symptoms.rhai"), "{answer}");
    // A file that others need is taken out.
    let answer = tried(json!({"files": {"symptoms.rhai": null}})).await;
    assert_eq!(answer["diagnostics"][0]["message"], "unknown name `hollow`");
}

#[actix_web::test]
async fn hostile_scripts_end_in_named_diagnostics() {
    let hostile = [
        ("loop { }", Code::Limit),
        ("fn down(n) { down(n + 1) } down(0);", Code::Limit),
        ("let s = \"x\"; loop { s += s; }", Code::Limit),
        ("let a = [1]; loop { a += a; }", Code::Limit),
        ("eval(\"1\");", Code::Syntax),
        ("import \"/etc/passwd\" as p;", Code::Script),
    ];
    for (text, code) in hostile {
        let answer = tried(json!({"files": {"hostile.rhai": text}})).await;
        let diagnostics = answer["diagnostics"].as_array().unwrap();
        let hit = |told: &&Value| told["file"] == "hostile.rhai" && told["code"] == code.word();
        assert!(diagnostics.iter().any(|told| hit(&told)), "{text}: {answer}");
    }
}

#[actix_web::test]
async fn every_fault_of_a_trial_is_told() {
    let files = json!({
        "../pack.rhai": "", "/pack.rhai": "", "notes.txt": "", "rolls/.x.rhai": "", "a.rhai": 1, "symptom.rhai": null,
        "long.rhai": " ".repeat(256 * 1024 + 1)
    });
    let answer = ask(authoring(), request(&json!({"files": files, "cases": {}, "case": []}))).await;
    assert_eq!(answer.status, 422);
    let problem = answer.json();
    assert_eq!(problem["type"], "/v1/problems/faulty-trial");
    let told = |pointer: &str| {
        let errors = problem["errors"].as_array().unwrap();
        let error = errors.iter().find(|error| error["pointer"] == pointer);
        error.unwrap_or_else(|| panic!("{pointer} is not in {problem}"))["detail"].as_str().unwrap().to_owned()
    };
    let path = "a path within the pack is wanted, for example `soft_rolls/mixing.rhai`";
    assert_eq!(told("/files/..~1pack.rhai"), path);
    assert_eq!(told("/files/~1pack.rhai"), path);
    assert_eq!(told("/files/rolls~1.x.rhai"), path);
    assert_eq!(told("/files/notes.txt"), "a pack takes files `….rhai`, and `….json` in folders named `cases`");
    assert_eq!(told("/files/a.rhai"), "a text or `null` is wanted, this is a number");
    assert_eq!(told("/files/symptom.rhai"), "there is no file `symptom.rhai` to take out");
    assert_eq!(told("/files/long.rhai"), "the file is longer than 256 KiB");
    assert_eq!(told("/cases"), "an array is wanted, this is an object");
    assert_eq!(told("/case"), "unknown member `case`");
}

#[actix_web::test]
async fn files_and_cases_are_limited_in_number() {
    let files: serde_json::Map<String, Value> = (0..501).map(|n| (format!("f{n}.rhai"), json!(""))).collect();
    let cases = vec![json!({}); 1_001];
    let answer = ask(authoring(), request(&json!({"files": files, "cases": cases}))).await;
    let problem = answer.json();
    let details: Vec<&str> =
        problem["errors"].as_array().unwrap().iter().map(|error| error["detail"].as_str().unwrap()).collect();
    assert_eq!(details, ["a trial changes at most 500 files", "a trial takes at most 1000 cases"]);
    // What is past the limit is not looked at.
    let files: serde_json::Map<String, Value> = (0..600).map(|n| (format!("f{n}.rhai"), Value::Null)).collect();
    let problem = ask(authoring(), request(&json!({"files": files}))).await.json();
    assert_eq!(problem["errors"].as_array().unwrap().len(), 501);
}

#[actix_web::test]
async fn a_trial_that_takes_too_long_is_ended() {
    let mut authoring = authoring();
    authoring.trial_time = Duration::from_nanos(1);
    ask(authoring, request(&json!({}))).await.assert_problem(json!({
        "type": "/v1/problems/long-trial",
        "title": "the trial took too long",
        "status": 422,
        "detail": "the trial was ended after 0.000000001 s"
    }));
}

#[actix_web::test]
async fn one_trial_runs_at_a_time() {
    let authoring = authoring();
    let place = authoring.occupy().unwrap();
    let busy = ask(authoring.clone(), request(&json!({}))).await;
    assert_eq!(busy.header("retry-after"), "5");
    let expected = json!({"type": "/v1/problems/busy", "title": "the service is busy with others", "status": 503});
    busy.assert_problem(expected);
    drop(place);
    ask(authoring, request(&json!({}))).await.success();
}

#[actix_web::test]
async fn a_trial_needs_the_key() {
    let with_key = || Authoring::new(AuthorAccess::Key(AuthorKey::new(KEY).unwrap()), None);
    assert_eq!(ask(with_key(), request(&json!({}))).await.status, 401);
    let keyed = request(&json!({})).insert_header(("authorization", format!("Bearer {KEY}")));
    ask(with_key(), keyed).await.success();
    let off = Authoring::new(AuthorAccess::Nobody, None);
    assert_eq!(ask(off, request(&json!({}))).await.status, 403);
}

/// A page of another site, or another site's name that leads here, must not try or reload rules by somebody's browser.
#[actix_web::test]
async fn without_a_key_only_this_machine_is_heard() {
    let from = |name: &'static str, value: &'static str| request(&json!({})).insert_header((name, value));
    let own = [
        ("host", "localhost:8080"),
        ("host", "127.0.0.1"),
        ("sec-fetch-site", "same-origin"),
        ("origin", "http://localhost:8080"),
    ];
    for (name, value) in own {
        ask(authoring(), from(name, value)).await.success();
    }
    let others = [
        ("host", "other.example"),
        ("sec-fetch-site", "cross-site"),
        ("sec-fetch-site", "same-site"),
        ("origin", "https://other.example"),
        ("origin", "null"),
    ];
    for (name, value) in others {
        assert_eq!(ask(authoring(), from(name, value)).await.json()["type"], "/v1/problems/authoring-off", "{value}");
    }
}

#[actix_web::test]
async fn a_body_that_is_no_trial_is_refused() {
    let answer = ask(authoring(), post("application/json", "{").uri("/v1/rules/trial")).await;
    assert_eq!((answer.status, &answer.json()["type"]), (400, &json!("/v1/problems/malformed-json")));
    let answer = ask(authoring(), post("text/plain", "{}").uri("/v1/rules/trial")).await;
    assert_eq!(answer.status, 415);
    let long = format!("{{}}{}", " ".repeat(8 * 1024 * 1024));
    assert_eq!(ask(authoring(), post("application/json", long).uri("/v1/rules/trial")).await.status, 413);
}

/// The example of the document: run against the embedded rules.
#[actix_web::test]
async fn the_example_is_what_the_service_answers() {
    let document = document();
    let operation = &document["paths"]["/v1/rules/trial"]["post"];
    let trial = &operation["requestBody"]["content"]["application/json"]["example"];
    let example = &operation["responses"]["200"]["content"]["application/json"]["example"];
    let answer = send(request(trial)).await.success();
    assert_eq!(schema::faults("TrialAnswer", &answer), Vec::<String>::new());
    let of_the_file = |answer: &Value| {
        let told = answer["diagnostics"].as_array().unwrap().iter();
        told.filter(|told| told["file"] == "house/packing.rhai").cloned().collect::<Vec<_>>()
    };
    assert_eq!(of_the_file(&answer), of_the_file(example));
    // Probabilities move with the rules; what the example is about stays.
    let of_request = |answer: &Value| {
        let rankings = answer["rankings"].as_array().unwrap();
        let ranking = rankings.iter().find(|ranking| ranking["case"] == json!({"index": 0})).unwrap();
        (ranking["effect"].clone(), ranking["after"][0]["cause"].clone(), ranking["largest_change"]["cause"].clone())
    };
    assert_eq!(of_request(&answer), of_request(example));
}
