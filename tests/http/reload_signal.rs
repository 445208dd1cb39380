//! SIGHUP, the key of authors and the folder, at the real program.
#![cfg(unix)]

use std::io::{Read, Write};
use std::net::TcpStream;

use crate::shutdown::{Service, wait_for};
use crate::small_pack::{CAUSE, cause, pack, write, write_pack};

const KEY: &str = "correct-horse-battery-staple";

fn exchange(service: &Service, head: &str) -> String {
    let mut stream = TcpStream::connect(service.address).unwrap();
    stream.write_all(format!("{head}\r\nhost: localhost\r\nconnection: close\r\n\r\n").as_bytes()).unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    answer
}

#[test]
fn a_hang_up_loads_the_folder_again_changed_or_not() {
    let dir = tempfile::tempdir().unwrap();
    write_pack(dir.path(), 0.1);
    let rules = ["--rules", dir.path().to_str().unwrap()];
    let mut service = Service::start_with(&rules, &[("WHYBAKE_RULES_WATCH", "false")]);
    service.send_signal("-HUP");
    let entry = wait_for(&mut service.log, "rules loaded");
    assert_eq!((entry["by"].as_str(), entry["digest"].as_str()), (Some("signal"), Some(&*pack(0.1).digest())));
    write(&dir.path().join(CAUSE), &cause(0.2));
    service.send_signal("-HUP");
    let entry = wait_for(&mut service.log, "rules loaded");
    assert_eq!(entry["digest"], pack(0.2).digest());
    write(&dir.path().join(CAUSE), "cause(");
    service.send_signal("-HUP");
    let entry = wait_for(&mut service.log, "rules refused");
    assert_eq!(
        (entry["reason"].as_str(), entry["level"].as_str()),
        (Some("the rules cannot be loaded"), Some("ERROR"))
    );
    assert!(exchange(&service, "GET /readyz HTTP/1.1").contains(&pack(0.2).digest()));
}

#[test]
fn the_program_watches_its_folder_and_never_logs_the_key() {
    let dir = tempfile::tempdir().unwrap();
    write_pack(dir.path(), 0.1);
    let rules = ["--rules", dir.path().to_str().unwrap()];
    let variables = [("WHYBAKE_RULES_AUTHOR_KEY", KEY), ("WHYBAKE_LOG_LEVEL", "trace")];
    let mut service = Service::start_with(&rules, &variables);
    let reload = "POST /v1/rules/reload HTTP/1.1";
    assert!(exchange(&service, reload).starts_with("HTTP/1.1 401 "));
    let answer = exchange(&service, &format!("{reload}\r\nauthorization: Bearer {KEY}"));
    assert!(answer.starts_with("HTTP/1.1 200 "), "{answer}");
    write(&dir.path().join(CAUSE), &cause(0.2));
    service.send_signal("-TERM");
    let mut log = String::new();
    service.log.read_to_string(&mut log).unwrap();
    assert!(log.contains("/v1/rules/reload") && !log.contains(KEY), "{log}");
}
