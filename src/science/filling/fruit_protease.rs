//! Raw pineapple, papaya, kiwi and fig digest gelatin and milk protein until heat has stopped their enzymes.

use crate::science::{Estimate, Method, Nonsense, input_checks};

/// Molar gas constant, J/(mol K). Source: CODATA 2018.
const GAS_CONSTANT: f64 = 8.314_462_618;
/// Boltzmann constant over Planck constant, 1/(s K). Source: SI 2019, 1.380649e-23 / 6.62607015e-34.
const BOLTZMANN_OVER_PLANCK: f64 = 2.083_661_912e10;

const BROMELAIN: Method = Method {
    name: "first-order inactivation of bromelain, Arrhenius",
    source: "Sriwatanapongse et al., Trans. ASAE 43 (2000) 1703, abstract: k = 1.37e50 exp(-3.26e5/RT) 1/min",
    domain: "pineapple juice, 55 to 67 °C, at temperature; pieces heat more slowly than juice",
};

const PAPAIN: Method = Method {
    name: "inactivation of papain, Eyring",
    source: "Park, Kim, Shin and Noh 1979, abstract: enthalpy 91.4 kJ/mol, entropy -49.6 J/(mol K)",
    domain: "crude extract, pH 7, 60 to 90 °C; the decay was biphasic, so one rate is a simplification",
};

/// The enzyme of a fruit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Protease {
    /// Pineapple.
    Bromelain,
    /// Papaya.
    Papain,
    /// Kiwi fruit. Some cultivars hold little of it.
    Actinidin,
    /// Fig.
    Ficin,
}

/// A rule for enzymes, kinetics or not: hold the fruit's centre so hot for so long.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HoldRule {
    /// Least temperature in the centre, °C.
    pub celsius: f64,
    /// Least time at it, min.
    pub minutes: f64,
    /// Where the rule comes from and how far to trust it.
    pub source: &'static str,
}

impl Protease {
    /// The hold that is known to stop the enzyme.
    #[must_use]
    pub fn rule(self) -> HoldRule {
        match self {
            Self::Bromelain => HoldRule {
                celsius: 70.0,
                minutes: 3.0,
                source: "70 °C from a consumer food page; 3 min because the Arrhenius equation then gives more than three decimal reductions",
            },
            Self::Papain => HoldRule {
                celsius: 100.0,
                minutes: 40.0,
                source: "Eyring equation extrapolated to the boil: three decimal reductions in about 40 min; canned or long-boiled papaya is the practical way",
            },
            Self::Actinidin => HoldRule {
                celsius: 60.0,
                minutes: 5.0,
                source: "Meat Sci. 145 (2018) 238, abstract: under 5 min at 60 and 65 °C in extract; mixed with protein it survived up to 24 h, so heat the fruit alone",
            },
            Self::Ficin => HoldRule {
                celsius: 90.0,
                minutes: 5.0,
                source: "from memory: enzyme handbooks, 80 to 90 °C for several minutes; low confidence, so heat to the boil",
            },
        }
    }

    fn tested_celsius(self) -> Option<(f64, f64, Method)> {
        match self {
            Self::Bromelain => Some((55.0, 67.0, BROMELAIN)),
            Self::Papain => Some((60.0, 90.0, PAPAIN)),
            Self::Actinidin | Self::Ficin => None,
        }
    }

    /// First-order rate, 1/min.
    fn rate(self, celsius: f64) -> Option<f64> {
        let kelvin = celsius + 273.15;
        let thermal = GAS_CONSTANT * kelvin;
        match self {
            Self::Bromelain => Some(1.37e50 * (-3.26e5 / thermal).exp()),
            Self::Papain => {
                let entropy = (-49.6 / GAS_CONSTANT).exp();
                Some(60.0 * BOLTZMANN_OVER_PLANCK * kelvin * entropy * (-91.4e3 / thermal).exp())
            }
            Self::Actinidin | Self::Ficin => None,
        }
    }
}

/// A fruit held hot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heating {
    /// The enzyme.
    pub protease: Protease,
    /// Temperature in the centre of the fruit, °C.
    pub celsius: f64,
    /// Time at that temperature, min.
    pub minutes: f64,
}

/// What the heat did.
#[derive(Debug, Clone, PartialEq)]
pub struct Inactivation {
    /// Decimal reductions of the activity; `None` when no kinetics are known.
    pub decimal_reductions: Option<Estimate>,
    /// Activity left, %; `None` when no kinetics are known.
    pub remaining: Option<Estimate>,
    /// The hold that is known to stop the enzyme.
    pub rule: HoldRule,
    /// Whether the fruit was held at least as hot and as long as the rule. `false` does not mean that the enzyme
    /// is alive: shorter and hotter may do.
    pub keeps_rule: bool,
}

/// How far a hold has stopped the enzyme of a fruit.
///
/// # Errors
/// An impossible temperature, a negative time.
pub fn fruit_protease(heating: &Heating) -> Result<Inactivation, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::temperature(&mut nonsense, "temperature", heating.celsius);
    input_checks::not_negative(&mut nonsense, "time", heating.minutes);
    nonsense.or_ok()?;
    let Heating { protease, celsius, minutes } = *heating;
    let rule = protease.rule();
    let decimal_reductions = estimate(protease, celsius, "1", |rate| rate * minutes / std::f64::consts::LN_10);
    let remaining = estimate(protease, celsius, "%", |rate| 100.0 * (-rate * minutes).exp());
    Ok(Inactivation {
        decimal_reductions,
        remaining,
        rule,
        keeps_rule: celsius >= rule.celsius && minutes >= rule.minutes,
    })
}

/// Minutes at a temperature (°C) for so many decimal reductions of the activity; `None` when no kinetics are
/// known. One reduction is the D value; the half-life is log10(2) = 0.301 reductions.
///
/// # Errors
/// An impossible temperature, reductions that are not above zero.
pub fn minutes_to_reduce(
    protease: Protease,
    celsius: f64,
    decimal_reductions: f64,
) -> Result<Option<Estimate>, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::temperature(&mut nonsense, "temperature", celsius);
    input_checks::positive(&mut nonsense, "decimal_reductions", decimal_reductions);
    nonsense.or_ok()?;
    let minutes = |rate: f64| decimal_reductions * std::f64::consts::LN_10 / rate;
    Ok(estimate(protease, celsius, "min", minutes))
}

fn estimate(protease: Protease, celsius: f64, unit: &'static str, of_rate: impl Fn(f64) -> f64) -> Option<Estimate> {
    let (from, to, method) = protease.tested_celsius()?;
    let rate = protease.rate(celsius)?;
    Some(
        Estimate::new(of_rate(rate), unit, method).valid_if((from..=to).contains(&celsius), || {
            format!("{celsius} °C is outside the tested {from} to {to} °C")
        }),
    )
}
