//! The commands of the real program: outputs and exit codes.
// Helpers of tests stop, as tests do, at the first thing that is not as it should be.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

mod byte_order_mark;
mod calculate;
mod case_request;
mod check;
mod compare;
mod complaint;
mod diagnose;
mod explain;
mod folders;
mod formula;
mod inquire;
mod intake_sheet;
mod list;
mod openapi;
mod program;
mod replay;
mod rules_export;
mod serve;
mod service;
mod trial_sheet;
mod usage;
mod walk_through;
mod what_if;
