//! Two fats side by side over temperature: where they differ, and what that does at work and in the mouth.

use super::{Consistency, Melt, PlasticRange, SolidsCurve, consistency, melt_in_the_mouth, plastic_range};
use crate::science::{Estimate, Nonsense, input_checks};

/// Solids of two fats at one temperature.
#[derive(Debug, Clone, PartialEq)]
pub struct Difference {
    /// Temperature, °C.
    pub celsius: f64,
    /// Solids of the fat in use, %.
    pub present: Estimate,
    /// Solids of the other fat, %.
    pub other: Estimate,
    /// Other less present, percentage points; flagged when either curve had to be stretched.
    pub points: Estimate,
}

/// Two fats compared.
#[derive(Debug, Clone, PartialEq)]
pub struct Comparison {
    /// Every temperature at which either fat has a reading, coldest first.
    pub differences: Vec<Difference>,
    /// The widest difference.
    pub widest: Difference,
    /// The difference at the working temperature.
    pub at_work: Difference,
    /// Consistency at the working temperature: fat in use, other fat.
    pub consistency: (Consistency, Consistency),
    /// Melt in the mouth: fat in use, other fat.
    pub melt: (Melt, Melt),
    /// Plastic range: fat in use, other fat.
    pub plastic: (PlasticRange, PlasticRange),
    /// What the differences mean, in words.
    pub meaning: Vec<String>,
}

/// Compares the fat in use with another one, at a working temperature in °C.
///
/// # Errors
/// A working temperature outside −60 to 350 °C; two curves on different scales.
pub fn compare(present: &SolidsCurve, other: &SolidsCurve, working_celsius: f64) -> Result<Comparison, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::temperature(&mut nonsense, "working_temperature", working_celsius);
    nonsense.unless(
        present.scale() == other.scale(),
        "scale",
        "solid fat content and solid fat index cannot be compared",
    );
    nonsense.or_ok()?;
    let differences: Vec<Difference> =
        temperatures(present, other).into_iter().map(|celsius| difference(present, other, celsius)).collect();
    let at_work = difference(present, other, working_celsius);
    let widest = differences.iter().fold(&at_work, |widest, candidate| {
        if candidate.points.value.abs() > widest.points.value.abs() { candidate } else { widest }
    });
    let consistency = (consistency(at_work.present.value), consistency(at_work.other.value));
    let melt = (melt_in_the_mouth(present), melt_in_the_mouth(other));
    Ok(Comparison {
        meaning: meaning(&at_work, consistency, &melt),
        widest: widest.clone(),
        plastic: (plastic_range(present), plastic_range(other)),
        differences,
        at_work,
        consistency,
        melt,
    })
}

fn temperatures(present: &SolidsCurve, other: &SolidsCurve) -> Vec<f64> {
    let both = present.readings().iter().chain(other.readings());
    let mut temperatures: Vec<f64> = both.map(|reading| reading.celsius).collect();
    temperatures.sort_by(f64::total_cmp);
    temperatures.dedup();
    temperatures
}

fn difference(present: &SolidsCurve, other: &SolidsCurve, celsius: f64) -> Difference {
    let (present, other) = (present.read(celsius), other.read(celsius));
    let mut points = Estimate::new(other.value - present.value, "%", present.method);
    points.outside_domain.extend(present.outside_domain.iter().chain(&other.outside_domain).cloned());
    Difference { celsius, present, other, points }
}

fn meaning(at_work: &Difference, consistency: (Consistency, Consistency), melt: &(Melt, Melt)) -> Vec<String> {
    let mut meaning = Vec::new();
    let points = at_work.points.value;
    let direction = if points > 0.0 { "more" } else { "less" };
    if points != 0.0 {
        meaning.push(format!(
            "at {} °C the other fat has {:.1} percentage points {direction} solids",
            at_work.celsius,
            points.abs()
        ));
    }
    if consistency.0 != consistency.1 {
        meaning.push(format!(
            "in work: the fat in use {}; the other fat {}",
            consistency.0.meaning(),
            consistency.1.meaning()
        ));
    }
    meaning.extend(at_work.points.outside_domain.iter().map(|remark| format!("uncertain: {remark}")));
    let in_the_mouth = match (melt.0.waxy, melt.1.waxy) {
        (Some(false), Some(true)) => Some("eaten cold, the other fat leaves a waxy film"),
        (Some(true), Some(false)) => Some("eaten cold, the other fat melts clean where the fat in use is waxy"),
        (Some(true), Some(true)) => Some("eaten cold, both fats leave a waxy film"),
        (Some(false), Some(false)) => None,
        _ => Some("the curves end too early to judge how both fats melt in the mouth"),
    };
    meaning.extend(in_the_mouth.map(str::to_owned));
    meaning
}
