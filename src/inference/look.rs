//! A symptom that nobody looked for yet: what looking would tell.

use super::conditioned::Change;
use super::dimension::Credit;
use super::faults::FindingsFault;
use super::findings::Findings;
use super::information::mutual_information;
use super::marginal::{Buffer, Marginal};
use super::network::Network;
use super::odds::Odds;
use super::posterior::{Workspace, check_causes, check_known, normalise};
use super::solution::Solution;

/// A case with one symptom about to be looked for. Both outcomes come from one table.
#[derive(Debug, Clone, Copy)]
pub struct Look<'a> {
    network: &'a Network,
    solution: Solution<'a>,
    dimension: usize,
}

/// Prepares to look for a symptom that is not among the findings.
///
/// # Errors
/// Findings that do not fit the network, a symptom that is unknown or observed already, or one
/// symptom more than [`MAX_SYMPTOMS`](super::MAX_SYMPTOMS).
pub fn look_for<'a>(
    network: &'a Network,
    findings: &Findings,
    symptom: usize,
    workspace: &'a mut Workspace,
) -> Result<Look<'a>, FindingsFault> {
    findings.check(network)?;
    if symptom >= network.symptoms() {
        return Err(FindingsFault::UnknownSymptom { symptom });
    }
    let observed = |&(other, _): &(usize, _)| other == symptom;
    if findings.observations().iter().any(observed) {
        return Err(FindingsFault::ObservedTwice { symptom });
    }
    let solution = workspace.solve(network, findings, Change::LookAt(symptom))?;
    let dimension = solution.case.dimension_of(symptom).unwrap_or_default();
    Ok(Look { network, solution, dimension })
}

impl Look<'_> {
    /// P(symptom present | findings).
    #[must_use]
    pub fn probability(&self) -> f64 {
        let mut buffer = Buffer::default();
        let own = 1 << self.dimension;
        let mut marginal = Marginal::of(self.solution.case, self.solution.cover, own, &mut buffer);
        let mut total = |credit| marginal.total(Some((self.dimension, credit)));
        Odds { present: total(Credit::PRESENT), absent: total(Credit::ABSENT) }.probability()
    }

    /// Odds of `causes` if the symptom were present; the two sides add up to 1.
    ///
    /// # Errors
    /// A cause that the network does not have.
    pub fn if_present(&self, causes: &[usize]) -> Result<Vec<Odds>, FindingsFault> {
        self.odds(causes, Credit::PRESENT)
    }

    /// Odds of `causes` if the symptom were absent; the two sides add up to 1.
    ///
    /// # Errors
    /// A cause that the network does not have.
    pub fn if_absent(&self, causes: &[usize]) -> Result<Vec<Odds>, FindingsFault> {
        self.odds(causes, Credit::ABSENT)
    }

    /// Mutual information in bits between the symptom and the joint state of `causes`.
    ///
    /// With all causes linked to the symptom it is the information about everything hidden; with
    /// fewer it is less.
    ///
    /// # Errors
    /// An unknown or repeated cause, or more than [`MAX_JOINT_CAUSES`](super::MAX_JOINT_CAUSES).
    pub fn information(&self, causes: &[usize]) -> Result<f64, FindingsFault> {
        check_causes(self.network, causes)?;
        let mut table = vec![0.0; 2 << causes.len()];
        let (absent, present) = table.split_at_mut(1 << causes.len());
        self.solution.joint_of_outcomes(causes, self.dimension, absent, present);
        normalise(&mut table);
        // Two rows, absent and present; mutual information is symmetric.
        Ok(mutual_information(&table, 1 << causes.len()))
    }

    fn odds(&self, causes: &[usize], credit: Credit) -> Result<Vec<Odds>, FindingsFault> {
        check_known(self.network, causes)?;
        let mut buffer = Buffer::default();
        let outcome = Some((self.dimension, credit));
        let odds = |&cause: &usize| self.solution.odds_of(&mut buffer, cause, outcome).normalised();
        Ok(causes.iter().map(odds).collect())
    }
}
