//! The way of one case to its inquiries.

use super::super::answer::RulesStamp;
use super::super::cautions::Heeding;
use super::super::diagnostician::{DiagnosisFault, Diagnostician};
use super::super::law::Law;
use super::super::opened::Opened;
use super::answer::{ChangedCause, Inquiries, Inquiry, InquiryKind, InquiryOutcome, ProbableCause, Sought};
use super::next::{LEAST_BITS, MOST_TOLD_APART};
use super::open::{Open, Promise, Subject};
use super::plan::Planner;
use super::prospect::Prospect;
use super::standing::leaders;
use super::told::{Counted, Told};
use crate::case::{Case, InquiryOptions, InquiryRequest};
use crate::inference::{FindingsFault, Standing, Workspace};
use crate::knowledge::{Circumstances, Input};

/// Most causes that are named with their probability.
const MOST_CAUSES: usize = 6;

impl Diagnostician {
    /// Everything that a case leaves to find out, ranked by information a minute, and a plan. The same case, options and
    /// rules give the same answer.
    ///
    /// # Errors
    /// More present or uncertain symptoms than can be weighed exactly.
    pub fn inquire(&self, request: InquiryRequest) -> Result<Inquiries<'_>, DiagnosisFault> {
        self.inquiries(request.case, request.options).map_err(DiagnosisFault)
    }

    /// The most probable causes at issue of a case, best first: the ranking of a diagnosis without its arguments.
    ///
    /// # Errors
    /// More present or uncertain symptoms than can be weighed exactly.
    pub fn leading_causes(&self, case: &Case, most: usize) -> Result<Vec<ProbableCause<'_>>, DiagnosisFault> {
        let (opened, mut workspace) = (self.opened(case), Workspace::new());
        let posterior = opened.posterior(&mut workspace).map_err(DiagnosisFault)?;
        Ok(opened.open(&posterior).probable_causes(most))
    }

    fn inquiries(&self, case: Case, options: InquiryOptions) -> Result<Inquiries<'_>, FindingsFault> {
        let opened = self.opened(&case);
        let Opened { knowledge, view, model, laid_out, weighed } = &opened;
        let (knowledge, view, model) = (*knowledge, *view, *model);
        let (mut workspace, mut spare) = (Workspace::new(), Workspace::new());
        let posterior = opened.posterior(&mut workspace)?;
        let open = opened.open(&posterior);
        let (inquiries, tell_nothing) = open.inquiries(&mut laid_out.circumstances.clone(), &mut spare);
        let planner = Planner { knowledge, view, model, options: &options };
        let plan = planner.plan(laid_out.circumstances.clone(), weighed.findings.clone())?;
        let leading: Vec<usize> =
            leaders(view, posterior.standing(), MOST_CAUSES).iter().map(|(position, _)| *position).collect();
        let law = Law { declared: &knowledge.declared, market: case.requirements.market };
        let heeding = Heeding {
            knowledge,
            view,
            laid_out,
            law,
            requirements: &case.requirements,
            acted_on: &leading,
            excluded: &[],
        };
        Ok(Inquiries {
            rules: RulesStamp { version: &knowledge.declared.pack.version, digest: &knowledge.declared.pack.digest },
            product: &knowledge.declared.products[view.product].id,
            options,
            causes: open.probable_causes(MOST_CAUSES),
            plan,
            inquiries,
            tell_nothing,
            cautions: heeding.cautions(),
            rule_faults: weighed.rule_faults.clone(),
            reference: case.reference,
        })
    }
}

impl<'k> Open<'_, 'k> {
    /// Everything open, ranked, and what tells nothing.
    fn inquiries(&self, case: &mut Circumstances, spare: &mut Workspace) -> (Vec<Inquiry<'k>>, Vec<&'k str>) {
        let promises: Vec<Promise<'k>> = self.inputs(case).into_iter().chain(self.symptoms()).collect();
        let most = Counted::thorough(self.findings);
        let mut told: Vec<Told<'k>> =
            promises.iter().filter_map(|promise| self.tell(promise, case, spare, most)).collect();
        told.sort_by(|a, b| b.rate().total_cmp(&a.rate()));
        let (telling, silent): (Vec<_>, Vec<_>) = told.into_iter().partition(|told| told.bits >= LEAST_BITS);
        let inquiries = telling.iter().filter_map(|told| self.inquiry(told, spare)).collect();
        (inquiries, silent.iter().filter_map(|told| self.sought(told)).map(|sought| sought.finding).collect())
    }

    fn inquiry(&self, told: &Told<'k>, spare: &mut Workspace) -> Option<Inquiry<'k>> {
        let prospects = self.prospects(told);
        let outcomes = prospects.into_iter().filter_map(|prospect| self.outcome(prospect, spare)).collect();
        Some(Inquiry { find_out: self.sought(told)?, tells_apart: self.tells_apart(told, MOST_TOLD_APART), outcomes })
    }

    fn outcome(&self, prospect: Prospect, spare: &mut Workspace) -> Option<InquiryOutcome<'k>> {
        let (leader, changes) = self.after(&prospect, spare, |after| {
            let leader = leaders(self.view, after, 1).into_iter().next();
            let leader = leader.and_then(|(position, probability)| self.probable_cause(position, probability));
            (leader, self.changes(after))
        })?;
        Some(InquiryOutcome { outcome: prospect.text, probability: prospect.probability, leader, changes })
    }

    /// The causes asked about that change most.
    fn changes(&self, after: Standing<'_>) -> Vec<ChangedCause<'k>> {
        let changes = self.most_changed(after, MOST_TOLD_APART).into_iter();
        let changed = changes.filter_map(|(position, before, after)| {
            let ProbableCause { cause, title, .. } = self.probable_cause(position, after)?;
            Some(ChangedCause { cause, title, before, after })
        });
        changed.collect()
    }

    /// The most probable causes at issue.
    pub(super) fn probable_causes(&self, most: usize) -> Vec<ProbableCause<'k>> {
        let leaders = leaders(self.view, self.posterior.standing(), most).into_iter();
        leaders.filter_map(|(position, probability)| self.probable_cause(position, probability)).collect()
    }

    fn probable_cause(&self, position: usize, probability: f64) -> Option<ProbableCause<'k>> {
        let cause = &self.knowledge.declared.causes[*self.view.causes.get(position)?];
        Some(ProbableCause { cause: &cause.id, title: &cause.title, probability })
    }

    /// A candidate as the answer names it.
    pub(super) fn sought(&self, told: &Told<'k>) -> Option<Sought<'k>> {
        let declared = &self.knowledge.declared;
        let (kind, finding, title, how, unit) = match told.subject {
            Subject::Symptom(position) => {
                let symptom = &declared.symptoms[*self.view.symptoms.get(position)?];
                (InquiryKind::Symptom, &symptom.id, &symptom.title, &symptom.description, None)
            }
            Subject::Input(candidate) => match candidate.input {
                Input::Reading(key) => {
                    let reading = &declared.readings[key];
                    let unit = Some(reading.unit.code());
                    (InquiryKind::Reading, &reading.id, &reading.title, &reading.method, unit)
                }
                Input::Fact(key) => {
                    let fact = &declared.facts[key];
                    (InquiryKind::Fact, &fact.id, &fact.title, &fact.question, None)
                }
                Input::Share(_) | Input::Formula => return None,
            },
        };
        Some(Sought {
            finding,
            kind,
            title,
            how,
            unit,
            effort_minutes: told.subject.minutes(),
            information_bits: told.bits,
            bits_per_minute: told.rate(),
            exact: told.exact,
        })
    }
}
