//! The commands of the `whybake` program, one file a command.

mod calculate;
mod case_request;
mod check;
mod compare;
mod complaint;
mod diagnose;
mod exit;
mod explain;
mod export;
mod formula;
mod guide;
mod input;
mod inquire;
mod intake_sheet;
mod knowledge;
mod list;
mod log;
mod measure;
mod openapi;
mod options;
mod output;
mod replay;
mod serve;
mod trial_sheet;
mod what_if;

use std::process::ExitCode;

use clap::{Parser, Subcommand};

/// Tells why a bake went wrong, what to change, and what to measure next
#[derive(Debug, Parser)]
#[command(version, after_help = exit::HELP)]
struct Program {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    Serve(serve::Serve),
    Diagnose(diagnose::Diagnose),
    Inquire(inquire::Inquire),
    Complaint(complaint::Complaint),
    IntakeSheet(intake_sheet::IntakeSheet),
    List(list::List),
    WhatIf(what_if::WhatIf),
    TrialSheet(Box<trial_sheet::TrialSheetCommand>),
    Replay(replay::Replay),
    Formula(formula::Formula),
    Calculate(calculate::Calculate),
    Check(check::Check),
    Compare(compare::Compare),
    Explain(explain::Explain),
    #[command(subcommand)]
    Rules(RulesCommand),
    Openapi(openapi::Openapi),
}

/// Work with rule packs
#[derive(Debug, Subcommand)]
enum RulesCommand {
    Export(export::Export),
    Words(guide::Words),
    #[command(hide = true)]
    Guide(guide::Guide),
}

/// Runs the command that the program's arguments name.
#[must_use]
pub fn run() -> ExitCode {
    let outcome = match Program::parse().command {
        Command::Serve(command) => command.run(),
        Command::Diagnose(command) => command.run(),
        Command::Inquire(command) => command.run(),
        Command::Complaint(command) => command.run(),
        Command::IntakeSheet(command) => command.run(),
        Command::List(command) => command.run(),
        Command::WhatIf(command) => command.run(),
        Command::TrialSheet(command) => command.run(),
        Command::Replay(command) => command.run(),
        Command::Formula(command) => command.run(),
        Command::Calculate(command) => command.run(),
        Command::Check(command) => command.run(),
        Command::Compare(command) => command.run(),
        Command::Explain(command) => command.run(),
        Command::Rules(RulesCommand::Export(command)) => command.run(),
        Command::Rules(RulesCommand::Words(command)) => command.run(),
        Command::Rules(RulesCommand::Guide(command)) => command.run(),
        Command::Openapi(command) => command.run(),
    };
    outcome.map_or_else(ExitCode::from, |()| ExitCode::SUCCESS)
}
