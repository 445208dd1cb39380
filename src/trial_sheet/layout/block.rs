//! What a sheet is made of on paper.

/// A piece of the sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Block {
    /// The title.
    Title(String),
    /// A heading.
    Heading(&'static str),
    /// A paragraph.
    Text(String),
    /// A list.
    List(Vec<String>),
    /// A table; the first row names the columns.
    Table(Vec<Vec<Cell>>),
    /// Lines to write on, with their labels.
    Blanks(Vec<String>),
}

/// A cell of a table.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Cell {
    pub(super) text: String,
    /// Whether it differs from the control.
    pub(super) is_marked: bool,
}

impl Cell {
    pub(super) fn new(text: impl Into<String>) -> Self {
        Self { text: text.into(), is_marked: false }
    }

    pub(super) fn marked(text: impl Into<String>) -> Self {
        Self { text: text.into(), is_marked: true }
    }
}
