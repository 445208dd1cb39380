//! Gelatin gels: dose, pH and temperature windows, and the dose of another Bloom strength.

use super::{Check, Window};
use crate::science::{Estimate, Method, Nonsense, input_checks};

const COMPARISON: &str = "Comparison of hydrocolloid properties, compiled table";
const USE_TABLE: &str = "Hydrocolloids reference table (use level, solids, pH)";
const HANDBOOK: &str = "from memory: Phillips and Williams, Handbook of Hydrocolloids";

const BLOOM: Method = Method {
    name: "gelatin exchange for equal gel strength, c2 = c1 sqrt(B1/B2)",
    source: "from memory: Phillips and Williams, Handbook of Hydrocolloids; Imeson, Thickening and Gelling Agents",
    domain: "approximate; same type of gelatin, 50 to 300 Bloom (Bloom test: 6.67 % gelatin, 16 to 18 h at 10 °C, 4 mm)",
};

/// What the gelatin is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GelatinUse {
    /// Any gel.
    Any,
    /// Dessert jelly or mousse.
    DessertOrMousse,
    /// Foamed confection.
    Foam,
}

impl GelatinUse {
    fn dose(self) -> Window {
        let (low, high, source) = match self {
            Self::Any => (0.3, 10.0, USE_TABLE),
            Self::DessertOrMousse => (0.6, 2.0, HANDBOOK),
            Self::Foam => (2.0, 7.0, "Gelatin in confections, trade listing"),
        };
        Window {
            quantity: "gelatin dose",
            unit: "%",
            low: Some(low),
            high: Some(high),
            below: "weak gel",
            above: "rubbery gel",
            source,
        }
    }
}

const PH: Window = Window {
    quantity: "pH, outer limit",
    unit: "[pH]",
    low: Some(4.0),
    high: Some(10.0),
    below: "gel weakens or fails, and hot acid breaks gelatin down",
    above: "gel weakens",
    source: COMPARISON,
};

const PH_STRONG: Window = Window {
    quantity: "pH, full strength",
    low: Some(5.0),
    high: Some(9.0),
    below: "weaker gel: raise the dose or the pH",
    above: "weaker gel",
    ..PH
};

const SOLIDS: Window = Window {
    quantity: "soluble solids",
    unit: "%",
    low: None,
    high: Some(80.0),
    below: "",
    above: "too little water to swell gelatin",
    source: USE_TABLE,
};

const SETTING: Window = Window {
    quantity: "setting temperature",
    unit: "Cel",
    low: None,
    high: Some(15.0),
    below: "",
    above: "sets slowly or not at all: another table says below 20 °C; allow hours in the cold",
    source: COMPARISON,
};

const HEATING: Window = Window {
    quantity: "hottest temperature of the solution",
    unit: "Cel",
    low: Some(50.0),
    high: Some(70.0),
    below: "may not dissolve: soak cold, then warm",
    above: "long heating breaks gelatin down (one source dissolves at 75 °C)",
    source: "lower end: Comparison of hydrocolloid properties, compiled table; upper end from memory: Phillips and Williams, Handbook of Hydrocolloids",
};

/// A gel set with gelatin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GelatinGel {
    /// What it is for.
    pub purpose: GelatinUse,
    /// Gelatin, % of the batch.
    pub gelatin_percent: f64,
    /// pH of the batch.
    pub ph: f64,
    /// Soluble solids, %.
    pub soluble_solids_percent: f64,
    /// Temperature at which the gel is left to set, °C.
    pub setting_celsius: f64,
    /// Hottest temperature that the dissolved gelatin saw, °C.
    pub hottest_celsius: f64,
}

/// Holds a batch against the windows of gelatin. Raw pineapple, papaya, kiwi and fig stop it from setting
/// whatever the windows say: see [`super::fruit_protease`]. Gelatin is not vegetarian, and halal or kosher only
/// from certified sources.
///
/// # Errors
/// A pH that is not 0 to 14, a share that is no percentage, an impossible temperature.
pub fn gelatin_gel(gel: &GelatinGel) -> Result<Vec<Check>, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::percent(&mut nonsense, "gelatin", gel.gelatin_percent);
    input_checks::ph(&mut nonsense, "ph", gel.ph);
    input_checks::percent(&mut nonsense, "soluble_solids", gel.soluble_solids_percent);
    input_checks::temperature(&mut nonsense, "setting_temperature", gel.setting_celsius);
    input_checks::temperature(&mut nonsense, "hottest_temperature", gel.hottest_celsius);
    nonsense.or_ok()?;
    Ok(vec![
        gel.purpose.dose().check(gel.gelatin_percent),
        PH.check(gel.ph),
        PH_STRONG.check(gel.ph),
        SOLIDS.check(gel.soluble_solids_percent),
        SETTING.check(gel.setting_celsius),
        HEATING.check(gel.hottest_celsius),
    ])
}

/// Dose of a gelatin of `to_bloom` that gives the gel strength of `dose_percent` of a gelatin of `from_bloom`, %.
///
/// # Errors
/// A dose that is no percentage, a Bloom strength that is not above zero.
pub fn bloom_exchange(dose_percent: f64, from_bloom: f64, to_bloom: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::percent(&mut nonsense, "dose", dose_percent);
    input_checks::positive(&mut nonsense, "from_bloom", from_bloom);
    input_checks::positive(&mut nonsense, "to_bloom", to_bloom);
    nonsense.or_ok()?;
    let usual = |bloom: f64| (50.0..=300.0).contains(&bloom);
    let dose = dose_percent * (from_bloom / to_bloom).sqrt();
    Ok(Estimate::new(dose, "%", BLOOM).valid_if(usual(from_bloom) && usual(to_bloom), || {
        format!("{from_bloom} or {to_bloom} Bloom is outside 50 to 300")
    }))
}
