//! A listening server in this process, asked over real sockets.

use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::num::NonZeroUsize;
use std::sync::mpsc;
use std::thread;
use std::time::Duration;

use actix_web::rt::System;
use serde_json::{Value, json};
use whybake::http::Server;
use whybake::settings::HttpSettings;

use crate::service::{everybody, live_rules};

/// Starts a server on a free port; it ends with the process of the tests.
fn start(settings: HttpSettings) -> SocketAddr {
    let (sender, receiver) = mpsc::channel();
    let settings =
        HttpSettings { listen: SocketAddr::from(([127, 0, 0, 1], 0)), workers: NonZeroUsize::new(1), ..settings };
    thread::spawn(move || {
        System::new().block_on(async move {
            let server = Server::bind(&settings, live_rules(), everybody()).unwrap();
            sender.send(server.addresses()[0]).unwrap();
            server.run().await.unwrap();
        });
    });
    receiver.recv().unwrap()
}

/// Sends bytes and reads until the server hangs up.
fn exchange(address: SocketAddr, bytes: &[u8]) -> String {
    let mut stream = TcpStream::connect(address).unwrap();
    stream.set_read_timeout(Some(Duration::from_secs(20))).unwrap();
    stream.write_all(bytes).unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    answer
}

fn body(answer: &str) -> Value {
    serde_json::from_str(answer.split_once("\r\n\r\n").unwrap().1).unwrap()
}

fn impatient() -> HttpSettings {
    HttpSettings { request_timeout: Duration::from_millis(200), ..HttpSettings::default() }
}

#[actix_web::test]
async fn a_case_is_diagnosed_over_a_socket() {
    let address = start(HttpSettings::default());
    let case = json!({"product": "hamburger_bun", "symptoms": [{"symptom": "low_volume"}]});
    let response =
        reqwest::Client::new().post(format!("http://{address}/v1/diagnoses")).json(&case).send().await.unwrap();
    assert_eq!(response.status(), 200);
    assert_eq!(response.json::<Value>().await.unwrap()["product"], "hamburger_bun");
}

#[actix_web::test]
async fn head_has_the_length_but_not_the_body() {
    let address = start(HttpSettings::default());
    let client = reqwest::Client::new();
    let url = format!("http://{address}/v1/products");
    let head = client.head(&url).send().await.unwrap();
    let length = head.headers()["content-length"].to_str().unwrap().parse::<usize>().unwrap();
    assert!(head.bytes().await.unwrap().is_empty());
    assert_eq!(client.get(&url).send().await.unwrap().bytes().await.unwrap().len(), length);
}

#[actix_web::test]
async fn answers_are_compressed_for_those_who_ask() {
    let address = start(HttpSettings::default());
    let request = reqwest::Client::new().get(format!("http://{address}/openapi.json"));
    let response = request.header("accept-encoding", "gzip").send().await.unwrap();
    assert_eq!(response.headers()["content-encoding"], "gzip");
    assert!(response.bytes().await.unwrap().starts_with(&[0x1f, 0x8b]));
}

#[test]
fn a_long_body_without_a_promised_length_is_cut_off() {
    let address = start(HttpSettings { body_limit_bytes: 1000, ..HttpSettings::default() });
    let chunk = format!("7d0\r\n{}\r\n", " ".repeat(2000));
    let head = "POST /v1/diagnoses HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ntransfer-encoding: chunked\r\n\r\n";
    let answer = exchange(address, format!("{head}{chunk}").as_bytes());
    assert!(answer.starts_with("HTTP/1.1 413 "), "{answer}");
    let expected = json!({
        "type": "/v1/problems/body-too-large",
        "title": "the body is too large",
        "status": 413,
        "detail": "the body is longer than 1000 bytes"
    });
    assert_eq!(body(&answer), expected);
}

#[test]
fn a_body_that_nobody_reads_and_that_does_not_end_is_hung_up_on() {
    let address = start(HttpSettings::default());
    let head = "PUT /nope HTTP/1.1\r\nhost: x\r\ntransfer-encoding: chunked\r\n\r\n1\r\n{\r\n";
    let answer = exchange(address, head.as_bytes());
    assert!(answer.starts_with("HTTP/1.1 404 "), "{answer}");
}

#[test]
fn a_chunked_body_is_read() {
    let address = start(HttpSettings::default());
    let head = "POST /v1/diagnoses HTTP/1.1\r\nhost: x\r\nconnection: close\r\ncontent-type: application/json\r\ntransfer-encoding: chunked\r\n\r\n";
    let chunks = "b\r\n{\"product\":\r\n10\r\n\"hamburger_bun\"}\r\n0\r\n\r\n";
    let answer = exchange(address, format!("{head}{chunks}").as_bytes());
    assert!(answer.starts_with("HTTP/1.1 200 "), "{answer}");
    assert_eq!(body(&answer)["product"], "hamburger_bun");
}

#[test]
fn a_body_that_does_not_arrive_is_waited_for_no_longer_than_granted() {
    let address = start(impatient());
    let head =
        "POST /v1/diagnoses HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: 100\r\n\r\n{";
    let answer = exchange(address, head.as_bytes());
    assert!(answer.starts_with("HTTP/1.1 408 "), "{answer}");
    let expected = json!({
        "type": "/v1/problems/request-timeout",
        "title": "the request took too long to arrive",
        "status": 408,
        "detail": "the body did not arrive within 0.2 s"
    });
    assert_eq!(body(&answer), expected);
}

#[test]
fn a_head_that_does_not_arrive_is_hung_up_on() {
    let address = start(impatient());
    let answer = exchange(address, b"GET /v1/products HT");
    assert!(answer.starts_with("HTTP/1.1 408 "), "{answer}");
}

#[test]
fn a_body_in_a_broken_transfer_coding_is_a_problem() {
    let address = start(HttpSettings::default());
    let head = "POST /v1/diagnoses HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ntransfer-encoding: chunked\r\n\r\nnot hex\r\n";
    let answer = exchange(address, head.as_bytes());
    assert!(answer.starts_with("HTTP/1.1 400 "), "{answer}");
}

#[test]
fn an_address_in_use_is_an_error() {
    let address = start(HttpSettings::default());
    let settings = HttpSettings { listen: address, ..HttpSettings::default() };
    System::new().block_on(async { assert!(Server::bind(&settings, live_rules(), everybody()).is_err()) });
}
