//! What converts to what.

use whybake::units::{ConversionFault, convert, convert_difference};

use super::unit;

#[test]
fn other_kinds_do_not_convert() {
    let message = |from: &str, to: &str| convert(1.0, &unit(from), &unit(to)).expect_err(from).to_string();
    assert_eq!(message("min", "Cel"), "`min` measures time, but temperature (`Cel`) is wanted");
    assert_eq!(message("[pH]", "%"), "`[pH]` measures pH, but ratio (`%`) is wanted");
    assert_eq!(message("{FU}", "{FN}"), "`{FU}` measures FU, but FN (`{FN}`) is wanted");
    assert_eq!(message("m3.K", "Cel"), "`m3.K` does not measure the same as `Cel`");
    let kinds = [
        ("[pH]", "1"),
        ("[pH]", "mol/L"),
        ("{FU}", "1"),
        ("{FU}", "{BU}"),
        ("{CFU}/g", "/g"),
        ("mmol/kg", "/g"),
        ("mmol/kg", "meq/kg"),
        ("mol", "1"),
        ("g", "mL"),
        ("Hz", "deg/s"),
        ("/min", "min"),
    ];
    for (from, to) in kinds {
        let (from, to) = (unit(from), unit(to));
        assert!(!from.converts_to(&to) && !to.converts_to(&from), "{from:?} {to:?}");
        assert!(matches!(convert(1.0, &from, &to), Err(ConversionFault::OtherKind { .. })));
        assert!(convert_difference(1.0, &from, &to).is_err());
    }
}

#[test]
fn scales_of_their_own_convert_within_themselves() {
    let same = [
        (4.2, "[pH]", "[pH]", 4.2),
        (500.0, "{FU}", "1{FU}", 500.0),
        (12.0, "{CFU}/g", "[CFU]/g", 12.0),
        (12.0, "[CFU]/g", "[CFU]/kg", 12e3),
        (3.0, "10*3.{CFU}/g", "{CFU}/g", 3e3),
        (3.0, "meq/kg", "ueq/g", 3.0),
    ];
    for (value, from, to, expected) in same {
        let converted = convert(value, &unit(from), &unit(to)).expect(from);
        assert!((converted / expected - 1.0).abs() < 1e-12, "{value} {from} = {converted} {to}");
    }
}

#[test]
fn percentages_of_different_things_do_not_convert() {
    let fault = convert(60.0, &unit("%{flour}"), &unit("%{dough}")).expect_err("other basis");
    assert_eq!(fault.to_string(), "`%{flour}` and `%{dough}` are counted on different things");
    assert_eq!(convert(60.0, &unit("%{flour}"), &unit("%")), Ok(60.0));
    assert_eq!(convert(0.6, &unit("1"), &unit("%{flour}")), Ok(60.0));
    assert_eq!(convert(600.0, &unit("g{water}/kg{flour}"), &unit("%")), Ok(60.0));
}

#[test]
fn results_are_finite_or_faults() {
    let (tonne, microgram) = (unit("t"), unit("ug"));
    assert!(matches!(convert(1e308, &tonne, &microgram), Err(ConversionFault::OutOfRange { .. })));
    assert!(convert(f64::NAN, &tonne, &microgram).is_err());
    assert!(convert(f64::INFINITY, &tonne, &tonne).is_err());
}
