//! Words that declare things.

use super::super::term::{Kind, Term};
use super::things::MOST_EFFORT;
use super::{Call, Word, makes};
use crate::knowledge::Cost;

pub(super) const WORDS: &[Word] = &[
    makes("pack", &[], "pack(\"id\")", |call| declared(call, Kind::Pack)),
    makes("source", &[], "source(\"id\")", |call| declared(call, Kind::Source)),
    makes("caution", &[], "caution(\"id\")", |call| declared(call, Kind::Caution)),
    makes("diet", &[], "diet(\"id\")", |call| declared(call, Kind::Diet)),
    makes("allergen", &[], "allergen(\"id\")", |call| declared(call, Kind::Allergen)),
    makes("market", &[], "market(\"ID\")", |call| declared(call, Kind::Market)),
    makes("family", &[], "family(\"id\")", |call| declared(call, Kind::Family)),
    makes("product", &[], "product(\"id\")", |call| declared(call, Kind::Product)),
    makes("ingredient", &[], "ingredient(\"id\")", |call| declared(call, Kind::Ingredient)),
    makes("symptom", &[], "symptom(\"id\")", |call| declared(call, Kind::Symptom)),
    makes("fact", &[], "fact(\"id\")", |call| declared(call, Kind::Fact)),
    makes("reading", &[], "reading(\"id\")", |call| declared(call, Kind::Reading)),
    makes("limit", &[], "limit(\"id\")", |call| declared(call, Kind::Limit)),
    makes("action", &[], "action(\"id\")", |call| declared(call, Kind::Action)),
    makes("cause", &[], "cause(\"id\")", declared_cause),
    makes("prior_word", &[], "prior_word(\"COMMON\", 0.10)", |call| {
        scale_word(call, |call, index| call.prior(index), |_, prior| Term::Prior(prior))
    }),
    makes("strength_word", &[], "strength_word(\"OFTEN\", 0.6)", |call| {
        scale_word(call, |call, index| call.strength(index), |_, strength| Term::Strength(strength))
    }),
    makes("weight_word", &[], "weight_word(\"STRONG\", 10)", |call| {
        scale_word(call, |call, index| call.weight(index), |_, weight| Term::Weight(weight))
    }),
    makes("cost_word", &[], "cost_word(\"PURCHASE\", 240)", |call| {
        let minutes = |call: &mut Call<'_>, index| call.number_within(index, 0.0, MOST_EFFORT);
        scale_word(call, minutes, |word, minutes| Term::Cost(Cost { word: word.to_owned(), minutes }))
    }),
    makes("waste_word", &[], "waste_word(\"ONE_BATCH\", 1)", |call| {
        scale_word(call, |call, index| call.batches(index), |_, batches| Term::Waste(batches))
    }),
];

fn declared(call: &mut Call<'_>, kind: Kind) -> Option<Term> {
    if !call.takes(1, 1) {
        return None;
    }
    let id = call.text(0)?;
    Some(call.build.declare(&call.name, kind, &id, &call.at))
}

/// A cause remembers its place: answers and coverage name it.
fn declared_cause(call: &mut Call<'_>) -> Option<Term> {
    let term = declared(call, Kind::Cause)?;
    if let Term::Cause(key) = term
        && let Some(cause) = call.build.declared.causes.get_mut(key)
    {
        cause.place = call.at.clone();
    }
    Some(term)
}

fn scale_word(
    call: &mut Call<'_>,
    number: fn(&mut Call<'_>, usize) -> Option<f64>,
    term: fn(&str, f64) -> Term,
) -> Option<Term> {
    if !call.takes(2, 2) {
        return None;
    }
    let (id, value) = (call.text(0), number(call, 1));
    let (id, value) = (id?, value?);
    call.build.declare_value(&call.name, &id, term(&id, value), &call.at);
    Some(Term::Nothing)
}
