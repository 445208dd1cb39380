//! Published facts as CSV: reading them and holding a calculation against them.

use std::collections::HashMap;

use whybake::science::{Estimate, Nonsense};

/// One row: column name to text.
pub(crate) struct Row(HashMap<String, String>);

impl Row {
    /// The text of a column.
    pub(crate) fn text(&self, column: &str) -> &str {
        self.0.get(column).unwrap_or_else(|| panic!("no column `{column}`"))
    }

    /// The number in a column; `None` when it is empty.
    pub(crate) fn number_if_any(&self, column: &str) -> Option<f64> {
        let text = self.text(column);
        (!text.is_empty()).then(|| text.parse().unwrap_or_else(|_| panic!("`{text}` is no number")))
    }

    /// The number in a column that is never empty.
    pub(crate) fn number(&self, column: &str) -> f64 {
        self.number_if_any(column).unwrap_or_else(|| panic!("`{column}` is empty"))
    }

    /// Half a unit of the last printed digit of the number in a column: its rounding.
    pub(crate) fn rounding(&self, column: &str) -> f64 {
        let decimals = self.text(column).split_once('.').map_or(0, |(_, decimals)| decimals.len());
        // The hair above one half lets a value that lies exactly between two roundings pass.
        0.500_001 * 10_f64.powi(-i32::try_from(decimals).unwrap())
    }
}

/// Path of a file in `tests/reference`.
pub(crate) fn path(file: &str) -> String {
    format!("{}/tests/reference/{file}", env!("CARGO_MANIFEST_DIR"))
}

/// All rows of a table; every row must name its source and provenance.
pub(crate) fn read(file: &str) -> Vec<Row> {
    let mut reader = csv::Reader::from_path(path(file)).unwrap();
    let rows: Vec<Row> = reader.deserialize().map(|row| Row(row.unwrap())).collect();
    assert!(!rows.is_empty(), "{file} is empty");
    for (place, row) in rows.iter().enumerate() {
        for column in ["source", "provenance"] {
            assert!(!row.text(column).is_empty(), "{file}: row {place} has no {column}");
        }
    }
    rows
}

/// The only row whose columns have these texts.
pub(crate) fn find(file: &str, wanted: &[(&str, &str)]) -> Row {
    let mut rows = read(file).into_iter().filter(|row| wanted.iter().all(|(column, text)| row.text(column) == *text));
    let row = rows.next().unwrap_or_else(|| panic!("{file} has no row {wanted:?}"));
    assert!(rows.next().is_none(), "{file} has several rows {wanted:?}");
    row
}

/// Inputs of a fact, `name=number` separated by semicolons, in their order.
pub(crate) struct Inputs(Vec<(String, f64)>);

impl Inputs {
    fn parse(text: &str) -> Self {
        let pair = |part: &str| {
            let (name, value) = part.split_once('=').unwrap_or_else(|| panic!("input `{part}`"));
            let value = value.parse().unwrap_or_else(|_| panic!("input `{part}`"));
            (name.to_owned(), value)
        };
        let parts = text.split(';').filter(|part| !part.is_empty());
        Self(parts.map(pair).collect())
    }

    /// The number of that name, which must be there.
    pub(crate) fn get(&self, name: &str) -> f64 {
        self.optional(name).unwrap_or_else(|| panic!("no input `{name}`"))
    }

    /// A number that may be left out.
    pub(crate) fn optional(&self, name: &str) -> Option<f64> {
        self.iter().find(|(input, _)| *input == name).map(|(_, value)| value)
    }

    /// All of them.
    pub(crate) fn iter(&self) -> impl Iterator<Item = (&str, f64)> {
        self.0.iter().map(|(name, value)| (name.as_str(), *value))
    }
}

/// Holds `calculate(calculation, inputs)` against every row of a file and lists all misses.
///
/// A row that `agrees` must come out within `low` and `high`; one that `disagrees` must not, and must say why: a
/// documented disagreement that has gone is news as well. At least so many rows must agree.
pub(crate) fn hold(file: &str, at_least: usize, calculate: impl Fn(&str, &Inputs) -> f64) {
    let rows = read(file);
    let agreeing = rows.iter().filter(|row| row.text("expect") == "agrees").count();
    assert!(agreeing >= at_least, "{file}: {agreeing} agreeing facts");
    let misses: Vec<String> = rows.iter().filter_map(|row| miss(row, &calculate)).collect();
    assert!(misses.is_empty(), "{file}:\n{}", misses.join("\n"));
}

fn miss(row: &Row, calculate: impl Fn(&str, &Inputs) -> f64) -> Option<String> {
    let value = calculate(row.text("calculation"), &Inputs::parse(row.text("inputs")));
    // A whisker for decimal fractions that binary numbers cannot hold.
    let bounds = row.number("low") - 1e-9..=row.number("high") + 1e-9;
    let inside = bounds.contains(&value);
    let as_said = match row.text("expect") {
        "agrees" => inside,
        "disagrees" => {
            assert!(!row.text("note").is_empty(), "{}: say why", row.text("id"));
            !inside
        }
        other => panic!("{}: expect `{other}`", row.text("id")),
    };
    (!as_said).then(|| {
        let columns = ["id", "calculation", "inputs", "published", "low", "high", "unit", "expect"];
        let words = columns.map(|column| row.text(column)).join(" | ");
        format!("computed {value:.7}: {words}")
    })
}

/// The figure of an estimate that must be there.
pub(crate) fn value(estimate: Result<Estimate, Nonsense>) -> f64 {
    estimate.expect("inputs that can be meant").value
}

/// Names of the faulty inputs, in order.
pub(crate) fn faulty<T: std::fmt::Debug>(result: Result<T, Nonsense>) -> Vec<String> {
    let faults = result.expect_err("nonsense").faults;
    faults.into_iter().map(|fault| fault.input).collect()
}

/// Fails, naming the case, unless `got` lies within `tolerance` of `expected`.
pub(crate) fn assert_close(case: &str, got: f64, expected: f64, tolerance: f64) {
    assert!((got - expected).abs() <= tolerance, "{case}: {got} is not {expected} ± {tolerance}");
}

/// Fails unless two figures agree to 1e-9 of their size.
pub(crate) fn assert_same(left: f64, right: f64) {
    let scale = left.abs().max(right.abs()).max(1.0);
    assert!((left - right).abs() <= 1e-9 * scale, "{left} is not {right}");
}
