//! From a request to the sheet.

use super::answer::{
    ActionWithoutRun, BatchWeights, Blank, HeldSetting, SeenSymptom, TrialChange, TrialRun, TrialSheet,
};
use super::changes::{Candidate, Chosen, choose};
use super::design::{LETTERS, Plan, PlannedRun, lay_out};
use super::record::Records;
use super::request::{TrialRequest, under};
use super::sample::{Layout, sample};
use super::settings::{Moved, Settings, hold, sort};
use super::weights::{Applied, Control};
use super::{cautions, decision};
use crate::case::{Case, faults_of};
use crate::diagnosis::{Diagnosis, Diagnostician};
use crate::formulas::{Batch, Weighed};
use crate::json::{DocumentFaults, Fault, FaultCode};
use crate::knowledge::{Key, Symptom};

/// What people fill in by hand.
const BLANKS: [Blank; 7] = [
    Blank { name: "date", label: "Date" },
    Blank { name: "line", label: "Line" },
    Blank { name: "lot", label: "Lot" },
    Blank { name: "baked_by", label: "Baked by" },
    Blank { name: "judged_by", label: "Judged by" },
    Blank { name: "decision", label: "Decision" },
    Blank { name: "released_by", label: "Product released or discarded by (responsible person)" },
];

/// A change with its letter and what it sets.
struct Lettered<'d, 'k> {
    letter: char,
    candidate: Candidate<'d, 'k>,
    settings: Settings,
}

impl TrialSheet<'_> {
    /// Plans the trial. The same request and rules give the same sheet.
    ///
    /// # Errors
    /// A case that cannot be diagnosed or gives nothing to try, a formula or batch that cannot be meant, actions or a
    /// design that do not fit: every fault of the step that fails, with its place in the request.
    pub fn plan<'k>(
        diagnostician: &'k Diagnostician,
        request: &TrialRequest,
    ) -> Result<TrialSheet<'k>, DocumentFaults> {
        let (_, seen) = diagnostician.known(&request.case);
        let diagnosis = diagnostician.diagnose(request.case.clone()).map_err(|fault| {
            let code = FaultCode::OutOfRange;
            DocumentFaults::Faulty(vec![Fault {
                pointer: "/case/symptoms".into(),
                code,
                detail: fault.to_string(),
                help: None,
            }])
        })?;
        let seen = seen.iter().filter(|own| own.certainty > 0.5).map(|own| own.symptom).collect();
        Planning { diagnostician, request, seen, diagnosis: &diagnosis }.sheet()
    }
}

/// Everything that a sheet is made of.
struct Planning<'d, 'k> {
    diagnostician: &'k Diagnostician,
    request: &'d TrialRequest,
    seen: Vec<Key<Symptom>>,
    diagnosis: &'d Diagnosis<'k>,
}

impl<'d, 'k> Planning<'d, 'k> {
    fn sheet(&self) -> Result<TrialSheet<'k>, DocumentFaults> {
        let declared = &self.diagnostician.knowledge().declared;
        let TrialRequest { case, design, repeats, measure, actions, .. } = self.request;
        let weighed = self.weighed()?;
        let batch = weighed.as_ref().map(|weighed| self.batch(weighed)).transpose()?;
        let control = weighed.as_ref().zip(batch.as_ref()).map(|(weighed, batch)| Control {
            diagnostician: self.diagnostician,
            case,
            part: self.request.part.unwrap_or_else(|| weighed.main_part()),
            batch,
        });
        let Chosen { changes, first, not_tried, other_ways } =
            choose(self.diagnosis, actions.as_deref(), *design, declared, control.as_ref())
                .map_err(DocumentFaults::Faulty)?;
        let plan = lay_out(self.request, changes.len()).map_err(DocumentFaults::Faulty)?;
        let runs_with_a_change = plan.runs_with_a_change;
        let layout = Layout { runs_with_a_change, repeats: *repeats, size: self.request.size };
        let sample = sample(measure, layout, declared).map_err(DocumentFaults::Faulty)?;
        let lettered = self.lettered(&changes, control.as_ref());
        let records = Records::of(self.diagnostician, case, &self.seen, &changes, measure.target.as_ref());
        let hold = self.held(&lettered, &records);
        let pairs: Vec<_> = lettered.iter().map(|own| (own.letter, own.candidate)).collect();
        let product = &declared.products[case.product];
        Ok(TrialSheet {
            rules: self.diagnosis.rules.clone(),
            product: &product.id,
            product_title: &product.title,
            reference: case.reference.clone(),
            complaint: self.complaint(),
            decide: decision::decide(sample.counts_from.as_deref(), changes.len(), self.request),
            runs: runs(&plan, &lettered, control.as_ref()),
            design: plan.answer,
            cautions: cautions::cautions(self.diagnosis, case, declared, &pairs, &first),
            changes: lettered
                .into_iter()
                .enumerate()
                .map(|(place, own)| change(own, ways_to(place, &other_ways)))
                .collect(),
            do_first: first.iter().map(without_run).collect(),
            not_tried,
            batch: batch.map(|batch| weights(&batch)),
            hold,
            record: records.list,
            sample: sample.answer,
            fixed_when: records.fixed,
            stop: decision::stop(),
            blanks: BLANKS.to_vec(),
        })
    }

    fn weighed(&self) -> Result<Option<Weighed<'d>>, DocumentFaults>
    where
        'k: 'd,
    {
        let declared = &self.diagnostician.knowledge().declared;
        let case: &'d Case = &self.request.case;
        let main = declared.main_stage(case.product);
        let weighed = case.formula.as_ref().map(|formula| Weighed::new(formula, declared, main));
        weighed.transpose().map_err(|nonsense| at_places(faults_of(&nonsense)))
    }

    fn batch(&self, weighed: &Weighed<'_>) -> Result<Batch, DocumentFaults> {
        let batch = weighed.batch(self.request.part, self.request.size);
        batch.map_err(|nonsense| at_places(faults_of(&nonsense)))
    }

    fn lettered(&self, changes: &[Candidate<'d, 'k>], control: Option<&Control<'_>>) -> Vec<Lettered<'d, 'k>> {
        let declared = &self.diagnostician.knowledge().declared;
        let factor = control.and_then(Control::factor);
        let lettered = LETTERS.into_iter().zip(changes).map(|(letter, candidate)| {
            let applied: Vec<Applied> = control
                .and_then(|control| control.with(&[&candidate.advice.quantities]).1.into_iter().next())
                .unwrap_or_default();
            Lettered { letter, candidate: *candidate, settings: sort(letter, candidate, &applied, factor, declared) }
        });
        lettered.collect()
    }

    fn held(&self, changes: &[Lettered<'d, 'k>], records: &Records<'k>) -> Vec<HeldSetting<'k>> {
        let moved = |own: &Lettered<'_, 'k>| {
            let answering = own.candidate.cause.confirm.iter().map(|confirm| confirm.reading.to_owned());
            let set = own.settings.of_runs.iter().filter_map(|own| own.reading.clone());
            Moved { letter: own.letter, set: set.collect(), answering: answering.collect() }
        };
        let moved: Vec<Moved> = changes.iter().map(moved).collect();
        let recorded: Vec<&str> = records.list.iter().map(|own| own.id).collect();
        hold(&self.request.case, &self.diagnostician.knowledge().declared, &moved, &recorded)
    }

    fn complaint(&self) -> Vec<SeenSymptom<'k>> {
        let symptoms = &self.diagnostician.knowledge().declared.symptoms;
        let seen = self.seen.iter().map(|key| &symptoms[*key]);
        seen.map(|own| SeenSymptom { symptom: &own.id, title: &own.title }).collect()
    }
}

/// Faults of a formula belong to the case, those of a size to the batch.
fn at_places(faults: Vec<Fault>) -> DocumentFaults {
    let place = |fault: Fault| {
        let member = if fault.pointer.starts_with("/formula") { "/case" } else { "/batch" };
        under(member, fault)
    };
    DocumentFaults::Faulty(faults.into_iter().map(place).collect())
}

fn weights(batch: &Batch) -> BatchWeights {
    BatchWeights {
        part: batch.part,
        factor: batch.factor,
        mass_kg: batch.mass_kg,
        flour_kg: batch.flour_kg,
        remarks: batch.remarks.clone(),
    }
}

fn runs(plan: &Plan, changes: &[Lettered<'_, '_>], control: Option<&Control<'_>>) -> Vec<TrialRun> {
    plan.runs.iter().map(|planned| run(planned, changes, control)).collect()
}

fn run(planned: &PlannedRun, changes: &[Lettered<'_, '_>], control: Option<&Control<'_>>) -> TrialRun {
    let own: Vec<&Lettered<'_, '_>> = planned.changes.iter().filter_map(|place| changes.get(*place)).collect();
    let letters: Vec<char> = own.iter().map(|change| change.letter).collect();
    let names: Vec<String> = letters.iter().map(char::to_string).collect();
    let weights = control.map_or_else(Vec::new, |control| {
        if own.is_empty() {
            return control.weights();
        }
        let quantities: Vec<_> = own.iter().map(|change| change.candidate.advice.quantities.as_slice()).collect();
        control.with(&quantities).0
    });
    TrialRun {
        run: planned.run,
        label: if names.is_empty() { "control".to_owned() } else { names.join("+") },
        changes: letters,
        order: planned.order.clone(),
        mass_kg: (!weights.is_empty()).then(|| weights.iter().map(|line| line.mass_kg).sum()),
        weights,
        settings: own.iter().flat_map(|change| change.settings.of_runs.clone()).collect(),
    }
}

fn without_run<'k>(Candidate { cause, advice, .. }: &Candidate<'_, 'k>) -> ActionWithoutRun<'k> {
    ActionWithoutRun {
        action: advice.action,
        title: advice.title.to_string(),
        text: advice.text.to_string(),
        cause: cause.cause,
        cause_title: cause.title.to_string(),
        effort_minutes: advice.effort_minutes,
    }
}

/// Other ways to the figures of the change at a place.
fn ways_to<'k>(place: usize, all: &[(usize, Candidate<'_, 'k>)]) -> Vec<ActionWithoutRun<'k>> {
    all.iter().filter(|(own, _)| *own == place).map(|(_, candidate)| without_run(candidate)).collect()
}

fn change<'k>(
    Lettered { letter, candidate, settings }: Lettered<'_, 'k>,
    other_ways: Vec<ActionWithoutRun<'k>>,
) -> TrialChange<'k> {
    let Candidate { cause, advice, .. } = candidate;
    TrialChange {
        letter,
        action: advice.action,
        title: advice.title.to_string(),
        text: advice.text.to_string(),
        cause: cause.cause,
        cause_title: cause.title.to_string(),
        promise: candidate.promise(),
        settings: settings.quantities,
        needs: advice.needs.clone(),
        side_effects: advice.side_effects.iter().map(ToString::to_string).collect(),
        by_hand: settings.by_hand,
        other_ways,
    }
}
