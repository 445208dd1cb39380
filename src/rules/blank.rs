//! Declarations before their properties are set.

use std::sync::Arc;

use super::term::{Kind, Term};
use crate::knowledge::{
    Action, Allergen, Cause, Caution, Composition, Declarations, Diet, Fact, Family, Ingredient, Limit, Market, Place,
    Product, Provenance, Reading, Source, Symptom, Text, Window,
};
use crate::science::formula::Stage;
use crate::units::Unit;

/// Leak of a symptom that states none: one piece in fifty shows it for reasons outside the rules (common practice).
const USUAL_LEAK: f64 = 0.02;

/// Minutes that a reading, a question or an action takes when it states none (common practice).
const USUAL_EFFORT: f64 = 10.0;

/// Appends an empty declaration and gives what stands for it.
pub(super) fn blank(declared: &mut Declarations, kind: Kind, id: &str, file: &Arc<str>) -> Term {
    let id = id.to_owned();
    let title = String::new();
    match kind {
        Kind::Pack => {
            declared.pack.id = id;
            Term::Pack
        }
        Kind::Source => Term::Source(declared.sources.push(Source {
            id,
            citation: Text::default(),
            provenance: Provenance::CommonPractice,
        })),
        Kind::Caution => {
            let caution =
                Caution { id, text: Text::default(), always: false, jurisdiction: Vec::new(), sources: Vec::new() };
            Term::Caution(declared.cautions.push(caution))
        }
        Kind::Diet => Term::Diet(declared.diets.push(Diet { id, title })),
        Kind::Allergen => Term::Allergen(declared.allergens.push(Allergen { id, title })),
        Kind::Market => Term::Market(declared.markets.push(Market { id, title })),
        Kind::Family => Term::Family(declared.families.push(Family { id, title, main_stage: Stage::Dough })),
        Kind::Product => Term::Product(declared.products.push(Product {
            id,
            title,
            description: String::new(),
            synonyms: Vec::new(),
            family: None,
        })),
        Kind::Ingredient => Term::Ingredient(declared.ingredients.push(ingredient(id))),
        Kind::Symptom => Term::Symptom(declared.symptoms.push(symptom(id))),
        Kind::Fact => Term::Fact(declared.facts.push(fact(id))),
        Kind::Reading => Term::Reading(declared.readings.push(reading(id))),
        Kind::Limit => Term::Limit(declared.limits.push(limit(id))),
        Kind::Action => Term::Action(declared.actions.push(action(id))),
        Kind::Cause => Term::Cause(declared.causes.push(cause(id, file))),
        _ => Term::Unknown,
    }
}

fn ingredient(id: String) -> Ingredient {
    Ingredient {
        id,
        title: String::new(),
        is_flour: false,
        composition: Composition::default(),
        roles: Vec::new(),
        leavening: None,
        not_permitted: Vec::new(),
        allergens: Vec::new(),
        not_for: Vec::new(),
        sources: Vec::new(),
    }
}

fn symptom(id: String) -> Symptom {
    Symptom {
        id,
        title: Text::default(),
        description: Text::default(),
        part: String::new(),
        products: Vec::new(),
        synonyms: Vec::new(),
        leak: USUAL_LEAK,
        contradicts: Vec::new(),
        cautions: Vec::new(),
    }
}

fn fact(id: String) -> Fact {
    Fact {
        id,
        title: Text::default(),
        question: Text::default(),
        products: Vec::new(),
        answered_by: None,
        effort_minutes: USUAL_EFFORT,
    }
}

fn reading(id: String) -> Reading {
    Reading {
        id,
        title: Text::default(),
        description: Text::default(),
        synonyms: Vec::new(),
        unit: Unit::default(),
        plausible: Window { low: f64::NEG_INFINITY, high: f64::INFINITY },
        windows: Vec::new(),
        margin: None,
        margins: Vec::new(),
        method: Text::default(),
        effort_minutes: USUAL_EFFORT,
        products: Vec::new(),
        low_shows: None,
        high_shows: None,
        computed: None,
        sources: Vec::new(),
    }
}

fn limit(id: String) -> Limit {
    Limit {
        id,
        text: Text::default(),
        markets: Vec::new(),
        products: Vec::new(),
        quantity: None,
        // No limit yet; the checks refuse one that keeps it.
        most: f64::NAN,
        unit: Unit::default(),
        sources: Vec::new(),
    }
}

fn action(id: String) -> Action {
    Action {
        id,
        title: Text::default(),
        text: Text::default(),
        effort_minutes: USUAL_EFFORT,
        cost: None,
        waste_batches: None,
        side_effects: Vec::new(),
        may_show: Vec::new(),
        uses: Vec::new(),
        not_for: Vec::new(),
        instead: Vec::new(),
        undoes: Vec::new(),
        at_once: false,
        cautions: Vec::new(),
        sources: Vec::new(),
    }
}

fn cause(id: String, file: &Arc<str>) -> Cause {
    Cause {
        id,
        title: Text::default(),
        mechanism: Text::default(),
        products: Vec::new(),
        // No prior yet; the checks refuse a cause that keeps it.
        prior: f64::NAN,
        priors: Vec::new(),
        links: Vec::new(),
        evidence: Vec::new(),
        prescriptions: Vec::new(),
        confirmations: Vec::new(),
        cautions: Vec::new(),
        sources: Vec::new(),
        place: Place { file: Arc::clone(file), line: 0, column: 0 },
    }
}
