//! The `whybake` program; see [`whybake::commands`].

use std::process::ExitCode;

/// A diagnosis asks for memory some hundred times, for short: what the usual allocators are slowest at.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> ExitCode {
    whybake::commands::run()
}
