//! Plain text for a terminal, in paragraphs that keep to its width.

use std::fmt::Write as _;

/// Narrowest and widest text, characters.
const WIDTHS: (usize, usize) = (40, 110);

/// Text under construction.
pub(crate) struct Paragraphs {
    text: String,
    width: usize,
}

impl Paragraphs {
    /// No text yet; its lines will have at most `width` characters, brought into the range of 40 to 110.
    pub(crate) fn new(width: usize) -> Self {
        Self { text: String::new(), width: width.clamp(WIDTHS.0, WIDTHS.1) }
    }

    /// Adds a paragraph behind an indent and a mark; its further lines stand under its text.
    pub(crate) fn add(&mut self, indent: usize, mark: &str, text: &str) {
        let left = indent + mark.chars().count();
        let _ = write!(self.text, "{:indent$}{mark}", "");
        let mut column = left;
        for (place, word) in unbroken(text).into_iter().enumerate() {
            let length = word.chars().count();
            if place > 0 && column + 1 + length > self.width {
                let _ = write!(self.text, "\n{:left$}", "");
                column = left;
            } else if place > 0 {
                self.text.push(' ');
                column += 1;
            }
            self.text.push_str(&word);
            column += length;
        }
        self.text.push('\n');
    }

    /// Adds a line as it is, whatever its length.
    pub(crate) fn add_unbroken(&mut self, line: &str) {
        self.text.push_str(line);
        self.text.push('\n');
    }

    /// Adds an empty line.
    pub(crate) fn blank(&mut self) {
        self.text.push('\n');
    }

    /// Adds a heading after an empty line.
    pub(crate) fn heading(&mut self, heading: &str) {
        self.blank();
        self.add(0, "", heading);
    }

    /// Adds items under a heading; nothing where there are none.
    pub(crate) fn list(&mut self, heading: &str, items: impl IntoIterator<Item = String>) {
        let mut items = items.into_iter().peekable();
        if items.peek().is_some() {
            self.heading(heading);
        }
        items.for_each(|item| self.add(2, "- ", &item));
    }

    /// The text.
    pub(crate) fn into_text(self) -> String {
        self.text
    }
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
    use super::{Paragraphs, WIDTHS, unbroken};

    #[test]
    fn a_number_keeps_its_sign() {
        assert_eq!(unbroken("at 92 %, or 30 °C\nlower"), ["at", "92 %,", "or", "30 °C", "lower"]);
        assert_eq!(unbroken("no % alone"), ["no", "%", "alone"]);
    }

    #[test]
    fn lines_keep_to_the_width_and_stand_under_the_text() {
        let mut page = Paragraphs::new(0);
        page.heading("Leaders");
        page.add(2, "- ", "the leader stands there at not more than 92 % and the rest lower");
        let text = page.into_text();
        assert_eq!(text, "\nLeaders\n  - the leader stands there at not more\n    than 92 % and the rest lower\n");
        assert!(text.lines().all(|line| line.chars().count() <= WIDTHS.0));
    }

    #[test]
    fn a_list_of_nothing_has_no_heading() {
        let mut page = Paragraphs::new(80);
        page.list("Contradictions", []);
        page.list("Causes", ["one".to_owned()]);
        assert_eq!(page.into_text(), "\nCauses\n  - one\n");
    }
}
