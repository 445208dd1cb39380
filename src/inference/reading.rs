//! A reading that could be taken: what it would tell, and what each outcome would change.

use super::bound::InformationBound;
use super::conditioned::{cut_off, power_of_ten};
use super::faults::{FindingsFault, ReadingFault};
use super::information::{entropy, mutual_information};
use super::lattice::compress;
use super::odds::Odds;
use super::posterior::{MAX_JOINT_CAUSES, Posterior, check_known, normalise};

/// The most causes one reading may bear on; one more is needed to see what it does to another
/// cause.
pub const MAX_READING_CAUSES: usize = MAX_JOINT_CAUSES - 1;

/// How far usual shares may be from adding up to 1: shares written with seven digits pass.
const SHARE_TOLERANCE: f64 = 1e-6;

/// A reading with regions, each usual to some degree and each a weight of evidence for some
/// causes.
///
/// With several causes present, P(region | causes) ∝ usual · Π 10^w, scaled so that the regions
/// add up to 1. A region that was seen counts as the plain product of its ratios 10^w, as
/// [`Findings::weigh`](super::Findings::weigh) counts it; for one cause with consistent weights
/// the two are the same.
#[derive(Debug, Clone)]
pub struct Reading {
    causes: Vec<usize>,
    regions: usize,
    /// For each configuration of the causes, P(region | configuration).
    likelihoods: Vec<f64>,
    /// For each configuration of the causes, the product of the ratios of a region.
    ratios: Vec<f64>,
    /// For each configuration of the causes, the entropy of the region in bits.
    entropies: Vec<f64>,
}

/// One region a reading might turn out to lie in.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// P(region | findings).
    pub probability: f64,
    /// Odds of the causes asked for if that region were found; the two sides add up to 1.
    pub odds: Vec<Odds>,
}

impl Reading {
    /// `usual` is P(region | none of the causes), `weights` are for each cause the log10 of the
    /// likelihood ratio in each region.
    ///
    /// # Errors
    /// The first thing wrong with the numbers.
    pub fn new(usual: &[f64], weights: &[(usize, Vec<f64>)]) -> Result<Self, ReadingFault> {
        check(usual, weights)?;
        let (mut ratios, mut likelihoods, mut entropies) = (Vec::new(), Vec::new(), Vec::new());
        for configuration in 0..1 << weights.len() {
            let first = ratios.len();
            ratios.extend((0..usual.len()).map(|region| ratio(weights, configuration, region)));
            let mut row: Vec<f64> = usual.iter().zip(ratios.iter().skip(first)).map(|(u, r)| u * r).collect();
            normalise(&mut row);
            entropies.push(entropy(row.iter().copied()));
            likelihoods.extend(row);
        }
        let causes = weights.iter().map(|(cause, _)| *cause).collect();
        Ok(Self { causes, regions: usual.len(), likelihoods, ratios, entropies })
    }

    /// The causes the reading bears on.
    #[must_use]
    pub fn causes(&self) -> &[usize] {
        &self.causes
    }

    /// Mutual information in bits between the region of the reading and all hidden causes, given
    /// the findings. Given its own causes the reading depends on nothing else, so their joint
    /// posterior is all it takes.
    ///
    /// # Errors
    /// A cause that the network does not have.
    pub fn information(&self, posterior: &Posterior<'_>) -> Result<f64, FindingsFault> {
        posterior.check_causes(&self.causes)?;
        let mut masses = Masses::default();
        let masses = self.configurations(posterior, &mut masses);
        let given_causes: f64 = masses.iter().zip(&self.entropies).map(|(mass, entropy)| mass * entropy).sum();
        let region = (0..self.regions).map(|region| self.predicted(masses, region));
        Ok((entropy(region) - given_causes).max(0.0))
    }

    /// A bound on its information in any case: worth computing once for a reading that is asked about often.
    #[must_use]
    pub fn bound(&self) -> InformationBound {
        let row = |configuration: usize| self.row(&self.likelihoods, configuration);
        InformationBound::new(&self.causes, row)
    }

    /// Mutual information in bits between the region and the joint state of `causes` only: never
    /// more than [`Reading::information`].
    ///
    /// # Errors
    /// An unknown or repeated cause, or too many together with those of the reading.
    pub fn information_about(&self, posterior: &Posterior<'_>, causes: &[usize]) -> Result<f64, FindingsFault> {
        if let Some(mask) = self.places(causes) {
            posterior.check_causes(&self.causes)?;
            return Ok(self.information_about_own(posterior, mask));
        }
        let mut all = self.causes.clone();
        all.extend(causes.iter().filter(|cause| !self.causes.contains(cause)));
        let masses = posterior.joint(&all)?;
        let mut table = vec![0.0; self.regions << causes.len()];
        for (configuration, mass) in masses.iter().enumerate() {
            let row = restrict(configuration, &all, causes);
            let likelihoods = self.row(&self.likelihoods, configuration);
            let cells = table.iter_mut().skip(row * self.regions);
            cells.zip(likelihoods).for_each(|(cell, likelihood)| *cell += mass * likelihood);
        }
        Ok(mutual_information(&table, self.regions))
    }

    /// The places of distinct causes among those of the reading, as bits; `None` unless all are there.
    fn places(&self, causes: &[usize]) -> Option<u32> {
        let mut mask = 0;
        for cause in causes {
            let bit = 1 << self.causes.iter().position(|own| own == cause)?;
            if mask & bit != 0 {
                return None;
            }
            mask |= bit;
        }
        Some(mask)
    }

    /// The same for some of its own causes: the region given them is the mean over the others.
    fn information_about_own(&self, posterior: &Posterior<'_>, mask: u32) -> f64 {
        let mut masses = Masses::default();
        let masses = self.configurations(posterior, &mut masses);
        let mut table = vec![0.0; self.regions << mask.count_ones()];
        for ((configuration, mass), likelihoods) in (0..).zip(masses).zip(self.likelihoods.chunks_exact(self.regions)) {
            let row = compress(configuration & mask, mask) as usize;
            let cells = table.iter_mut().skip(row * self.regions);
            cells.zip(likelihoods).for_each(|(cell, likelihood)| *cell += mass * likelihood);
        }
        mutual_information(&table, self.regions)
    }

    /// For each region its probability; they add up to 1.
    ///
    /// # Errors
    /// A cause that the network does not have.
    pub fn probabilities(&self, posterior: &Posterior<'_>) -> Result<Vec<f64>, FindingsFault> {
        posterior.check_causes(&self.causes)?;
        let mut masses = Masses::default();
        let masses = self.configurations(posterior, &mut masses);
        Ok((0..self.regions).map(|region| self.predicted(masses, region)).collect())
    }

    /// For each region its probability, and the odds of `causes` if it were found.
    ///
    /// # Errors
    /// A cause that the network does not have.
    pub fn outcomes(&self, posterior: &Posterior<'_>, causes: &[usize]) -> Result<Vec<Outcome>, FindingsFault> {
        check_known(posterior.network, causes)?;
        let probabilities = self.probabilities(posterior)?.into_iter();
        let mut outcomes: Vec<_> = probabilities.map(|probability| Outcome { probability, odds: Vec::new() }).collect();
        for &cause in causes {
            self.push_odds(posterior, cause, &mut outcomes)?;
        }
        Ok(outcomes)
    }

    fn push_odds(
        &self,
        posterior: &Posterior<'_>,
        cause: usize,
        outcomes: &mut [Outcome],
    ) -> Result<(), FindingsFault> {
        let mut all = self.causes.clone();
        if !all.contains(&cause) {
            all.push(cause);
        }
        let masses = posterior.joint(&all)?;
        for (region, outcome) in outcomes.iter_mut().enumerate() {
            let mut odds = Odds { present: 0.0, absent: 0.0 };
            for (configuration, mass) in masses.iter().enumerate() {
                let ratio = self.row(&self.ratios, configuration).get(region).copied().unwrap_or(1.0);
                let is_present = restrict(configuration, &all, &[cause]) == 1;
                let side = if is_present { &mut odds.present } else { &mut odds.absent };
                *side += mass * ratio;
            }
            outcome.odds.push(odds.normalised());
        }
        Ok(())
    }

    /// Joint posterior of the reading's causes.
    fn configurations<'m>(&self, posterior: &Posterior<'_>, masses: &'m mut Masses) -> &'m [f64] {
        let masses = masses.of(1 << self.causes.len());
        posterior.joint_into(&self.causes, masses);
        masses
    }

    fn predicted(&self, masses: &[f64], region: usize) -> f64 {
        let of_region = self.likelihoods.iter().skip(region).step_by(self.regions);
        masses.iter().zip(of_region).map(|(mass, likelihood)| mass * likelihood).sum()
    }

    /// The row of a configuration whose lowest bits are the causes of the reading.
    fn row<'t>(&self, table: &'t [f64], configuration: usize) -> &'t [f64] {
        let own = configuration & ((1 << self.causes.len()) - 1);
        table.get(own * self.regions..(own + 1) * self.regions).unwrap_or_default()
    }
}

/// Configurations for which no memory has to be asked for: those of five causes.
const ON_STACK: usize = 32;

/// Memory for a joint posterior.
#[derive(Default)]
struct Masses {
    stack: [f64; ON_STACK],
    heap: Vec<f64>,
}

impl Masses {
    fn of(&mut self, length: usize) -> &mut [f64] {
        if let Some(masses) = self.stack.get_mut(..length) {
            return masses;
        }
        self.heap.resize(length, 0.0);
        &mut self.heap
    }
}

/// Product of the ratios of the present causes in a region.
fn ratio(weights: &[(usize, Vec<f64>)], configuration: usize, region: usize) -> f64 {
    let present = weights.iter().enumerate().filter(|(place, _)| configuration >> place & 1 == 1);
    let weight = present.filter_map(|(_, (_, by_region))| by_region.get(region)).sum();
    power_of_ten(cut_off(weight))
}

/// The configuration of `some` causes within one of `all` causes.
fn restrict(configuration: usize, all: &[usize], some: &[usize]) -> usize {
    let bit = |cause: &usize| all.iter().position(|other| other == cause).map_or(0, |place| configuration >> place & 1);
    some.iter().enumerate().map(|(place, cause)| bit(cause) << place).sum()
}

fn check(usual: &[f64], weights: &[(usize, Vec<f64>)]) -> Result<(), ReadingFault> {
    let sum: f64 = usual.iter().sum();
    let adds_up = (sum - 1.0).abs() <= SHARE_TOLERANCE;
    if !adds_up || usual.iter().any(|&share| share <= 0.0) {
        return Err(ReadingFault::Usual { sum });
    }
    if weights.len() > MAX_READING_CAUSES {
        return Err(ReadingFault::TooManyCauses { count: weights.len() });
    }
    for (place, (cause, by_region)) in weights.iter().enumerate() {
        if by_region.len() != usual.len() || by_region.iter().any(|weight| !weight.is_finite()) {
            return Err(ReadingFault::Weights { cause: *cause });
        }
        if weights.iter().take(place).any(|(other, _)| other == cause) {
            return Err(ReadingFault::RepeatedCause { cause: *cause });
        }
    }
    Ok(())
}
