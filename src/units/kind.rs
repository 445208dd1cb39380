//! What a unit measures, and what the trade calls it.

use std::fmt;

/// Exponents of the UCUM base units: metre, second, gram, radian, kelvin, coulomb, candela.
type Exponents = [i8; 7];

/// What a unit measures: the powers of the base units, and of scales of its own (`pH`, `FU`, amount of substance).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kind {
    exponents: Exponents,
    scales: Vec<(Box<str>, i32)>,
}

impl Kind {
    pub(super) fn new(exponents: Exponents, scales: Vec<(Box<str>, i32)>) -> Self {
        Self { exponents, scales }
    }

    /// Whether this is a plain number: a fraction, a percentage, a ratio of equal units.
    pub fn is_ratio(&self) -> bool {
        self.exponents == [0; 7] && self.scales.is_empty()
    }

    /// What the trade calls it (`temperature`, `specific volume`, `CFU per mass`); `None` for an unusual combination.
    pub fn name(&self) -> Option<String> {
        match self.scales.as_slice() {
            [] => named(self.exponents)
                .map(str::to_owned)
                .or_else(|| inverse_name(self.exponents).map(|name| format!("number per {name}"))),
            [(scale, 1)] if self.exponents == [0; 7] => Some(scale.to_string()),
            [(scale, 1)] => inverse_name(self.exponents).map(|name| format!("{scale} per {name}")),
            [(scale, -1)] => named(self.exponents).map(|name| format!("{name} per {scale}")),
            _ => None,
        }
    }
}

/// The name, or for an unusual combination `another quantity`.
impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name().as_deref().unwrap_or("another quantity"))
    }
}

fn named(exponents: Exponents) -> Option<&'static str> {
    let known = NAMES.iter().find(|(known, _)| *known == exponents)?;
    Some(known.1)
}

fn inverse_name(exponents: Exponents) -> Option<&'static str> {
    named(exponents.map(i8::saturating_neg))
}

/// Quantities by their dimension (ISO 80000); where one dimension has several, the one that a bakery measures.
const NAMES: &[(Exponents, &str)] = &[
    ([0, 0, 0, 0, 0, 0, 0], "ratio"),
    ([0, 0, 0, 0, 1, 0, 0], "temperature"),
    ([0, 1, 0, 0, 0, 0, 0], "time"),
    ([0, 0, 1, 0, 0, 0, 0], "mass"),
    ([1, 0, 0, 0, 0, 0, 0], "length"),
    ([2, 0, 0, 0, 0, 0, 0], "area"),
    ([3, 0, 0, 0, 0, 0, 0], "volume"),
    ([0, 0, 0, 1, 0, 0, 0], "angle"),
    ([0, -1, 0, 0, 0, 0, 0], "frequency"),
    ([1, -1, 0, 0, 0, 0, 0], "speed"),
    ([1, -2, 0, 0, 0, 0, 0], "acceleration"),
    ([3, -1, 0, 0, 0, 0, 0], "volume flow"),
    ([0, -1, 1, 0, 0, 0, 0], "mass flow"),
    ([-2, -1, 1, 0, 0, 0, 0], "mass flow per area"),
    ([1, -2, 1, 0, 0, 0, 0], "force"),
    ([-1, -2, 1, 0, 0, 0, 0], "pressure"),
    ([0, -2, 1, 0, 0, 0, 0], "surface tension"),
    ([2, -2, 1, 0, 0, 0, 0], "energy"),
    ([2, -3, 1, 0, 0, 0, 0], "power"),
    ([0, -3, 1, 0, 0, 0, 0], "heat flux"),
    ([2, -2, 0, 0, 0, 0, 0], "specific energy"),
    ([2, -3, 0, 0, 0, 0, 0], "specific power"),
    ([-3, 0, 1, 0, 0, 0, 0], "density"),
    ([3, 0, -1, 0, 0, 0, 0], "specific volume"),
    ([-2, 0, 1, 0, 0, 0, 0], "mass per area"),
    ([-1, 0, 1, 0, 0, 0, 0], "mass per length"),
    ([-1, -1, 1, 0, 0, 0, 0], "viscosity"),
    ([2, -1, 0, 0, 0, 0, 0], "kinematic viscosity"),
    ([0, -1, 0, 0, 1, 0, 0], "rate of temperature change"),
    ([2, -2, 0, 0, -1, 0, 0], "specific heat"),
    ([2, -2, 1, 0, -1, 0, 0], "heat capacity"),
    ([1, -3, 1, 0, -1, 0, 0], "thermal conductivity"),
    ([0, -3, 1, 0, -1, 0, 0], "heat transfer coefficient"),
    ([0, -1, 0, 1, 0, 0, 0], "angular velocity"),
    ([0, -1, 0, 0, 0, 1, 0], "electric current"),
    ([2, -2, 1, 0, 0, -1, 0], "voltage"),
    ([-3, 1, -1, 0, 0, 2, 0], "electric conductivity"),
];
