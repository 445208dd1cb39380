//! Days until mould is seen on a cake, from its equilibrium relative humidity and the storage temperature.
//!
//! `log10(days) = a - b ERH`, ERH in percent, for cakes without preservative, stored at constant temperature and
//! constant ERH after ordinary contamination. Constants at 21 °C: a 7.91, b 0.081 (Cauvain and Seiler relation, ERH
//! 74-90 %, as quoted in a forum post with a table of whole days that it reproduces). At 27 °C: a 6.42; b is printed as 0.065 and, in
//! Adams and Moss, Food Microbiology, eq. 3.34, as 0.0647. Here b is 0.065: it gives the published examples for
//! Madeira cake at 27 °C (14 and 8 days) and the shorter life of the two, by about 5 %.

use super::{Estimate, Method, Nonsense, bisection, input_checks};

/// What must stand beside every figure of this file.
pub const CAUTION: &str = "an estimate of the days before mould is seen, not a statement that the product is safe or \
    may be sold for so long; hygiene, preservatives, packaging and changing temperature move it, pathogens are not \
    considered, and a shelf life is set by storage trials under the local food law";

const METHOD: Method = Method {
    name: "mould-free shelf life of cake from ERH",
    source: "27 Cel: Adams and Moss, Food Microbiology, eq. 3.34, with the slope 0.065 of other prints; 21 Cel: \
        Cauvain and Seiler relation as quoted in a forum post with its table",
    domain: "ERH 74-90 %, 21-27 Cel, constant in storage, no preservative, ordinary contamination; between 21 and \
        27 Cel the logarithms are interpolated (our choice); accuracy not stated by the sources",
};

/// Coolest temperature with constants, °C.
const COOL: f64 = 21.0;
/// Warmest temperature with constants, °C.
const WARM: f64 = 27.0;
/// ERH, %, of the source's domain.
const ERH_DOMAIN: std::ops::RangeInclusive<f64> = 74.0..=90.0;

/// Days without visible mould, with the caution that belongs to them.
#[derive(Debug, Clone, PartialEq)]
pub struct MouldFreeLife {
    /// Days, unit `d`.
    pub days: Estimate,
    /// [`CAUTION`].
    pub caution: &'static str,
}

/// Mould-free days of a cake of `erh_percent` (0-100) kept at `storage_celsius` (0-45 °C).
///
/// Below 21 °C the 21 °C line is used (no credit for cold), above 27 °C the 27 °C line; both are remarked.
///
/// # Errors
/// [`Nonsense`] for inputs outside the ranges above.
pub fn mould_free_life(erh_percent: f64, storage_celsius: f64) -> Result<MouldFreeLife, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "erh", erh_percent, 0.0..=100.0, "%");
    check_storage(&mut nonsense, storage_celsius);
    nonsense.or_ok()?;
    let days = 10_f64.powf(log10_days(erh_percent, storage_celsius));
    let days = remarked(Estimate::new(days, "d", METHOD), erh_percent, storage_celsius);
    Ok(MouldFreeLife { days, caution: CAUTION })
}

/// Highest ERH, %, at which `wanted_days` (1-365) without mould are estimated at `storage_celsius` (0-45 °C).
///
/// # Errors
/// [`Nonsense`] for inputs outside the ranges above.
pub fn highest_erh_for(wanted_days: f64, storage_celsius: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "wanted_days", wanted_days, 1.0..=365.0, "d");
    check_storage(&mut nonsense, storage_celsius);
    nonsense.or_ok()?;
    let wanted = wanted_days.log10();
    let erh = bisection::root_of_rising(0.0, 100.0, |erh| wanted - log10_days(erh, storage_celsius));
    Ok(remarked(Estimate::new(erh, "%", METHOD), erh, storage_celsius))
}

fn check_storage(nonsense: &mut Nonsense, storage_celsius: f64) {
    input_checks::within(nonsense, "storage_temperature", storage_celsius, 0.0..=45.0, "Cel");
}

fn log10_days(erh_percent: f64, storage_celsius: f64) -> f64 {
    let cool = 7.91 - 0.081 * erh_percent;
    // The two lines cross at 93 % ERH, beyond the domain; warmth must not lengthen the life there.
    let warm = (6.42 - 0.065 * erh_percent).min(cool);
    let share = ((storage_celsius - COOL) / (WARM - COOL)).clamp(0.0, 1.0);
    cool + share * (warm - cool)
}

fn remarked(estimate: Estimate, erh: f64, celsius: f64) -> Estimate {
    estimate
        .valid_if(ERH_DOMAIN.contains(&erh), || format!("ERH {erh:.1} % is outside the 74-90 % of the equation"))
        .valid_if(celsius >= COOL, || format!("{celsius:.1} Cel is below 21 Cel: no credit is given for the cold"))
        .valid_if(celsius <= WARM, || format!("{celsius:.1} Cel is above 27 Cel: mould may come sooner than computed"))
}
