//! `whybake openapi`

use clap::Args;

use super::exit::Exit;
use super::output::{complain, print};
use crate::http::openapi::text;

/// Print the OpenAPI document of the service
#[derive(Debug, Args)]
pub(super) struct Openapi {}

impl Openapi {
    pub(super) fn run(self) -> Result<(), Exit> {
        let text = text().map_err(|error| {
            complain(error);
            Exit::Failed
        })?;
        print(text.as_bytes())
    }
}
