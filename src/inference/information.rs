//! Bits of information, and the arithmetic of weights over the regions of a reading.

use super::conditioned::power_of_ten;

/// Entropy of a distribution, in bits (Shannon 1948).
pub(super) fn entropy(probabilities: impl IntoIterator<Item = f64>) -> f64 {
    probabilities.into_iter().filter(|&probability| probability > 0.0).map(|p| -p * p.log2()).sum()
}

/// Kullback–Leibler divergence of `p` from `q`, in bits (Kullback and Leibler 1951); 0 where `p` is.
pub(super) fn divergence(p: &[f64], q: &[f64]) -> f64 {
    let terms = p.iter().zip(q).filter(|(p, _)| **p > 0.0).map(|(p, q)| p * (p / q).log2());
    terms.sum::<f64>().max(0.0)
}

/// Mutual information in bits between the row and the column of a table of probabilities that add
/// up to 1.
///
/// H(column) − Σ P(row)·H(column | row), never below 0.
pub(super) fn mutual_information(table: &[f64], columns: usize) -> f64 {
    let rows = || table.chunks_exact(columns);
    let of_column = |column: usize| rows().filter_map(|row| row.get(column)).sum::<f64>();
    let conditional: f64 = rows()
        .map(|row| {
            let total: f64 = row.iter().sum();
            if total > 0.0 { total * entropy(row.iter().map(|&mass| mass / total)) } else { 0.0 }
        })
        .sum();
    (entropy((0..columns).map(of_column)) - conditional).max(0.0)
}

/// How often a reading lies in the region that supports a cause when the cause is absent, from
/// the cause's weights (log10) for the two regions. It follows from Σ usual · 10^w = 1.
///
/// `None` unless the one weight is positive and the other negative.
#[must_use]
pub fn usual_share(weight_for: f64, weight_against: f64) -> Option<f64> {
    let excess = |weight: f64| (weight * std::f64::consts::LN_10).exp_m1();
    let signs_differ = weight_for > 0.0 && weight_against < 0.0;
    signs_differ.then(|| -excess(weight_against) / (excess(weight_for) - excess(weight_against)))
}

/// P(any region | cause) = Σ usual · 10^w of one cause over the regions of a reading: 1 when the
/// weights (log10) are consistent with the usual shares.
#[must_use]
pub fn total_under_cause(usual: &[f64], log10_ratios: &[f64]) -> f64 {
    usual.iter().zip(log10_ratios).map(|(share, &weight)| share * power_of_ten(weight)).sum()
}
