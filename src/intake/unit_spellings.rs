//! Spellings of single units; what is made of two of them, as `ml/kg` is, needs no row.

/// Spellings in lower case without blanks and full stops, and the UCUM code of each. Symbols after UCUM, ISO 80000 and the trade; names as dictionaries
/// have them.
pub(super) const SPELLINGS: &[(&[&str], &str)] = &[
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
    (&["µg", "μg", "ug", "mcg"], "ug"),
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
    (&["cm3", "cm³", "ccm", "cc"], "cm3"),
    (&["l", "liter", "liters", "litre", "litres", "litro", "litros", "ltr"], "L"),
    (&["ppm"], "mg/kg"),
    (&["ppb"], "ug/kg"),
    (&["n", "newton", "newtons"], "N"),
    (&["wh"], "W.h"),
    (&["rpm", "u/min", "rev/min", "rpms"], "/min"),
    (&["ph"], "[pH]"),
];

/// Masses and volumes that a content is counted on: `g/100 g`.
pub(super) const HUNDREDS: &[(&str, &str)] = &[("100g", "(100.g)"), ("100ml", "(100.mL)")];

/// Words between a unit and the one it is divided by.
pub(super) const PER: &[&str] = &["per", "pro", "je", "por", "par"];

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::SPELLINGS;
    use crate::units::{Unit, convert};

    /// Spellings for which the unit module, which knows English ones, suggests the nearest that it knows.
    const NEAREST_ONLY: &[&str] =
        &["milligram", "milligrams", "miligramos", "mikrometer", "jour", "jours", "semana", "semanas"];

    #[test]
    fn every_spelling_stands_once() {
        let mut told = BTreeSet::new();
        let twice: Vec<&str> =
            SPELLINGS.iter().flat_map(|(row, _)| *row).filter(|own| !told.insert(**own)).copied().collect();
        assert_eq!(twice, Vec::<&str>::new());
    }

    #[test]
    fn spellings_equal_the_units_that_the_unit_module_takes_them_for() {
        let mut compared = 0;
        let mut wrong = Vec::new();
        for (row, code) in SPELLINGS {
            let unit = Unit::parse(code).unwrap();
            for spelling in *row {
                let meant = match Unit::parse(spelling) {
                    Ok(meant) => Some(meant),
                    Err(fault) => fault.suggestion().map(|code| Unit::parse(code).unwrap()),
                };
                let meant = meant.filter(|meant| meant.converts_to(&unit) && !NEAREST_ONLY.contains(spelling));
                let Some(meant) = meant else { continue };
                compared += 1;
                if convert(1.0, &meant, &unit) != Ok(1.0) {
                    wrong.push(format!("{spelling} is {} and not {code}", meant.code()));
                }
            }
        }
        assert!(wrong.is_empty() && compared > 50, "{compared} compared, {}", wrong.join(", "));
    }
}
