//! Pectin gels: the windows of pH, soluble solids, calcium and dose within which they set.

use super::{Check, Window};
use crate::science::{Nonsense, input_checks};

const ARTICLE: &str = "Introduction to pectin - properties, technical article of a hydrocolloid laboratory";
const FOUR_RULES: &str = "Four rules for HM pectin, supplier questions and answers";
const LECTURE: &str = "Processing of fruit jam, lecture text";
const USE_LEVEL: &str = "ingredient note: pectin";
const HANDBOOK: &str = "from memory: Phillips and Williams, Handbook of Hydrocolloids";

const fn window(
    quantity: &'static str,
    unit: &'static str,
    (low, high): (Option<f64>, Option<f64>),
    (below, above): (&'static str, &'static str),
    source: &'static str,
) -> Window {
    Window { quantity, unit, low, high, below, above, source }
}

/// Windows of high-methoxyl pectin: the outer limits of the technical article, then the narrower batch rules.
const HIGH_METHOXYL: [Window; 5] = [
    window(
        "pH, outer limit",
        "[pH]",
        (None, Some(3.5)),
        ("", "no gel: add acid late, just before depositing"),
        ARTICLE,
    ),
    window(
        "pH, batch rule",
        "[pH]",
        (Some(2.9), Some(3.3)),
        ("sets too early and weeps: use less acid", "weak and slow to set: add acid"),
        FOUR_RULES,
    ),
    window("soluble solids, outer limit", "%", (Some(55.0), None), ("no gel: cook further or add sugar", ""), ARTICLE),
    window(
        "soluble solids, batch rule",
        "%",
        (Some(59.0), Some(66.0)),
        ("weak gel: cook further", "sets early and may go grainy: cook less"),
        FOUR_RULES,
    ),
    window("pectin dose", "%", (Some(0.3), Some(1.0)), ("weak gel", "stiff, short gel"), USE_LEVEL),
];

/// A batch set with high-methoxyl pectin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PectinGel {
    /// pH of the batch when it is deposited.
    pub ph: f64,
    /// Soluble solids when it is deposited, %.
    pub soluble_solids_percent: f64,
    /// Pectin, % of the batch.
    pub pectin_percent: f64,
}

/// Holds a batch against the windows of high-methoxyl pectin. Where two sources draw the window differently,
/// both are given.
///
/// # Errors
/// A pH that is not 0 to 14, a share that is no percentage.
pub fn high_methoxyl_gel(gel: &PectinGel) -> Result<Vec<Check>, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::ph(&mut nonsense, "ph", gel.ph);
    input_checks::percent(&mut nonsense, "soluble_solids", gel.soluble_solids_percent);
    input_checks::percent(&mut nonsense, "pectin", gel.pectin_percent);
    nonsense.or_ok()?;
    let solids = gel.soluble_solids_percent;
    let values = [gel.ph, gel.ph, solids, solids, gel.pectin_percent];
    Ok(HIGH_METHOXYL.into_iter().zip(values).map(|(window, value)| window.check(value)).collect())
}

const LOW_METHOXYL: [Window; 4] = [
    window("pH", "[pH]", (Some(2.5), Some(6.5)), ("no gel", "no gel"), LECTURE),
    window("soluble solids", "%", (Some(10.0), Some(80.0)), ("weak gel", "no gel"), LECTURE),
    window(
        "soluble solids, disturbance by sugar",
        "%",
        (None, Some(60.0)),
        ("", "so much sugar disturbs the calcium gel"),
        "text on low-methoxyl pectins (web page, author not named)",
    ),
    window("pectin dose", "%", (Some(0.5), Some(3.0)), ("weak gel", "stiff, brittle gel"), USE_LEVEL),
];

const CALCIUM: Window = window(
    "calcium per pectin",
    "mg/g",
    (Some(15.0), Some(30.0)),
    ("weak gel: add a calcium salt", "grainy gel that weeps: use less calcium"),
    HANDBOOK,
);

const CALCIUM_AMIDATED: Window = Window { low: Some(5.0), high: Some(20.0), ..CALCIUM };

/// A batch set with low-methoxyl pectin and calcium.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LowMethoxyl {
    /// The batch.
    pub gel: PectinGel,
    /// Calcium, mg per g of pectin, that of fruit, milk and water included.
    pub calcium_mg_per_g: f64,
    /// Whether the pectin is amidated: it asks for less calcium.
    pub amidated: bool,
}

/// Holds a batch against the windows of low-methoxyl pectin.
///
/// # Errors
/// As [`high_methoxyl_gel`]; also a negative calcium content.
pub fn low_methoxyl_gel(batch: &LowMethoxyl) -> Result<Vec<Check>, Nonsense> {
    let mut nonsense = Nonsense::default();
    let gel = batch.gel;
    input_checks::ph(&mut nonsense, "ph", gel.ph);
    input_checks::percent(&mut nonsense, "soluble_solids", gel.soluble_solids_percent);
    input_checks::percent(&mut nonsense, "pectin", gel.pectin_percent);
    input_checks::not_negative(&mut nonsense, "calcium", batch.calcium_mg_per_g);
    nonsense.or_ok()?;
    let solids = gel.soluble_solids_percent;
    let values = [gel.ph, solids, solids, gel.pectin_percent];
    let mut checks: Vec<Check> =
        LOW_METHOXYL.into_iter().zip(values).map(|(window, value)| window.check(value)).collect();
    let calcium = if batch.amidated { CALCIUM_AMIDATED } else { CALCIUM };
    checks.push(calcium.check(batch.calcium_mg_per_g));
    Ok(checks)
}

/// How fast a pectin sets, by its degree of esterification.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SettingClass {
    /// 74 to 77 %.
    UltraRapid,
    /// 71 to below 74 %; sets at 75 to 85 °C at 65 % solids and pH 3.0 (from memory).
    Rapid,
    /// 66 to 69 %.
    MediumRapid,
    /// 58 to 65 %; sets at 45 to 60 °C at 65 % solids and pH 3.0 (from memory).
    Slow,
}

impl SettingClass {
    /// Setting temperature at 65 % solids and pH 3.0, °C, low and high; `None` where no figure is known.
    /// From memory: Phillips and Williams, Handbook of Hydrocolloids. Do not pump or stir below it.
    #[must_use]
    pub fn setting_celsius(self) -> Option<(f64, f64)> {
        match self {
            Self::Rapid => Some((75.0, 85.0)),
            Self::Slow => Some((45.0, 60.0)),
            Self::UltraRapid | Self::MediumRapid => None,
        }
    }
}

/// Setting class of a high-methoxyl pectin by its degree of esterification, %; `None` between the classes and
/// outside them. Source: Introduction to pectin - properties, technical article of a hydrocolloid laboratory.
///
/// # Errors
/// A degree that is no percentage.
pub fn setting_class(esterification_percent: f64) -> Result<Option<SettingClass>, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::percent(&mut nonsense, "esterification", esterification_percent);
    nonsense.or_ok()?;
    Ok(match esterification_percent {
        degree if (74.0..=77.0).contains(&degree) => Some(SettingClass::UltraRapid),
        degree if (71.0..74.0).contains(&degree) => Some(SettingClass::Rapid),
        degree if (66.0..=69.0).contains(&degree) => Some(SettingClass::MediumRapid),
        degree if (58.0..=65.0).contains(&degree) => Some(SettingClass::Slow),
        _ => None,
    })
}
