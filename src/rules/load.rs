//! Loads a pack: all of it, or nothing and every fault.

use std::sync::Arc;
use std::time::Instant;

use super::build::Build;
use super::checks;
use super::diagnostic::{Diagnostic, Severity};
use super::doubts;
use super::files::RuleFiles;
use super::names;
use super::script::{Runner, Script};
use super::stage::Stage;
use crate::knowledge::Knowledge;

/// A pack that was loaded.
#[derive(Debug, Clone)]
pub struct Loaded {
    /// What it knows.
    pub knowledge: Knowledge,
    /// What is probably not meant as it stands.
    pub warnings: Vec<Diagnostic>,
}

/// Runs and links the files of a pack.
///
/// # Errors
/// Every fault of every file, in the order of reading the files, then by place; nothing is loaded then.
pub fn load(files: &RuleFiles) -> Result<Loaded, Vec<Diagnostic>> {
    run(files, None)
}

/// The same; scripts that still run at `deadline` are ended, which is a fault of theirs.
///
/// # Errors
/// As [`load`].
pub fn load_before(deadline: Instant, files: &RuleFiles) -> Result<Loaded, Vec<Diagnostic>> {
    run(files, Some(deadline))
}

fn run(files: &RuleFiles, deadline: Option<Instant>) -> Result<Loaded, Vec<Diagnostic>> {
    let files = Arc::new(files.clone());
    let mut runner = Runner::new(Build::new(Arc::clone(&files)), deadline);
    let library = compile(&runner, &files, None);
    runner.import(&library);
    for stage in Stage::ALL {
        let scripts = compile(&runner, &files, Some(stage));
        runner.run_stage(stage, &scripts);
    }
    for script in &library {
        runner.absorb_unknown(script);
    }
    finish(&mut runner.build(), &files)
}

/// Compiles the files of a stage, or the library.
fn compile(runner: &Runner, files: &RuleFiles, stage: Option<Stage>) -> Vec<Script> {
    let mut scripts = Vec::new();
    for (path, text) in files.iter().filter(|(path, _)| Stage::of(path) == stage) {
        match (runner.compile(path, text), stage) {
            (Some(script), _) => scripts.push(script),
            (None, Some(stage)) => {
                let mut build = runner.build();
                for (kind, id) in names::declared_in_text(text, stage) {
                    let at = build.place(rhai::Position::NONE);
                    build.reserve(kind, &id, &at);
                    build.believe_declared(&id);
                }
            }
            (None, None) => {}
        }
    }
    scripts
}

fn finish(build: &mut Build, files: &RuleFiles) -> Result<Loaded, Vec<Diagnostic>> {
    build.declared.pack.digest = files.digest();
    build.declared.pack.files = files.iter().map(|(path, _)| path.to_owned()).collect();
    checks::run(build);
    if build.diagnostics.iter().any(|diagnostic| diagnostic.severity == Severity::Fault) {
        return Err(sorted(build));
    }
    let knowledge = Knowledge::link(std::mem::take(&mut build.declared));
    doubts::run(build, &knowledge);
    Ok(Loaded { knowledge, warnings: sorted(build) })
}

/// The diagnostics so far, by severity, stage, file and place: what is declared first fails first.
fn sorted(build: &mut Build) -> Vec<Diagnostic> {
    let mut diagnostics = std::mem::take(&mut build.diagnostics);
    diagnostics.sort_by_cached_key(|told| {
        (told.severity, Stage::of(&told.file), told.file.clone(), told.line, told.column, told.message.clone())
    });
    diagnostics
}
