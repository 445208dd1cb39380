//! The arguments of a cause: the weight of every finding, in words.

use std::cell::OnceCell;

use super::answer::Argument;
use super::circumstances::LaidOut;
use super::said::Said;
use super::sentence::in_sentence;
use super::weighing::{KnownFinding, Weighed};
use super::words::{Wording, input_id, joined};
use crate::inference::{LeaveOneOut, Posterior};
use crate::knowledge::{Cause, Circumstances, Evidence, Input, Key, Knowledge, ProductView, Symptom};

/// Weights below it are left out: a factor of 1.02 in the odds.
const LEAST_DECIBANS: f64 = 0.1;

/// A less probable cause is no rival that would be named.
const LEAST_RIVAL: f64 = 0.05;

/// A cause that a finding moves, where it is probable enough to be named, and the finding in words.
type Rival<'k> = (Option<&'k Cause>, String);

/// Everything that arguments are drawn from.
pub(super) struct Arguing<'a, 'k> {
    knowledge: &'k Knowledge,
    view: &'k ProductView,
    circumstances: &'a Circumstances,
    weighed: &'a Weighed,
    weights: &'a LeaveOneOut,
    /// The symptoms that were looked at, with the words for what was seen; in the order of the observations.
    seen: Vec<(Key<Symptom>, f64, String)>,
    posterior: &'a Posterior<'a>,
    /// For each finding the causes that it speaks against and for, with the words for it; found when first asked for.
    rivals: Vec<[OnceCell<Option<Rival<'k>>>; 2]>,
}

impl<'a, 'k> Arguing<'a, 'k> {
    pub(super) fn new(
        knowledge: &'k Knowledge,
        view: &'k ProductView,
        laid_out: &'a LaidOut,
        weighed: &'a Weighed,
        weights: &'a LeaveOneOut,
        posterior: &'a Posterior<'a>,
    ) -> Self {
        let certainty = |key: Key<Symptom>| {
            laid_out.symptoms.iter().find(|seen| seen.symptom == key).map_or(1.0, |seen| seen.certainty)
        };
        let seen = weighed.findings.observations().iter().filter_map(|(position, _)| {
            let key = *view.symptoms.get(*position)?;
            Some((key, certainty(key), seen_in_words(&knowledge.declared.symptoms[key].title, certainty(key))))
        });
        let rivals = weighed.sources.iter().map(|_| [OnceCell::new(), OnceCell::new()]).collect();
        let circumstances = &laid_out.circumstances;
        Self { knowledge, view, circumstances, weighed, weights, seen: seen.collect(), posterior, rivals }
    }

    /// The arguments for and against a cause, strongest first; `rank` is its place among the causes of the weights.
    pub(super) fn arguments(&self, cause: &'k Cause, rank: usize) -> Vec<Argument<'k>> {
        let weight = |row: Option<&Vec<f64>>| row.and_then(|row| row.get(rank)).copied().unwrap_or(0.0);
        let mut arguments = Vec::with_capacity(self.seen.len() + self.weighed.sources.len());
        for (place, (key, certainty, state)) in self.seen.iter().enumerate() {
            let decibans = weight(self.weights.observations.get(place));
            if decibans.abs() >= LEAST_DECIBANS {
                let finding = &self.knowledge.declared.symptoms[*key].id;
                let link = cause.links.iter().find(|link| link.symptom == *key).map(|link| link.strength);
                arguments.push(Argument { finding, text: Said::Now(symptom_text(state, *certainty, link)), decibans });
            }
        }
        for (place, source) in self.weighed.sources.iter().enumerate() {
            let decibans = weight(self.weights.readings.get(place));
            if decibans.abs() >= LEAST_DECIBANS {
                arguments.push(self.about_source(cause, place, *source, decibans));
            }
        }
        arguments.sort_by(|a, b| b.decibans.abs().total_cmp(&a.decibans.abs()));
        arguments
    }

    fn about_source(&self, cause: &'k Cause, place: usize, source: KnownFinding, decibans: f64) -> Argument<'k> {
        let finding = match source {
            KnownFinding::Input(input) => input_id(&self.knowledge.declared, input),
            KnownFinding::Formula => "formula",
        };
        let own = self.own_text(cause, source, decibans);
        let text = own.or_else(|| self.rival_text(place, source, decibans));
        let text = text.unwrap_or_else(|| "together with the other findings".to_owned());
        Argument { finding, text: Said::Now(text), decibans }
    }

    /// What the evidence of a cause says of a finding. Nothing where the finding moves the cause the other way: then a rival
    /// explains it better, or worse.
    fn own_text(&self, cause: &'k Cause, source: KnownFinding, decibans: f64) -> Option<String> {
        let (mut states, mut weight) = (Vec::new(), 0.0);
        for item in self.told(cause, source) {
            weight += item.decibans(self.circumstances, &mut |_, _| {}).unwrap_or(0.0);
            states.extend(self.wording().states(&item.kind));
        }
        let agrees = weight * decibans >= 0.0;
        (agrees && !states.is_empty()).then(|| joined(states.into_iter(), "; "))
    }

    fn wording(&self) -> Wording<'_> {
        Wording { declared: &self.knowledge.declared, case: self.circumstances }
    }

    /// Evidence of a cause that a finding decides.
    fn told(&self, cause: &'k Cause, source: KnownFinding) -> impl Iterator<Item = &'k Evidence> {
        let own = cause.evidence.iter().filter(move |item| uses(item, source));
        let known = own.filter(|item| item.decibans(self.circumstances, &mut |_, _| {}).is_some());
        known.filter(move |item| self.wording().hangs_on(&item.kind, &|input| is_of(source, input)))
    }

    /// The cause that a finding speaks for, or against, and that it moves most among those that explain what was seen;
    /// those that are probable enough to be named come first.
    fn rival(&self, place: usize, source: KnownFinding, spoken_for: bool) -> Option<Rival<'k>> {
        let moved = |position: usize, weight: f64| {
            let odds = self.posterior.odds().get(position)?;
            Some((odds.probability() >= LEAST_RIVAL, weight.abs() * odds.probability() * odds.complement()))
        };
        let spoken = |weight: f64| if spoken_for { weight > 0.0 } else { weight < 0.0 };
        let weighed = self.weighed.findings.reading(place).iter();
        let rivals = weighed.filter(|(position, weight)| spoken(*weight) && self.posterior.explains(*position));
        let ranked = rivals.filter_map(|(position, weight)| Some((moved(*position, *weight)?, *position)));
        let ((is_probable, _), position) = ranked.max_by(|(a, _), (b, _)| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)))?;
        let cause = &self.knowledge.declared.causes[*self.view.causes.get(position)?];
        let item = self.told(cause, source).next()?;
        Some((is_probable.then_some(cause), self.wording().evidence(&item.kind)))
    }

    /// Why a finding moves a cause that it says nothing about: it moves a rival.
    fn rival_text(&self, place: usize, source: KnownFinding, decibans: f64) -> Option<String> {
        let spoken_for = decibans < 0.0;
        let cell = self.rivals.get(place).and_then(|sides| sides.get(usize::from(spoken_for)));
        let (rival, state) = cell?.get_or_init(|| self.rival(place, source, spoken_for)).as_ref()?;
        Some(match (rival, spoken_for) {
            (Some(rival), true) => format!("{state}, which makes “{}” the likelier explanation", rival.title),
            (Some(rival), false) => format!("{state}, which speaks against “{}”, a rival explanation", rival.title),
            (None, true) => format!("{state}, which makes rival explanations likelier"),
            (None, false) => format!("{state}, which speaks against rival explanations"),
        })
    }
}

/// What people saw of a symptom.
fn seen_in_words(title: &str, certainty: f64) -> String {
    let title = in_sentence(title);
    match certainty {
        1.0 => format!("seen: {title}"),
        0.0 => format!("not seen: {title}"),
        certainty if certainty >= 0.5 => format!("probably seen ({:.0} %): {title}", certainty * 100.0),
        certainty => format!("probably not seen ({:.0} %): {title}", (1.0 - certainty) * 100.0),
    }
}

/// What a symptom says of a cause that shows it with `strength`, or does not show it.
fn symptom_text(state: &str, certainty: f64, strength: Option<f64>) -> String {
    match strength {
        Some(strength) => {
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a share between 0 and 100
            let percent = (strength * 100.0).round() as u8;
            [state, "; this cause shows it in ", &percent.to_string(), " of 100 cases"].concat()
        }
        None if certainty >= 0.5 => [state, "; this cause does not show it"].concat(),
        None => [state, "; rival explanations would show it"].concat(),
    }
}

/// Whether evidence depends on a finding.
fn uses(item: &Evidence, source: KnownFinding) -> bool {
    let mut found = false;
    item.inputs(&mut |input| found |= is_of(source, input));
    found
}

fn is_of(source: KnownFinding, input: Input) -> bool {
    match source {
        KnownFinding::Input(own) => own == input,
        KnownFinding::Formula => matches!(input, Input::Share(_) | Input::Formula),
    }
}

#[cfg(test)]
mod tests {
    use super::{seen_in_words, symptom_text};

    #[test]
    fn a_title_stands_behind_what_was_seen_of_it() {
        let said = |title, certainty| seen_in_words(title, certainty);
        assert_eq!(said("Blisters on the crust", 1.0), "seen: blisters on the crust");
        assert_eq!(said("Not flaky", 0.0), "not seen: not flaky");
        assert_eq!(said("Not flaky", 0.7), "probably seen (70 %): not flaky");
        assert_eq!(said("Not flaky", 0.2), "probably not seen (80 %): not flaky");
    }

    #[test]
    fn what_a_cause_does_not_show_is_no_word_about_other_causes() {
        assert_eq!(symptom_text("seen: x", 1.0, None), "seen: x; this cause does not show it");
        assert_eq!(symptom_text("seen: x", 1.0, Some(0.6)), "seen: x; this cause shows it in 60 of 100 cases");
        assert_eq!(symptom_text("not seen: x", 0.0, None), "not seen: x; rival explanations would show it");
    }
}
