//! The two-layer network: causes with priors, symptoms with leaks, links with strengths.

use super::faults::NetworkFault;
use super::odds::Odds;

/// The smallest leak a symptom may have. It keeps the probability of any set of findings above
/// zero. A bound of double precision chosen for this program: sixteen such leaks still multiply
/// to 1e-96.
pub const MIN_LEAK: f64 = 1e-6;

/// A cause that can bring about a symptom.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Link {
    /// Index of the cause in the priors.
    pub cause: usize,
    /// Index of the symptom in the leaks.
    pub symptom: usize,
    /// P(symptom | this cause alone, no leak), strictly between 0 and 1.
    pub strength: f64,
}

/// A cause of one symptom, as the symptom sees it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Parent {
    pub(super) cause: usize,
    pub(super) strength: f64,
}

/// An immutable noisy-OR network, indexed by symptom.
#[derive(Debug, Clone)]
pub struct Network {
    priors: Vec<Odds>,
    leaks: Vec<f64>,
    parents: Vec<Parent>,
    /// The parents of symptom `s` are `parents[starts[s]..starts[s + 1]]`.
    starts: Vec<usize>,
}

impl Network {
    /// Checks and indexes a network.
    ///
    /// `priors` are P(cause) for the product, `leaks` are P(symptom | no cause at all).
    ///
    /// # Errors
    /// Every fault found, in the order priors, leaks, links.
    pub fn new(priors: Vec<f64>, leaks: Vec<f64>, mut links: Vec<Link>) -> Result<Self, Vec<NetworkFault>> {
        // Sorted, so that the order in which links are declared cannot change a single bit.
        links.sort_by_key(|link| (link.symptom, link.cause));
        let faults = faults(&priors, &leaks, &links);
        if !faults.is_empty() {
            return Err(faults);
        }
        let starts = (0..=leaks.len()).map(|symptom| links.partition_point(|link| link.symptom < symptom)).collect();
        let parents = links.iter().map(|link| Parent { cause: link.cause, strength: link.strength }).collect();
        let priors = priors.into_iter().map(Odds::from_probability).collect();
        Ok(Self { priors, leaks, parents, starts })
    }

    /// Number of causes.
    #[must_use]
    pub fn causes(&self) -> usize {
        self.priors.len()
    }

    /// Number of symptoms.
    #[must_use]
    pub fn symptoms(&self) -> usize {
        self.leaks.len()
    }

    /// The causes linked to a symptom, ascending; none for a symptom that is not there.
    pub fn causes_of(&self, symptom: usize) -> impl Iterator<Item = usize> + '_ {
        self.parents(symptom).iter().map(|parent| parent.cause)
    }

    pub(super) fn priors(&self) -> &[Odds] {
        &self.priors
    }

    /// P(symptom | no cause); callers have checked the index.
    pub(super) fn leak(&self, symptom: usize) -> f64 {
        self.leaks.get(symptom).copied().unwrap_or(MIN_LEAK)
    }

    pub(super) fn parents(&self, symptom: usize) -> &[Parent] {
        match (self.starts.get(symptom), self.starts.get(symptom + 1)) {
            (Some(&start), Some(&end)) => self.parents.get(start..end).unwrap_or_default(),
            _ => &[],
        }
    }
}

fn is_open_probability(value: f64) -> bool {
    value > 0.0 && value < 1.0
}

fn faults(priors: &[f64], leaks: &[f64], sorted_links: &[Link]) -> Vec<NetworkFault> {
    let prior_faults = priors
        .iter()
        .enumerate()
        .filter(|&(_, &value)| !is_open_probability(value))
        .map(|(cause, &value)| NetworkFault::Prior { cause, value });
    let leak_faults = leaks
        .iter()
        .enumerate()
        .filter(|&(_, &value)| !(MIN_LEAK..1.0).contains(&value))
        .map(|(symptom, &value)| NetworkFault::Leak { symptom, value });
    let mut found: Vec<_> = prior_faults.chain(leak_faults).collect();
    let mut previous = None;
    for &link in sorted_links {
        let ends = (link.cause, link.symptom);
        if link.cause >= priors.len() || link.symptom >= leaks.len() {
            found.push(NetworkFault::UnknownEnd { link });
        } else if previous == Some(ends) {
            found.push(NetworkFault::Duplicate { link });
        }
        if !is_open_probability(link.strength) {
            found.push(NetworkFault::Strength { link });
        }
        previous = Some(ends);
    }
    found
}
