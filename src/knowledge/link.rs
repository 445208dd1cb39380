//! Linked knowledge: for every product, its causes, symptoms and inputs, indexed.

use std::collections::{BTreeMap, BTreeSet};

use super::demand::{ALWAYS_COMPUTED, Needs};
use super::product::most_specific;
use super::{
    Cause, Declarations, Fact, Family, FormulaQuantity, Input, Key, Limit, Limits, Product, Reading, Scope, Symptom,
};
use crate::science::formula::{Part, Stage};

/// All that rules say, checked, indexed and immutable.
#[derive(Debug, Clone)]
pub struct Knowledge {
    /// What the pack declares.
    pub declared: Declarations,
    views: Vec<ProductView>,
}

/// A link of a product's network, by position in the view.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ViewLink {
    /// Position in [`ProductView::causes`].
    pub cause: usize,
    /// Position in [`ProductView::symptoms`].
    pub symptom: usize,
    /// Probability that the cause alone shows the symptom.
    pub strength: f64,
}

/// Something that evidence of a product depends on, and whose evidence that is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RelevantInput {
    /// The input.
    pub input: Input,
    /// Positions in [`ProductView::causes`], ascending.
    pub causes: Vec<usize>,
}

/// The part of the knowledge that concerns one product.
#[derive(Debug, Clone)]
pub struct ProductView {
    /// The product.
    pub product: Key<Product>,
    /// Causes that can befall it, in order of declaration.
    pub causes: Vec<Key<Cause>>,
    /// Prior of each cause.
    pub priors: Vec<f64>,
    /// Symptoms that these causes show.
    pub symptoms: Vec<Key<Symptom>>,
    /// What shows what.
    pub links: Vec<ViewLink>,
    /// Limits of every reading (by reading key): usual windows of this product.
    pub limits: Vec<Limits>,
    /// What the evidence depends on.
    pub inputs: Vec<RelevantInput>,
    /// Symptoms declared for the product or shown by its causes.
    pub listed_symptoms: Vec<Key<Symptom>>,
    /// Readings declared for the product or used by its causes.
    pub listed_readings: Vec<Key<Reading>>,
    /// Facts declared for the product or used by its causes.
    pub listed_facts: Vec<Key<Fact>>,
    /// Positions in [`Declarations::warnings`] of the warnings that concern the product.
    pub warnings: Vec<usize>,
    /// Legal limits that concern the product.
    pub legal_limits: Vec<Key<Limit>>,
    /// Part of the formula that lines without a stage belong to.
    pub main_stage: Stage,
    /// Readings that can be computed and that the product's rules use, each after those that it needs.
    pub computable: Vec<Key<Reading>>,
    /// Quantities of the formula that the product's rules use, and the few that every answer gives.
    pub formula_quantities: Vec<(Part, FormulaQuantity)>,
}

impl Knowledge {
    /// Links declarations: works out what concerns each product.
    #[must_use]
    pub fn link(declared: Declarations) -> Self {
        let computable = computable(&declared);
        let views = declared.products.keys().map(|product| ProductView::new(&declared, product, &computable)).collect();
        Self { declared, views }
    }

    /// The view of a product.
    ///
    /// Keys come from this knowledge, so there is a view for each.
    #[must_use]
    #[allow(clippy::indexing_slicing)] // one view a product, made in `link`
    pub fn view(&self, product: Key<Product>) -> &ProductView {
        &self.views[product.index()]
    }

    /// The views of all products.
    #[must_use]
    pub fn views(&self) -> &[ProductView] {
        &self.views
    }
}

impl ProductView {
    fn new(declared: &Declarations, product: Key<Product>, computable: &[Key<Reading>]) -> Self {
        let family = declared.products[product].family;
        let main_stage = declared.main_stage(product);
        let covers = |scopes: &[Scope]| scopes.iter().any(|scope| scope.covers(product, family));
        let causes: Vec<Key<Cause>> =
            declared.causes.iter().filter(|(_, cause)| covers(&cause.products)).map(|(key, _)| key).collect();
        let symptoms = shown_symptoms(declared, &causes, |symptom| declared.concerns(&symptom.products, product));
        let inputs = relevant_inputs(declared, &causes);
        let warnings: Vec<usize> = positions(&declared.warnings, |one| declared.concerns(&one.products, product));
        let concerned = |(key, limit): (Key<Limit>, &Limit)| declared.concerns(&limit.products, product).then_some(key);
        let legal_limits: Vec<Key<Limit>> = declared.limits.iter().filter_map(concerned).collect();
        let needs = Needs::of(declared, &causes, &warnings, &legal_limits);
        let listed_readings: Vec<Key<Reading>> = listed(
            declared.readings.iter(),
            |reading| {
                covers(&reading.products) || reading.windows.iter().any(|(scope, _)| scope.covers(product, family))
            },
            inputs.iter().map(|relevant| relevant.input).chain(needs.warning_inputs()).filter_map(
                |input| match input {
                    Input::Reading(key) => Some(key),
                    _ => None,
                },
            ),
        );
        let used = needs.readings(&listed_readings, computable);
        let computable: Vec<Key<Reading>> = computable.iter().copied().filter(|key| used.contains(key)).collect();
        let main_part = main_stage.part();
        let mut formula_quantities = needs.formula_quantities(&computable, main_part);
        formula_quantities.extend(ALWAYS_COMPUTED.map(|quantity| (main_part, quantity)));
        Self {
            product,
            warnings,
            legal_limits,
            main_stage,
            computable,
            formula_quantities: formula_quantities.into_iter().collect(),
            priors: causes.iter().map(|key| prior(declared, *key, product, family)).collect(),
            links: links(declared, &causes, &symptoms),
            limits: declared.readings.iter().map(|(_, reading)| usual_limits(reading, product, family)).collect(),
            listed_symptoms: listed(
                declared.symptoms.iter(),
                |symptom| covers(&symptom.products),
                symptoms.iter().copied(),
            ),
            listed_readings,
            listed_facts: listed(
                declared.facts.iter(),
                |fact| covers(&fact.products),
                inputs.iter().map(|relevant| relevant.input).chain(needs.warning_inputs()).filter_map(|input| {
                    match input {
                        Input::Fact(key) => Some(key),
                        _ => None,
                    }
                }),
            ),
            causes,
            symptoms,
            inputs,
        }
    }

    /// Position of a symptom in [`Self::symptoms`].
    #[must_use]
    pub fn symptom_position(&self, symptom: Key<Symptom>) -> Option<usize> {
        self.symptoms.binary_search(&symptom).ok()
    }

    /// Position of a cause in [`Self::causes`].
    #[must_use]
    pub fn cause_position(&self, cause: Key<Cause>) -> Option<usize> {
        self.causes.binary_search(&cause).ok()
    }
}

fn positions<T>(items: &[T], chosen: impl Fn(&T) -> bool) -> Vec<usize> {
    items.iter().enumerate().filter(|(_, item)| chosen(item)).map(|(position, _)| position).collect()
}

/// Computed readings in an order of need; rules with a circle are refused when they are loaded.
fn computable(declared: &Declarations) -> Vec<Key<Reading>> {
    let mut order = Vec::new();
    for key in declared.readings.keys() {
        push_computable(declared, key, &mut order, &mut BTreeSet::new());
    }
    order
}

fn push_computable(
    declared: &Declarations,
    key: Key<Reading>,
    order: &mut Vec<Key<Reading>>,
    on_the_way: &mut BTreeSet<Key<Reading>>,
) {
    let Some(quantity) = &declared.readings[key].computed else { return };
    if order.contains(&key) || !on_the_way.insert(key) {
        return;
    }
    let mut needs = Vec::new();
    quantity.inputs(&mut |input| {
        if let Input::Reading(needed) = input {
            needs.push(needed);
        }
    });
    for needed in needs {
        push_computable(declared, needed, order, on_the_way);
    }
    order.push(key);
}

fn prior(declared: &Declarations, cause: Key<Cause>, product: Key<Product>, family: Option<Key<Family>>) -> f64 {
    let cause = &declared.causes[cause];
    most_specific(&cause.priors, product, family).copied().unwrap_or(cause.prior)
}

/// Ascending keys of the symptoms that the causes show and that the product can have.
fn shown_symptoms(
    declared: &Declarations,
    causes: &[Key<Cause>],
    concerns: impl Fn(&Symptom) -> bool,
) -> Vec<Key<Symptom>> {
    let shown = causes.iter().flat_map(|key| declared.causes[*key].links.iter().map(|link| link.symptom));
    let shown: BTreeSet<_> = shown.filter(|key| concerns(&declared.symptoms[*key])).collect();
    shown.into_iter().collect()
}

fn links(declared: &Declarations, causes: &[Key<Cause>], symptoms: &[Key<Symptom>]) -> Vec<ViewLink> {
    let mut links = Vec::new();
    for (cause, key) in causes.iter().enumerate() {
        for link in &declared.causes[*key].links {
            if let Ok(symptom) = symptoms.binary_search(&link.symptom) {
                links.push(ViewLink { cause, symptom, strength: link.strength });
            }
        }
    }
    links
}

/// What the causes' evidence depends on, ascending by input.
fn relevant_inputs(declared: &Declarations, causes: &[Key<Cause>]) -> Vec<RelevantInput> {
    let mut dependents: BTreeMap<Input, BTreeSet<usize>> = BTreeMap::new();
    for (position, key) in causes.iter().enumerate() {
        for evidence in &declared.causes[*key].evidence {
            evidence.inputs(&mut |input| {
                dependents.entry(input).or_default().insert(position);
            });
        }
    }
    dependents
        .into_iter()
        .map(|(input, causes)| RelevantInput { input, causes: causes.into_iter().collect() })
        .collect()
}

fn usual_limits(reading: &Reading, product: Key<Product>, family: Option<Key<Family>>) -> Limits {
    let margin = most_specific(&reading.margins, product, family).copied().or(reading.margin);
    most_specific(&reading.windows, product, family)
        .map_or_else(|| Limits { margin, ..Limits::default() }, |window| Limits::usual(*window, margin))
}

/// Keys that are declared for the product or otherwise `used`, in order of declaration.
fn listed<'a, T: 'a>(
    items: impl Iterator<Item = (Key<T>, &'a T)>,
    declared_for: impl Fn(&T) -> bool,
    used: impl Iterator<Item = Key<T>>,
) -> Vec<Key<T>> {
    let mut keys: BTreeSet<Key<T>> = used.collect();
    keys.extend(items.filter(|(_, item)| declared_for(item)).map(|(key, _)| key));
    keys.into_iter().collect()
}
