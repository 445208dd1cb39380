//! Water absorption: the farinograph's corrections, and the same absorption for drier or moister flour.

use super::moisture::STANDARD_MOISTURE_PERCENT;
use crate::science::{Estimate, Method, Nonsense, input_checks};

/// Flour of 14 % moisture in the large bowl, g.
const LARGE_BOWL_G: f64 = 300.0;
/// Consistency that absorption is defined at, FU.
const TARGET_CONSISTENCY_FU: f64 = 500.0;
/// Water that moves the consistency by one unit in the large bowl, mL (from memory: ICC 115/1, ISO 5530-1).
const ML_PER_FU: f64 = 0.096;

const SAMPLE: Method = Method {
    name: "farinograph sample: 300 g × 86 / (100 − moisture)",
    source: "Freund W., Kim M.-Y., ch. 12 in Future of Flour (2006), p. 101",
    domain: "large bowl, flour of 9 to 18 % moisture (from memory: ISO 5530-1, table 1)",
};
const FARINOGRAPH: Method = Method {
    name: "farinograph absorption: (water + 0.096 mL/FU × (consistency − 500) + sample − 300) / 3",
    source: "from memory: ICC 115/1 and ISO 5530-1",
    domain: "large bowl, maximum consistency 480 to 520 FU",
};
const SAME_DOUGH: Method = Method {
    name: "absorption at another moisture: same dough on the same dry flour",
    source: "mass balance",
    domain: "flours that differ in moisture only",
};

/// A titration in the large bowl.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FarinographReading {
    /// Moisture of the flour, %; the sample is weighed by [`farinograph_sample`].
    pub moisture_percent: f64,
    /// Water added, mL.
    pub water_ml: f64,
    /// Maximum consistency, FU.
    pub consistency_fu: f64,
}

/// Flour to weigh into the large bowl, g.
///
/// # Errors
/// A moisture outside 0 to 30 %.
pub fn farinograph_sample(moisture_percent: f64) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    check_moisture(&mut faults, "moisture_percent", moisture_percent);
    faults.or_ok()?;
    Ok(judge_moisture(Estimate::new(sample_g(moisture_percent), "g", SAMPLE), moisture_percent))
}

/// Absorption at 500 FU, mL per 100 g of flour at 14 % moisture.
///
/// # Errors
/// A moisture outside 0 to 30 %, water outside 100 to 300 mL, a consistency outside 200 to 1000 FU.
pub fn farinograph_absorption(reading: &FarinographReading) -> Result<Estimate, Nonsense> {
    let FarinographReading { moisture_percent, water_ml, consistency_fu } = *reading;
    let mut faults = Nonsense::default();
    check_moisture(&mut faults, "moisture_percent", moisture_percent);
    input_checks::within(&mut faults, "water_ml", water_ml, 100.0..=300.0, "mL");
    input_checks::within(&mut faults, "consistency_fu", consistency_fu, 200.0..=1000.0, "FU");
    faults.or_ok()?;
    let corrected = water_ml + ML_PER_FU * (consistency_fu - TARGET_CONSISTENCY_FU);
    let absorption = (corrected + sample_g(moisture_percent) - LARGE_BOWL_G) / 3.0;
    let estimate = Estimate::new(absorption, "%", FARINOGRAPH);
    let near = (consistency_fu - TARGET_CONSISTENCY_FU).abs() <= 20.0;
    Ok(judge_moisture(estimate, moisture_percent)
        .valid_if(near, || format!("{consistency_fu:.0} FU is more than 20 FU off 500 FU, titrate again")))
}

/// Absorption for flour of another moisture, % of that flour: 1 % drier flour takes about 1.9 % more water.
///
/// # Errors
/// An absorption outside 0 to 300 %, a moisture outside 0 to 30 %.
pub fn absorption_at_moisture(
    absorption_percent: f64,
    moisture_percent: f64,
    wanted_moisture_percent: f64,
) -> Result<Estimate, Nonsense> {
    let mut faults = Nonsense::default();
    let input = "absorption_percent";
    input_checks::within(&mut faults, input, absorption_percent, 0.0..=300.0, "%");
    check_moisture(&mut faults, "moisture_percent", moisture_percent);
    let wanted = wanted_moisture_percent;
    check_moisture(&mut faults, "wanted_moisture_percent", wanted);
    faults.or_ok()?;
    let dough_per_dry = (100.0 + absorption_percent) / (100.0 - moisture_percent);
    let value = dough_per_dry * (100.0 - wanted) - 100.0;
    Ok(Estimate::new(value, "%", SAME_DOUGH))
}

fn sample_g(moisture_percent: f64) -> f64 {
    LARGE_BOWL_G * (100.0 - STANDARD_MOISTURE_PERCENT) / (100.0 - moisture_percent)
}

fn check_moisture(faults: &mut Nonsense, input: &str, value: f64) {
    input_checks::within(faults, input, value, 0.0..=30.0, "%");
}

fn judge_moisture(estimate: Estimate, moisture_percent: f64) -> Estimate {
    estimate.valid_if((9.0..=18.0).contains(&moisture_percent), || {
        format!("{moisture_percent} % moisture is outside 9 to 18 %")
    })
}
