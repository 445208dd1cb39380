//! Causes of faults.

use super::{Caution, Condition, Evidence, Key, Named, Place, Prescription, Scope, Source, Symptom, Text};

/// How strongly a cause shows a symptom.
#[derive(Debug, Clone, PartialEq)]
pub struct Link {
    /// The symptom.
    pub symptom: Key<Symptom>,
    /// Probability that the cause alone shows it, 0 to 1 exclusive.
    pub strength: f64,
    /// Where it stands.
    pub place: Place,
}

/// The reading that settles a cause.
#[derive(Debug, Clone)]
pub struct Confirmation {
    /// Condition that confirms the cause.
    pub expect: Condition,
    /// Condition that excludes it.
    pub excluded: Option<Condition>,
    /// Where it stands.
    pub place: Place,
}

/// A cause.
#[derive(Debug, Clone)]
pub struct Cause {
    /// Id.
    pub id: String,
    /// Title for people.
    pub title: Text,
    /// How it brings its symptoms about.
    pub mechanism: Text,
    /// Products that it can befall.
    pub products: Vec<Scope>,
    /// Prior probability, 0 to 1 exclusive.
    pub prior: f64,
    /// Priors where a family or product differs.
    pub priors: Vec<(Scope, f64)>,
    /// Symptoms that it shows.
    pub links: Vec<Link>,
    /// Evidence for and against it.
    pub evidence: Vec<Evidence>,
    /// What to do about it, in the authors' order.
    pub prescriptions: Vec<Prescription>,
    /// What would settle it.
    pub confirmations: Vec<Confirmation>,
    /// Cautions.
    pub cautions: Vec<Key<Caution>>,
    /// Sources.
    pub sources: Vec<Key<Source>>,
    /// Where it is declared.
    pub place: Place,
}

impl Named for Cause {
    fn id(&self) -> &str {
        &self.id
    }
}
