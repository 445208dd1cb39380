//! A cause with everything that its rule says, in words.

use std::collections::BTreeSet;

use serde::Serialize;
use utoipa::ToSchema;

use crate::diagnosis::{ChangeText, change_text, describe_condition, describe_regions};
use crate::knowledge::{
    Cause, Declarations, Evidence, EvidenceKind, Input, Key, Knowledge, Link, Named, Prescription, ProductView,
    Setting, Text,
};
use crate::listings::{CautionItem, SourceItem, cautions, ids, sources};

/// A cause with its whole rule.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct CauseRule<'k> {
    /// Id.
    #[schema(example = "dough_too_warm")]
    id: &'k str,
    /// Title for people.
    #[schema(example = "Dough too warm at make-up")]
    title: &'k str,
    /// How it brings its symptoms about.
    #[schema(example = "Warm dough gasses before it has strength; cells near the skin merge and lift the crust.")]
    mechanism: &'k str,
    /// Products that it can befall.
    products: Vec<PriorItem<'k>>,
    /// Symptoms that it shows.
    symptoms: Vec<ShownSymptom<'k>>,
    /// What speaks for it and against it.
    evidence: Vec<EvidenceItem<'k>>,
    /// Ids of the readings, facts and ingredients that its evidence is judged by; `formula` for the formula as a whole.
    #[schema(example = json!(["dough_temperature", "dough_waits_before_divider"]))]
    evidence_needs: Vec<&'k str>,
    /// What can be done about it, in the authors' order.
    actions: Vec<CauseAction<'k>>,
    /// Cautions: read them before acting.
    cautions: Vec<CautionItem<'k>>,
    /// Sources of the rule.
    sources: Vec<SourceItem<'k>>,
    /// Rule file and line that declare it.
    #[schema(example = "soft_rolls/mixing.rhai:12:1")]
    declared_at: String,
}

/// A product that a cause can befall.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = CausePrior)]
struct PriorItem<'k> {
    /// Id of the product.
    #[schema(example = "hamburger_bun")]
    product: &'k str,
    /// Probability of the cause before anything is known of a case.
    #[schema(example = 0.1)]
    prior: f64,
}

/// A symptom that a cause shows.
#[derive(Debug, Serialize, ToSchema)]
struct ShownSymptom<'k> {
    /// Id of the symptom.
    #[schema(example = "hollow_under_crust")]
    symptom: &'k str,
    /// Title of the symptom.
    #[schema(example = "Hollow under the top crust")]
    title: &'k str,
    /// Probability that the cause, by itself, shows it.
    #[schema(example = 0.6)]
    strength: f64,
}

/// A condition and what it weighs.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = EvidenceOfCause)]
struct EvidenceItem<'k> {
    /// The condition in words; a graded one counts fully from the value that is named.
    #[schema(example = "dough temperature above 30 °C")]
    condition: String,
    /// Decibans when it holds; negative speaks against the cause.
    #[schema(example = 10.0)]
    decibans: f64,
    /// Decibans when it does not hold; left out where other regions of the reading have weights of their own.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = -5.0)]
    otherwise: Option<f64>,
    /// The story that it tells: of the items of one story only the strongest counts.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "heat of the dough")]
    group: Option<&'k str>,
}

/// An action against a cause.
#[derive(Debug, Serialize, ToSchema)]
struct CauseAction<'k> {
    /// Id of the action.
    #[schema(example = "colder_mixing_water")]
    action: &'k str,
    /// Title of the action.
    #[schema(example = "Use colder mixing water")]
    title: &'k str,
    /// What to do.
    #[schema(example = "Set the water so that the dough leaves the mixer at its target.")]
    text: &'k str,
    /// Names of the quantities that it sets, with their UCUM units; values follow from a case.
    sets: Vec<SetItem<'k>>,
    /// Probability that it mends the cause.
    #[schema(example = 0.7)]
    works: f64,
    /// Minutes until the next batch can show it.
    #[schema(example = 10.0)]
    effort_minutes: f64,
    /// Class of its cost, a word of the rules; left out where the rules do not say.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "NO_COST")]
    cost: Option<&'k str>,
    /// Batches that are typically lost until it works; left out where the rules do not say.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = 0.5)]
    waste_batches: Option<f64>,
    /// What else it changes.
    side_effects: Vec<&'k str>,
    /// Ids of symptoms that it can bring when overdone.
    may_show: Vec<&'k str>,
    /// Ids of ingredients that it brings in.
    uses: Vec<&'k str>,
    /// Ids of diets that it does not fit, beyond those of its ingredients.
    not_for: Vec<&'k str>,
    /// Ids of actions that take its place where requirements exclude it.
    instead: Vec<&'k str>,
    /// Ids of actions that it undoes.
    undoes: Vec<&'k str>,
    /// Whether it keeps harm from people, so that it comes before all that only mends the bake.
    at_once: bool,
    /// Cautions: read them before acting.
    cautions: Vec<CautionItem<'k>>,
    /// Sources.
    sources: Vec<SourceItem<'k>>,
}

/// A quantity that an action sets.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = SettingOfAction)]
struct SetItem<'k> {
    /// Name of the quantity.
    #[schema(example = "water_temperature")]
    name: &'k str,
    /// UCUM code of its unit.
    #[schema(example = "Cel")]
    unit: &'k str,
    /// Ids of the legal limits that it never exceeds.
    capped_by: Vec<&'k str>,
    /// What it changes in a case: a reading, or an amount of the formula; left out where the rule does not say.
    #[serde(skip_serializing_if = "Option::is_none")]
    changes: Option<ChangeText<'k>>,
}

impl<'k> CauseRule<'k> {
    /// Everything that the rule of `key` says.
    pub(super) fn new(knowledge: &'k Knowledge, key: Key<Cause>) -> Self {
        let declared = &knowledge.declared;
        let cause = &declared.causes[key];
        Self {
            id: &cause.id,
            title: &cause.title,
            mechanism: &cause.mechanism,
            products: knowledge.views().iter().filter_map(|view| prior_item(declared, view, key)).collect(),
            symptoms: cause.links.iter().map(|link| shown(declared, link)).collect(),
            evidence: cause.evidence.iter().flat_map(|item| evidence(declared, item)).collect(),
            evidence_needs: evidence_needs(declared, cause),
            actions: cause.prescriptions.iter().map(|prescription| action(declared, prescription)).collect(),
            cautions: cautions(declared, &cause.cautions),
            sources: sources(declared, &cause.sources),
            declared_at: cause.place.to_string(),
        }
    }
}

/// Prior of a cause for the product of a view; `None` when it cannot befall the product.
pub(super) fn prior(view: &ProductView, cause: Key<Cause>) -> Option<f64> {
    view.cause_position(cause).and_then(|position| view.priors.get(position)).copied()
}

fn prior_item<'k>(declared: &'k Declarations, view: &ProductView, cause: Key<Cause>) -> Option<PriorItem<'k>> {
    Some(PriorItem { product: declared.products[view.product].id(), prior: prior(view, cause)? })
}

fn shown<'k>(declared: &'k Declarations, link: &Link) -> ShownSymptom<'k> {
    let symptom = &declared.symptoms[link.symptom];
    ShownSymptom { symptom: &symptom.id, title: &symptom.title, strength: link.strength }
}

/// One item a condition, or one a region.
fn evidence<'k>(declared: &Declarations, item: &'k Evidence) -> Vec<EvidenceItem<'k>> {
    let group = item.group.as_deref();
    match &item.kind {
        EvidenceKind::Graded(condition, weights) => vec![EvidenceItem {
            condition: describe_condition(declared, condition),
            decibans: weights.supports,
            otherwise: Some(0.0 - weights.opposes),
            group,
        }],
        EvidenceKind::Regions(regions) => describe_regions(declared, regions)
            .into_iter()
            .zip(&regions.weights)
            .map(|(condition, &decibans)| EvidenceItem { condition, decibans, otherwise: None, group })
            .collect(),
    }
}

/// Ids of everything that the evidence depends on, each once.
fn evidence_needs<'k>(declared: &'k Declarations, cause: &Cause) -> Vec<&'k str> {
    let mut inputs = BTreeSet::new();
    for evidence in &cause.evidence {
        evidence.inputs(&mut |input| {
            inputs.insert(input);
        });
    }
    inputs.into_iter().map(|input| needed_id(declared, input)).collect()
}

fn needed_id(declared: &Declarations, input: Input) -> &str {
    match input {
        Input::Reading(key) => declared.readings[key].id(),
        Input::Fact(key) => declared.facts[key].id(),
        Input::Share(key) => declared.ingredients[key].id(),
        Input::Formula => "formula",
    }
}

fn action<'k>(declared: &'k Declarations, prescription: &'k Prescription) -> CauseAction<'k> {
    let action = &declared.actions[prescription.action];
    let settings = prescription.settings.iter();
    CauseAction {
        action: &action.id,
        title: &action.title,
        text: &action.text,
        sets: settings.map(|setting| set_item(declared, setting)).collect(),
        works: prescription.works,
        effort_minutes: action.effort_minutes,
        cost: action.cost.as_ref().map(|cost| cost.word.as_str()),
        waste_batches: action.waste_batches,
        side_effects: action.side_effects.iter().map(Text::as_str).collect(),
        may_show: ids(&declared.symptoms, &action.may_show),
        uses: ids(&declared.ingredients, &action.uses),
        not_for: ids(&declared.diets, &action.not_for),
        instead: ids(&declared.actions, &action.instead),
        undoes: ids(&declared.actions, &action.undoes),
        at_once: action.at_once,
        cautions: cautions(declared, &action.cautions),
        sources: sources(declared, &action.sources),
    }
}

fn set_item<'k>(declared: &'k Declarations, setting: &'k Setting) -> SetItem<'k> {
    let capped_by = ids(&declared.limits, &setting.capped_by);
    let changes = setting.changes.as_ref().map(|change| change_text(declared, change));
    SetItem { name: &setting.name, unit: setting.unit.code(), capped_by, changes }
}
