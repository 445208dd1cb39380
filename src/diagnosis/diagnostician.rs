//! The way of one case through the diagnosis.

use std::cell::RefCell;
use std::fmt;

use super::answer::{
    Argument, Contradiction, Diagnosis, GivenFormula, OtherCause, RaisedSymptom, RankedCause, RulesStamp,
};
use super::arguments::Arguing;
use super::cautions::Heeding;
use super::circumstances::{LaidOut, lay_out};
use super::computed::computed;
use super::inquiry::{lifted, next};
use super::leading::Leading;
use super::missing::missing;
use super::model::Model;
use super::opened::Opened;
use super::order::Ordering;
use super::prepared::Prepared;
use super::ranked::{Ranked, probability, ranked};
use super::remarks;
use crate::case::{Case, Seen};
use crate::inference::{FindingsFault, NetworkFault, Posterior, Workspace};
use crate::knowledge::{Circumstances, Knowledge, ProductView};

/// Decibans against the leader that are worth a line.
const SPEAKS_AGAINST: f64 = -0.5;

thread_local! {
    /// Memory of the inference, reused from case to case: for the case, and for what it is compared with.
    static WORKSPACES: RefCell<(Workspace, Workspace)> = RefCell::default();
}

/// Knowledge ready to diagnose cases: immutable, shared by all requests.
#[derive(Debug)]
pub struct Diagnostician {
    knowledge: Knowledge,
    models: Vec<Model>,
    prepared: Prepared,
}

/// Numbers of the rules that no network can have.
#[derive(Debug, Clone, PartialEq)]
pub struct UnusableRules(pub Vec<NetworkFault>);

impl fmt::Display for UnusableRules {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let faults: Vec<String> = self.0.iter().map(NetworkFault::to_string).collect();
        f.write_str(&faults.join("; "))
    }
}

impl std::error::Error for UnusableRules {}

/// Why a case cannot be diagnosed.
#[derive(Debug, Clone, PartialEq)]
pub struct DiagnosisFault(pub FindingsFault);

impl fmt::Display for DiagnosisFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl std::error::Error for DiagnosisFault {}

impl Diagnostician {
    /// Builds the networks of all products.
    ///
    /// # Errors
    /// Numbers that no network can have; the checks of rule files refuse them before.
    pub fn new(knowledge: Knowledge) -> Result<Self, UnusableRules> {
        let models = knowledge
            .views()
            .iter()
            .map(|view| Model::new(&knowledge, view))
            .collect::<Result<_, _>>()
            .map_err(UnusableRules)?;
        let prepared = Prepared::new(&knowledge.declared);
        Ok(Self { knowledge, models, prepared })
    }

    /// The knowledge behind it.
    #[must_use]
    pub fn knowledge(&self) -> &Knowledge {
        &self.knowledge
    }

    pub(super) fn prepared(&self) -> &Prepared {
        &self.prepared
    }

    /// Diagnoses a case that was parsed against [`Self::knowledge`]. The same case and rules give the same answer.
    ///
    /// # Errors
    /// More present or uncertain symptoms than can be weighed exactly.
    pub fn diagnose(&self, case: Case) -> Result<Diagnosis<'_>, DiagnosisFault> {
        WORKSPACES.with_borrow_mut(|workspaces| self.answer(case, workspaces)).map_err(DiagnosisFault)
    }

    /// What the conditions of the rules see of a case, and its symptoms with those that readings raised.
    #[must_use]
    pub fn known(&self, case: &Case) -> (Circumstances, Vec<Seen>) {
        let laid_out = lay_out(case, &self.knowledge, self.knowledge.view(case.product));
        (laid_out.circumstances, laid_out.symptoms)
    }

    // A product has a model, made in `new`; the key comes from the same knowledge.
    #[allow(clippy::indexing_slicing)]
    pub(super) fn model(&self, view: &ProductView) -> &Model {
        &self.models[view.product.index()]
    }

    fn answer<'k>(
        &'k self,
        case: Case,
        workspaces: &mut (Workspace, Workspace),
    ) -> Result<Diagnosis<'k>, FindingsFault> {
        let (workspace, spare) = workspaces;
        let opened = self.opened(&case);
        let Opened { knowledge, view, laid_out, weighed, .. } = &opened;
        let (knowledge, view, declared) = (*knowledge, *view, &knowledge.declared);
        let posterior = opened.posterior(workspace)?;
        let leading = Leading::of(view, &posterior);
        let weights = posterior.leave_one_out(&leading.argued, spare)?;
        let next = next(&opened.open(&posterior), &mut laid_out.circumstances.clone(), spare);
        let advising = self.advising(view, laid_out, &case.requirements);
        let arguing = Arguing::new(knowledge, view, laid_out, weighed, &weights, &posterior);
        let mut rule_faults = weighed.rule_faults.clone();
        let Ranked { causes, excluded_actions } = ranked(&leading, &arguing, advising, &posterior, &mut rule_faults);
        let cautions = Heeding {
            knowledge,
            view,
            laid_out,
            law: advising.law,
            requirements: &case.requirements,
            acted_on: leading.acted_on(),
            excluded: &excluded_actions,
        };
        Ok(Diagnosis {
            rules: RulesStamp { version: &declared.pack.version, digest: &declared.pack.digest },
            product: &declared.products[view.product].id,
            product_title: &declared.products[view.product].title,
            summary: remarks::summary(&causes, next.readings.first(), remarks::tells_something(&case, laid_out, view)),
            other_causes: others(knowledge, view, &leading, &posterior),
            action_order: Ordering { advising, posterior: &posterior, symptoms: &laid_out.symptoms }
                .order(&leading.ranking, &causes),
            next_readings: next.readings,
            next_questions: next.questions,
            computed: computed(knowledge, view, laid_out),
            raised: raised(knowledge, laid_out),
            contradictions: contradictions(knowledge, laid_out),
            unexplained: remarks::unexplained(knowledge, view, laid_out, |cause| probability(&posterior, cause)),
            against_leader: causes.first().map(against).unwrap_or_default(),
            set_aside: remarks::set_aside(&case, knowledge, view, laid_out),
            missing: missing(knowledge, view, laid_out, &leading.argued),
            cautions: cautions.cautions(),
            excluded_actions,
            rule_faults,
            formula: GivenFormula::of(case.formula.as_ref()),
            causes,
            reference: case.reference,
        })
    }
}

/// What speaks against a cause.
fn against<'k>(cause: &RankedCause<'k>) -> Vec<Argument<'k>> {
    cause.evidence.iter().filter(|argument| argument.decibans <= SPEAKS_AGAINST).cloned().collect()
}

fn others<'k>(
    knowledge: &'k Knowledge,
    view: &ProductView,
    leading: &Leading,
    posterior: &Posterior<'_>,
) -> Vec<OtherCause<'k>> {
    let rest = leading.ranking.iter().copied().filter(|position| !leading.argued.contains(position));
    let rest = rest.filter_map(|position| {
        let cause = &knowledge.declared.causes[*view.causes.get(position)?];
        Some(OtherCause {
            cause: &cause.id,
            title: &cause.title,
            probability: posterior.odds().get(position)?.probability(),
            is_suspected: posterior.explains(position) || lifted(view, posterior.standing(), position),
        })
    });
    rest.collect()
}

fn raised<'k>(knowledge: &'k Knowledge, laid_out: &LaidOut) -> Vec<RaisedSymptom<'k>> {
    let symptoms = laid_out.raising.raised.iter().map(|raised| RaisedSymptom {
        symptom: &knowledge.declared.symptoms[raised.symptom].id,
        present: raised.present,
        text: raised.text.clone(),
    });
    symptoms.collect()
}

fn contradictions<'k>(knowledge: &'k Knowledge, laid_out: &LaidOut) -> Vec<Contradiction<'k>> {
    let found = laid_out.raising.contradictions.iter().map(|one| Contradiction {
        symptom: &knowledge.declared.symptoms[one.symptom].id,
        reading: &knowledge.declared.readings[one.reading].id,
        text: one.text.clone(),
    });
    found.collect()
}
