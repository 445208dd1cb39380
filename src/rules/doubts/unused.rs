//! Things that are declared and never used.

use std::collections::BTreeSet;

use super::super::code::Code;
use super::super::term::{Kind, Term};
use super::Doubts;
use crate::knowledge::{
    Action, Caution, Composition, Condition, Declarations, EvidenceKind, Fact, Ingredient, Input, Key, Quantity,
    Reading, Source, Symptom,
};

/// What the rules use.
#[derive(Default)]
struct Uses {
    sources: BTreeSet<Key<Source>>,
    cautions: BTreeSet<Key<Caution>>,
    ingredients: BTreeSet<Key<Ingredient>>,
    symptoms: BTreeSet<Key<Symptom>>,
    facts: BTreeSet<Key<Fact>>,
    readings: BTreeSet<Key<Reading>>,
    actions: BTreeSet<Key<Action>>,
}

pub(super) fn look(doubts: &mut Doubts<'_>) {
    let uses = Uses::of(doubts.declared());
    for thing in doubts.things() {
        let Some(term) = doubts.term(&thing.id) else { continue };
        let Some(advice) = uses.lack(&term, doubts.declared()) else { continue };
        let id = &thing.id;
        let message = match thing.kind {
            Kind::Symptom => format!("no cause shows `{id}`"),
            kind => format!("{} `{id}` is never used", kind.word()),
        };
        doubts.tell_of(Code::Unused, &thing, message, Some(advice.to_owned()));
    }
}

impl Uses {
    fn of(declared: &Declarations) -> Self {
        let mut uses = Self::default();
        for (_, caution) in declared.cautions.iter() {
            uses.sources.extend(&caution.sources);
        }
        for (_, ingredient) in declared.ingredients.iter() {
            uses.sources.extend(&ingredient.sources);
        }
        for (_, symptom) in declared.symptoms.iter() {
            uses.cautions.extend(&symptom.cautions);
        }
        for (_, reading) in declared.readings.iter() {
            uses.sources.extend(&reading.sources);
            reading.computed.iter().for_each(|quantity| uses.quantity(quantity));
        }
        for (_, action) in declared.actions.iter() {
            uses.sources.extend(&action.sources);
            uses.cautions.extend(&action.cautions);
            uses.ingredients.extend(&action.uses);
            uses.actions.extend(&action.instead);
        }
        for (_, limit) in declared.limits.iter() {
            uses.sources.extend(&limit.sources);
            limit.quantity.iter().for_each(|quantity| uses.quantity(quantity));
        }
        for warning in &declared.warnings {
            uses.cautions.insert(warning.caution);
            warning.when.iter().for_each(|condition| uses.condition(condition));
        }
        uses.of_causes(declared);
        uses
    }

    fn of_causes(&mut self, declared: &Declarations) {
        for (_, cause) in declared.causes.iter() {
            self.sources.extend(&cause.sources);
            self.cautions.extend(&cause.cautions);
            self.symptoms.extend(cause.links.iter().map(|link| link.symptom));
            for item in &cause.evidence {
                match &item.kind {
                    EvidenceKind::Graded(condition, _) => self.condition(condition),
                    EvidenceKind::Regions(regions) => self.quantity(&regions.quantity),
                }
            }
            for prescription in &cause.prescriptions {
                self.actions.insert(prescription.action);
                prescription.settings.iter().for_each(|setting| self.quantity(&setting.quantity));
            }
            for confirmation in &cause.confirmations {
                self.condition(&confirmation.expect);
                confirmation.excluded.iter().for_each(|condition| self.condition(condition));
            }
        }
    }

    fn condition(&mut self, condition: &Condition) {
        condition.inputs(&mut |input| self.input(input));
        condition.quantities(&mut |part| self.limits(part));
    }

    fn quantity(&mut self, quantity: &Quantity) {
        quantity.inputs(&mut |input| self.input(input));
        quantity.parts(&mut |part| self.limits(part));
    }

    /// A reading whose limits are asked for.
    fn limits(&mut self, part: &Quantity) {
        if let Quantity::LowLimit(key) | Quantity::Target(key) | Quantity::HighLimit(key) = part {
            self.readings.insert(*key);
        }
    }

    fn input(&mut self, input: Input) {
        match input {
            Input::Reading(key) => {
                self.readings.insert(key);
            }
            Input::Fact(key) => {
                self.facts.insert(key);
            }
            Input::Share(key) => {
                self.ingredients.insert(key);
            }
            Input::Formula => {}
        }
    }

    /// What would use a thing that nothing uses.
    fn lack(&self, term: &Term, declared: &Declarations) -> Option<&'static str> {
        let (used, advice) = match term {
            Term::Source(key) => (self.sources.contains(key), "name it in `.source(…)` of what it is about"),
            Term::Caution(key) => (
                declared.cautions[*key].always || self.cautions.contains(key),
                "name it in `.caution(…)` of a cause, action or symptom, in `warn(…)`, or add `.always()`",
            ),
            Term::Ingredient(key) => {
                let ingredient = &declared.ingredients[*key];
                // Cases name ingredients in their formulas; what is known of one is used there.
                let described = ingredient.is_flour
                    || ingredient.leavening.is_some()
                    || !ingredient.roles.is_empty()
                    || ingredient.composition != Composition::default();
                (described || self.ingredients.contains(key), "give its composition, or use it in a rule")
            }
            Term::Symptom(key) => (self.symptoms.contains(key), "add `.shows(…)` to a cause"),
            Term::Fact(key) => (self.facts.contains(key), "use it in `.evidence(…)` of a cause"),
            Term::Reading(key) => {
                let reading = &declared.readings[*key];
                // What is computed is told in every answer; what is past its limits shows a symptom.
                let speaks = reading.computed.is_some() || reading.low_shows.is_some() || reading.high_shows.is_some();
                (speaks || self.readings.contains(key), "use it in `.evidence(…)` of a cause")
            }
            Term::Action(key) => (self.actions.contains(key), "name it in `.action(…)` of a cause"),
            _ => (true, ""),
        };
        (!used).then_some(advice)
    }
}
