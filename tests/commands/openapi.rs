//! `whybake openapi`

use crate::program::run;

#[test]
fn the_document_is_the_committed_one() {
    let fresh = run(&["openapi"]).success() == include_str!("../../openapi/openapi.json");
    assert!(fresh, "stale: run `cargo run -- openapi > openapi/openapi.json`");
}
