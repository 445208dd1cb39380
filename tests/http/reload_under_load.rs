//! Rules that change while requests run: none is lost, and every answer is that of the rules it names.
#![cfg(unix)]

use std::collections::BTreeMap;
use std::net::SocketAddr;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::thread::{self, JoinHandle};
use std::time::Instant;

use actix_web::rt::System;
use reqwest::{Client, StatusCode};
use serde_json::{Value, json};
use whybake::http::AuthorAccess;

use crate::small_pack::{CAUSE, Folder, NEVER, cause, pack};

/// Reloads by request; of three, one is of faulty rules.
const RELOADS: usize = 200;

const CLIENTS: usize = 3;

/// Requests that must have been answered before the test may end.
const REQUESTS: usize = 3_000;

/// The prior of the n-th good pack.
#[allow(clippy::cast_precision_loss)] // small numbers
fn prior(n: usize) -> f64 {
    (n % 89 + 1) as f64 / 100.0
}

/// The probability of every pack, by its digest.
fn probabilities() -> BTreeMap<String, f64> {
    (0..89).map(|n| (pack(prior(n)).digest(), prior(n))).chain([(pack(0.1).digest(), 0.1)]).collect()
}

/// Asks until told to stop; every answer must be that of the pack it names. Gives the number of different packs seen.
fn client(address: SocketAddr, answered: Arc<AtomicUsize>, stop: Arc<AtomicBool>) -> JoinHandle<usize> {
    thread::spawn(move || {
        System::new().block_on(async move {
            let (client, expected) = (Client::new(), probabilities());
            let mut seen = BTreeMap::new();
            while !stop.load(Ordering::Relaxed) {
                let request = client.post(format!("http://{address}/v1/diagnoses")).json(&json!({"product": "bun"}));
                let response = request.send().await.unwrap();
                assert_eq!(response.status(), StatusCode::OK);
                let answer: Value = response.json().await.unwrap();
                let digest = answer["rules"]["digest"].as_str().unwrap();
                let probability = answer["causes"][0]["probability"].as_f64().unwrap();
                assert!((probability - expected[digest]).abs() < 1e-12, "{digest} gave {probability}");
                *seen.entry(digest.to_owned()).or_insert(0_usize) += 1;
                answered.fetch_add(1, Ordering::Relaxed);
            }
            seen.len()
        })
    })
}

/// Writes the n-th pack and has it loaded; the outcome must be as the pack is.
async fn reload(folder: &Folder, client: &Client, address: SocketAddr, n: usize) {
    let good = cause(prior(n));
    let text = if n % 3 == 2 { good.split_at(good.len() - 9).0.to_owned() } else { good };
    folder.write(CAUSE, &text);
    let response = client.post(format!("http://{address}/v1/rules/reload")).send().await.unwrap();
    let (status, answer) = (response.status(), response.json::<Value>().await.unwrap());
    if n % 3 == 2 {
        assert_eq!(status, StatusCode::CONFLICT, "{answer}");
        assert_eq!(folder.digest(), pack(prior(n - 1)).digest());
    } else {
        assert_eq!(status, StatusCode::OK, "{answer}");
        assert_eq!(answer["digest"], pack(prior(n)).digest());
    }
}

#[actix_web::test]
async fn no_request_is_lost_and_every_answer_is_that_of_the_rules_it_names() {
    let folder = Folder::new(NEVER);
    let address = folder.serve(AuthorAccess::Everybody);
    let (answered, stop) = (Arc::new(AtomicUsize::new(0)), Arc::new(AtomicBool::new(false)));
    let clients: Vec<_> = (0..CLIENTS).map(|_| client(address, Arc::clone(&answered), Arc::clone(&stop))).collect();
    let (started, reloading) = (Instant::now(), Client::new());
    let mut reloads = 0;
    while reloads < RELOADS || answered.load(Ordering::Relaxed) < REQUESTS {
        reload(&folder, &reloading, address, reloads).await;
        reloads += 1;
    }
    stop.store(true, Ordering::Relaxed);
    let seen: Vec<usize> = clients.into_iter().map(|client| client.join().unwrap()).collect();
    let answered = answered.load(Ordering::Relaxed);
    println!(
        "{answered} requests and {reloads} reloads in {:?}; packs seen by each client: {seen:?}",
        started.elapsed()
    );
    assert!(seen.iter().any(|packs| *packs > 10), "{seen:?}");
}
