//! One use of a word: its arguments, and the faults about them.

use super::super::build::{Build, Name};
use super::super::code::Code;
use super::super::stage::Stage;
use super::super::term::{Kind, Term};
use crate::knowledge::{Key, Place, Reading, Scope};
use crate::units::Unit;

/// A word as it is used: the receiver, if it has one, is the first argument.
pub(in super::super) struct Call<'b> {
    pub(in super::super) build: &'b mut Build,
    pub(in super::super) name: String,
    pub(in super::super) usage: &'static str,
    pub(in super::super) at: Place,
    pub(in super::super) arguments: Vec<Term>,
}

impl Call<'_> {
    /// Whether the receiver belongs to the running file's stage; a property set elsewhere is a fault.
    pub(in super::super) fn receiver_is_declared_here(&mut self) -> bool {
        let stage = self.arguments.first().and_then(|receiver| Stage::declaring(receiver.kind()));
        match stage {
            Some(stage) if stage != self.build.stage => {
                let kind = self.arguments.first().map_or("it", |receiver| receiver.kind().phrase());
                let message = format!("`{}` describes {kind}, which may not be changed in this file", self.name);
                self.fault(Code::WrongFile, message, Some(stage.belongs_in()));
                false
            }
            _ => true,
        }
    }

    /// Records that the receiver has a property; one that it had before is a fault.
    pub(in super::super) fn has_once(&mut self, property: &'static str) {
        let thing = match self.arguments.first() {
            Some(Term::Pack) => Some((Kind::Pack, 0)),
            receiver => receiver.and_then(Term::thing),
        };
        if let Some((kind, index)) = thing
            && !self.build.stated.insert((kind, index, property))
        {
            let message = format!("`{}` says again what has been said of {}", self.name, kind.phrase());
            self.fault(Code::Duplicate, message, Some("leave out one of the two".to_owned()));
        }
    }

    /// Records that a scope has a number of its own already.
    pub(super) fn twice_for(&mut self, scope: Scope) {
        let declared = &self.build.declared;
        let id = match scope {
            Scope::Family(key) => &declared.families[key].id,
            Scope::Product(key) => &declared.products[key].id,
        };
        let message = format!("`{}` is said twice for `{id}`", self.name);
        self.fault(Code::Duplicate, message, Some("leave out one of the two".to_owned()));
    }

    /// Records a fault about this word.
    pub(super) fn fault(&mut self, code: Code, message: String, help: Option<String>) {
        let width = self.name.chars().count();
        self.build.fault(code, &self.at, width, message, help);
    }

    /// Records that the arguments are wrong; the help shows how the word is written.
    pub(super) fn wrong(&mut self, message: String) {
        let help = Some(format!("write `{}`", self.usage));
        self.fault(Code::WrongArguments, message, help);
    }

    /// Records that a number is out of range.
    pub(super) fn out_of_range(&mut self, message: String) {
        self.fault(Code::OutOfRange, message, None);
    }

    /// Checks the number of arguments, the receiver included.
    pub(super) fn takes(&mut self, least: usize, most: usize) -> bool {
        let count = self.arguments.len();
        if (least..=most).contains(&count) {
            return true;
        }
        let (given, own) = (count.saturating_sub(self.receivers()), least.saturating_sub(self.receivers()));
        let least_or_most = if count < least { "at least " } else { "at most " };
        let bound = if count < least { own } else { most.saturating_sub(self.receivers()) };
        let qualifier = if least == most { "" } else { least_or_most };
        self.wrong(format!("`{}` takes {qualifier}{bound} argument{}, {given} given", self.name, plural(bound)));
        false
    }

    /// 1 when the word follows something, which then is argument 0.
    fn receivers(&self) -> usize {
        usize::from(self.usage.starts_with('.'))
    }

    /// Argument `index`, or nothing when it is missing (told) or stands for an unknown name (told before).
    pub(super) fn argument(&mut self, index: usize, wanted: &str) -> Option<Term> {
        match self.arguments.get(index) {
            Some(Term::Unknown) => None,
            Some(term) => Some(term.clone()),
            None => {
                self.wrong(format!("`{}` lacks {wanted}", self.name));
                None
            }
        }
    }

    /// The unit of a reading; one that is declared further down the file has none yet, which is told. A reading whose
    /// declaration failed has none either, and told so itself.
    pub(super) fn unit_of_reading(&mut self, key: Key<Reading>) -> Option<Unit> {
        let reading = &self.build.declared.readings[key];
        if self.build.in_units.contains(&key) {
            return Some(reading.unit.clone());
        }
        let is_tried = |name: &Name| name.place.as_ref().is_some_and(|place| place.line == 0);
        let tried = self.build.stated.contains(&(Kind::Reading, key.index(), "unit"))
            || self.build.names.get(&reading.id).is_some_and(is_tried);
        if tried || Stage::declaring(Kind::Reading) != Some(self.build.stage) {
            return None;
        }
        let message = format!("the unit of `{}` is not stated before this line", reading.id);
        self.fault(Code::Unit, message, Some("declare the reading first, with its `.unit(…)`".to_owned()));
        None
    }

    /// Records that an argument is of another kind than wanted.
    pub(super) fn wrong_kind(&mut self, wanted: &str, found: Kind) {
        self.wrong(format!("`{}` wants {wanted}, this is {}", self.name, found.phrase()));
    }
}

fn plural(count: usize) -> &'static str {
    if count == 1 { "" } else { "s" }
}
