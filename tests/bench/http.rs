//! Requests a second of the diagnosis route, beside a bare route of the same framework that parses the same request and
//! writes the same number of bytes. Compare the two figures of one run; client and servers share the machine.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    missing_docs,
    reason = "a bench fails by panicking, and criterion's macros make undocumented items"
)]

use std::future::Future;
use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::sync::{Arc, mpsc};
use std::thread;
use std::time::{Duration, Instant, SystemTime};

use actix_web::{App, HttpResponse, HttpServer, web};
use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use whybake::case::Case;
use whybake::http::{AuthorAccess, Authoring, Server};
use whybake::live_rules::LiveRules;
use whybake::rule_set::RuleSet;
use whybake::rules::RuleFiles;
use whybake::settings::{HttpSettings, TestsPolicy};

#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// An invented case: four symptoms and six readings.
const CASE: &str = r#"{"product": "hamburger_bun",
  "symptoms": [{"symptom": "hollow_under_crust"}, {"symptom": "open_grain"}, {"symptom": "pale_crust"}, {"symptom": "low_volume", "present": false}],
  "readings": {
    "dough_temperature": {"value": 31.5, "unit": "Cel"}, "proof_temperature": {"value": 38, "unit": "Cel"},
    "proof_humidity": {"value": 82, "unit": "%"}, "proof_time": {"value": 55, "unit": "min"},
    "oven_temperature": {"value": 225, "unit": "Cel"}, "flour_protein": {"value": 12.4, "unit": "%"}}}"#;

/// Connections that are kept open, each with one request on its way.
const CONNECTIONS: usize = 16;

/// Runs a server on a thread of its own and gives its address.
fn start<R: Future<Output = std::io::Result<()>>>(
    bind: impl FnOnce() -> (SocketAddr, R) + Send + 'static,
) -> SocketAddr {
    let (tell, told) = mpsc::channel();
    thread::spawn(move || {
        actix_web::rt::System::new().block_on(async move {
            let (address, running) = bind();
            tell.send(address).unwrap();
            running.await.unwrap();
        });
    });
    told.recv().unwrap()
}

/// A route that reads the request as JSON and writes `length` bytes.
fn bare(length: usize) -> SocketAddr {
    let bytes = web::Bytes::from(vec![b' '; length]);
    start(move || {
        let server = HttpServer::new(move || {
            let bytes = bytes.clone();
            let answer = move |_: web::Json<serde_json::Value>| {
                let bytes = bytes.clone();
                async move { HttpResponse::Ok().content_type("application/json").body(bytes) }
            };
            App::new().route("/v1/diagnoses", web::post().to(answer))
        });
        let server = server.bind("127.0.0.1:0").unwrap();
        (server.addrs()[0], server.run())
    })
}

/// The service as `whybake serve` starts it, with the embedded rules; and the length of its answer.
fn service() -> (SocketAddr, usize) {
    let rules = RuleSet::load(RuleFiles::embedded(), TestsPolicy::Ignored).unwrap();
    let diagnostician = &rules.diagnostician;
    let case = Case::parse(CASE.as_bytes(), diagnostician.knowledge()).unwrap();
    let length = diagnostician.diagnose(case).unwrap().to_json().unwrap().len();
    let rules = Arc::new(LiveRules::new(rules, SystemTime::now()));
    let authoring = Authoring::new(AuthorAccess::Nobody, None);
    let address = start(move || {
        let settings = HttpSettings { listen: "127.0.0.1:0".parse().unwrap(), ..HttpSettings::default() };
        let server = Server::bind(&settings, rules, authoring).unwrap();
        (server.addresses()[0], server.run())
    });
    (address, length)
}

/// Time for `requests` over all connections.
fn run(address: SocketAddr, requests: u64) -> Duration {
    let mut connections: Vec<TcpStream> = (0..CONNECTIONS).map(|_| TcpStream::connect(address).unwrap()).collect();
    let request = format!(
        "POST /v1/diagnoses HTTP/1.1\r\nHost: bench\r\nContent-Type: application/json\r\nContent-Length: {}\r\n\r\n{CASE}",
        CASE.len()
    );
    let begin = Instant::now();
    let rounds = requests.div_ceil(CONNECTIONS as u64);
    let mut buffer = vec![0; 1 << 16];
    for _ in 0..rounds {
        for connection in &mut connections {
            connection.write_all(request.as_bytes()).unwrap();
        }
        for connection in &mut connections {
            read_answer(connection, &mut buffer);
        }
    }
    let all = begin.elapsed();
    #[allow(clippy::cast_precision_loss)] // far below 2^52
    all.mul_f64(requests as f64 / (rounds * CONNECTIONS as u64) as f64)
}

/// Reads one answer to its end.
fn read_answer(connection: &mut TcpStream, buffer: &mut [u8]) {
    let mut filled = connection.read(buffer).unwrap();
    let head = loop {
        if let Some(end) = buffer[..filled].windows(4).position(|four| four == b"\r\n\r\n") {
            break end + 4;
        }
        filled += connection.read(&mut buffer[filled..]).unwrap();
    };
    let text = std::str::from_utf8(&buffer[..head]).unwrap().to_ascii_lowercase();
    assert!(text.starts_with("http/1.1 200"), "{text}");
    let length = text.split("content-length: ").nth(1).and_then(|rest| rest.split("\r\n").next()).unwrap();
    let mut missing = length.parse::<usize>().unwrap() - (filled - head);
    while missing > 0 {
        let read = connection.read(buffer).unwrap();
        assert!(read > 0, "the server hung up");
        missing -= read;
    }
}

fn http(criterion: &mut Criterion) {
    let (diagnoses, length) = service();
    let bare = bare(length);
    let mut group = criterion.benchmark_group(format!("answers of {length} bytes, {CONNECTIONS} connections"));
    group.throughput(Throughput::Elements(1));
    group.bench_function("bare route", |bench| bench.iter_custom(|requests| run(bare, requests)));
    group.bench_function("POST /v1/diagnoses", |bench| bench.iter_custom(|requests| run(diagnoses, requests)));
    group.finish();
}

criterion_group!(benches, http);
criterion_main!(benches);
