//! How wide the columns of a table are.

use super::type_widths::{bold_width, widest_word, width};
use crate::trial_sheet::layout::block::{Cell, CellKind};

/// Left and right of a cell, type sizes (see `page.css`), and its line.
pub(super) const BESIDE: f64 = 0.65;

/// A column to write in: about 10 mm at 7.5 pt at least, more where there is room.
const TO_WRITE_IN: (f64, f64) = (3.8, 5.0);

/// Shares of the width that the columns of a table take; `room` in type sizes.
pub(super) fn shares(rows: &[Vec<Cell>], room: f64) -> Vec<f64> {
    let count = rows.iter().map(Vec::len).max().unwrap_or_default();
    let columns: Vec<(f64, f64)> = (0..count).map(|place| column(rows, place)).collect();
    let (least, most): (f64, f64) = columns.iter().fold((0.0, 0.0), |sum, own| (sum.0 + own.0, sum.1 + own.1));
    let wide = |own: &(f64, f64)| match (least >= room, most > room) {
        // Too narrow for the words: they are broken.
        (true, _) => own.0 / least,
        // What is left goes where text is longest.
        (false, true) => (own.0 + (room - least) * (own.1 - own.0) / (most - least)) / room,
        (false, false) => own.1 / most,
    };
    columns.iter().map(wide).collect()
}

/// What a column needs at least, and at most.
fn column(rows: &[Vec<Cell>], place: usize) -> (f64, f64) {
    let cells = rows.iter().enumerate().filter_map(|(row, cells)| Some((row == 0, cells.get(place)?)));
    cells.map(|(is_head, cell)| needs(is_head, cell)).fold((0.0, 0.0), |all, own| (all.0.max(own.0), all.1.max(own.1)))
}

fn needs(is_head: bool, cell: &Cell) -> (f64, f64) {
    if cell.kind == CellKind::Blank {
        return TO_WRITE_IN;
    }
    let is_bold = is_head || cell.kind == CellKind::Changed || !cell.note.is_empty();
    let own = if is_bold { bold_width(&cell.text) } else { width(&cell.text) };
    let word = widest_word(&cell.text) * if is_bold { 1.1 } else { 1.0 };
    (word.max(widest_word(&cell.note)) + BESIDE, own + width(&cell.note) + BESIDE)
}

#[cfg(test)]
mod tests {
    use super::{Cell, shares};

    #[test]
    fn columns_share_the_width_by_what_they_say() {
        let rows = |texts: [&str; 2]| vec![texts.map(Cell::new).to_vec()];
        let even = shares(&rows(["abc", "abc"]), 50.0);
        assert!((even[0] - 0.5).abs() < 1e-9 && (even[1] - 0.5).abs() < 1e-9);
        let long = shares(&rows(["a word and many more words of it", "abc"]), 10.0);
        assert!(long[0] > 0.7 && (long[0] + long[1] - 1.0).abs() < 1e-9, "{long:?}");
        let broken = shares(&rows(["abcdefghijklmnopqrstuvwxyz", "abcdefghijklm"]), 5.0);
        assert!((broken.iter().sum::<f64>() - 1.0).abs() < 1e-9);
    }
}
