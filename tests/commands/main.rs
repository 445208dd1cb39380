//! The commands of the real program: outputs and exit codes.

mod check;
mod diagnose;
mod openapi;
mod program;
mod rules_export;
mod serve;
mod usage;
