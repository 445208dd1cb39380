//! How much of a sugar stays dissolved in water at a temperature: the limit beyond which it may crystallise.

use super::{Estimate, Method, Nonsense, input_checks, interpolation};

/// A sugar with a published solubility.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sugar {
    /// Sucrose.
    Sucrose,
    /// Glucose (dextrose), as anhydrous; the solid is the monohydrate up to 50 °C.
    Glucose,
    /// Fructose.
    Fructose,
    /// Lactose, final (mutarotated) solubility.
    Lactose,
    /// Maltose.
    Maltose,
}

const SUCROSE: Method = Method {
    name: "sucrose solubility polynomial",
    source: "from memory: Charles, Int. Sugar J. 62 (1960) 126",
    domain: "0-90 Cel, pure sucrose in water, +-0.1 %; older food books (after Herzfeld) print up to 0.6 % more, so \
        allow +-0.5 % in a crystallisation rule",
};
const GLUCOSE: Method = Method {
    name: "glucose solubility table, interpolated",
    source: "from memory: Jackson and Silsbee, NBS Scientific Paper 437 (1922); Bates, NBS Circular C440 (1942)",
    domain: "0-50 Cel, as anhydrous glucose over the monohydrate, +-0.3 %",
};
const FRUCTOSE: Method = Method {
    name: "fructose solubility table, interpolated",
    source: "from memory: Bates, NBS Circular C440 (1942)",
    domain: "20-50 Cel, +-0.3 %",
};
const LACTOSE: Method = Method {
    name: "lactose final solubility table, interpolated",
    source: "Hudson, as tabulated in Lowe, Experimental Cookery",
    domain: "0-89 Cel; 0.1 % at the rows, up to about 1 % between distant rows",
};
const MALTOSE: Method = Method {
    name: "maltose solubility table, interpolated",
    source: "Gillis, as tabulated in Lowe, Experimental Cookery",
    domain: "0.6-96.5 Cel; 0.1 % at the rows, up to about 1 % between distant rows",
};

/// `(°C, % w/w)` rows of the sources named in [`GLUCOSE`], [`FRUCTOSE`], [`LACTOSE`] and [`MALTOSE`].
const GLUCOSE_ROWS: [(f64, f64); 6] =
    [(0.0, 35.0), (20.0, 47.8), (25.0, 51.0), (30.0, 54.6), (40.0, 61.8), (50.0, 70.9)];
const FRUCTOSE_ROWS: [(f64, f64); 5] = [(20.0, 78.9), (25.0, 80.3), (30.0, 81.5), (40.0, 84.3), (50.0, 86.6)];
const LACTOSE_ROWS: [(f64, f64); 7] =
    [(0.0, 10.6), (15.0, 14.5), (25.0, 17.8), (39.0, 24.0), (49.0, 29.8), (64.0, 39.7), (89.0, 58.2)];
const MALTOSE_ROWS: [(f64, f64); 6] =
    [(0.6, 36.1), (21.0, 44.1), (29.6, 48.0), (49.4, 58.3), (66.3, 66.7), (96.5, 85.1)];

/// Solubility of one sugar alone in water, grams per 100 g of saturated solution (unit `%`), at 0-100 °C.
///
/// Outside a table's rows its end row is given, with a remark. A second sugar changes the limit of the first.
///
/// # Errors
/// [`Nonsense`] for a temperature outside 0-100 °C.
pub fn solubility(sugar: Sugar, temperature_celsius: f64) -> Result<Estimate, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::within(&mut nonsense, "temperature", temperature_celsius, 0.0..=100.0, "Cel");
    nonsense.or_ok()?;
    let (percent, method, (from, to)) = match sugar {
        Sugar::Sucrose => (sucrose_percent(temperature_celsius), SUCROSE, (0.0, 90.0)),
        Sugar::Glucose => read(&GLUCOSE_ROWS, GLUCOSE, temperature_celsius),
        Sugar::Fructose => read(&FRUCTOSE_ROWS, FRUCTOSE, temperature_celsius),
        Sugar::Lactose => read(&LACTOSE_ROWS, LACTOSE, temperature_celsius),
        Sugar::Maltose => read(&MALTOSE_ROWS, MALTOSE, temperature_celsius),
    };
    Ok(Estimate::new(percent, "%", method).valid_if((from..=to).contains(&temperature_celsius), || {
        format!("{temperature_celsius:.1} Cel is outside the table's {from}-{to} Cel")
    }))
}

fn read(rows: &[(f64, f64)], method: Method, celsius: f64) -> (f64, Method, (f64, f64)) {
    (interpolation::piecewise_linear(rows, celsius), method, interpolation::span(rows))
}

fn sucrose_percent(celsius: f64) -> f64 {
    64.397 + celsius * (0.07251 + celsius * (0.002_056_9 - celsius * 9.035e-6))
}
