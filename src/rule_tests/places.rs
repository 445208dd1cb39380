//! Where the values of a JSON text stand.

use std::ops::Range;

use crate::json::{Fault, FaultCode, step};

/// A value and, where it is a member of an object, its name: as bytes of the text.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Entry {
    pointer: String,
    name: Option<Range<usize>>,
    value: Range<usize>,
}

/// The places of all values of a valid JSON text, in the order of the text.
#[derive(Debug)]
pub(super) struct Places<'t> {
    text: &'t str,
    entries: Vec<Entry>,
}

/// Characters of one line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Span {
    /// Line, from 1.
    pub(super) line: usize,
    /// Column in characters, from 1.
    pub(super) column: usize,
    /// Number of characters, at least 1.
    pub(super) width: usize,
    /// The line itself.
    pub(super) source_line: String,
}

impl<'t> Places<'t> {
    /// Finds all values. Of a text that is no JSON it finds what comes before the fault.
    pub(super) fn of(text: &'t str) -> Self {
        let mut scanner = Scanner { text, at: 0, entries: Vec::new() };
        scanner.value(String::new(), None);
        Self { text, entries: scanner.entries }
    }

    /// The text of the value at a JSON Pointer.
    pub(super) fn value(&self, pointer: &str) -> Option<&'t str> {
        self.text.get(self.entry(pointer)?.value.clone())
    }

    /// Where the value at a JSON Pointer stands; an object or array by its opening bracket.
    pub(super) fn span(&self, pointer: &str) -> Option<Span> {
        let value = &self.entry(pointer)?.value;
        let opens = self.text.get(value.clone()).is_some_and(|text| text.starts_with(['{', '[']));
        let end = if opens { value.start + 1 } else { value.end };
        Some(span(self.text, value.start..end))
    }

    /// Where the name of the member at a JSON Pointer stands, else its value.
    pub(super) fn name_span(&self, pointer: &str) -> Option<Span> {
        let name = self.entry(pointer)?.name.clone();
        name.map_or_else(|| self.span(pointer), |name| Some(span(self.text, name)))
    }

    /// The place that a fault is about: the name of a member, or the value.
    pub(super) fn of_fault(&self, fault: &Fault) -> Option<Span> {
        let is_text = self.value(&fault.pointer).is_some_and(|value| value.starts_with('"'));
        match fault.code {
            FaultCode::UnknownMember | FaultCode::Duplicate => self.name_span(&fault.pointer),
            FaultCode::UnknownName if !is_text => self.name_span(&fault.pointer),
            _ => self.span(&fault.pointer),
        }
    }

    /// The last of those that a pointer names: of equal members the second is the fault.
    fn entry(&self, pointer: &str) -> Option<&Entry> {
        self.entries.iter().rev().find(|entry| entry.pointer == pointer)
    }
}

/// The characters of a range of bytes, as far as its line goes.
fn span(text: &str, range: Range<usize>) -> Span {
    let before = text.get(..range.start).unwrap_or(text);
    let line_start = before.rfind('\n').map_or(0, |newline| newline + 1);
    let source_line = text.get(line_start..).and_then(|rest| rest.lines().next()).unwrap_or_default();
    let column = before.get(line_start..).unwrap_or_default().chars().count() + 1;
    let width = text.get(range).unwrap_or_default().lines().next().unwrap_or_default().chars().count().max(1);
    Span { line: before.matches('\n').count() + 1, column, width, source_line: source_line.to_owned() }
}

struct Scanner<'t> {
    text: &'t str,
    at: usize,
    entries: Vec<Entry>,
}

impl Scanner<'_> {
    fn peek(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    /// Goes on while `wanted` holds.
    fn skip(&mut self, wanted: fn(u8) -> bool) {
        while self.peek().is_some_and(wanted) {
            self.at += 1;
        }
    }

    fn skip_space(&mut self) {
        self.skip(|byte| byte.is_ascii_whitespace());
    }

    /// Goes past a byte, if it is next.
    fn take(&mut self, wanted: u8) -> bool {
        self.skip_space();
        let found = self.peek() == Some(wanted);
        self.at += usize::from(found);
        found
    }

    /// Records a value and everything inside it.
    fn value(&mut self, pointer: String, name: Option<Range<usize>>) {
        self.skip_space();
        let (start, own) = (self.at, self.entries.len());
        self.entries.push(Entry { pointer: pointer.clone(), name, value: start..start });
        match self.peek() {
            Some(b'{') => self.members(&pointer),
            Some(b'[') => self.items(&pointer),
            Some(b'"') => self.string(),
            _ => self.skip(|byte| !byte.is_ascii_whitespace() && !b",]}".contains(&byte)),
        }
        if let Some(entry) = self.entries.get_mut(own) {
            entry.value.end = self.at;
        }
    }

    /// Goes past a string, whose opening quote is next.
    fn string(&mut self) {
        self.at += 1;
        while let Some(byte) = self.peek() {
            self.at += if byte == b'\\' { 2 } else { 1 };
            if byte == b'"' {
                break;
            }
        }
    }

    fn members(&mut self, pointer: &str) {
        self.at += 1;
        loop {
            self.skip_space();
            if self.peek() != Some(b'"') {
                break;
            }
            let start = self.at;
            self.string();
            let name = start..self.at;
            let decoded = self.text.get(name.clone()).and_then(|name| serde_json::from_str::<String>(name).ok());
            if !self.take(b':') {
                break;
            }
            let step = step(&decoded.unwrap_or_default());
            self.value(format!("{pointer}/{step}"), Some(name));
            if !self.take(b',') {
                break;
            }
        }
        self.take(b'}');
    }

    fn items(&mut self, pointer: &str) {
        self.at += 1;
        self.skip_space();
        let mut index = 0;
        while self.peek().is_some_and(|byte| byte != b']') {
            self.value(format!("{pointer}/{index}"), None);
            index += 1;
            if !self.take(b',') {
                break;
            }
        }
        self.take(b']');
    }
}

#[cfg(test)]
mod tests {
    use super::Places;

    const TEXT: &str = "{\n  \"é\\\"x\": [1.5, {\"a/b\": \"tëxt\"}],\n  \"twice\": 1, \"twice\": [\n]}\n";

    fn at(pointer: &str) -> (usize, usize, usize) {
        let span = Places::of(TEXT).span(pointer).unwrap();
        (span.line, span.column, span.width)
    }

    #[test]
    fn values_are_found_by_pointer_in_characters() {
        assert_eq!(at(""), (1, 1, 1));
        assert_eq!(at("/é\"x"), (2, 11, 1));
        assert_eq!(at("/é\"x/0"), (2, 12, 3));
        assert_eq!(at("/é\"x/1/a~1b"), (2, 25, 6));
        assert_eq!(Places::of(TEXT).value("/é\"x/1"), Some("{\"a/b\": \"tëxt\"}"));
    }

    #[test]
    fn names_are_found_and_of_equal_ones_the_last() {
        let span = Places::of(TEXT).name_span("/twice").unwrap();
        assert_eq!((span.line, span.column, span.width), (3, 15, 7));
        assert_eq!(span.source_line, "  \"twice\": 1, \"twice\": [");
    }

    #[test]
    fn a_broken_text_gives_what_comes_before() {
        for text in ["", "{", "{\"a\"", "{\"a\":", "[1,", "\"", "{\"a\": \"\\", "}"] {
            assert_eq!(Places::of(text).span("").unwrap().line, 1, "{text}");
        }
    }
}
