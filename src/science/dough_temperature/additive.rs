//! The additive rule: every factor counts the same.

use super::judge_water;
use crate::science::{Estimate, Method, Nonsense, input_checks};

const ADDITIVE: Method = Method {
    name: "additive rule: n × dough temperature − other temperatures − friction factor",
    source: "Lehmann T., PMQ, Spring 2003, temperatures explained; \
             San Francisco Baking Institute, Artisan I notes 2009, for a preferment as fourth factor",
    domain: "same mixer, speed, time and batch size as the batch the friction factor was measured on; \
             drifts for very stiff and very wet doughs",
};
/// Friction factors that are believed, K. Usual on a spiral mixer are 5 to 20 (common practice); published examples
/// run from 0 to 19.4 (35 °F, Lehmann T., Pizza Today, June 2018, p. 29).
const USUAL_FRICTION_KELVIN: std::ops::RangeInclusive<f64> = 0.0..=30.0;

/// The factors of the rule. The number of factors n is one more than the other temperatures:
/// 3 with flour and room, 4 with a preferment.
#[derive(Debug, Clone, PartialEq)]
pub struct AdditiveRule {
    /// Temperatures of everything that counts but the water, °C: flour, room, preferment, soaker.
    pub other_celsius: Vec<f64>,
    /// Friction factor, K: a difference. Not the rise of the dough, which is about 1/n of it.
    pub friction_kelvin: f64,
}

impl AdditiveRule {
    fn check(&self) -> Nonsense {
        let mut faults = Nonsense::default();
        check_others(&mut faults, &self.other_celsius);
        input_checks::within(&mut faults, "friction_kelvin", self.friction_kelvin, -100.0..=200.0, "K");
        faults
    }

    fn judge(&self, estimate: Estimate) -> Estimate {
        let friction = self.friction_kelvin;
        estimate.valid_if(USUAL_FRICTION_KELVIN.contains(&friction), || {
            format!("a friction factor of {friction:.1} K is outside 0 to 30 K, measure it again")
        })
    }
}

/// Water temperature for a wanted dough temperature, °C.
///
/// # Errors
/// No other temperature, a temperature or friction factor that cannot be meant.
pub fn water_by_additive_rule(rule: &AdditiveRule, dough_celsius: f64) -> Result<Estimate, Nonsense> {
    let mut faults = rule.check();
    input_checks::temperature(&mut faults, "dough_celsius", dough_celsius);
    faults.or_ok()?;
    let water =
        factors(&rule.other_celsius) * dough_celsius - rule.other_celsius.iter().sum::<f64>() - rule.friction_kelvin;
    Ok(rule.judge(judge_water(Estimate::new(water, "Cel", ADDITIVE))))
}

/// Dough temperature that the rule expects from a water temperature, °C.
///
/// # Errors
/// As for [`water_by_additive_rule`].
pub fn dough_by_additive_rule(rule: &AdditiveRule, water_celsius: f64) -> Result<Estimate, Nonsense> {
    let mut faults = rule.check();
    // The water may be a figure for the books that stands for ice, colder than anything in a bakery.
    input_checks::within(&mut faults, "water_celsius", water_celsius, -250.0..=100.0, "Cel");
    faults.or_ok()?;
    let sum = rule.other_celsius.iter().sum::<f64>() + water_celsius + rule.friction_kelvin;
    let dough = sum / factors(&rule.other_celsius);
    Ok(rule.judge(Estimate::new(dough, "Cel", ADDITIVE)))
}

/// Friction factor from one batch that was mixed and measured, K.
///
/// # Errors
/// No other temperature, a temperature that cannot be meant.
pub fn friction_factor(other_celsius: &[f64], water_celsius: f64, dough_celsius: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    check_others(&mut faults, other_celsius);
    input_checks::within(&mut faults, "water_celsius", water_celsius, -250.0..=100.0, "Cel");
    input_checks::temperature(&mut faults, "dough_celsius", dough_celsius);
    faults.or_ok()?;
    let friction = factors(other_celsius) * dough_celsius - other_celsius.iter().sum::<f64>() - water_celsius;
    Ok(Estimate::new(friction, "K", ADDITIVE).valid_if(USUAL_FRICTION_KELVIN.contains(&friction), || {
        format!("a friction factor of {friction:.1} K is outside 0 to 30 K: a reading is wrong")
    }))
}

/// Number of factors: the other temperatures and the water.
#[expect(clippy::cast_precision_loss, reason = "a handful of temperatures is exact in f64")]
fn factors(other_celsius: &[f64]) -> f64 {
    other_celsius.len() as f64 + 1.0
}

fn check_others(faults: &mut Nonsense, other_celsius: &[f64]) {
    faults.unless(!other_celsius.is_empty(), "other_celsius", "is empty, give at least the flour temperature");
    for (position, value) in other_celsius.iter().enumerate() {
        input_checks::temperature(faults, &format!("other_celsius[{position}]"), *value);
    }
}
