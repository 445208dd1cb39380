//! The end of the real program on SIGTERM.
#![cfg(unix)]

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::process::{Child, ChildStderr, Command, Stdio};
use std::time::{Duration, Instant};

use serde_json::Value;

/// How long anything here may take.
const PATIENCE: Duration = Duration::from_secs(30);

/// A running `whybake serve`; killed when a test fails half-way.
pub(crate) struct Service {
    program: Child,
    pub(crate) log: BufReader<ChildStderr>,
    pub(crate) address: SocketAddr,
}

impl Service {
    fn start() -> Self {
        Self::start_with(&[], &[])
    }

    /// Starts with further arguments and variables.
    pub(crate) fn start_with(arguments: &[&str], variables: &[(&str, &str)]) -> Self {
        let mut program = Command::new(env!("CARGO_BIN_EXE_whybake"))
            .args(["serve", "--listen", "127.0.0.1:0"])
            .args(arguments)
            .envs(variables.iter().copied())
            .env("WHYBAKE_LOG_FORMAT", "json")
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let mut log = BufReader::new(program.stderr.take().unwrap());
        let address = wait_for(&mut log, "listening")["address"].as_str().unwrap().parse().unwrap();
        Self { program, log, address }
    }

    fn terminate(&self) {
        self.send_signal("-TERM");
    }

    pub(crate) fn send_signal(&self, signal: &str) {
        let status = Command::new("kill").arg(signal).arg(self.program.id().to_string()).status().unwrap();
        assert!(status.success());
    }
}

impl Drop for Service {
    fn drop(&mut self) {
        let _ = self.program.kill();
        let _ = self.program.wait();
    }
}

/// Reads the log up to a message that contains `text`.
pub(crate) fn wait_for(log: &mut impl BufRead, text: &str) -> Value {
    let mut line = String::new();
    while log.read_line(&mut line).unwrap() > 0 {
        // Warnings about the rules come before the log, as text.
        let entry: Value = serde_json::from_str(&line).unwrap_or_default();
        if entry["message"].as_str().is_some_and(|message| message.contains(text)) {
            return entry;
        }
        line.clear();
    }
    panic!("the log ended without `{text}`");
}

#[test]
fn a_request_that_has_begun_is_answered_and_new_connections_are_refused() {
    let mut service = Service::start();
    let case = r#"{"product":"hamburger_bun"}"#;
    let (first, rest) = case.split_at(10);
    let mut stream = TcpStream::connect(service.address).unwrap();
    stream.set_read_timeout(Some(PATIENCE)).unwrap();
    let head = format!(
        "POST /v1/diagnoses HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: {}\r\nexpect: 100-continue\r\n\r\n",
        case.len()
    );
    stream.write_all(head.as_bytes()).unwrap();
    // The interim answer tells that the handler waits for the body.
    let mut interim = [0; 25];
    stream.read_exact(&mut interim).unwrap();
    assert_eq!(&interim, b"HTTP/1.1 100 Continue\r\n\r\n");
    stream.write_all(first.as_bytes()).unwrap();

    service.terminate();
    wait_for(&mut service.log, "accept thread stopped");
    // The line is logged a moment before the socket closes.
    let deadline = Instant::now() + PATIENCE;
    while TcpStream::connect(service.address).is_ok() {
        assert!(Instant::now() < deadline, "new connections are still accepted");
        std::thread::yield_now();
    }

    stream.write_all(rest.as_bytes()).unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    assert!(answer.starts_with("HTTP/1.1 200 OK\r\n"), "{answer}");
    let diagnosis: Value = serde_json::from_str(answer.split_once("\r\n\r\n").unwrap().1).unwrap();
    assert_eq!(diagnosis["product"], "hamburger_bun");

    wait_for(&mut service.log, "stopped");
    assert!(service.program.wait().unwrap().success());
}

#[test]
fn an_idle_service_stops_at_once_despite_kept_connections() {
    let mut service = Service::start();
    let mut stream = TcpStream::connect(service.address).unwrap();
    stream.write_all(b"GET /healthz HTTP/1.1\r\nhost: x\r\n\r\n").unwrap();
    assert!(stream.read(&mut [0; 512]).unwrap() > 0);
    let started = Instant::now();
    service.terminate();
    assert!(service.program.wait().unwrap().success());
    assert!(started.elapsed() < Duration::from_secs(10), "{:?}", started.elapsed());
}

#[test]
fn every_request_leaves_one_line_without_its_body_or_query() {
    let mut service = Service::start();
    let mut stream = TcpStream::connect(service.address).unwrap();
    stream
        .write_all(b"GET /v1/symptoms?product=secret_product HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n")
        .unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    let entry = wait_for(&mut service.log, "request");
    assert_eq!(entry["method"], "GET");
    assert_eq!(entry["path"], "/v1/symptoms");
    assert_eq!(entry["status"], 422);
    assert!(entry["duration_us"].is_u64());
    assert!(!entry.to_string().contains("secret_product"), "{entry}");
}
