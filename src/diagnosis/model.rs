//! The knowledge of one product, ready for inference.

use super::regions::{Candidate, candidates};
use crate::inference::{Link, Network, NetworkFault};
use crate::knowledge::{Knowledge, ProductView};

/// A product's network and its candidates for the next reading.
#[derive(Debug)]
pub(super) struct Model {
    pub(super) network: Network,
    pub(super) candidates: Vec<Candidate>,
}

impl Model {
    pub(super) fn new(knowledge: &Knowledge, view: &ProductView) -> Result<Self, Vec<NetworkFault>> {
        let leaks = view.symptoms.iter().map(|key| knowledge.declared.symptoms[*key].leak).collect();
        let links = view
            .links
            .iter()
            .map(|link| Link { cause: link.cause, symptom: link.symptom, strength: link.strength })
            .collect();
        let network = Network::new(view.priors.clone(), leaks, links)?;
        Ok(Self { network, candidates: candidates(knowledge, view) })
    }
}
