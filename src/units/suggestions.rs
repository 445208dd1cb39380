//! Did you mean: the UCUM code for a spelling of the trade, or for a slip.

use strsim::osa_distance;

use super::MAX_CODE_LENGTH;
use super::definition::define;
use super::solidus::parenthesised;
use super::spellings::{CODES, LOOKALIKES, SPELLINGS};

/// The largest edit distance at which a name is still suggested.
const MAX_DISTANCE: usize = 3;
/// The most symbols and parentheses of a compound that are looked up one by one; bounds the work on hostile input.
const MAX_PARTS: usize = 8;

/// The UCUM code that `code`, which is not usable as it stands, was probably meant to be. Only a code that is itself a
/// unit is ever suggested.
pub(super) fn suggest(code: &str) -> Option<String> {
    if code.len() > MAX_CODE_LENGTH {
        return None;
    }
    let plain = plain_characters(code);
    spelling(&plain)
        .map(str::to_owned)
        .or_else(|| usable(plain.clone()))
        .or_else(|| usable(parenthesised(&plain)?))
        .or_else(|| symbol_by_symbol(&plain))
        .or_else(|| nearest(&plain).map(str::to_owned))
}

fn usable(code: String) -> Option<String> {
    define(&code).is_ok().then_some(code)
}

/// The code with the characters of UCUM only, as far as they have a counterpart there.
fn plain_characters(code: &str) -> String {
    let mut plain = String::with_capacity(code.len());
    for character in code.trim().replace(" per ", "/").trim_end_matches('.').chars() {
        match character {
            '²' => plain.push('2'),
            '³' => plain.push('3'),
            '·' | '⋅' | '×' => plain.push('.'),
            'µ' | 'μ' => plain.push('u'),
            '⁄' | '÷' => plain.push('/'),
            '％' => plain.push('%'),
            '^' => {}
            blank if blank.is_whitespace() => {}
            other => plain.push(other),
        }
    }
    plain
}

/// A whole text that the trade writes for a unit, whatever its case.
fn spelling(text: &str) -> Option<&'static str> {
    if let Some(lookalike) = LOOKALIKES.iter().find(|known| known.code == text) {
        return Some(lookalike.meant);
    }
    let lower = text.to_lowercase().replace('.', "");
    SPELLINGS
        .iter()
        .find(|(known, _)| *known == lower)
        .map(|(_, code)| *code)
        .or_else(|| CODES.iter().copied().find(|known| known.to_lowercase() == lower))
}

/// Each symbol of a compound (`lbs/ft3`) by its UCUM code, with exponents kept.
fn symbol_by_symbol(text: &str) -> Option<String> {
    let parts = text.split_inclusive(['.', '/', '(', ')']);
    if parts.clone().count() > MAX_PARTS {
        return None;
    }
    let mut code = String::new();
    for part in parts {
        let body = part.trim_end_matches(['.', '/', '(', ')']);
        let symbol = body.trim_end_matches(|end: char| end.is_ascii_digit() || end == '-');
        code.push_str(replacement(symbol).unwrap_or(symbol));
        code.push_str(part.get(symbol.len()..).unwrap_or_default());
    }
    let differences = interval_scales(&code);
    usable(code).or_else(|| usable(differences))
}

fn replacement(symbol: &str) -> Option<&'static str> {
    if symbol.is_empty() || define(symbol).is_ok() {
        return None;
    }
    spelling(symbol).or_else(|| nearest(symbol))
}

/// The scales of temperature that take no part in products, by the units of their differences.
fn interval_scales(code: &str) -> String {
    code.replace("Cel", "K").replace("[degF]", "[degR]")
}

/// The nearest usual code or spelling, within [`MAX_DISTANCE`] and with at most half of the text wrong.
fn nearest(text: &str) -> Option<&'static str> {
    let lower = text.to_lowercase();
    let length = lower.chars().count();
    let limit = MAX_DISTANCE.min(length / 2);
    let codes = CODES.iter().map(|code| (*code, *code));
    codes
        .chain(SPELLINGS.iter().copied())
        // Cheaper than a distance, and never more than it.
        .filter(|(known, _)| known.chars().count().abs_diff(length) <= limit)
        .map(|(known, code)| (osa_distance(&lower, &known.to_lowercase()), code))
        .filter(|(distance, _)| *distance <= limit)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, code)| code)
}
