//! What units are called: codes, symbols, kinds.

use whybake::units::convert;

use super::{USED, unit};

#[test]
fn every_code_in_use_is_read_and_named() {
    for code in USED {
        let unit = unit(code);
        assert_eq!(unit.code(), *code);
        assert!(unit.kind().name().is_some(), "{code} has no name for what it measures");
        assert!(!unit.symbol().contains(['[', ']', '{', '}']), "{}", unit.symbol());
        assert_eq!(convert(4.2, &unit, &unit), Ok(4.2));
    }
}

#[test]
fn kinds_are_named_in_words_of_the_trade() {
    let kinds = [
        ("Cel", "temperature"),
        ("[degF]", "temperature"),
        ("min", "time"),
        ("[lb_av]", "mass"),
        ("mm", "length"),
        ("mbar", "pressure"),
        ("[ppm]", "ratio"),
        ("g/(100.g)", "ratio"),
        ("%{flour}", "ratio"),
        ("mL/g", "specific volume"),
        ("W.h/kg", "specific energy"),
        ("kW.h", "energy"),
        ("[cup_us]", "volume"),
        ("L/h", "volume flow"),
        ("kg/h", "mass flow"),
        ("W/m2", "heat flux"),
        ("N", "force"),
        ("g/L", "density"),
        ("/min", "frequency"),
        ("{rev}/min", "frequency"),
        ("[ft_i]/min", "speed"),
        ("deg", "angle"),
        ("[pH]", "pH"),
        ("{FU}", "FU"),
        ("[CFU]/g", "CFU per mass"),
        ("{CFU}/mL", "CFU per volume"),
        ("/g", "number per mass"),
        ("[mesh_i]", "number per length"),
        ("mmol/kg", "amount of substance per mass"),
        ("meq/kg", "chemical equivalents per mass"),
        ("g/mol", "mass per amount of substance"),
        ("K/min", "rate of temperature change"),
    ];
    for (code, name) in kinds {
        assert_eq!(unit(code).kind().name().as_deref(), Some(name), "{code}");
    }
    assert_eq!(unit("m3.K").kind().to_string(), "another quantity");
}

#[test]
fn symbols_are_written_as_people_do() {
    let symbols = [
        ("Cel", "°C"),
        ("[degF]", "°F"),
        ("[lb_av]", "lb"),
        ("[oz_av]", "oz"),
        ("[pH]", "pH"),
        ("min", "min"),
        ("mL/g", "mL/g"),
        ("cm3/g", "cm³/g"),
        ("W.h/kg", "Wh/kg"),
        ("kW.h/kg", "kWh/kg"),
        ("kg/m3", "kg/m³"),
        ("1", ""),
        ("%", "%"),
        ("%{flour}", "% flour"),
        ("%{total_fat}", "% total fat"),
        ("{FU}", "FU"),
        ("1{FU}", "FU"),
        ("[CFU]/g", "CFU/g"),
        ("{CFU}/g", "CFU/g"),
        ("g/(100.g)", "g/100 g"),
        ("kJ/(kg.K)", "kJ/(kg·K)"),
        ("N.m", "N·m"),
        ("/min", "/min"),
        ("s-1", "s⁻¹"),
        ("10*6/g", "10⁶/g"),
        ("[ppth]", "‰"),
        ("um", "µm"),
        ("[in_i]", "in"),
        ("[ft_i]/min", "ft/min"),
        ("[psi]", "psi"),
        ("[Btu_IT]/[lb_av]", "BTU/lb"),
        ("deg", "°"),
        ("m/(s/m)", "m/(s/m)"),
    ];
    for (code, symbol) in symbols {
        assert_eq!(unit(code).symbol(), symbol, "{code}");
    }
}
