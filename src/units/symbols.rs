//! How people write a unit behind a value.

use octofhir_ucum::UnitExpr;

/// UCUM symbols whose usual way of writing differs. A symbol that is not here is written as in UCUM, without brackets.
const USUAL: &[(&str, &str)] = &[
    ("%", "%"),
    ("10*", "10"),
    ("10^", "10"),
    ("Cel", "°C"),
    ("[Btu]", "BTU"),
    ("[Btu_IT]", "BTU"),
    ("[Btu_th]", "BTU"),
    ("[Cal]", "kcal"),
    ("[HP]", "hp"),
    ("[cft_i]", "ft³"),
    ("[cin_i]", "in³"),
    ("[cup_us]", "cup"),
    ("[degF]", "°F"),
    ("[degR]", "°R"),
    ("[foz_us]", "fl oz"),
    ("[ft_i]", "ft"),
    ("[gal_us]", "gal"),
    ("[gr]", "gr"),
    ("[in_i'H2O]", "inH₂O"),
    ("[in_i'Hg]", "inHg"),
    ("[in_i]", "in"),
    ("[lb_av]", "lb"),
    ("[lbf_av]", "lbf"),
    ("[mesh_i]", "mesh"),
    ("[mi_i]", "mi"),
    ("[oz_av]", "oz"),
    ("[ppth]", "‰"),
    ("[pt_us]", "pt"),
    ("[qt_us]", "qt"),
    ("[sft_i]", "ft²"),
    ("[sin_i]", "in²"),
    ("[tbs_us]", "tbsp"),
    ("[tsp_us]", "tsp"),
    ("[yd_i]", "yd"),
    ("deg", "°"),
    ("mm[H2O]", "mmH₂O"),
    ("mm[Hg]", "mmHg"),
    ("ug", "µg"),
    ("um", "µm"),
    ("umol", "µmol"),
    ("us", "µs"),
    ("uS", "µS"),
];

/// The unit as people write it; empty for `1`.
pub(super) fn symbol(expression: &UnitExpr) -> String {
    match written(expression) {
        one if one == "1" => String::new(),
        other => other,
    }
}

fn written(expression: &UnitExpr) -> String {
    match expression {
        UnitExpr::Symbol(code) => atom(code),
        UnitExpr::Numeric(_) => expression.to_string(),
        UnitExpr::Annotation(text) => text.replace('_', " "),
        UnitExpr::Annotated(inner, text) if is_one(inner) => text.replace('_', " "),
        UnitExpr::Annotated(inner, text) => {
            format!("{} {}", written(inner), text.replace('_', " "))
        }
        UnitExpr::Power(base, exponent) => format!("{}{}", written(base), superscript(*exponent)),
        UnitExpr::Product(terms) => product(terms),
        UnitExpr::Quotient(numerator, denominator) => {
            format!("{}/{}", written(numerator), divisor(denominator))
        }
        UnitExpr::Reciprocal(inner) => format!("/{}", divisor(inner)),
    }
}

fn is_one(expression: &UnitExpr) -> bool {
    matches!(expression, UnitExpr::Numeric(_)) && expression.to_string() == "1"
}

/// `g/(100.g)` is written `g/100 g`, but `J/(kg.K)` keeps its parentheses.
fn divisor(expression: &UnitExpr) -> String {
    let text = written(expression);
    match expression {
        UnitExpr::Product(terms) if !matches!(terms.as_slice(), [UnitExpr::Numeric(_), _]) => {
            format!("({text})")
        }
        UnitExpr::Quotient(..) => format!("({text})"),
        _ => text,
    }
}

fn product(terms: &[UnitExpr]) -> String {
    let mut text = String::new();
    for (index, term) in terms.iter().enumerate() {
        if index > 0 {
            text.push_str(joint(terms.get(index - 1), term));
        }
        text.push_str(&written(term));
    }
    text
}

/// Watt hours are written as one word, a number keeps a space, anything else a dot.
fn joint(before: Option<&UnitExpr>, after: &UnitExpr) -> &'static str {
    match (before, after) {
        (Some(UnitExpr::Numeric(_)), _) => " ",
        (Some(UnitExpr::Symbol(watt)), UnitExpr::Symbol(hour)) if watt.ends_with('W') && hour == "h" => "",
        _ => "·",
    }
}

fn atom(code: &str) -> String {
    match USUAL.iter().find(|(known, _)| *known == code) {
        Some((_, usual)) => (*usual).to_owned(),
        None => code.replace(['[', ']'], ""),
    }
}

fn superscript(exponent: i32) -> String {
    let raised = |digit| match digit {
        '-' => '⁻',
        '0' => '⁰',
        '1' => '¹',
        '2' => '²',
        '3' => '³',
        '4' => '⁴',
        '5' => '⁵',
        '6' => '⁶',
        '7' => '⁷',
        '8' => '⁸',
        '9' => '⁹',
        other => other,
    };
    exponent.to_string().chars().map(raised).collect()
}
