//! What each question usually tells, before anything is known of a case.
//!
//! A complaint is taken for one symptom s that is seen and nothing else, with the weight w(s) = P(s) / Σ P(s'), where P(s) is the
//! probability of the symptom under the priors of the product, 1 − (1 − leak) · Π (1 − prior · strength). What an answer x tells
//! is then Σ w(s) · I(x; C(s) | s seen): the mean mutual information (Shannon 1948, A Mathematical Theory of Communication)
//! between x and the causes C(s) that show s. Of many causes those that x moves most are taken, which is a lower bound.

use super::diagnostician::Diagnostician;
use super::model::Model;
use super::regions::Candidate;
use crate::inference::{
    Findings, FindingsFault, Observation, Posterior, Reading as Outcomes, Workspace, look_for, posterior,
};
use crate::knowledge::{Declarations, Input, Key, Product, ProductView, Symptom};

/// Most causes of a reading or fact, and of a symptom: their joint posterior doubles with each.
const MOST_CAUSES: (usize, usize) = (4, 3);

/// What the questions about a product usually tell.
#[derive(Debug, Clone, Default)]
pub struct UsualInformation {
    /// Readings and facts with their information, bits, in the order of the rules.
    pub inputs: Vec<(Input, f64)>,
    /// Symptoms with the probability that a usual product shows them, and the information of looking for them, bits, in the
    /// order of the rules.
    pub symptoms: Vec<(Key<Symptom>, f64, f64)>,
}

impl Diagnostician {
    /// What each question about a product usually tells. It takes an inference for every two symptoms: ask once.
    ///
    /// # Errors
    /// Findings that do not fit the network; those made here do.
    pub fn usual_information(&self, product: Key<Product>) -> Result<UsualInformation, FindingsFault> {
        let view = self.knowledge().view(product);
        Usual { declared: &self.knowledge().declared, view, model: self.model(view) }.of_all_complaints()
    }
}

struct Usual<'k> {
    declared: &'k Declarations,
    view: &'k ProductView,
    model: &'k Model,
}

impl Usual<'_> {
    fn of_all_complaints(&self) -> Result<UsualInformation, FindingsFault> {
        let probabilities: Vec<f64> = (0..self.view.symptoms.len()).map(|symptom| self.probability(symptom)).collect();
        let total: f64 = probabilities.iter().sum();
        let mut inputs = vec![0.0; self.model.candidates.len()];
        let mut looks = vec![0.0; self.view.symptoms.len()];
        let (mut workspace, mut spare) = (Workspace::new(), Workspace::new());
        for (complaint, probability) in probabilities.iter().enumerate() {
            let weight = probability / total;
            let mut findings = Findings::new();
            findings.observe(complaint, Observation::Present);
            let posterior = posterior(&self.model.network, &findings, &mut workspace)?;
            for (sum, candidate) in inputs.iter_mut().zip(&self.model.candidates) {
                *sum += weight * information(candidate, &posterior);
            }
            for (symptom, sum) in looks.iter_mut().enumerate().filter(|(symptom, _)| *symptom != complaint) {
                *sum += weight * self.look(symptom, &findings, &posterior, &mut spare)?;
            }
        }
        let keys = self.model.candidates.iter().map(|candidate| candidate.input);
        let symptoms = self.view.symptoms.iter().copied().zip(probabilities).zip(looks);
        Ok(UsualInformation {
            inputs: keys.zip(inputs).collect(),
            symptoms: symptoms.map(|((key, probability), bits)| (key, probability, bits)).collect(),
        })
    }

    /// P(symptom) under the priors.
    fn probability(&self, symptom: usize) -> f64 {
        let leak = self.view.symptoms.get(symptom).map_or(0.0, |key| self.declared.symptoms[*key].leak);
        let links = self.view.links.iter().filter(|link| link.symptom == symptom);
        let prior = |cause: usize| self.view.priors.get(cause).copied().unwrap_or(0.0);
        1.0 - links.fold(1.0 - leak, |absent, link| absent * (1.0 - prior(link.cause) * link.strength))
    }

    fn look(
        &self,
        symptom: usize,
        findings: &Findings,
        posterior: &Posterior<'_>,
        spare: &mut Workspace,
    ) -> Result<f64, FindingsFault> {
        let mut causes: Vec<usize> =
            self.model.network.causes_of(symptom).filter(|cause| posterior.explains(*cause)).collect();
        if causes.is_empty() {
            return Ok(0.0);
        }
        causes.sort_by(|a, b| variance(posterior, *b).total_cmp(&variance(posterior, *a)));
        causes.truncate(MOST_CAUSES.1);
        look_for(&self.model.network, findings, symptom, spare)?.information(&causes)
    }
}

/// Information of a reading or fact about the causes that explain what is seen.
fn information(candidate: &Candidate, posterior: &Posterior<'_>) -> f64 {
    let mut asked: Vec<&(usize, Vec<f64>)> =
        candidate.weights.iter().filter(|(cause, _)| posterior.explains(*cause)).collect();
    if asked.is_empty() {
        return 0.0;
    }
    let causes: Vec<usize> = asked.iter().map(|(cause, _)| *cause).collect();
    if let Some((outcomes, _)) = &candidate.outcomes {
        return outcomes.information_about(posterior, &causes).unwrap_or(0.0);
    }
    asked.sort_by(|a, b| leverage(posterior, b).total_cmp(&leverage(posterior, a)));
    let most: Vec<(usize, Vec<f64>)> = asked.into_iter().take(MOST_CAUSES.0).cloned().collect();
    Outcomes::new(&candidate.usual, &most).ok().and_then(|outcomes| outcomes.information(posterior).ok()).unwrap_or(0.0)
}

fn variance(posterior: &Posterior<'_>, cause: usize) -> f64 {
    posterior.odds().get(cause).map_or(0.0, |odds| odds.probability() * odds.complement())
}

/// How far a cause can be moved: its variance times the spread of the weights.
fn leverage(posterior: &Posterior<'_>, (cause, regions): &(usize, Vec<f64>)) -> f64 {
    let highest = regions.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let lowest = regions.iter().copied().fold(f64::INFINITY, f64::min);
    variance(posterior, *cause) * (highest - lowest)
}
