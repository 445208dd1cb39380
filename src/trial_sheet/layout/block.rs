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
    /// What is said after the text, in lighter type.
    pub(super) note: String,
    pub(super) kind: CellKind,
}

/// What a cell is for.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) enum CellKind {
    /// To read.
    #[default]
    Said,
    /// To read, and different from the control.
    Changed,
    /// To write in at the bench.
    Blank,
}

impl Cell {
    pub(super) fn new(text: impl Into<String>) -> Self {
        Self { text: text.into(), ..Self::default() }
    }

    pub(super) fn marked(text: impl Into<String>) -> Self {
        Self { text: text.into(), kind: CellKind::Changed, ..Self::default() }
    }

    pub(super) fn blank() -> Self {
        Self { kind: CellKind::Blank, ..Self::default() }
    }

    pub(super) fn noted(text: impl Into<String>, note: impl Into<String>) -> Self {
        Self { text: text.into(), note: note.into(), ..Self::default() }
    }

    /// Text and note in one.
    pub(super) fn whole(&self) -> String {
        if self.note.is_empty() { self.text.clone() } else { format!("{}: {}", self.text, self.note) }
    }
}
