//! The posterior of every cause, and the joint posterior of a few.

use super::conditioned::{Change, Conditioned};
use super::cover::Cover;
use super::faults::FindingsFault;
use super::findings::Findings;
use super::network::Network;
use super::odds::Odds;
use super::solution::Solution;

/// The most causes of which a joint posterior is given: its table doubles with each.
pub const MAX_JOINT_CAUSES: usize = 13;

/// Memory that is reused from case to case.
#[derive(Debug, Default)]
pub struct Workspace {
    case: Conditioned,
    cover: Cover,
    /// Odds before the symptoms, when one more reading is tried.
    revised: Vec<Odds>,
    odds: Vec<Odds>,
}

impl Workspace {
    /// An empty workspace; it grows to what the cases need. After that, only a cause with more than
    /// six of the present symptoms, or one that alone explains the case, asks for memory.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Builds the cover table of the findings after a change. The findings have been checked.
    pub(super) fn solve(
        &mut self,
        network: &Network,
        findings: &Findings,
        change: Change,
    ) -> Result<Solution<'_>, FindingsFault> {
        self.case.condition(network, findings, change)?;
        self.cover.build(&self.case, self.case.odds(), &[]);
        Ok(Solution { case: &self.case, odds: self.case.odds(), cover: &self.cover })
    }
}

/// How the causes stand: their odds, and which of them can explain something.
#[derive(Debug, Clone, Copy)]
pub struct Standing<'a> {
    case: &'a Conditioned,
    odds: &'a [Odds],
}

impl<'a> Standing<'a> {
    /// Odds of every cause, in the order of the priors; the two sides add up to 1.
    #[must_use]
    pub fn odds(&self) -> &'a [Odds] {
        self.odds
    }

    /// Whether a cause can explain a symptom that is present or uncertain: if not, it is independent of all other
    /// causes.
    #[must_use]
    pub fn explains(&self, cause: usize) -> bool {
        cause < self.odds.len() && self.case.pattern(cause) != 0
    }
}

/// What the findings say about the causes.
#[derive(Debug, Clone, Copy)]
pub struct Posterior<'a> {
    pub(super) network: &'a Network,
    pub(super) findings: &'a Findings,
    pub(super) solution: Solution<'a>,
    odds: &'a [Odds],
}

/// Exact posterior of every cause of `network` given `findings`.
///
/// # Errors
/// Findings that do not fit the network, or more than [`MAX_SYMPTOMS`](super::MAX_SYMPTOMS)
/// present or uncertain symptoms.
pub fn posterior<'a>(
    network: &'a Network,
    findings: &'a Findings,
    workspace: &'a mut Workspace,
) -> Result<Posterior<'a>, FindingsFault> {
    findings.check(network)?;
    workspace.solve(network, findings, Change::Nothing)?;
    let Workspace { case, cover, odds, .. } = workspace;
    let solution = Solution { case, odds: case.odds(), cover };
    solution.all_odds(odds);
    Ok(Posterior { network, findings, solution, odds })
}

impl Posterior<'_> {
    /// How the causes stand.
    #[must_use]
    pub fn standing(&self) -> Standing<'_> {
        Standing { case: self.solution.case, odds: self.odds }
    }

    /// How the causes would stand after one more reading, given as [`Findings::weigh`] takes it but each cause once: what
    /// inferring the case anew gives, at a fraction of the work, since the symptoms are laid out already.
    ///
    /// # Errors
    /// A cause that the network does not have.
    pub fn after_reading<'w>(
        &'w self,
        log10_ratios: &[(usize, f64)],
        workspace: &'w mut Workspace,
    ) -> Result<Standing<'w>, FindingsFault> {
        let case = self.solution.case;
        let Workspace { cover, revised, odds, .. } = workspace;
        revised.clear();
        revised.extend_from_slice(self.solution.odds);
        for &(cause, ratio) in log10_ratios {
            let odds = revised.get_mut(cause).ok_or(FindingsFault::UnknownCause { cause })?;
            *odds = case.odds_with(cause, ratio);
        }
        let changed = log10_ratios.iter().map(|&(cause, _)| cause).filter_map(|cause| {
            let (old, new) = (self.solution.odds.get(cause)?, revised.get(cause)?);
            Some((cause, *old, *new))
        });
        if case.tolerant() != 0 || cover.exchange(self.solution.cover, case, changed).is_err() {
            cover.build(case, revised, &[]);
        }
        Solution { case, odds: revised, cover }.all_odds(odds);
        Ok(Standing { case, odds })
    }

    /// Odds of every cause, in the order of the priors; the two sides add up to 1.
    #[must_use]
    pub fn odds(&self) -> &[Odds] {
        self.odds
    }

    /// Whether a cause can explain a symptom that is present or uncertain: if not, it is independent of all other
    /// causes.
    #[must_use]
    pub fn explains(&self, cause: usize) -> bool {
        self.standing().explains(cause)
    }

    /// Natural logarithm of P(findings): the symptoms' probability times, for each reading, its
    /// likelihood relative to a case with none of its causes.
    #[must_use]
    pub fn log_probability(&self) -> f64 {
        self.solution.case.log_scale() + self.solution.cover.total().ln()
    }

    /// Joint posterior of distinct causes: entry `i` is the probability that exactly those
    /// `causes[k]` are present for which bit `k` of `i` is set. The entries add up to 1.
    ///
    /// # Errors
    /// An unknown or repeated cause, or more than [`MAX_JOINT_CAUSES`].
    pub fn joint(&self, causes: &[usize]) -> Result<Vec<f64>, FindingsFault> {
        self.check_causes(causes)?;
        let mut masses = vec![0.0; 1 << causes.len()];
        self.joint_into(causes, &mut masses);
        Ok(masses)
    }

    pub(super) fn check_causes(&self, causes: &[usize]) -> Result<(), FindingsFault> {
        check_causes(self.network, causes)
    }

    /// The joint posterior of causes that have been checked.
    pub(super) fn joint_into(&self, causes: &[usize], masses: &mut [f64]) {
        // The joint of one cause is its posterior, which is there already.
        if let ([cause], [absent, present]) = (causes, &mut *masses)
            && let Some(odds) = self.odds.get(*cause)
        {
            (*absent, *present) = (odds.absent, odds.present);
            return;
        }
        self.solution.joint(causes, None, masses);
        normalise(masses);
    }
}

/// Refuses causes that are unknown, repeated or too many for a joint posterior.
pub(super) fn check_causes(network: &Network, causes: &[usize]) -> Result<(), FindingsFault> {
    if causes.len() > MAX_JOINT_CAUSES {
        return Err(FindingsFault::TooManyCauses { count: causes.len(), limit: MAX_JOINT_CAUSES });
    }
    let repeated = |&(place, cause): &(usize, &usize)| causes.iter().take(place).any(|other| other == cause);
    match causes.iter().enumerate().find(repeated) {
        Some((_, &cause)) => Err(FindingsFault::RepeatedCause { cause }),
        None => check_known(network, causes),
    }
}

pub(super) fn check_known(network: &Network, causes: &[usize]) -> Result<(), FindingsFault> {
    match causes.iter().find(|&&cause| cause >= network.causes()) {
        Some(&cause) => Err(FindingsFault::UnknownCause { cause }),
        None => Ok(()),
    }
}

pub(super) fn normalise(masses: &mut [f64]) {
    let scale = 1.0 / masses.iter().sum::<f64>();
    masses.iter_mut().for_each(|mass| *mass *= scale);
}
