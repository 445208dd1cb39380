//! Conversions against published definitions.

use whybake::units::{convert, convert_difference};

use super::unit;

/// rule, value, from, to, expected, tolerance, source; an independent library is checked against the same file.
const PUBLISHED: &str = include_str!("../reference/units.csv");

#[test]
fn conversions_agree_with_published_definitions() {
    let mut checked = 0;
    for line in PUBLISHED.lines().skip(1) {
        let [rule, value, from, to, expected, tolerance, source]: [&str; 7] =
            line.splitn(7, ',').collect::<Vec<_>>().try_into().expect(line);
        let [value, expected, tolerance]: [f64; 3] = [value, expected, tolerance].map(|n| n.parse().expect(line));
        let convert = if rule == "difference" { convert_difference } else { convert };
        let converted = convert(value, &unit(from), &unit(to)).expect(line);
        let error = (converted - expected).abs();
        assert!(error <= tolerance * expected.abs().max(1e-9), "{line}\ngave {converted}, source: {source}");
        checked += 1;
    }
    assert!(checked >= 60, "{checked}");
}

/// Values that meet a limit exactly in one unit meet it in the other.
#[test]
fn round_values_stay_round() {
    let exact = [
        (86.0, "[degF]", "Cel", 30.0),
        (77.0, "[degF]", "Cel", 25.0),
        (24.0, "Cel", "[degF]", 75.2),
        (35.0, "mm", "cm", 3.5),
        (11.0, "W.h/kg", "kJ/kg", 39.6),
        (61.0, "%", "1", 0.61),
        (0.07, "1", "%", 7.0),
        (90.0, "min", "h", 1.5),
        (2.0, "[in_i]", "mm", 50.8),
    ];
    for (value, from, to, expected) in exact {
        assert_eq!(convert(value, &unit(from), &unit(to)), Ok(expected), "{value} {from} in {to}");
    }
}
