//! Warnings: what a pack can be loaded with, but is probably not meant as it stands.
//!
//! They look at linked knowledge, so only a pack without faults is doubted. Every doubt is told once, at one place, and
//! none of them guesses: what could be meant, and is seen in good packs, is no warning.

mod evidence;
mod look_alikes;
mod priors;
mod range;
mod twins;
mod unused;

use super::build::Build;
use super::code::Code;
use super::diagnostic::Severity;
use super::term::{Kind, Term};
use crate::knowledge::{Cause, Declarations, Key, Knowledge, Place};

/// Looks for all doubts; they go to the diagnostics.
pub(super) fn run(build: &mut Build, knowledge: &Knowledge) {
    let mut doubts = Doubts { build, knowledge };
    unused::look(&mut doubts);
    evidence::look(&mut doubts);
    twins::look(&mut doubts);
    look_alikes::look(&mut doubts);
    priors::look(&mut doubts);
}

/// What is doubted, and where doubts go.
struct Doubts<'a> {
    build: &'a mut Build,
    knowledge: &'a Knowledge,
}

/// A declared thing: its id, its kind and where it is declared.
#[derive(Debug, Clone)]
struct Declared {
    id: String,
    kind: Kind,
    place: Place,
}

impl<'a> Doubts<'a> {
    fn declared(&self) -> &'a Declarations {
        &self.knowledge.declared
    }

    /// Everything that has an id, words of scales excepted, in order of the ids.
    fn things(&self) -> Vec<Declared> {
        let names = self.build.names.iter();
        let things = names.filter_map(|(id, name)| {
            let (kind, _) = name.term.thing()?;
            Some(Declared { id: id.clone(), kind, place: name.place.clone()? })
        });
        things.collect()
    }

    /// A doubt about a word at a place.
    fn tell(&mut self, code: Code, at: &Place, word: &str, message: String, help: Option<String>) {
        self.build.report(Severity::Warning, code, at, word.chars().count(), message, help);
    }

    /// A doubt about a declaration.
    fn tell_of(&mut self, code: Code, thing: &Declared, message: String, help: Option<String>) {
        self.build.report(Severity::Warning, code, &thing.place, thing.kind.word_width(), message, help);
    }

    fn causes(&self) -> Vec<(Key<Cause>, &'a Cause)> {
        self.declared().causes.iter().collect()
    }

    /// The thing of an id, when it is of this kind.
    fn term(&self, id: &str) -> Option<Term> {
        self.build.names.get(id).map(|name| name.term.clone())
    }
}
