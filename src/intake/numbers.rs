//! Numbers as people write them.

/// A number with a decimal point or comma, and whether its comma could also part thousands.
pub(super) fn number(word: &str) -> Option<(f64, bool)> {
    let marks = word.matches([',', '.']).count();
    if marks > 1 {
        return None;
    }
    let thousands = |(whole, part): (&str, &str)| part.len() == 3 && !matches!(whole, "" | "0");
    let odd = word.split_once([',', '.']).is_some_and(thousands);
    word.replace(',', ".").parse().ok().map(|value| (value, odd))
}

/// Where the number ends that starts at a byte of a text, if one does: digits with decimal points, commas or the colon of a
/// clock between them, or ".5"; a full stop behind it ends the clause.
pub(super) fn number_end(text: &str, start: usize) -> Option<usize> {
    let bytes = text.as_bytes();
    let digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
    let mark = |at: usize| matches!(bytes.get(at), Some(b'.' | b',')) && digit(at + 1);
    // The point of ".5" has nothing before it that it could end.
    let behind_blank = |at: usize| {
        let before = text.get(..at).and_then(|head| head.chars().next_back());
        before.is_none_or(|c| c.is_whitespace() || matches!(c, '(' | '~' | '=' | '<' | '>' | '-' | '−' | '±'))
    };
    let starts = digit(start) || (mark(start) && behind_blank(start));
    if !starts {
        return None;
    }
    let mut end = start;
    loop {
        let clock = bytes.get(end) == Some(&b':') && digit(end + 1) && digit(end + 2) && !digit(end + 3);
        if !digit(end) && !mark(end) && !clock {
            return Some(end);
        }
        end += 1;
    }
}

#[cfg(test)]
mod tests {
    use super::{number, number_end};

    #[test]
    fn numbers_end_where_their_digits_do() {
        let told = |text: &'static str, start: usize| number_end(text, start).and_then(|end| text.get(start..end));
        assert_eq!(told("31,5 °C", 0), Some("31,5"));
        assert_eq!(told("loss .5 %", 5), Some(".5"));
        assert_eq!(told("7.", 0), Some("7"));
        assert_eq!(told("02:40 h", 0), Some("02:40"));
        assert_eq!(told("wet.5 times", 3), None);
        assert_eq!(told("wet. ", 3), None);
    }

    #[test]
    fn a_number_without_a_whole_part_is_a_fraction() {
        assert_eq!(number(".85"), Some((0.85, false)));
        assert_eq!(number(",850"), Some((0.85, false)));
        assert_eq!(number("1,200"), Some((1.2, true)));
        assert_eq!(number("02:40"), None);
    }
}
