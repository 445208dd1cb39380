//! What the answers to rule tests have shown of each cause.

use std::collections::BTreeSet;

use crate::case::Seen;
use crate::diagnosis::{Diagnosis, Diagnostician};
use crate::knowledge::{Cause, Circumstances, EvidenceKind, Family, Key, Knowledge};
use crate::rule_tests::RuleTest;

/// How many causes lead an answer.
const FIRST: usize = 3;

/// Above this certainty a symptom is present, below it absent.
const EVEN: f64 = 0.5;

/// What has been seen of all causes so far.
#[derive(Debug, Clone)]
pub struct Observed {
    pub(super) causes: Vec<SeenCause>,
    /// Tests of each family, by family key.
    pub(super) tests: Vec<usize>,
}

/// What has been seen of a cause.
#[derive(Debug, Clone)]
pub(super) struct SeenCause {
    pub(super) evidence: Vec<SeenEvidence>,
    pub(super) links: Vec<SeenLink>,
    /// Whether each prescription was advised with all its quantities.
    pub(super) prescriptions: Vec<bool>,
    /// Whether a test expects it to lead, to be among the first or to be probable.
    pub(super) expected: bool,
}

/// What has been seen of an item of evidence.
#[derive(Debug, Clone)]
pub(super) enum SeenEvidence {
    Graded(SeenGrades),
    /// Whether each region was met.
    Regions(Vec<bool>),
}

/// How a condition was met.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct SeenGrades {
    pub(super) fully: bool,
    pub(super) partly: bool,
    pub(super) not: bool,
}

/// How a symptom was met while its cause led or was expected.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct SeenLink {
    pub(super) present: bool,
    pub(super) absent: bool,
}

impl Observed {
    /// Nothing seen yet.
    #[must_use]
    pub fn new(knowledge: &Knowledge) -> Self {
        let declared = &knowledge.declared;
        let causes = declared.causes.iter().map(|(_, cause)| SeenCause::new(cause)).collect();
        Self { causes, tests: vec![0; declared.families.len()] }
    }

    /// Takes note of what a test shows.
    pub fn watch(&mut self, test: &RuleTest, answer: &Diagnosis<'_>, diagnostician: &Diagnostician) {
        let knowledge = diagnostician.knowledge();
        let (case, symptoms) = diagnostician.known(&test.case);
        for &key in &knowledge.view(test.case.product).causes {
            let cause = &knowledge.declared.causes[key];
            if let Some(seen) = self.causes.get_mut(key.index()) {
                seen.evidence.iter_mut().zip(&cause.evidence).for_each(|(seen, item)| seen.judge(&item.kind, &case));
            }
        }
        let expected = expected(test);
        for key in watched(&expected, answer, knowledge) {
            let cause = &knowledge.declared.causes[key];
            if let Some(seen) = self.causes.get_mut(key.index()) {
                seen.look(cause, &symptoms);
                seen.read(cause, answer, knowledge);
                seen.expected |= expected.contains(&key);
            }
        }
        let family: Option<Key<Family>> = knowledge.declared.products[test.case.product].family;
        if let Some(tests) = family.and_then(|family| self.tests.get_mut(family.index())) {
            *tests += 1;
        }
    }
}

fn expected(test: &RuleTest) -> BTreeSet<Key<Cause>> {
    test.expectations.iter().filter_map(|expectation| expectation.wanted.expected_cause()).collect()
}

/// The causes that lead the answer or are expected.
fn watched(expected: &BTreeSet<Key<Cause>>, answer: &Diagnosis<'_>, knowledge: &Knowledge) -> BTreeSet<Key<Cause>> {
    let leading = answer.causes.iter().take(FIRST).filter_map(|cause| knowledge.declared.causes.find(cause.cause));
    leading.chain(expected.iter().copied()).collect()
}

impl SeenCause {
    fn new(cause: &Cause) -> Self {
        let evidence = cause.evidence.iter().map(|item| match &item.kind {
            EvidenceKind::Graded(..) => SeenEvidence::Graded(SeenGrades::default()),
            EvidenceKind::Regions(regions) => SeenEvidence::Regions(vec![false; regions.weights.len()]),
        });
        Self {
            evidence: evidence.collect(),
            links: vec![SeenLink::default(); cause.links.len()],
            prescriptions: vec![false; cause.prescriptions.len()],
            expected: false,
        }
    }

    fn look(&mut self, cause: &Cause, symptoms: &[Seen]) {
        for (seen, link) in self.links.iter_mut().zip(&cause.links) {
            for symptom in symptoms.iter().filter(|symptom| symptom.symptom == link.symptom) {
                seen.present |= symptom.certainty > EVEN;
                seen.absent |= symptom.certainty < EVEN;
            }
        }
    }

    fn read(&mut self, cause: &Cause, answer: &Diagnosis<'_>, knowledge: &Knowledge) {
        let Some(ranked) = answer.causes.iter().find(|ranked| ranked.cause == cause.id) else { return };
        for (seen, prescription) in self.prescriptions.iter_mut().zip(&cause.prescriptions) {
            let id = &knowledge.declared.actions[prescription.action].id;
            *seen |= ranked.actions.iter().any(|advice| advice.action == id && advice.needs.is_empty());
        }
    }
}

impl SeenEvidence {
    fn judge(&mut self, kind: &EvidenceKind, case: &Circumstances) {
        match (self, kind) {
            (Self::Graded(seen), EvidenceKind::Graded(condition, _)) => {
                let Some(grade) = condition.judge(case, &mut |_, _| {}).grade() else { return };
                seen.fully |= grade >= 1.0;
                seen.not |= grade <= 0.0;
                seen.partly |= grade > 0.0 && grade < 1.0;
            }
            (Self::Regions(seen), EvidenceKind::Regions(regions)) => {
                let region = regions.quantity.value(case).map(|value| regions.region_of(value));
                if let Some(seen) = region.and_then(|region| seen.get_mut(region)) {
                    *seen = true;
                }
            }
            // The two are made from the same knowledge.
            (Self::Graded(_), EvidenceKind::Regions(_)) | (Self::Regions(_), EvidenceKind::Graded(..)) => {}
        }
    }
}
