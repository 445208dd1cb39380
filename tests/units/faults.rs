//! Codes that are refused: what the message says and what it suggests.

use whybake::units::{MAX_CODE_LENGTH, Unit, UnitFault};

fn fault(code: &str) -> UnitFault {
    Unit::parse(code).err().unwrap_or_else(|| panic!("{code} was read"))
}

#[test]
fn spellings_of_the_trade_are_faults_with_the_code_that_was_meant() {
    let spellings = [
        ("C", "Cel"),
        ("°C", "Cel"),
        ("degC", "Cel"),
        ("deg C", "Cel"),
        ("celsius", "Cel"),
        ("Celcius", "Cel"),
        ("cel", "Cel"),
        ("F", "[degF]"),
        ("°F", "[degF]"),
        ("degF", "[degF]"),
        ("[degf]", "[degF]"),
        ("lb", "[lb_av]"),
        ("lbs", "[lb_av]"),
        ("LBS.", "[lb_av]"),
        ("[lbav]", "[lb_av]"),
        ("oz", "[oz_av]"),
        ("in", "[in_i]"),
        ("inch", "[in_i]"),
        ("ft", "[ft_i]"),
        ("min.", "min"),
        ("mins", "min"),
        ("minuts", "min"),
        ("sec", "s"),
        ("hr", "h"),
        ("hours", "h"),
        ("percent", "%"),
        ("pct", "%"),
        ("cc", "cm3"),
        ("pH", "[pH]"),
        ("ph", "[pH]"),
        ("PH", "[pH]"),
        ("mph", "[mi_i]/h"),
        ("AU", "{AU}"),
        ("gal", "[gal_us]"),
        ("psi", "[psi]"),
        ("BU", "{BU}"),
        ("FU", "{FU}"),
        ("BE", "{BU}"),
        ("rpm", "/min"),
        ("ppm", "[ppm]"),
        ("Kg", "kg"),
        ("KG", "kg"),
        ("ML", "mL"),
        ("mb", "mbar"),
        ("", "1"),
        (" g", "g"),
        ("kWh/kg", "kW.h/kg"),
        ("Wh/kg", "W.h/kg"),
        ("cm³/g", "cm3/g"),
        ("kg/m^3", "kg/m3"),
        ("µm", "um"),
        ("g per kg", "g/kg"),
        ("lbs/ft3", "[lb_av]/[ft_i]3"),
        ("BTU/lb", "[Btu_IT]/[lb_av]"),
        ("°C/min", "K/min"),
        ("Cel/min", "K/min"),
        ("[degF]/min", "[degR]/min"),
        ("J/g/C", "J/g/K"),
        ("CFU/g", "{CFU}/g"),
        ("g/100.g", "g/(100.g)"),
        ("kJ/kg.K", "kJ/(kg.K)"),
        ("W/m2.K/s", "W/(m2.K)/s"),
    ];
    for (written, meant) in spellings {
        assert_eq!(fault(written).suggestion(), Some(meant), "{written}");
    }
}

#[test]
fn nonsense_gets_no_suggestion() {
    for code in ["xyzzy", "furlongs/fortnight", "q", "日本", "{", "[[", "1/0"] {
        assert_eq!(fault(code).suggestion(), None, "{code}");
    }
}

#[test]
fn faults_say_what_is_wrong() {
    let messages = [
        ("degC", "unknown unit `degC`"),
        ("C", "`C` is the coulomb in UCUM"),
        ("J/g/C", "`C` is the coulomb in UCUM"),
        ("kJ/kg.K", "in `kJ/kg.K` the dot multiplies the whole unit: UCUM reads from left to right"),
        ("Cel/min", "`Cel/min` multiplies or divides by a scale that has no sizes to multiply"),
        ("10*300", "the size of `10*300` is out of range"),
        ("a\0b\n", "unknown unit `a\u{fffd}b\u{fffd}`"),
    ];
    for (code, message) in messages {
        assert_eq!(fault(code).to_string(), message);
    }
    let long = fault(&"m".repeat(MAX_CODE_LENGTH + 1)).to_string();
    assert_eq!(long, "a unit code of 65 bytes is too long, at most 64 are read");
}

#[test]
fn hostile_codes_are_refused_quickly() {
    let hostile = [
        "(".repeat(100_000),
        "m/".repeat(100_000),
        format!("{}m{}", "(".repeat(31), ")".repeat(31)),
        format!("{}m", "(".repeat(63)),
        "1/".repeat(31) + "1",
        "C.".repeat(32),
        "in/".repeat(21),
        "/".repeat(64),
        "{".repeat(64),
        "[".repeat(64),
        "ﷺ".repeat(21),
        "\0".repeat(64),
        "m\0".to_owned(),
        "m99999999999999999999".to_owned(),
        "m2147483647".to_owned(),
        "m-2147483648".to_owned(),
        "10*2147483647.10*2147483647".to_owned(),
        "10*-2147483648".to_owned(),
        "1/10*-2147483648".to_owned(),
        "mol2147483647/mol-2147483648".to_owned(),
        "9".repeat(64),
        "{a}/".repeat(16),
        "\u{202e}g".to_owned(),
        "𝐠".to_owned(),
        "%00".to_owned(),
        "İ".repeat(32),
        "[in_i'H2O]2147483647".to_owned(),
    ];
    for code in hostile {
        if let Err(fault) = Unit::parse(&code) {
            assert!(fault.to_string().len() < 400, "{fault}");
        }
    }
}
