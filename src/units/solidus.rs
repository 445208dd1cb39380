//! The dot after a solidus. UCUM reads from left to right, so `g/100.g` is `(g/100).g`, a mass squared, and `kJ/kg.K` a
//! specific energy times a temperature. Nobody in a bakery means that, so such a code is refused, not guessed.

use std::ops::Range;

/// Where in a code a denominator with a dot stands: `100.g` in `g/100.g`.
pub(super) fn dot_after_solidus(code: &str) -> Option<Range<usize>> {
    // Where the last denominator of each open pair of parentheses starts.
    let mut denominators = vec![None];
    for (position, sign) in operators(code) {
        match sign {
            b'(' => denominators.push(None),
            b')' => {
                denominators.pop();
            }
            b'/' => {
                denominators.pop();
                denominators.push(Some(position + 1));
            }
            _ => {
                if let Some(Some(start)) = denominators.last() {
                    return Some(*start..end_of_denominator(code, position));
                }
            }
        }
    }
    None
}

/// The code with that denominator in parentheses.
pub(super) fn parenthesised(code: &str) -> Option<String> {
    let denominator = dot_after_solidus(code)?;
    let before = code.get(..denominator.start)?;
    let after = code.get(denominator.end..)?;
    let denominator = code.get(denominator)?;
    Some(format!("{before}({denominator}){after}"))
}

fn end_of_denominator(code: &str, from: usize) -> usize {
    let mut depth = 0_usize;
    for (position, sign) in operators(code).filter(|(position, _)| *position > from) {
        match sign {
            b'(' => depth += 1,
            b')' if depth > 0 => depth -= 1,
            b')' | b'/' if depth == 0 => return position,
            _ => {}
        }
    }
    code.len()
}

/// The operators and parentheses of a code, outside the brackets of symbols and annotations.
fn operators(code: &str) -> impl Iterator<Item = (usize, u8)> {
    let mut inside = false;
    code.bytes().enumerate().filter(move |(_, sign)| {
        match sign {
            b'[' | b'{' => inside = true,
            b']' | b'}' => inside = false,
            _ => {}
        }
        !inside && matches!(sign, b'(' | b')' | b'/' | b'.')
    })
}
