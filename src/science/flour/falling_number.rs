//! Falling Number of blends, by way of the liquefaction number.

use crate::science::{Estimate, Method, Nonsense, input_checks};

/// Stirring alone takes 60 s: no flour falls faster (bakers' glossary on the web, falling number).
const FLOOR_SECONDS: f64 = 60.0;
/// Above this other things than amylase decide (USDA ARS Soft Wheat Quality Laboratory, Flour Tests).
const AMYLASE_LIMIT_SECONDS: f64 = 400.0;
/// Numerator and shift of the liquefaction number, s (from memory: ISO 3093).
const LIQUEFACTION: (f64, f64) = (6000.0, 50.0);

const LIQUEFACTION_NUMBER: Method = Method {
    name: "liquefaction number: 6000 / (Falling Number − 50)",
    source: "from memory: ISO 3093",
    domain: "Falling Number 60 to 400 s; above it other things than amylase decide",
};

/// A lot in a blend.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FallingNumberLot {
    /// Parts by mass.
    pub parts: f64,
    /// Falling Number, s.
    pub falling_number_s: f64,
}

/// Liquefaction number of a Falling Number in s: a measure of amylase that adds up by mass.
///
/// # Errors
/// A Falling Number below 60 s.
pub fn liquefaction_number(falling_number_s: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    check_seconds(&mut faults, "falling_number_s", falling_number_s);
    faults.or_ok()?;
    let value = liquefaction(falling_number_s);
    Ok(judge(Estimate::new(value, "1", LIQUEFACTION_NUMBER), &[falling_number_s]))
}

/// Falling Number of a liquefaction number, s.
///
/// # Errors
/// A liquefaction number that is not above zero, or above 600 (that of 60 s).
pub fn falling_number(liquefaction_number: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    let input = "liquefaction_number";
    input_checks::positive(&mut faults, input, liquefaction_number);
    let most = liquefaction(FLOOR_SECONDS);
    faults.unless(
        liquefaction_number.is_nan() || liquefaction_number <= most,
        input,
        format!("must not be above {most}, is {liquefaction_number}"),
    );
    faults.or_ok()?;
    let seconds = seconds(liquefaction_number);
    Ok(judge(Estimate::new(seconds, "s", LIQUEFACTION_NUMBER), &[seconds]))
}

/// Falling Number of a blend, s: lower than the mean of its lots.
///
/// # Errors
/// No lots, parts that cannot be meant, a Falling Number below 60 s.
pub fn blend_falling_number(lots: &[FallingNumberLot]) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    for (position, lot) in lots.iter().enumerate() {
        input_checks::not_negative(&mut faults, &format!("lots[{position}].parts"), lot.parts);
        let input = format!("lots[{position}].falling_number_s");
        check_seconds(&mut faults, &input, lot.falling_number_s);
    }
    let parts: f64 = lots.iter().map(|lot| lot.parts).sum();
    faults.unless(!parts.is_finite() || parts > 0.0, "lots", "have no mass together");
    faults.or_ok()?;
    let sum: f64 = lots.iter().map(|lot| lot.parts * liquefaction(lot.falling_number_s)).sum();
    let all: Vec<f64> = lots.iter().map(|lot| lot.falling_number_s).collect();
    Ok(judge(Estimate::new(seconds(sum / parts), "s", LIQUEFACTION_NUMBER), &all))
}

/// Share of a lot of low Falling Number (sprouted grain, malt flour) that brings a sound lot to a target, %.
///
/// # Errors
/// A Falling Number below 60 s, equal lots, a target outside them.
pub fn share_of_sprouted_lot(sprouted_s: f64, sound_s: f64, target_s: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    check_seconds(&mut faults, "sprouted_s", sprouted_s);
    check_seconds(&mut faults, "sound_s", sound_s);
    faults.unless(sprouted_s < sound_s, "sound_s", format!("must be above sprouted_s ({sprouted_s}), is {sound_s}"));
    faults.unless(
        (sprouted_s..=sound_s).contains(&target_s),
        "target_s",
        format!("no blend of {sprouted_s} s and {sound_s} s reaches {target_s} s"),
    );
    faults.or_ok()?;
    let sound = liquefaction(sound_s);
    let share = 100.0 * (liquefaction(target_s) - sound) / (liquefaction(sprouted_s) - sound);
    Ok(judge(Estimate::new(share, "%", LIQUEFACTION_NUMBER), &[sprouted_s, sound_s]))
}

fn liquefaction(falling_number_s: f64) -> f64 {
    LIQUEFACTION.0 / (falling_number_s - LIQUEFACTION.1)
}

fn seconds(liquefaction_number: f64) -> f64 {
    LIQUEFACTION.0 / liquefaction_number + LIQUEFACTION.1
}

fn check_seconds(faults: &mut Nonsense, input: &str, value: f64) {
    // Published flours end near 500 s (bakers' glossary on the web, falling number): 900 s is a wrong unit.
    input_checks::within(faults, input, value, FLOOR_SECONDS..=900.0, "s");
}

fn judge(estimate: Estimate, falling_numbers_s: &[f64]) -> Estimate {
    let highest = falling_numbers_s.iter().copied().fold(0.0, f64::max);
    estimate.valid_if(highest <= AMYLASE_LIMIT_SECONDS, || {
        format!("{highest:.0} s is above {AMYLASE_LIMIT_SECONDS} s, where other things than amylase decide")
    })
}
