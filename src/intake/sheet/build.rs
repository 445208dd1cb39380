//! What stands on the sheet of a product.

use std::collections::BTreeMap;

use super::answer::{
    IntakeSheet, SheetBlank, SheetChoice, SheetFact, SheetFormula, SheetGiven, SheetIngredient, SheetPart,
    SheetReading, SheetRequirements, SheetSymptom,
};
use crate::diagnosis::UsualInformation;
use crate::knowledge::{Declarations, Ingredient, Input, Key, Knowledge, ProductView, Reading};

/// Most symptoms, readings, facts, given readings and ingredients of a sheet: what two pages hold.
const MOST_SYMPTOMS: usize = 24;
const MOST_READINGS: usize = 12;
const MOST_FACTS: usize = 12;
const MOST_GIVEN: usize = 8;
const MOST_INGREDIENTS: usize = 12;

/// Least information that is worth a line, bits.
const LEAST_BITS: f64 = 1e-4;

const METHOD: &str = "Each complaint is one symptom seen and nothing else known, weighted by how probable the symptom is under \
    the priors of the product; what an answer tells is the weighted mean of its mutual information, in bits (Shannon 1948), \
    with the causes that show the symptom. Readings and questions are ordered by bits a minute of effort, one minute at least.";

const FORMULA_NOTE: &str = "Every line with its amount: all masses, or all in % on flour, and the stage of each (sponge, \
    dough, filling, icing). Say whether the lines are all there is.";

const REFERENCE: [SheetBlank; 8] = [
    SheetBlank { name: "reported_by", title: "Reported by" },
    SheetBlank { name: "reported_on", title: "Date and time of the report" },
    SheetBlank { name: "lot", title: "Lot or batch" },
    SheetBlank { name: "line", title: "Line" },
    SheetBlank { name: "made_on", title: "Made on (date, time, shift)" },
    SheetBlank { name: "share_affected", title: "Share of pieces affected" },
    SheetBlank { name: "first_seen", title: "First seen" },
    SheetBlank { name: "changed_before", title: "Changed shortly before (ingredient, setting, weather)" },
];

impl<'k> IntakeSheet<'k> {
    /// The sheet of a product, from what each question usually tells.
    pub(in crate::intake) fn new(knowledge: &'k Knowledge, view: &'k ProductView, usual: &UsualInformation) -> Self {
        let declared = &knowledge.declared;
        let product = &declared.products[view.product];
        let symptoms = symptoms(declared, usual);
        Self {
            product: &product.id,
            title: &product.title,
            method: METHOD,
            other_symptoms: other_symptoms(declared, view, &symptoms),
            symptoms,
            readings: readings(declared, usual),
            facts: facts(declared, usual),
            formula: SheetFormula {
                note: FORMULA_NOTE,
                gives: given(declared, usual),
                ingredients: ingredients(declared, view),
            },
            requirements: requirements(declared),
            reference: REFERENCE.to_vec(),
            cautions: cautions(declared, view),
        }
    }
}

fn symptoms<'k>(declared: &'k Declarations, usual: &UsualInformation) -> Vec<SheetPart<'k>> {
    let mut ranked: Vec<_> = usual.symptoms.iter().filter(|(.., bits)| *bits >= LEAST_BITS).collect();
    ranked.sort_by(|(.., a), (.., b)| b.total_cmp(a));
    let mut parts: Vec<SheetPart<'k>> = Vec::new();
    for (key, _, bits) in ranked.into_iter().take(MOST_SYMPTOMS) {
        let symptom = &declared.symptoms[*key];
        let item = SheetSymptom {
            symptom: &symptom.id,
            title: &symptom.title,
            description: &symptom.description,
            information_bits: *bits,
        };
        match parts.iter_mut().find(|part| part.part == symptom.part) {
            Some(part) => part.symptoms.push(item),
            None => parts.push(SheetPart { part: &symptom.part, symptoms: vec![item] }),
        }
    }
    parts
}

/// A symptom that tells little beside another is often the complaint itself, as mould is: all of them can be ticked.
fn other_symptoms<'k>(declared: &'k Declarations, view: &ProductView, told: &[SheetPart<'k>]) -> Vec<SheetChoice<'k>> {
    let is_told = |id: &str| told.iter().flat_map(|part| &part.symptoms).any(|one| one.symptom == id);
    let others = view.listed_symptoms.iter().map(|key| &declared.symptoms[*key]).filter(|one| !is_told(&one.id));
    others.map(|one| SheetChoice { id: &one.id, title: &one.title }).collect()
}

/// Inputs with at least so many bits, those that tell most a minute first.
fn ranked(usual: &UsualInformation, minutes: impl Fn(Input) -> Option<f64>) -> Vec<(Input, f64, f64)> {
    let told = usual.inputs.iter().filter(|(_, bits)| *bits >= LEAST_BITS);
    let mut ranked: Vec<_> = told.filter_map(|(input, bits)| Some((*input, *bits, minutes(*input)?))).collect();
    let rate = |(_, bits, minutes): &(Input, f64, f64)| bits / minutes.max(1.0);
    ranked.sort_by(|a, b| rate(b).total_cmp(&rate(a)));
    ranked
}

fn readings<'k>(declared: &'k Declarations, usual: &UsualInformation) -> Vec<SheetReading<'k>> {
    let minutes = |input| match input {
        Input::Reading(key) if !follows_from_formula(&declared.readings[key]) => {
            Some(declared.readings[key].effort_minutes)
        }
        _ => None,
    };
    let readings = ranked(usual, minutes).into_iter().filter_map(|(input, information_bits, effort_minutes)| {
        let Input::Reading(key) = input else { return None };
        let reading = &declared.readings[key];
        Some(SheetReading {
            reading: &reading.id,
            title: &reading.title,
            description: &reading.description,
            unit: reading.unit.code(),
            symbol: reading.unit.symbol().to_owned(),
            method: &reading.method,
            effort_minutes,
            information_bits,
        })
    });
    readings.take(MOST_READINGS).collect()
}

fn facts<'k>(declared: &'k Declarations, usual: &UsualInformation) -> Vec<SheetFact<'k>> {
    let minutes = |input| match input {
        Input::Fact(key) => Some(declared.facts[key].effort_minutes),
        _ => None,
    };
    let facts = ranked(usual, minutes).into_iter().filter_map(|(input, information_bits, effort_minutes)| {
        let Input::Fact(key) = input else { return None };
        let fact = &declared.facts[key];
        Some(SheetFact { fact: &fact.id, question: &fact.question, effort_minutes, information_bits })
    });
    facts.take(MOST_FACTS).collect()
}

/// Whether a reading is computed from the formula alone.
fn follows_from_formula(reading: &Reading) -> bool {
    let (mut formula, mut other) = (false, false);
    if let Some(quantity) = &reading.computed {
        quantity.inputs(&mut |input| match input {
            Input::Share(_) | Input::Formula => formula = true,
            Input::Reading(_) | Input::Fact(_) => other = true,
        });
    }
    formula && !other
}

fn given<'k>(declared: &'k Declarations, usual: &UsualInformation) -> Vec<SheetGiven<'k>> {
    let from_formula = |input: &Input| match input {
        Input::Reading(key) => Some(&declared.readings[*key]).filter(|reading| follows_from_formula(reading)),
        _ => None,
    };
    let told = usual.inputs.iter().filter(|(_, bits)| *bits >= LEAST_BITS);
    let mut given: Vec<SheetGiven<'k>> = told
        .filter_map(|(input, bits)| {
            let reading = from_formula(input)?;
            Some(SheetGiven { reading: &reading.id, title: &reading.title, information_bits: *bits })
        })
        .collect();
    given.sort_by(|a, b| b.information_bits.total_cmp(&a.information_bits));
    given.truncate(MOST_GIVEN);
    given
}

/// Ingredients by how many causes' evidence asks for their share, itself or through a reading that is computed from it.
fn ingredients<'k>(declared: &'k Declarations, view: &ProductView) -> Vec<SheetIngredient<'k>> {
    let mut asked: BTreeMap<Key<Ingredient>, usize> = BTreeMap::new();
    for relevant in &view.inputs {
        let mut count = |input| {
            if let Input::Share(key) = input {
                *asked.entry(key).or_default() += relevant.causes.len();
            }
        };
        count(relevant.input);
        if let Input::Reading(key) = relevant.input
            && let Some(quantity) = &declared.readings[key].computed
        {
            quantity.inputs(&mut count);
        }
    }
    let mut asked: Vec<_> = asked.into_iter().collect();
    asked.sort_by_key(|(key, count)| (std::cmp::Reverse(*count), *key));
    let items = asked.into_iter().take(MOST_INGREDIENTS).map(|(key, _)| &declared.ingredients[key]);
    items.map(|one| SheetIngredient { ingredient: &one.id, title: &one.title }).collect()
}

fn requirements(declared: &Declarations) -> SheetRequirements<'_> {
    SheetRequirements {
        diets: declared.diets.iter().map(|(_, one)| SheetChoice { id: &one.id, title: &one.title }).collect(),
        allergens: declared.allergens.iter().map(|(_, one)| SheetChoice { id: &one.id, title: &one.title }).collect(),
        markets: declared.markets.iter().map(|(_, one)| SheetChoice { id: &one.id, title: &one.title }).collect(),
    }
}

/// The cautions of the product's symptoms: who looks for mould must not smell at it.
fn cautions<'k>(declared: &'k Declarations, view: &ProductView) -> Vec<&'k str> {
    let mut cautions: Vec<&'k str> = Vec::new();
    for key in view.listed_symptoms.iter().flat_map(|key| &declared.symptoms[*key].cautions) {
        let text: &str = &declared.cautions[*key].text;
        if !cautions.contains(&text) {
            cautions.push(text);
        }
    }
    cautions
}
