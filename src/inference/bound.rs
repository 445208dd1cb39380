//! How much a reading can tell at most: a bound that takes no joint posterior.

use super::information::divergence;
use super::posterior::Posterior;

/// A bound on [`Reading::information`](super::Reading::information), for ranking readings before their information is computed.
///
/// Divide the causes of the reading into A, taken by their entropy, and B. Then
///
/// ```text
/// I(R; A, B) = I(R; A) + I(R; B | A) ≤ H(A) + Σ P(a, b) D(R given a, b ‖ R given a alone)
/// ```
///
/// since the mean divergence from the mean is the least (Cover and Thomas 2006, *Elements of Information Theory*, the chapters
/// on entropy and on channel capacity, from memory). The divergence is at most the sum of what each cause in b can add, and
/// H(A) at most the sum of entropies. Each cause takes the side that is less for it.
#[derive(Debug, Clone)]
pub struct InformationBound {
    /// For each cause the most that it adds to the divergence, bits.
    causes: Vec<(usize, f64)>,
}

impl InformationBound {
    /// `row` gives P(region | configuration) for a configuration of the causes.
    pub(super) fn new<'t>(causes: &[usize], row: impl Fn(usize) -> &'t [f64]) -> Self {
        let mut most: Vec<(usize, f64)> = causes.iter().map(|cause| (*cause, 0.0)).collect();
        for with in 1_usize..1 << causes.len() {
            // All configurations that lack some of the causes.
            let mut without = with;
            while without > 0 {
                without = (without - 1) & with;
                let added = with & !without;
                // Of a group of causes each is charged an equal part.
                let each = divergence(row(with), row(without)) / f64::from(added.count_ones());
                let concerned = most.iter_mut().enumerate().filter(|(place, _)| added >> place & 1 == 1);
                concerned.for_each(|(_, (_, most))| *most = most.max(each));
            }
        }
        Self { causes: most }
    }

    /// The bound in a case, bits.
    #[must_use]
    pub fn bits(&self, posterior: &Posterior<'_>) -> f64 {
        self.bits_about(posterior, |_| true)
    }

    /// The bound on what it tells about some of the causes, bits: the others, being given, could only add.
    ///
    /// Holds where those others are independent of the causes asked about, as causes are that explain no symptom of the
    /// case (see [`Posterior::explains`]).
    #[must_use]
    pub fn bits_about(&self, posterior: &Posterior<'_>, asked: impl Fn(usize) -> bool) -> f64 {
        let of_cause = |(cause, divergence): &(usize, f64)| {
            let odds = posterior.odds().get(*cause)?;
            let by_divergence = odds.present * divergence;
            // Entropy is at least twice the smaller side: most causes are improbable, and need no logarithm.
            let is_less = by_divergence <= 2.0 * odds.present.min(odds.absent);
            Some(if is_less { by_divergence } else { by_divergence.min(odds.entropy()) })
        };
        self.causes.iter().filter(|(cause, _)| asked(*cause)).filter_map(of_cause).sum()
    }
}
