//! The arguments of a cause: the weight of every finding, in words.

use std::cell::OnceCell;

use super::answer::Argument;
use super::circumstances::LaidOut;
use super::said::Said;
use super::sentence::in_sentence;
use super::weighing::{KnownFinding, Weighed};
use super::words::{Wording, input_id};
use crate::inference::{LeaveOneOut, Posterior};
use crate::knowledge::{Cause, Circumstances, Evidence, Input, Key, Knowledge, ProductView, Symptom};

/// Weights below it are left out: a factor of 1.02 in the odds.
const LEAST_DECIBANS: f64 = 0.1;

/// A cause that a finding moves, and the finding in words.
type Rival<'k> = (&'k Cause, String);

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
        let mut texts: Vec<String> = self.told(cause, source).map(|item| self.wording().evidence(&item.kind)).collect();
        texts.dedup();
        let text = match texts.pop() {
            None => self.rival_text(place, source, decibans),
            Some(only) if texts.is_empty() => only,
            Some(last) => format!("{}; {last}", texts.join("; ")),
        };
        Argument { finding, text: Said::Now(text), decibans }
    }

    fn wording(&self) -> Wording<'_> {
        Wording { declared: &self.knowledge.declared, case: self.circumstances }
    }

    /// Evidence of a cause that a finding decides.
    fn told(&self, cause: &'k Cause, source: KnownFinding) -> impl Iterator<Item = &'k Evidence> {
        let own = cause.evidence.iter().filter(move |item| uses(item, source));
        own.filter(|item| item.decibans(self.circumstances, &mut |_, _| {}).is_some())
    }

    /// The cause that a finding speaks for, or against, and that it moves most among those that explain what was seen.
    fn rival(&self, place: usize, source: KnownFinding, spoken_for: bool) -> Option<Rival<'k>> {
        let moved = |position: usize, weight: f64| {
            let odds = self.posterior.odds().get(position)?;
            Some(weight.abs() * odds.probability() * odds.complement())
        };
        let spoken = |weight: f64| if spoken_for { weight > 0.0 } else { weight < 0.0 };
        let weighed = self.weighed.findings.reading(place).iter();
        let rivals = weighed.filter(|(position, weight)| spoken(*weight) && self.posterior.explains(*position));
        let ranked = rivals.filter_map(|(position, weight)| Some((moved(*position, *weight)?, *position)));
        let (_, position) = ranked.max_by(|(a, _), (b, _)| a.total_cmp(b))?;
        let cause = &self.knowledge.declared.causes[*self.view.causes.get(position)?];
        let item = self.told(cause, source).next()?;
        Some((cause, self.wording().evidence(&item.kind)))
    }

    /// Why a finding moves a cause that it says nothing about: it moves a rival.
    fn rival_text(&self, place: usize, source: KnownFinding, decibans: f64) -> String {
        let spoken_for = decibans < 0.0;
        let cell = self.rivals.get(place).and_then(|sides| sides.get(usize::from(spoken_for)));
        let Some(Some((rival, state))) = cell.map(|cell| cell.get_or_init(|| self.rival(place, source, spoken_for)))
        else {
            return "together with the other findings".to_owned();
        };
        let (effect, end) = if spoken_for {
            ("which makes", " the likelier explanation")
        } else {
            ("which speaks against", ", a rival explanation")
        };
        [state, ", ", effect, " “", &rival.title, "”", end].concat()
    }
}

/// What people saw of a symptom.
fn seen_in_words(title: &str, certainty: f64) -> String {
    let title = in_sentence(title);
    match certainty {
        1.0 => format!("{title} is seen"),
        0.0 => format!("{title} is not seen"),
        certainty if certainty >= 0.5 => format!("{title} is probably seen ({:.0} %)", certainty * 100.0),
        certainty => format!("{title} is probably not seen ({:.0} %)", (1.0 - certainty) * 100.0),
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
        None if certainty >= 0.5 => [state, "; this cause does not show it, so another one is at work"].concat(),
        None => [state, "; it makes rival explanations less probable"].concat(),
    }
}

/// Whether evidence depends on a finding.
fn uses(item: &Evidence, source: KnownFinding) -> bool {
    let mut found = false;
    item.inputs(&mut |input| {
        found |= match source {
            KnownFinding::Input(own) => own == input,
            KnownFinding::Formula => matches!(input, Input::Share(_) | Input::Formula),
        };
    });
    found
}
