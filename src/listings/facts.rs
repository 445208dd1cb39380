//! The facts of the rules: yes-or-no facts about the line or the ingredients.

use serde::Serialize;
use utoipa::ToSchema;

use super::parts::keys;
use crate::diagnosis::describe_condition;
use crate::knowledge::{Declarations, Fact, Knowledge, ProductView};

/// Facts, of one product or all.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct FactList<'k> {
    /// The facts, in the order of the rules.
    facts: Vec<FactItem<'k>>,
}

/// A fact that a case may state.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = DeclaredFact)]
struct FactItem<'k> {
    /// Id, as in a case.
    #[schema(example = "dough_waits_before_divider")]
    id: &'k str,
    /// Title for people.
    #[schema(example = "dough waits before the divider")]
    title: &'k str,
    /// The question to ask; yes is `true`.
    #[schema(example = "Does dough stand longer than 15 minutes between mixer and divider?")]
    description: &'k str,
    /// Minutes to find out.
    #[schema(example = 2.0)]
    effort_minutes: f64,
    /// What a formula has when the fact holds: a formula that tells it answers the question.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "agar or kappa carrageenan in the formula")]
    answered_by: Option<String>,
}

/// The listing, of one product or all.
pub(crate) fn facts<'k>(knowledge: &'k Knowledge, view: Option<&ProductView>) -> FactList<'k> {
    let facts = &knowledge.declared.facts;
    let keys = keys(facts, view.map(|view| view.listed_facts.as_slice()));
    FactList { facts: keys.into_iter().map(|key| item(&knowledge.declared, &facts[key])).collect() }
}

fn item<'k>(declared: &Declarations, fact: &'k Fact) -> FactItem<'k> {
    FactItem {
        id: &fact.id,
        title: &fact.title,
        description: &fact.question,
        effort_minutes: fact.effort_minutes,
        answered_by: fact.answered_by.as_ref().map(|condition| describe_condition(declared, condition)),
    }
}
