//! The sheet on paper: laid out once, as blocks, and written as text, as Markdown, as a page to print.

mod block;
mod blocks;
mod markdown;
mod page;
mod text;

use super::answer::TrialSheet;

/// The sheet as plain text of at most `width` characters a line (40 to 110); tables keep their own width.
#[must_use]
pub fn text(sheet: &TrialSheet<'_>, width: usize) -> String {
    text::write(&blocks::of(sheet), width)
}

/// The sheet as Markdown (CommonMark with tables).
#[must_use]
pub fn markdown(sheet: &TrialSheet<'_>) -> String {
    markdown::write(&blocks::of(sheet))
}

/// The sheet as one HTML page that needs nothing from elsewhere and prints on A4.
#[must_use]
pub fn page(sheet: &TrialSheet<'_>) -> String {
    page::write(&blocks::of(sheet))
}
