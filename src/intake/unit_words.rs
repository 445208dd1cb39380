//! Units as people write them behind a value in English, German, Spanish and French, with their UCUM codes.

use super::function_words::PRODUCT_WORDS;
use super::unit_spellings::{HUNDREDS, PER, SPELLINGS};
use crate::units::Unit;

/// What the unit of a value is.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct UnitWord {
    pub(super) unit: Unit,
    /// Words that the unit implies: what is given in °Brix are soluble solids.
    pub(super) implies: &'static [&'static str],
    /// Whether it could be another unit, too: "degrees" are °C or °F.
    pub(super) doubtful: bool,
    /// Whether it tells by itself what was measured, as °Brix do.
    pub(super) names: bool,
}

/// Per cent with the word that tells what of.
const HUMIDITIES: &[&str] = &[
    "%rh",
    "%rf",
    "%hr",
    "%relativehumidity",
    "%humidity",
    "%feuchte",
    "%luftfeuchte",
    "%humedad",
    "%humidité",
    "percenthumidity",
    "percentrh",
    "prozentfeuchte",
];

/// The unit that a text writes so.
pub(super) fn unit_word(spelling: &str) -> Option<UnitWord> {
    let plain = plain(spelling);
    let word = |code: &str, implies, doubtful, names| {
        Unit::parse(code).ok().map(|unit| UnitWord { unit, implies, doubtful, names })
    };
    let known = |code: &str, implies| word(code, implies, false, false);
    let named = |code: &str, implies| word(code, implies, false, true);
    match plain.as_str() {
        "°" | "º" | "degree" | "degrees" | "deg" => return word("Cel", &["temperature"], true, false),
        "°bx" | "°brix" | "brix" | "bx" | "ºbrix" => return named("%", &["soluble", "solids"]),
        "aw" => return named("1", &["water", "activity"]),
        "ph" => return named("[pH]", &["ph"]),
        "bloom" | "°bloom" | "gbloom" => return named("g", &["bloom", "strength"]),
        other if HUMIDITIES.contains(&other) => return known("%", &["humidity"]),
        _ => {}
    }
    match single(&plain) {
        Some(code) => known(code, implied(code)),
        None => quotient(spelling).and_then(|code| known(&code, implied(&code))),
    }
}

/// In lower case, without blanks, full stops and hyphens.
fn plain(spelling: &str) -> String {
    spelling.to_lowercase().chars().filter(|c| !c.is_whitespace() && *c != '.' && *c != '-').collect()
}

/// The UCUM code of a single unit.
fn single(plain: &str) -> Option<&'static str> {
    SPELLINGS.iter().find(|(spellings, _)| spellings.contains(&plain)).map(|(_, code)| *code)
}

/// The UCUM code of a unit that is divided by another: `ml/kg`, `ml per kg`, `g/100 g`.
fn quotient(spelling: &str) -> Option<String> {
    let by_word = || PER.iter().find_map(|per| spelling.split_once(&format!(" {per} ")));
    let (dividend, divisor) = spelling.split_once('/').or_else(by_word)?;
    let divisor = plain(divisor);
    let hundred = || HUNDREDS.iter().find(|(spelling, _)| *spelling == divisor).map(|(_, code)| *code);
    Some(format!("{}/{}", single(&plain(dividend))?, single(&divisor).or_else(hundred)?))
}

/// Whether what stands behind a unit makes another unit of it: `mg` in `mg/dl`, `min` in `min⁻¹`, `°C` in `°C per hour`. A slash
/// before another value or another word only parts them ("25 min / 200 °C"), and what is counted on one piece is of that piece.
pub(super) fn goes_on(behind: &str) -> bool {
    let raised = behind.strip_prefix("-1").is_some_and(|rest| !rest.starts_with(|c: char| c.is_ascii_digit()));
    if raised || behind.starts_with(['^', '⁻', '²', '³']) {
        return true;
    }
    let tight = behind.starts_with('/');
    let behind = behind.trim_start();
    let next = |rest: &str| -> String {
        let rest = rest.trim_start().strip_prefix("100").unwrap_or(rest).trim_start();
        rest.chars().take_while(|c| c.is_alphanumeric() || *c == '°').collect::<String>().to_lowercase()
    };
    if let Some(rest) = behind.strip_prefix(['·', '⋅', '*']) {
        return next(rest).starts_with(char::is_alphabetic);
    }
    if let Some(rest) = behind.strip_prefix('/') {
        let word = next(rest);
        let letter = word.starts_with(char::is_alphabetic);
        return letter && !is_piece(&word) && (tight || single(&word).is_some());
    }
    let word = next(behind);
    let divides = PER.contains(&word.as_str());
    divides && !is_piece(&next(behind.get(word.len()..).unwrap_or_default()))
}

/// Whether a word is one for the product itself.
fn is_piece(word: &str) -> bool {
    PRODUCT_WORDS.contains(&word)
}

/// Words that a unit implies.
fn implied(code: &str) -> &'static [&'static str] {
    match code {
        "Cel" | "[degF]" | "K" => &["temperature"],
        "s" | "min" | "h" | "d" | "wk" => &["time"],
        "g" | "kg" | "mg" | "[lb_av]" | "[oz_av]" => &["weight"],
        "mL/g" | "cm3/g" | "mL/kg" | "cm3/kg" | "L/kg" => &["specific", "volume"],
        "g/mL" | "g/cm3" | "kg/L" | "g/L" => &["density"],
        _ => &[],
    }
}

#[cfg(test)]
mod tests {
    use super::{goes_on, unit_word};
    use crate::units::{Unit, convert};

    #[test]
    fn units_that_are_divided_keep_what_they_are_divided_by() {
        for (spelling, code, factor) in [
            ("ml/kg", "mL/g", 1e-3),
            (" mL per kg", "mL/g", 1e-3),
            ("cm³/g", "mL/g", 1.0),
            ("l/kg", "mL/g", 1.0),
            ("mg/l", "mg/L", 1.0),
            ("µg/kg", "ug/kg", 1.0),
            ("mg/100 g", "mg/kg", 10.0),
            ("kg/l", "g/mL", 1.0),
            ("Wh/kg", "W.h/kg", 1.0),
        ] {
            let unit = unit_word(spelling).unwrap_or_else(|| panic!("{spelling}")).unit;
            let told = convert(1.0, &unit, &Unit::parse(code).unwrap()).unwrap();
            assert!((told - factor).abs() < 1e-12, "{spelling}: {told} {code}");
        }
        for spelling in ["°C/min", "mg/dl", "ml/", "/kg", "ml per "] {
            assert_eq!(unit_word(spelling), None, "{spelling}");
        }
    }

    #[test]
    fn a_unit_that_goes_on_is_told_from_one_that_ends() {
        for behind in ["/kg", " / min", "/dl", " per hour", "·m", " pro Stunde", "-1", "⁻¹", "/100 ml"] {
            assert!(goes_on(behind), "{behind}");
        }
        for behind in ["", " / 200 °C", "/85 %", " / humidity", " per bun", "/piece", " proof", "-12 min", ", 5"] {
            assert!(!goes_on(behind), "{behind}");
        }
    }

    #[test]
    fn units_of_four_languages_are_known() {
        for (spelling, code) in [
            ("Grad", "Cel"),
            ("grados", "Cel"),
            ("degrés C", "Cel"),
            ("° C", "Cel"),
            ("degF", "[degF]"),
            ("Min.", "min"),
            ("minutos", "min"),
            ("heures", "h"),
            ("por ciento", "%"),
            ("°Bx", "%"),
            ("g/100 g", "g/(100.g)"),
        ] {
            assert_eq!(
                unit_word(spelling).map(|word| word.unit.code().to_owned()).as_deref(),
                Some(code),
                "{spelling}"
            );
        }
        assert!(unit_word("degrees").is_some_and(|word| word.doubtful));
        // A German pound is 500 g, and "in" stands before places.
        for other in ["buns", "Pfund", "in"] {
            assert_eq!(unit_word(other), None, "{other}");
        }
    }
}
