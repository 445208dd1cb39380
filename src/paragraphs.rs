//! Plain text for a terminal, in paragraphs that keep to its width.

use std::fmt::Write as _;

/// Narrowest and widest text, characters.
pub(crate) const WIDTHS: (usize, usize) = (40, 110);

/// Adds a paragraph of at most `width` characters a line, whose further lines stand under its text.
pub(crate) fn push_paragraph(page: &mut String, width: usize, indent: usize, mark: &str, text: &str) {
    let left = indent + mark.chars().count();
    let _ = write!(page, "{:indent$}{mark}", "");
    let mut column = left;
    for (place, word) in text.split_whitespace().enumerate() {
        let length = word.chars().count();
        if place > 0 && column + 1 + length > width {
            let _ = write!(page, "\n{:left$}", "");
            column = left;
        } else if place > 0 {
            page.push(' ');
            column += 1;
        }
        page.push_str(word);
        column += length;
    }
    page.push('\n');
}
