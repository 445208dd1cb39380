//! The arguments of a cause: the weight of every finding, in words.

use std::borrow::Cow;

use super::answer::Argument;
use super::circumstances::LaidOut;
use super::weighing::{KnownFinding, Weighed};
use super::words::{Wording, input_id};
use crate::inference::LeaveOneOut;
use crate::knowledge::{Cause, EvidenceKind, Input, Key, Knowledge, ProductView, Symptom};

/// Weights below it are left out: a factor of 1.02 in the odds.
const LEAST_DECIBANS: f64 = 0.1;

/// Everything that arguments are drawn from.
pub(super) struct Arguing<'a, 'k> {
    pub(super) knowledge: &'k Knowledge,
    pub(super) view: &'k ProductView,
    pub(super) laid_out: &'a LaidOut,
    pub(super) weighed: &'a Weighed,
    pub(super) weights: &'a LeaveOneOut,
}

impl<'k> Arguing<'_, 'k> {
    /// The arguments for and against a cause, strongest first; `rank` is its place among the causes of the weights.
    pub(super) fn arguments(&self, cause: &'k Cause, rank: usize) -> Vec<Argument<'k>> {
        let mut arguments: Vec<Argument<'k>> = self.about_symptoms(cause, rank).collect();
        for (place, source) in self.weighed.sources.iter().enumerate() {
            let decibans = self.weights.readings.get(place).and_then(|row| row.get(rank)).copied().unwrap_or(0.0);
            if decibans.abs() >= LEAST_DECIBANS {
                arguments.push(self.about_source(cause, *source, decibans));
            }
        }
        arguments.sort_by(|a, b| b.decibans.abs().total_cmp(&a.decibans.abs()));
        arguments
    }

    fn about_symptoms(&self, cause: &'k Cause, rank: usize) -> impl Iterator<Item = Argument<'k>> {
        let observations = self.weighed.findings.observations();
        observations.iter().enumerate().filter_map(move |(place, (position, _))| {
            let decibans = self.weights.observations.get(place)?.get(rank).copied()?;
            let key = *self.view.symptoms.get(*position)?;
            (decibans.abs() >= LEAST_DECIBANS).then(|| Argument {
                finding: &self.knowledge.declared.symptoms[key].id,
                text: Cow::Owned(self.symptom_text(cause, key)),
                decibans,
            })
        })
    }

    fn symptom_text(&self, cause: &Cause, key: Key<Symptom>) -> String {
        let title = self.knowledge.declared.symptoms[key].title.to_lowercase();
        let certainty =
            self.laid_out.symptoms.iter().find(|seen| seen.symptom == key).map_or(1.0, |seen| seen.certainty);
        let state = match certainty {
            1.0 => format!("{title} is seen"),
            0.0 => format!("{title} is not seen"),
            certainty if certainty >= 0.5 => format!("{title} is probably seen ({:.0} %)", certainty * 100.0),
            certainty => format!("{title} is probably not seen ({:.0} %)", (1.0 - certainty) * 100.0),
        };
        let link = cause.links.iter().find(|link| link.symptom == key);
        match link {
            Some(link) => format!("{state}; this cause shows it in {:.0} of 100 cases", link.strength * 100.0),
            None if certainty >= 0.5 => format!("{state}; this cause does not show it, so another one is at work"),
            None => format!("{state}; it makes rival explanations less probable"),
        }
    }

    fn about_source(&self, cause: &'k Cause, source: KnownFinding, decibans: f64) -> Argument<'k> {
        let declared = &self.knowledge.declared;
        let wording = Wording { declared, case: &self.laid_out.circumstances };
        let finding = match source {
            KnownFinding::Input(input) => input_id(declared, input),
            KnownFinding::Formula => "formula",
        };
        let own = cause.evidence.iter().filter(|item| uses(&item.kind, source));
        let mut texts: Vec<String> = own
            .filter(|item| item.decibans(&self.laid_out.circumstances, &mut |_, _| {}).is_some())
            .map(|item| wording.evidence(&item.kind))
            .collect();
        texts.dedup();
        let text = if texts.is_empty() { self.rival_text(source, decibans) } else { texts.join("; ") };
        Argument { finding, text: Cow::Owned(text), decibans }
    }

    /// Causes that have evidence from a finding.
    fn dependents(&self, source: KnownFinding) -> impl Iterator<Item = &'k Key<Cause>> {
        let of_input = match source {
            KnownFinding::Input(input) => Some(self.view.dependents(input)),
            KnownFinding::Formula => None,
        };
        let all = of_input.is_none().then_some(self.view.causes.iter()).into_iter().flatten();
        of_input.into_iter().flatten().filter_map(|position| self.view.causes.get(*position)).chain(all)
    }

    /// Why a finding moves a cause that it says nothing about: it moves a rival.
    fn rival_text(&self, source: KnownFinding, decibans: f64) -> String {
        let declared = &self.knowledge.declared;
        let wording = Wording { declared, case: &self.laid_out.circumstances };
        let rival = self.dependents(source).map(|key| &declared.causes[*key]).find_map(|cause| {
            let item = cause.evidence.iter().find(|item| {
                uses(&item.kind, source) && item.decibans(&self.laid_out.circumstances, &mut |_, _| {}).is_some()
            })?;
            Some((cause, wording.evidence(&item.kind)))
        });
        let Some((rival, state)) = rival else { return "together with the other findings".to_owned() };
        let effect = if decibans < 0.0 { "which makes" } else { "which speaks against" };
        let end = if decibans < 0.0 { " the likelier explanation" } else { ", a rival explanation" };
        format!("{state}, {effect} “{}”{end}", rival.title)
    }
}

/// Whether evidence depends on a finding.
fn uses(kind: &EvidenceKind, source: KnownFinding) -> bool {
    let mut found = false;
    let mut visit = |input: Input| {
        found |= match source {
            KnownFinding::Input(own) => own == input,
            KnownFinding::Formula => matches!(input, Input::Share(_) | Input::Formula),
        };
    };
    match kind {
        EvidenceKind::Graded(condition, _) => condition.inputs(&mut visit),
        EvidenceKind::Regions(regions) => regions.quantity.inputs(&mut visit),
    }
    found
}
