//! Units as people write them behind a value in English, German, Spanish and French, with their UCUM codes.

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

/// Spellings in lower case without blanks and full stops. Symbols after UCUM, ISO 80000 and the trade; names as dictionaries
/// have them.
const SPELLINGS: &[(&[&str], &str)] = &[
    (
        &[
            "°c",
            "c",
            "℃",
            "ºc",
            "degc",
            "celsius",
            "°celsius",
            "grad",
            "gradcelsius",
            "grados",
            "grado",
            "gradosc",
            "gradoscelsius",
            "gradoscentígrados",
            "gradoscentigrados",
            "centigrados",
            "centígrados",
            "degrés",
            "degre",
            "degré",
            "degres",
            "degrésc",
            "degrésc",
            "degréscelsius",
            "degrescelsius",
            "degreesc",
            "degreescelsius",
            "degreecelsius",
            "degcelsius",
            "cel",
            "centigrade",
            "degreescentigrade",
        ],
        "Cel",
    ),
    (
        &[
            "°f",
            "f",
            "℉",
            "ºf",
            "degf",
            "fahrenheit",
            "°fahrenheit",
            "degreesf",
            "degreesfahrenheit",
            "gradfahrenheit",
            "gradosfahrenheit",
            "degrésfahrenheit",
            "degresfahrenheit",
            "gradosf",
        ],
        "[degF]",
    ),
    (&["k", "kelvin"], "K"),
    (
        &[
            "s", "sec", "secs", "second", "seconds", "sek", "sekunde", "sekunden", "segundo", "segundos", "seg",
            "seconde", "secondes",
        ],
        "s",
    ),
    (&["min", "mins", "minute", "minutes", "minuten", "minuto", "minutos", "mn", "minuts"], "min"),
    (&["h", "hr", "hrs", "hour", "hours", "std", "stunde", "stunden", "hora", "horas", "heure", "heures"], "h"),
    (&["d", "day", "days", "tag", "tage", "tagen", "día", "días", "dia", "dias", "jour", "jours"], "d"),
    (&["wk", "week", "weeks", "woche", "wochen", "semana", "semanas", "semaine", "semaines"], "wk"),
    (&["%", "percent", "pct", "percentage", "prozent", "porciento", "porcentaje", "pourcent", "vh"], "%"),
    (&["‰", "permille", "promille"], "[ppth]"),
    (&["g", "gr", "gram", "grams", "gramm", "gramo", "gramos", "gramme", "grammes", "gms", "grs", "gm"], "g"),
    (
        &[
            "kg",
            "kgs",
            "kilo",
            "kilos",
            "kilogram",
            "kilograms",
            "kilogramm",
            "kilogramo",
            "kilogramos",
            "kilogramme",
            "kilogrammes",
        ],
        "kg",
    ),
    (&["mg", "milligram", "milligrams", "milligramm", "miligramos", "milligrammes"], "mg"),
    (&["lb", "lbs", "pound", "pounds"], "[lb_av]"),
    (&["oz", "ounce", "ounces", "unze", "unzen", "onza", "onzas"], "[oz_av]"),
    (
        &[
            "mm",
            "millimeter",
            "millimeters",
            "millimetre",
            "millimetres",
            "milímetro",
            "milímetros",
            "milimetros",
            "millimètres",
        ],
        "mm",
    ),
    (
        &[
            "cm",
            "centimeter",
            "centimeters",
            "centimetre",
            "centimetres",
            "zentimeter",
            "centímetro",
            "centímetros",
            "centimetros",
            "centimètres",
        ],
        "cm",
    ),
    (&["inch", "inches", "zoll", "pulgada", "pulgadas", "pouce", "pouces"], "[in_i]"),
    (&["µm", "μm", "micron", "microns", "um", "mikrometer"], "um"),
    (&["ml", "milliliter", "milliliters", "millilitre", "millilitres", "mililitro", "mililitros"], "mL"),
    (&["l", "liter", "liters", "litre", "litres", "litro", "litros", "ltr"], "L"),
    (&["ml/g", "cm3/g", "cm³/g", "ccm/g", "cc/g", "mlperg", "mlperkg"], "mL/g"),
    (&["g/ml", "g/cm3", "g/cm³", "g/cc", "kg/l"], "g/mL"),
    (&["mg/kg", "ppm"], "mg/kg"),
    (&["µg/kg", "μg/kg", "ug/kg", "mcg/kg", "ppb"], "ug/kg"),
    (&["g/kg"], "g/kg"),
    (&["g/100g"], "g/(100.g)"),
    (&["n", "newton", "newtons"], "N"),
    (&["wh/kg"], "W.h/kg"),
    (&["rpm", "u/min", "rev/min", "rpms"], "/min"),
    (&["ph"], "[pH]"),
];

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
    let plain: String =
        spelling.to_lowercase().chars().filter(|c| !c.is_whitespace() && *c != '.' && *c != '-').collect();
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
    let row = SPELLINGS.iter().find(|(spellings, _)| spellings.contains(&plain.as_str()));
    let code = row.map(|(_, code)| *code)?;
    known(code, implied(code))
}

/// Words that a unit implies.
fn implied(code: &str) -> &'static [&'static str] {
    match code {
        "Cel" | "[degF]" | "K" => &["temperature"],
        "s" | "min" | "h" | "d" | "wk" => &["time"],
        "g" | "kg" | "mg" | "[lb_av]" | "[oz_av]" => &["weight"],
        "mL/g" => &["specific", "volume"],
        "g/mL" => &["density"],
        _ => &[],
    }
}

#[cfg(test)]
mod tests {
    use super::unit_word;

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
