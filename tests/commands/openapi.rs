//! `whybake openapi`

use crate::program::run;

#[test]
fn the_document_is_the_committed_one() {
    assert_eq!(run(&["openapi"]).success(), include_str!("../../openapi/openapi.json"));
}
