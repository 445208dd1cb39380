//! Plain text for a terminal, in paragraphs that keep to its width.

use std::fmt::Write as _;

/// Narrowest and widest text, characters.
pub(crate) const WIDTHS: (usize, usize) = (40, 110);

/// Adds a paragraph of at most `width` characters a line, whose further lines stand under its text.
pub(crate) fn push_paragraph(page: &mut String, width: usize, indent: usize, mark: &str, text: &str) {
    let left = indent + mark.chars().count();
    let _ = write!(page, "{:indent$}{mark}", "");
    let mut column = left;
    for (place, word) in unbroken(text).into_iter().enumerate() {
        let length = word.chars().count();
        if place > 0 && column + 1 + length > width {
            let _ = write!(page, "\n{:left$}", "");
            column = left;
        } else if place > 0 {
            page.push(' ');
            column += 1;
        }
        page.push_str(&word);
        column += length;
    }
    page.push('\n');
}

/// The words of a text; a number and its sign of per cent or degree stay together.
fn unbroken(text: &str) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        let is_sign = word.starts_with(['%', '°']);
        match words.last_mut().filter(|last| is_sign && last.ends_with(|end: char| end.is_ascii_digit())) {
            Some(number) => {
                number.push(' ');
                number.push_str(word);
            }
            None => words.push(word.to_owned()),
        }
    }
    words
}

#[cfg(test)]
mod tests {
    use super::push_paragraph;

    #[test]
    fn a_number_keeps_its_sign() {
        let mut page = String::new();
        push_paragraph(&mut page, 20, 2, "", "the leader stands at 92 %, the rest lower");
        assert_eq!(page, "  the leader stands\n  at 92 %, the rest\n  lower\n");
        let mut page = String::new();
        push_paragraph(&mut page, 20, 0, "", "the leader is at 9 % or");
        assert_eq!(page, "the leader is at 9 %\nor\n");
        let mut page = String::new();
        push_paragraph(&mut page, 19, 0, "", "the leader is at 9 % or");
        assert_eq!(page, "the leader is at\n9 % or\n");
    }
}
