//! Reading between the rows of a published table.

/// Straight line between the neighbouring `(x, y)` rows, which must rise in `x`; held at the end rows outside them.
///
/// Gives `NaN` for an empty table.
pub(super) fn piecewise_linear(rows: &[(f64, f64)], x: f64) -> f64 {
    let between = rows.windows(2).find_map(|pair| match pair {
        [(x0, y0), (x1, y1)] if (*x0..=*x1).contains(&x) => Some(y0 + (y1 - y0) * (x - x0) / (x1 - x0)),
        _ => None,
    });
    between.unwrap_or_else(|| {
        let end = rows.first().filter(|(x0, _)| x < *x0).or_else(|| rows.last());
        end.map_or(f64::NAN, |(_, y)| *y)
    })
}

/// First and last `x` of a table; zeros for an empty one.
pub(super) fn span(rows: &[(f64, f64)]) -> (f64, f64) {
    let first = rows.first().map_or(0.0, |(x, _)| *x);
    let last = rows.last().map_or(0.0, |(x, _)| *x);
    (first, last)
}
