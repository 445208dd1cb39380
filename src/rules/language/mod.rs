//! The words of the rule language: one table, from which scripts are run and the authors' guide is checked.

mod actions;
mod arguments;
mod calculations;
mod call;
mod causes;
mod changes;
mod conditions;
mod declare;
mod evidence;
mod ingredients;
mod law;
mod meanings;
mod operators;
mod quantities;
mod readings;
mod things;

use super::term::{Kind, Term};

pub(super) use call::Call;

/// What a word does when it is met.
#[derive(Clone, Copy)]
pub(super) enum Effect {
    /// Sets a property of its receiver, which it gives back.
    Describes(fn(&mut Call<'_>)),
    /// Makes something; nothing after a fault.
    Makes(fn(&mut Call<'_>) -> Option<Term>),
}

/// One word of the language for one kind of receiver.
pub(super) struct Word {
    /// The word.
    pub(super) name: &'static str,
    /// What it follows, as in `reading.unit(…)`; empty for a word that stands by itself.
    pub(super) follows: &'static [Kind],
    /// How it is written.
    pub(super) usage: &'static str,
    /// The property that it sets where a thing has that once; a word that adds to a list may stand again.
    pub(super) once: Option<&'static str>,
    /// What it does.
    pub(super) effect: Effect,
}

/// A word that describes its receiver, and may do so again.
const fn describes(
    name: &'static str,
    follows: &'static [Kind],
    usage: &'static str,
    effect: fn(&mut Call<'_>),
) -> Word {
    Word { name, follows, usage, once: None, effect: Effect::Describes(effect) }
}

/// A word that sets a property which a thing has once.
const fn settles(name: &'static str, follows: &'static [Kind], usage: &'static str, effect: fn(&mut Call<'_>)) -> Word {
    Word { once: Some(name), ..describes(name, follows, usage, effect) }
}

/// A word that makes something.
const fn makes(
    name: &'static str,
    follows: &'static [Kind],
    usage: &'static str,
    effect: fn(&mut Call<'_>) -> Option<Term>,
) -> Word {
    Word { name, follows, usage, once: None, effect: Effect::Makes(effect) }
}

/// The words by what they are for, without those of calculations, which have a table of their own.
pub(super) fn sections() -> impl Iterator<Item = (&'static str, &'static [Word])> {
    [
        ("Declaring", declare::WORDS),
        ("Describing", things::WORDS),
        ("Ingredients and families", ingredients::WORDS),
        ("Readings", readings::WORDS),
        ("Law and warnings", law::WORDS),
        ("Actions", actions::WORDS),
        ("What quantities change", changes::WORDS),
        ("Causes", causes::WORDS),
        ("Evidence", evidence::WORDS),
        ("Conditions", conditions::WORDS),
        ("Expressions", quantities::WORDS),
        ("Operators", operators::WORDS),
    ]
    .into_iter()
}

/// All words.
pub(super) fn words() -> impl Iterator<Item = &'static Word> {
    sections().flat_map(|(_, words)| words).chain(calculations::words())
}

impl Word {
    /// What it means, in a line.
    pub(super) fn meaning(&self) -> &'static str {
        meanings::meaning(self).unwrap_or_default()
    }
}

/// The word of a name for a receiver of this kind, or one that stands by itself.
pub(super) fn find(name: &str, receiver: Option<Kind>) -> Option<&'static Word> {
    let of_receiver =
        words().find(|word| word.name == name && receiver.is_some_and(|kind| word.follows.contains(&kind)));
    of_receiver.or_else(|| words().find(|word| word.name == name && word.follows.is_empty()))
}
