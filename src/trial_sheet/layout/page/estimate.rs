//! How tall blocks are in print: lines of words moved down whole, the type's own widths, the measures of `page.css`.

use super::columns::{BESIDE, shares};
use super::type_widths::{bold_width, lines, width};
use crate::trial_sheet::layout::block::{Block, Cell, CellKind};

/// A4 less the margins of `page.css`, 6 mm and 8 mm, in points: 285 mm and 194 mm.
pub(super) const HEIGHT: f64 = 807.9;
pub(super) const WIDTH: f64 = 549.9;

/// Between the columns of the notes, points.
const GAP: f64 = 14.0;
/// Lines of the running text, type sizes.
const LINE: f64 = 1.15;
/// Lines to write on.
const BLANK_LINE: f64 = 1.7;
/// A row to write in, points.
const BLANK_ROW: f64 = 12.5;
/// Line of a table and of a heading, points.
const RULE: f64 = 0.75;

/// What a page is printed in.
#[derive(Debug, Clone, Copy)]
pub(super) struct Estimate {
    /// Type size, points.
    pub(super) size: f64,
    /// Width of the text, points.
    width: f64,
}

impl Estimate {
    pub(super) fn new(size: f64) -> Self {
        Self { size, width: WIDTH }
    }

    /// The same in one of two columns.
    fn in_two_columns(self) -> Self {
        Self { width: (self.width - GAP) / 2.0, ..self }
    }

    /// Height of the blocks of a page, points; those of `notes` stand in two columns.
    pub(super) fn height(self, blocks: &[Block], notes: &[Block], foot: &[Block]) -> f64 {
        let all = |blocks: &[Block]| blocks.iter().map(|block| self.block(block)).sum::<f64>();
        all(blocks) + self.two_columns(notes) + all(foot)
    }

    /// Half of what they are in one column; items are not broken, so the columns differ by the tallest at most.
    fn two_columns(self, notes: &[Block]) -> f64 {
        let own = self.in_two_columns();
        let tallest = notes.iter().map(|block| own.tallest_piece(block)).fold(0.0, f64::max);
        notes.iter().map(|block| own.block(block)).sum::<f64>() / 2.0 + tallest / 2.0
    }

    fn tallest_piece(self, block: &Block) -> f64 {
        match block {
            Block::List(items) => items.iter().map(|item| self.item(item)).fold(0.0, f64::max),
            _ => 2.0 * LINE * self.size,
        }
    }

    fn block(self, block: &Block) -> f64 {
        let size = self.size;
        match block {
            Block::Title(title) => 1.3 * self.paragraph(title, 1.3 * 1.1),
            Block::Heading(_) => (LINE + 0.4) * size + RULE,
            Block::Text(text) => self.paragraph(text, 1.0) + 0.1 * size,
            Block::List(items) => items.iter().map(|item| self.item(item)).sum::<f64>() + 0.1 * size,
            Block::Blanks(labels) => self.blanks(labels) + 0.1 * size,
            Block::Table(rows) => self.table(rows),
        }
    }

    fn paragraph(self, text: &str, larger: f64) -> f64 {
        lines(text, 0.0, self.width / (self.size * larger)) * LINE * self.size
    }

    fn item(self, text: &str) -> f64 {
        lines(text, 0.0, self.width / self.size - 1.1) * LINE * self.size
    }

    /// A label, nine type sizes to write on, a gap.
    fn blanks(self, labels: &[String]) -> f64 {
        let (mut lines, mut taken, room) = (1.0, 0.0, self.width / self.size);
        for label in labels {
            let own = width(label) + 2.0 * width(" ") + 9.0 + 1.2;
            if taken > 0.0 && taken + own > room {
                lines += 1.0;
                taken = 0.0;
            }
            taken += own;
        }
        lines * BLANK_LINE * self.size
    }

    fn table(self, rows: &[Vec<Cell>]) -> f64 {
        let room = self.width / self.size;
        let shares = shares(rows, room);
        let row = |(place, row): (usize, &Vec<Cell>)| {
            let cells = row.iter().zip(&shares).map(|(cell, share)| self.cell(cell, place == 0, share * room - BESIDE));
            cells.fold(0.0, f64::max) + RULE
        };
        rows.iter().enumerate().map(row).sum::<f64>() + RULE + 0.2 * self.size
    }

    fn cell(self, cell: &Cell, is_head: bool, room: f64) -> f64 {
        if cell.kind == CellKind::Blank {
            return BLANK_ROW;
        }
        let is_bold = is_head || cell.kind == CellKind::Changed || !cell.note.is_empty();
        let bold = lines(&cell.text, 0.0, room / if is_bold { 1.1 } else { 1.0 });
        let all = if cell.note.is_empty() || bold > 1.0 {
            bold + if cell.note.is_empty() { 0.0 } else { lines(&cell.note, 0.0, room) }
        } else {
            lines(&cell.note, bold_width(&cell.text), room)
        };
        all * LINE * self.size
    }
}

#[cfg(test)]
mod tests {
    use super::{BLANK_LINE, BLANK_ROW, Block, Cell, Estimate, GAP, HEIGHT, LINE, WIDTH};

    const POINTS_A_MM: f64 = 72.0 / 25.4;

    /// A4 is 210 mm by 297 mm (ISO 216).
    #[test]
    fn the_measures_are_those_of_the_style() {
        let style = include_str!("page.css");
        assert!((HEIGHT - (297.0 - 2.0 * 6.0) * POINTS_A_MM).abs() < 0.1);
        assert!((WIDTH - (210.0 - 2.0 * 8.0) * POINTS_A_MM).abs() < 0.1);
        for own in [
            "size: A4; margin: 6mm 8mm".to_owned(),
            format!("font: 10pt/{LINE} "),
            format!(".blanks {{ line-height: {BLANK_LINE}; }}"),
            format!("td.blank {{ height: {BLANK_ROW}pt; }}"),
            format!("columns: 2; column-gap: {GAP}pt"),
        ] {
            assert!(style.contains(&own), "{own}");
        }
    }

    /// At 8 pt a page is 68.74 type sizes wide. A word of three digits takes 1.668, a space 0.278: 35 words take 67.8, 36 take 69.8.
    #[test]
    fn heights_are_lines_of_the_type() {
        let estimate = Estimate::new(8.0);
        let lines = |words: usize| (estimate.block(&Block::Text("123 ".repeat(words))) - 0.8) / (LINE * 8.0);
        assert!((lines(35) - 1.0).abs() < 1e-9 && (lines(36) - 2.0).abs() < 1e-9, "{} {}", lines(35), lines(36));
        let form = Block::Table(vec![vec![Cell::new("a")], vec![Cell::blank()], vec![Cell::blank()]]);
        let two_blank_rows = 2.0 * (BLANK_ROW + 0.75);
        assert!((estimate.block(&form) - (two_blank_rows + 9.2 + 0.75 + 0.75 + 1.6)).abs() < 1e-9);
        let notes = vec![Block::List(vec!["one".to_owned(); 10])];
        let (one, two) = (estimate.height(&notes, &[], &[]), estimate.height(&[], &notes, &[]));
        assert!(two > one / 2.0 && two < one / 2.0 + 10.0, "{one} {two}");
    }
}
