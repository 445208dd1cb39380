//! What holds for every value, unit and text.

use proptest::prelude::*;
use whybake::units::{Unit, convert, convert_difference};

use super::{USED, unit};

fn convertible() -> impl Strategy<Value = (Unit, Unit)> {
    let units: Vec<Unit> = USED.iter().map(|code| unit(code)).collect();
    let to_all = |from: &Unit| units.iter().map(|to| (from.clone(), to.clone())).collect::<Vec<_>>();
    let mut pairs: Vec<_> = units.iter().flat_map(to_all).collect();
    pairs.retain(|(from, to)| from != to && from.converts_to(to));
    prop::sample::select(pairs)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn there_and_back_is_the_same_value((from, to) in convertible(), value in -1e6..1e6_f64) {
        let back = convert(convert(value, &from, &to).unwrap(), &to, &from).unwrap();
        // 14 digits are kept, of temperatures counted from absolute zero.
        prop_assert!((back - value).abs() <= 1e-12 * value.abs().max(300.0 * f64::from(u8::from(from.kind() == unit("K").kind()))), "{value} {from} came back as {back}");
        let back = convert_difference(convert_difference(value, &from, &to).unwrap(), &to, &from).unwrap();
        prop_assert!((back - value).abs() <= 1e-12 * value.abs(), "{value} {from} came back as {back}");
    }

    #[test]
    fn a_difference_of_values_is_the_difference_of_the_converted_values(
        (from, to) in convertible(), low in -1e3..1e3_f64, high in -1e3..1e3_f64,
    ) {
        let converted = convert(high, &from, &to).unwrap() - convert(low, &from, &to).unwrap();
        let difference = convert_difference(high - low, &from, &to).unwrap();
        let size = convert_difference(high.abs() + low.abs(), &from, &to).unwrap();
        prop_assert!((converted - difference).abs() <= 1e-12 * size + 1e-9, "{converted} {difference}");
    }

    #[test]
    fn conversion_keeps_the_order_of_values((from, to) in convertible(), low in -1e3..1e3_f64, step in 0.0..1e3_f64) {
        let ends = [low, low + step].map(|value| convert(value, &from, &to).unwrap());
        prop_assert!(ends[0] <= ends[1]);
    }

    #[test]
    fn any_text_is_a_unit_or_a_fault(code in ".{0,80}") {
        if let Err(fault) = Unit::parse(&code) {
            prop_assert!(!fault.to_string().is_empty());
        }
    }

    #[test]
    fn texts_of_unit_characters_are_units_or_faults_with_usable_suggestions(
        code in "([kmcgsLCKF%/.(){}0-9*^-]|Cel|\\[degF\\]|\\[pH\\]|mol|\\{a\\}){1,12}",
    ) {
        match Unit::parse(&code) {
            Ok(unit) => prop_assert_eq!(convert(1.5, &unit, &unit), Ok(1.5)),
            Err(fault) => if let Some(suggestion) = fault.suggestion() {
                prop_assert!(Unit::parse(suggestion).is_ok(), "{}", suggestion);
            },
        }
    }
}
