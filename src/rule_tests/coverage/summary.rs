//! Coverage in numbers and as a list of what is not reached.

use serde::Serialize;

use super::observed::{Observed, SeenCause, SeenEvidence, SeenGrades, SeenLink};
use super::tally::Tally;
use crate::diagnosis::{describe_condition, describe_regions};
use crate::knowledge::{Cause, Declarations, Evidence, EvidenceKind, Family, Key, Knowledge, Place, Scope};

/// What the rule tests of a pack reach.
#[derive(Debug, Clone, Serialize)]
pub struct Coverage {
    /// All causes.
    pub total: CauseTallies,
    /// The causes of each family; a cause of several families counts in each.
    pub families: Vec<FamilyCoverage>,
    /// What no test reaches, by file and place.
    pub unreached: Vec<Unreached>,
}

/// How much of some causes is reached.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize)]
pub struct CauseTallies {
    /// Causes that a test expects.
    pub causes: Tally,
    /// Conditions of evidence: true once, false once.
    pub evidence: Tally,
    /// Regions of evidence.
    pub regions: Tally,
    /// Links: symptom present once, absent once.
    pub links: Tally,
    /// Prescriptions.
    pub prescriptions: Tally,
}

/// How much of a family is reached.
#[derive(Debug, Clone, Serialize)]
pub struct FamilyCoverage {
    /// Id of the family.
    pub family: String,
    /// Title.
    pub title: String,
    /// Rule tests of its products.
    pub tests: usize,
    /// What they and the tests of other families reach of its causes.
    #[serde(flatten)]
    pub reached: CauseTallies,
}

/// Something that no rule test reaches.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Unreached {
    /// File within the pack.
    pub file: String,
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// Id of the cause.
    pub cause: String,
    /// What it is, in words.
    pub item: String,
    /// How it was not seen: `never known`, `only partly true`, `never true`, `never false`, `never met`, `never looked at`, `never present`,
    /// `never absent`, `never advised` or `never expected`.
    pub never: &'static str,
}

impl CauseTallies {
    /// All together.
    #[must_use]
    pub fn all(&self) -> Tally {
        let mut all = Tally::default();
        for part in [self.causes, self.evidence, self.regions, self.links, self.prescriptions] {
            all += part;
        }
        all
    }

    fn add(&mut self, other: &Self) {
        self.causes += other.causes;
        self.evidence += other.evidence;
        self.regions += other.regions;
        self.links += other.links;
        self.prescriptions += other.prescriptions;
    }
}

impl Observed {
    /// Sums up what was seen.
    #[must_use]
    pub fn coverage(&self, knowledge: &Knowledge) -> Coverage {
        let declared = &knowledge.declared;
        let causes = || declared.causes.iter().map(|(_, cause)| cause).zip(&self.causes);
        let sum = |wanted: &dyn Fn(&Cause) -> bool| {
            let mut sum = CauseTallies::default();
            causes().filter(|(cause, _)| wanted(cause)).for_each(|(_, seen)| sum.add(&seen.tallies()));
            sum
        };
        let families = declared.families.iter().zip(&self.tests).map(|((key, family), tests)| FamilyCoverage {
            family: family.id.clone(),
            title: family.title.clone(),
            tests: *tests,
            reached: sum(&|cause| concerns(cause, key, declared)),
        });
        let mut unreached: Vec<Unreached> =
            causes().flat_map(|(cause, seen)| Listing { declared, cause }.unreached(seen)).collect();
        unreached.sort_by(|a, b| (&a.file, a.line, a.column).cmp(&(&b.file, b.line, b.column)));
        Coverage { total: sum(&|_| true), families: families.collect(), unreached }
    }
}

/// Whether a cause can befall a product of the family.
fn concerns(cause: &Cause, family: Key<Family>, declared: &Declarations) -> bool {
    cause.products.iter().any(|scope| match scope {
        Scope::Family(own) => *own == family,
        Scope::Product(product) => declared.products[*product].family == Some(family),
    })
}

impl SeenCause {
    fn tallies(&self) -> CauseTallies {
        let mut tallies = CauseTallies::default();
        tallies.causes.count(self.expected);
        for seen in &self.evidence {
            match seen {
                SeenEvidence::Graded(grades) => {
                    tallies.evidence.count(grades.fully);
                    tallies.evidence.count(grades.not);
                }
                SeenEvidence::Regions(met) => met.iter().for_each(|met| tallies.regions.count(*met)),
            }
        }
        for link in &self.links {
            tallies.links.count(link.present);
            tallies.links.count(link.absent);
        }
        self.prescriptions.iter().for_each(|advised| tallies.prescriptions.count(*advised));
        tallies
    }
}

/// Lists what of one cause is not reached.
struct Listing<'d> {
    declared: &'d Declarations,
    cause: &'d Cause,
}

impl Listing<'_> {
    fn unreached(&self, seen: &SeenCause) -> Vec<Unreached> {
        let mut found = Vec::new();
        if !seen.expected {
            found.push(self.item(&self.cause.place, "the cause".to_owned(), "never expected"));
        }
        for (item, seen) in self.cause.evidence.iter().zip(&seen.evidence) {
            self.evidence(item, seen, &mut found);
        }
        for (link, seen) in self.cause.links.iter().zip(&seen.links) {
            let symptom = &self.declared.symptoms[link.symptom].id;
            found.extend(seen.never().map(|never| self.item(&link.place, format!("`{symptom}`"), never)));
        }
        for (prescription, advised) in self.cause.prescriptions.iter().zip(&seen.prescriptions) {
            let action = &self.declared.actions[prescription.action].id;
            found.extend((!advised).then(|| self.item(&prescription.place, format!("`{action}`"), "never advised")));
        }
        found
    }

    fn evidence(&self, item: &Evidence, seen: &SeenEvidence, found: &mut Vec<Unreached>) {
        match (&item.kind, seen) {
            (EvidenceKind::Graded(condition, _), SeenEvidence::Graded(grades)) => {
                let words = || describe_condition(self.declared, condition);
                found.extend(grades.never().map(|never| self.item(&item.place, words(), never)));
            }
            (EvidenceKind::Regions(regions), SeenEvidence::Regions(met)) => {
                let words = describe_regions(self.declared, regions);
                let not_met = words.into_iter().zip(met).filter(|(_, met)| !**met);
                found.extend(not_met.map(|(words, _)| self.item(&item.place, words, "never met")));
            }
            // The two are made from the same knowledge.
            (EvidenceKind::Graded(..), SeenEvidence::Regions(_))
            | (EvidenceKind::Regions(_), SeenEvidence::Graded(_)) => {}
        }
    }

    fn item(&self, place: &Place, item: String, never: &'static str) -> Unreached {
        let Place { file, line, column } = place;
        let cause = self.cause.id.clone();
        Unreached { file: file.to_string(), line: *line, column: *column, cause, item, never }
    }
}

impl SeenGrades {
    fn never(self) -> Option<&'static str> {
        match (self.fully, self.partly, self.not) {
            (true, _, true) => None,
            (true, _, false) => Some("never false"),
            (false, _, true) => Some("never true"),
            (false, true, false) => Some("only partly true"),
            (false, false, false) => Some("never known"),
        }
    }
}

impl SeenLink {
    fn never(self) -> Option<&'static str> {
        match (self.present, self.absent) {
            (true, true) => None,
            (true, false) => Some("never absent"),
            (false, true) => Some("never present"),
            (false, false) => Some("never looked at"),
        }
    }
}
