//! The words of the rules for one product, or for all.

use std::collections::BTreeSet;

use super::assignment::ReadingNames;
use super::naming::Naming;
use super::phrases::PhraseIndex;
use crate::knowledge::{Declarations, Fact, Key, Knowledge, Product, Reading, Symptom};

/// The words of one product, or of all.
#[derive(Debug)]
pub(super) struct Index {
    pub(super) symptom_keys: Vec<Key<Symptom>>,
    pub(super) symptoms: PhraseIndex,
    pub(super) readings: ReadingNames,
    pub(super) fact_keys: Vec<Key<Fact>>,
    pub(super) facts: PhraseIndex,
}

/// The products by the words that name them.
pub(super) fn product_index(declared: &Declarations) -> PhraseIndex {
    PhraseIndex::of_products(declared.products.iter().map(|(_, product)| Naming {
        names: names(&product.id, &product.title, &product.synonyms),
        description: &product.description,
        part: None,
    }))
}

/// All that a thing is called.
fn names<'k>(id: &'k str, title: &'k str, synonyms: &'k [String]) -> Vec<&'k str> {
    [id, title].into_iter().chain(synonyms.iter().map(String::as_str)).collect()
}

/// Every word that names a product.
fn words_of_products(declared: &Declarations) -> BTreeSet<String> {
    let names = declared.products.iter().flat_map(|(_, product)| {
        std::iter::once(product.title.as_str()).chain(product.synonyms.iter().map(String::as_str))
    });
    names.flat_map(|name| name.split(|c: char| !c.is_alphanumeric())).map(str::to_lowercase).collect()
}

impl Index {
    /// Indexes the words of a product; of all without one.
    pub(super) fn new(knowledge: &Knowledge, product: Option<Key<Product>>) -> Self {
        let declared = &knowledge.declared;
        let view = product.map(|product| knowledge.view(product));
        let symptom_keys = view.map_or_else(|| declared.symptoms.keys().collect(), |view| view.listed_symptoms.clone());
        let reading_keys = view.map_or_else(|| declared.readings.keys().collect(), |view| view.listed_readings.clone());
        let fact_keys = view.map_or_else(|| declared.facts.keys().collect(), |view| view.listed_facts.clone());
        let symptom = |key: &Key<Symptom>| {
            let symptom = &declared.symptoms[*key];
            let names = names(&symptom.id, &symptom.title, &symptom.synonyms);
            Naming { names, description: &symptom.description, part: Some(&symptom.part) }
        };
        let reading = |key: &Key<Reading>| {
            let reading = &declared.readings[*key];
            Naming { names: names(&reading.id, &reading.title, &reading.synonyms), ..Naming::default() }
        };
        let fact = |key: &Key<Fact>| {
            let fact = &declared.facts[*key];
            Naming { names: vec![&fact.id, &fact.title], description: &fact.question, part: None }
        };
        let products = words_of_products(declared);
        let readings = PhraseIndex::new(reading_keys.iter().map(reading)).beside(&products);
        Self {
            symptoms: PhraseIndex::new(symptom_keys.iter().map(symptom)).beside(&products),
            readings: ReadingNames { index: readings, keys: reading_keys },
            facts: PhraseIndex::new(fact_keys.iter().map(fact)).beside(&products),
            symptom_keys,
            fact_keys,
        }
    }
}
