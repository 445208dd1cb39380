//! The way of one case through the diagnosis.

use std::cell::RefCell;
use std::fmt;

use super::advice::Advising;
use super::answer::{Contradiction, Diagnosis, GivenFormula, OtherCause, RaisedSymptom, RankedCause, RulesStamp};
use super::arguments::Arguing;
use super::calculations;
use super::cautions::Heeding;
use super::circumstances::{LaidOut, lay_out};
use super::computed::computed;
use super::inquiry::{Open, at_issue, lifted, next};
use super::law::Law;
use super::missing::missing;
use super::model::Model;
use super::order::Ordering;
use super::prepared::Prepared;
use super::remarks;
use super::weighing::{observe, weigh};
use crate::case::{Case, Seen};
use crate::inference::{FindingsFault, NetworkFault, Odds, Posterior, Workspace, posterior};
use crate::knowledge::{Circumstances, Knowledge, ProductView};

/// Most causes with their arguments in an answer.
const MOST_LEADING: usize = 6;

/// Fewest causes with their arguments, however improbable.
const FEWEST_LEADING: usize = 3;

/// A less probable cause is only named.
const LEAST_LEADING: f64 = 0.02;

/// Of a less probable cause, unless it leads, no action is prescribed: what hardly any bake needs only buries the rest.
const LEAST_ACTED_ON: f64 = 0.05;

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
        let view = self.knowledge.view(case.product);
        let laid_out = lay_out(&case, &self.knowledge, view);
        WORKSPACES.with_borrow_mut(|workspaces| self.answer(case, view, laid_out, workspaces)).map_err(DiagnosisFault)
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
        view: &'k ProductView,
        mut laid_out: LaidOut,
        workspaces: &mut (Workspace, Workspace),
    ) -> Result<Diagnosis<'k>, FindingsFault> {
        let (knowledge, model) = (&self.knowledge, self.model(view));
        let mut weighed = weigh(knowledge, view, &mut laid_out.circumstances);
        observe(&mut weighed.findings, view, &laid_out.symptoms);
        let (workspace, spare) = workspaces;
        let posterior = posterior(&model.network, &weighed.findings, workspace)?;
        let ranking = rank(posterior.odds());
        let probability = |position: usize| posterior.odds().get(position).map_or(0.0, |odds| odds.probability());
        let leading = leading(&ranking, |position| at_issue(view, posterior.standing(), *position), probability);
        let leading = leading.as_slice();
        let acted_on = leading.partition_point(|position| probability(*position) >= LEAST_ACTED_ON).max(1);
        let acted_on = leading.get(..acted_on).unwrap_or(leading);
        let weights = posterior.leave_one_out(leading, spare)?;
        let open = Open::new(knowledge, view, model, &posterior, &weighed.findings);
        let next = next(&open, &mut laid_out.circumstances, spare);
        let law = Law { declared: &knowledge.declared, market: case.requirements.market };
        let advising = Advising {
            view,
            law,
            knowledge,
            prepared: &self.prepared,
            case: &laid_out.circumstances,
            requirements: &case.requirements,
        };
        let mut rule_faults = std::mem::take(&mut weighed.rule_faults);
        calculations::failed_readings(knowledge, view, &laid_out.circumstances, &mut rule_faults);
        let arguing = Arguing::new(knowledge, view, &laid_out, &weighed, &weights, &posterior);
        let mut excluded_actions = Vec::new();
        let mut causes: Vec<RankedCause<'k>> = Vec::with_capacity(leading.len());
        for (rank, &position) in leading.iter().enumerate() {
            let Some(key) = view.causes.get(position) else { continue };
            let cause = &knowledge.declared.causes[*key];
            causes.push(RankedCause {
                cause: &cause.id,
                title: &cause.title,
                mechanism: &cause.mechanism,
                prior: view.priors.get(position).copied().unwrap_or(0.0),
                probability: probability(position),
                evidence: arguing.arguments(cause, rank),
                actions: if acted_on.contains(&position) {
                    advising.actions(cause, &mut excluded_actions, &mut rule_faults)
                } else {
                    Vec::new()
                },
                confirm: advising.confirmations(*key),
                sources: advising.sources(&cause.sources),
            });
        }
        let ordering = Ordering { advising, posterior: &posterior, symptoms: &laid_out.symptoms };
        let action_order = ordering.order(&ranking, &causes);
        let against_leader = causes.first().map(|leader| {
            leader.evidence.iter().filter(|argument| argument.decibans <= SPEAKS_AGAINST).cloned().collect()
        });
        let known = remarks::tells_something(&case, &laid_out, view);
        Ok(Diagnosis {
            rules: RulesStamp { version: &knowledge.declared.pack.version, digest: &knowledge.declared.pack.digest },
            product: &knowledge.declared.products[view.product].id,
            product_title: &knowledge.declared.products[view.product].title,
            summary: remarks::summary(&causes, next.readings.first(), known),
            other_causes: others(knowledge, view, &ranking, leading, &posterior),
            action_order,
            next_readings: next.readings,
            next_questions: next.questions,
            computed: computed(knowledge, view, &laid_out),
            raised: raised(knowledge, &laid_out),
            contradictions: contradictions(knowledge, &laid_out),
            unexplained: remarks::unexplained(knowledge, view, &laid_out, probability),
            against_leader: against_leader.unwrap_or_default(),
            set_aside: remarks::set_aside(&case, knowledge, view, &laid_out),
            missing: missing(knowledge, view, &laid_out, leading),
            cautions: Heeding {
                knowledge,
                view,
                laid_out: &laid_out,
                law,
                requirements: &case.requirements,
                acted_on,
                excluded: &excluded_actions,
            }
            .cautions(),
            excluded_actions,
            rule_faults,
            formula: GivenFormula::of(case.formula.as_ref()),
            causes,
            reference: case.reference,
        })
    }
}

/// Positions of the causes, most probable first; of equals the one declared first.
fn rank(odds: &[Odds]) -> Vec<usize> {
    let mut ranking: Vec<(f64, usize)> =
        odds.iter().enumerate().map(|(position, odds)| (odds.present / odds.absent, position)).collect();
    ranking.sort_by(|(a, _), (b, _)| b.total_cmp(a));
    ranking.into_iter().map(|(_, position)| position).collect()
}

/// The causes that are argued for: those at issue, which explain something seen or were found beside it. What is merely
/// common says nothing about the complaint. Where nothing was found, all causes are at issue.
fn leading(ranking: &[usize], at_issue: impl Fn(&usize) -> bool, probability: impl Fn(usize) -> f64) -> Vec<usize> {
    let mut leading: Vec<usize> = ranking.iter().copied().filter(at_issue).collect();
    if leading.is_empty() {
        leading = ranking.to_vec();
    }
    let probable = leading.iter().take_while(|position| probability(**position) >= LEAST_LEADING).count();
    leading.truncate(probable.clamp(FEWEST_LEADING, MOST_LEADING));
    leading
}

fn others<'k>(
    knowledge: &'k Knowledge,
    view: &ProductView,
    ranking: &[usize],
    leading: &[usize],
    posterior: &Posterior<'_>,
) -> Vec<OtherCause<'k>> {
    let rest = ranking.iter().copied().filter(|position| !leading.contains(position)).filter_map(|position| {
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
