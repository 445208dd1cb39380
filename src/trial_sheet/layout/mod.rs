//! The sheet on paper: laid out once, as blocks, and written as text, as Markdown, as a page to print.

mod block;
mod blocks;
mod detail;
mod markdown;
mod page;
mod record;
mod runs;
mod text;
mod tried;

use super::answer::TrialSheet;

pub use self::detail::Detail;
pub use self::page::PageFit;

/// The sheet as plain text of at most `width` characters a line (40 to 110); tables keep their own width.
#[must_use]
pub fn text(sheet: &TrialSheet<'_>, width: usize) -> String {
    text::write(&blocks::of(sheet, Detail::Full).all(), width)
}

/// The sheet as Markdown (CommonMark with tables).
#[must_use]
pub fn markdown(sheet: &TrialSheet<'_>) -> String {
    markdown::write(&blocks::of(sheet, Detail::Full).all())
}

/// The sheet as one HTML page that needs nothing from elsewhere and prints on one side of A4; see [`page_fit`].
#[must_use]
pub fn page(sheet: &TrialSheet<'_>) -> String {
    page::write(sheet)
}

/// How [`page`] puts the sheet on paper: the size of the type, what is left out, whether a second page is needed.
#[must_use]
pub fn page_fit(sheet: &TrialSheet<'_>) -> PageFit {
    page::fit(sheet)
}
